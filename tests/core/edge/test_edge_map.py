"""The edge map: its optimum against brute force, its wishes, and the way it is told."""

from __future__ import annotations

import random
from fractions import Fraction
from itertools import permutations

import pytest

from core.edge.edge_map import Chain, EdgeMap, best_map, map_from
from core.edge.outline import Outline
from core.edge.shapes import outline_of, rectangle
from core.shape import Facing, Shape, ShapeKind

F = Fraction
STRIP = F(5, 2)


def chain(*lengths: Fraction | int, loss: Fraction = STRIP, **more: object) -> Chain:
    segments = tuple((f"A{number}", F(length)) for number, length in enumerate(lengths, start=1))
    return Chain(segments, loss, STRIP, STRIP, **more)  # type: ignore[arg-type]


def enough(outline: Outline, each: int = 42) -> Chain:
    """As many equal strips as reach round with 6 in to spare."""
    made = chain(each)
    while joined(made) < outline.ring + STRIP + 6:
        made = chain(*[each] * (len(made.segments) + 1))
    return made


def joined(made: Chain) -> Fraction:
    lengths = [length for _, length in made.segments]
    return sum(lengths, F(0)) - (len(lengths) - 1) * made.loss


def nearest(outline: Outline, place: float) -> float:
    """The way along the edge to the nearest corner, by going both ways; no code under test."""
    ring = float(outline.ring)
    ways = [(place - float(corner.place)) % ring for corner in outline.corners]
    return min(min(way, ring - way) for way in ways)


def brute(outline: Outline, made: Chain, step: float) -> float:
    """The best least distance over a grid of starts and trims and over all orders."""
    ring, half = float(outline.ring), float(made.closing) / 2
    spare = float(joined(made) - outline.ring - made.closing)
    loss, apart = float(made.loss), float(made.least)
    away = [nearest(outline, place * step) for place in range(round(ring / step))]
    count = len(away)
    best = -1.0
    for order in set(permutations([float(length) for _, length in made.segments])):
        joins, sewn = [], -half
        for length in order[:-1]:
            sewn += length
            joins.append(sewn - loss / 2)
            sewn -= loss
        least = max(0.0, joins[-1] + apart - ring) if joins else 0.0
        most = min(spare, joins[0] - apart) if joins else spare
        trims = range(int(-(-least // step)), int(most // step) + 1)
        offsets = [round(join / step) for join in joins]
        for start in range(count):
            on = min((away[(start + offset) % count] for offset in offsets), default=1e9)
            if on <= best:
                continue
            closing = max((away[(start + trim) % count] for trim in trims), default=-1.0)
            best = max(best, min(on, closing))
    return best


def random_quilt(draw: random.Random) -> tuple[Outline, Chain]:
    """A quilt and strips that reach round it, in halves of an inch."""
    wide, high = (F(draw.randint(24, 80), 2) for _ in range(2))
    outline = rectangle(wide, high)
    kinds = [F(draw.randint(30, 90), 2) for _ in range(draw.randint(1, 3))]
    lengths: list[Fraction] = []
    while not lengths or joined(chain(*lengths)) < outline.ring + STRIP + draw.randint(0, 10):
        lengths.append(draw.choice(kinds))
    return outline, chain(*lengths[:6]) if len(lengths) <= 6 else chain(*sorted(lengths))


@pytest.mark.parametrize("batch", range(10))
def test_no_start_trim_and_order_on_a_fine_grid_does_better(batch: int) -> None:
    # 500 random quilts in all. Lengths are halves, so the optimum lies on quarters or eighths;
    # the grid is an eighth and each distance changes by at most as much as the place.
    draw, step = random.Random(batch), 0.125
    for _ in range(50):
        outline, made = random_quilt(draw)
        while len(made.segments) > 6:
            outline, made = random_quilt(draw)
        found = best_map(outline, made)
        assert found is not None
        assert found.least is not None
        tried = brute(outline, made, step)
        assert tried <= found.least + F(1, 10**9)
        assert found.least <= tried + 2 * step
        assert_as_told(outline, made, found)


def assert_as_told(outline: Outline, made: Chain, found: EdgeMap) -> None:
    """The map's places follow from its order, trim and closing; its distances are true."""
    by_name = dict(made.segments)
    assert sorted(found.order) == sorted(by_name)
    spare = joined(made) - outline.ring - made.closing
    assert 0 <= found.trim <= spare
    sewn = -made.closing / 2 - found.trim
    for name, join in zip(found.order[:-1], found.joins, strict=True):
        sewn += by_name[name]
        assert join.place == (found.closing.place + sewn - made.loss / 2) % outline.ring
        sewn -= made.loss
    landings = (found.closing, *found.joins)
    for landing in landings:
        assert landing.to_corner is not None
        assert float(landing.to_corner) == pytest.approx(nearest(outline, float(landing.place)))
        assert outline.sides[landing.side].facing is landing.facing
    assert found.least == min(landing.to_corner or 0 for landing in landings)


def test_the_handbook_quilt_keeps_its_joins_far_from_the_corners() -> None:
    # 50 × 50 with strips of 42: joins come every 39 1/2 round sides of 50, so that they drift.
    found = best_map(rectangle(F(50), F(50)), chain(*[42] * 6))
    assert found is not None
    assert found.proved
    assert found.least is not None
    assert found.least > STRIP


def test_unequal_segments_are_put_in_the_order_that_serves_best() -> None:
    outline = rectangle(F(30), F(20))
    made = chain(50, 40, 26, loss=F(0))
    best = best_map(outline, made)
    as_cut = best_map(outline, Chain(made.segments, made.loss, STRIP, STRIP, reorder=False))
    assert best is not None
    assert as_cut is not None
    assert (best.least or 0) >= (as_cut.least or 0)
    assert as_cut.order == ("A1", "A2", "A3")


def test_trimming_the_first_segment_is_used_where_it_helps() -> None:
    # One join, on a square of 20: it and the closing can only both lie in the middle of a side if
    # the first segment is trimmed to a whole number of sides.
    outline = rectangle(F(20), F(20))
    found = best_map(outline, chain(50, 42, loss=F(0)))
    assert found is not None
    assert found.least == 10
    assert found.trim > 0


@pytest.mark.parametrize("facing", list(Facing))
def test_the_closing_lies_on_the_side_that_is_asked_for(facing: Facing) -> None:
    outline = rectangle(F(50), F(60))
    anywhere = best_map(outline, chain(*[42] * 6))
    found = best_map(outline, chain(*[42] * 6), facing)
    assert found is not None
    assert anywhere is not None
    assert found.closing.facing is facing
    assert (found.least or 0) <= (anywhere.least or 0)
    assert_as_told(outline, chain(*[42] * 6), found)


def test_no_side_of_a_triangle_faces_left() -> None:
    points = ((F(0), F(0)), (F(40), F(0)), (F(40), F(40)))
    outline = outline_of(Shape(ShapeKind.POLYGON, points=points), F(40), F(40))
    assert {side.facing for side in outline.sides} == {Facing.TOP, Facing.RIGHT, Facing.BOTTOM}
    assert best_map(outline, chain(*[42] * 5), Facing.LEFT) is None


def test_a_circle_has_no_corner_to_keep_away_from() -> None:
    outline = outline_of(Shape(ShapeKind.CIRCLE), F(40), F(40))
    found = best_map(outline, chain(*[42] * 4), Facing.BOTTOM)
    assert found is not None
    assert found.least is None
    assert found.closing.to_corner is None
    assert found.closing.facing is Facing.BOTTOM


@pytest.mark.parametrize("kind", [ShapeKind.HEXAGON, ShapeKind.OCTAGON, ShapeKind.SCALLOPED])
def test_corners_at_irrational_places_are_kept_clear_as_exactly(kind: ShapeKind) -> None:
    outline = outline_of(Shape(kind), F(50), F(60))
    made = enough(outline)
    found = best_map(outline, made)
    assert found is not None
    assert_as_told(outline, made, found)
    tried = brute(outline, made, 1 / 16)
    # Places off the grid by half a step, thrice: the ring's own, the corner's and the join's.
    assert tried - 3 / 16 <= float(found.least or 0) <= tried + 3 / 16


def test_joins_keep_away_from_the_middles_of_rounded_corners() -> None:
    outline = outline_of(Shape(ShapeKind.ROUNDED, radius=F(12)), F(50), F(60))
    found = best_map(outline, enough(outline))
    assert found is not None
    assert found.least is not None
    middles = [
        start + side.length / 2
        for start, side in zip(outline.starts, outline.sides, strict=True)
        if side.turning
    ]
    assert outline.bends == tuple(middles)
    for landing in (found.closing, *found.joins):
        ways = [(landing.place - middle) % outline.ring for middle in middles]
        assert landing.to_corner == min(min(way, outline.ring - way) for way in ways)


def test_many_unequal_segments_are_ordered_in_good_time_or_said_to_be_unproved() -> None:
    draw = random.Random(7)
    made = chain(*[F(draw.randint(18 * 8, 42 * 8), 8) for _ in range(14)])
    side = (joined(made) - STRIP - 3) / 4
    outline = rectangle(side, side)
    found = best_map(outline, made)
    assert found is not None
    assert_as_told(outline, made, found)


def joins_brute(outline: Outline, made: Chain, place: float, step: float) -> float:
    """The best least distance of the joins alone, over all orders and a grid of trims."""
    spare = float(joined(made) - outline.ring - made.closing)
    apart, loss = float(made.least), float(made.loss)
    best = -1.0
    for order in set(permutations([float(length) for _, length in made.segments])):
        joins, sewn = [], -float(made.closing) / 2
        for length in order[:-1]:
            sewn += length
            joins.append(sewn - loss / 2)
            sewn -= loss
        least = max(0.0, joins[-1] + apart - float(outline.ring))
        most = min(spare, joins[0] - apart)
        for trim in range(int(-(-least // step)), int(most // step) + 1):
            near = min(nearest(outline, place + join - trim * step) for join in joins)
            best = max(best, near)
    return best


@pytest.mark.parametrize("seed", range(40))
def test_from_a_given_start_the_joins_keep_as_far_away_as_they_can(seed: int) -> None:
    draw = random.Random(seed)
    outline, made = random_quilt(draw)
    while not 1 < len(made.segments) <= 5:
        outline, made = random_quilt(draw)
    place = F(draw.randint(0, int(outline.ring * 8) - 1), 8)
    found = map_from(outline, made, place)
    if found is None:
        assert best_map(outline, made) is None
        return
    assert found.closing.place == place
    assert_as_told(outline, made, found)
    joins = min(float(join.to_corner or 0) for join in found.joins)
    tried = joins_brute(outline, made, float(place), 0.125)
    assert tried <= joins + 1e-9
    assert joins <= tried + 0.25


def test_a_start_in_a_corner_is_told_as_such_and_its_joins_are_spread_all_the_same() -> None:
    outline, made = rectangle(F(50), F(60)), chain(*[42] * 6)
    found = map_from(outline, made, F(0))
    assert found is not None
    assert found.least == 0
    assert min(join.to_corner or F(0) for join in found.joins) > 0


def test_a_start_on_a_round_quilt_may_lie_anywhere() -> None:
    outline = outline_of(Shape(ShapeKind.CIRCLE), F(40), F(40))
    found = map_from(outline, chain(*[42] * 4), F(17))
    assert found is not None
    assert found.closing.place == 17
    assert found.least is None
