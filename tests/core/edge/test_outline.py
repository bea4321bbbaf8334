"""Outlines: perimeters, corners and radii against textbook values and an independent geometry."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import atan2, cos, hypot, pi, radians, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LinearRing, Polygon

from core.edge.outline import Outline, require_bindable
from core.edge.shapes import outline_of
from core.lengths import INCHES_PER_MM
from core.refusal import Refusal
from core.shape import Facing, Shape, ShapeKind, Spot, Upright

F = Fraction
THOUSANDTH = F(1, 1000)
ARROW = ((F(0), F(0)), (F(40), F(0)), (F(40), F(50)), (F(20), F(30)), (F(0), F(50)))
SHAPES = [
    Shape(kind, points=ARROW, upright=upright)
    for kind in ShapeKind
    for upright in (Upright if kind is ShapeKind.HEXAGON else (Upright.SIDE,))
]


def cut(shape: Shape, width: int = 50, length: int = 60) -> Outline:
    return outline_of(shape, F(width), F(50 if shape.kind is ShapeKind.CIRCLE else length))


def spots(*pairs: tuple[int, int]) -> tuple[Spot, ...]:
    return tuple((F(x), F(y)) for x, y in pairs)


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: f"{shape.kind}-{shape.upright}")
def test_the_outline_runs_round_the_quilt_once_with_the_quilt_on_its_left(shape: Shape) -> None:
    outline = cut(shape)
    ring = LinearRing(outline.points)
    assert ring.is_simple
    assert not ring.is_ccw, "y runs down, so anticlockwise on the picture is clockwise to shapely"
    assert [side.points[-1] for side in outline.sides] == [
        pytest.approx(side.points[0], abs=1e-8) for side in (*outline.sides[1:], outline.sides[0])
    ]


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: f"{shape.kind}-{shape.upright}")
def test_the_outline_lies_in_its_box_and_the_box_on_the_quilt(shape: Shape) -> None:
    outline = cut(shape)
    left, top, right, bottom = Polygon(outline.points).bounds
    # A curve's points lie on it, so that between them it may swell a little further.
    assert left == pytest.approx(float(outline.x), abs=0.06)
    assert top == pytest.approx(float(outline.y), abs=0.06)
    assert right == pytest.approx(float(outline.x + outline.width), abs=0.06)
    assert bottom == pytest.approx(float(outline.y + outline.length), abs=0.06)
    assert outline.x >= 0
    assert outline.x + outline.width <= 50


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: f"{shape.kind}-{shape.upright}")
def test_the_corners_turn_the_outline_round_once(shape: Shape) -> None:
    # The turns at corners and along curves add up to a whole one.
    outline = cut(shape)
    at_corners = sum(180 - corner.angle for corner in outline.corners)
    on_curves = sum((s.end_heading - s.heading) % 360 for s in outline.sides if s.radius)
    assert at_corners + on_curves == pytest.approx(360)


@pytest.mark.parametrize(
    ("shape", "true"),
    [
        # Textbook geometry; an arc's length is its radius times its angle.
        (Shape(ShapeKind.RECTANGLE), 220.0),
        (Shape(ShapeKind.ROUNDED, radius=F(6)), 220 - 8 * 6 + 2 * pi * 6),
        (Shape(ShapeKind.CLIPPED, clip=F(4)), 220 - 8 * 4 + 4 * 4 * sqrt(2)),
        (Shape(ShapeKind.HEXAGON), 150.0),
        (Shape(ShapeKind.HEXAGON, upright=Upright.CORNER), 6 * 50 / sqrt(3)),
        (Shape(ShapeKind.OCTAGON), 8 * 50 * (sqrt(2) - 1)),
        (Shape(ShapeKind.CIRCLE), 50 * pi),
        (Shape(ShapeKind.POLYGON, points=ARROW), 40 + 2 * 50 + 2 * 20 * sqrt(2)),
    ],
)
def test_the_perimeter_is_never_short_and_less_than_a_thousandth_long(
    shape: Shape, true: float
) -> None:
    perimeter = cut(shape).perimeter
    assert -1e-9 <= float(perimeter) - true < THOUSANDTH
    if true == int(true):
        assert perimeter == int(true)


@pytest.mark.parametrize(("a", "b"), [(25, 30), (10, 30), (1, 40), (30, 30)])
def test_an_oval_is_as_long_as_many_short_chords_of_it(a: int, b: int) -> None:
    # A million chords fall short of the curve by far less than a thousandth of an inch.
    count = 200_000
    points = [(a * cos(2 * pi * i / count), b * sin(2 * pi * i / count)) for i in range(count + 1)]
    chords = sum(hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in pairwise(points))
    perimeter = outline_of(Shape(ShapeKind.OVAL), F(2 * a), F(2 * b)).perimeter
    assert -1e-6 <= float(perimeter) - chords < THOUSANDTH


@pytest.mark.parametrize(("across", "along", "depth"), [(5, 6, 2), (4, 4, 3), (10, 12, 1)])
def test_scallops_are_arcs_of_their_chord_and_depth(across: int, along: int, depth: int) -> None:
    shape = Shape(ShapeKind.SCALLOPED, scallops_across=across, scallops_along=along, depth=F(depth))
    outline = cut(shape)
    true = 0.0
    for side, count in ((50 - 2 * depth, across), (60 - 2 * depth, along)):
        chord = side / count
        # Half a chord at the radius r from the middle, the depth below the arc: r − √(r² − c²/4).
        radius = min(
            (step / 1000 for step in range(int(chord * 500), 100_000)),
            key=lambda r: abs(r - sqrt(max(r * r - chord * chord / 4, 0)) - depth),
        )
        points = [
            (radius * cos(t), radius * sin(t))
            for t in (
                pi / 2 + (2 * i / 2000 - 1) * _half(radius, chord, depth) for i in range(2001)
            )
        ]
        true += 2 * count * sum(hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in pairwise(points))
    assert float(outline.perimeter) == pytest.approx(true, abs=0.03)
    assert len(outline.sides) == 2 * (across + along)
    assert sum(corner.inside for corner in outline.corners) >= len(outline.sides) - 4


def test_each_side_may_have_its_own_scallops() -> None:
    shape = Shape(
        ShapeKind.SCALLOPED, scallops_across=5, scallops_along=6, depth=F(2),
        scallops_top=2, depth_top=F(10), depth_left=F(1),
    )  # fmt: skip
    outline = cut(shape)  # from 50 × 60
    counts = [sum(side.facing is facing for side in outline.sides) for facing in Facing]
    assert dict(zip(Facing, counts, strict=True)) == {
        Facing.LEFT: 6, Facing.BOTTOM: 5, Facing.RIGHT: 6, Facing.TOP: 2,
    }  # fmt: skip
    xs, ys = zip(*outline.points, strict=True)
    assert (min(xs), max(xs)) == (pytest.approx(0, abs=0.01), pytest.approx(50, abs=0.01))
    assert (min(ys), max(ys)) == (pytest.approx(0, abs=0.05), pytest.approx(60, abs=0.01))
    # r = (c²/4 + d²)/2d with c = (50 - 1 - 2)/2 and d = 10: 11 3/4 squared is 138 1/16.
    assert outline.sides[-1].radius == (F(2209, 16) + 100) / 20
    assert outline.points[0] == pytest.approx((1, 10))  # both sides' chords end in one notch


def test_scallops_too_deep_for_their_side_are_refused_there() -> None:
    with pytest.raises(Refusal, match="on the top") as refused:
        cut(Shape(ShapeKind.SCALLOPED, scallops_top=9, depth_top=F(3)))
    assert refused.value.path == "outline.depth_top"


def _half(radius: float, chord: float, depth: float) -> float:
    """Half the angle that an arc turns by: half circles turn by a right angle."""
    return atan2(chord / 2, radius - depth)


@pytest.mark.parametrize(
    ("kind", "count", "angle", "mitre"),
    # The mitre lies on the bisector; a regular figure's is 90° − 180°/n to its edges
    # (Wonderful Woodworking gives the complement, 180°/n: see test_corners).
    [
        (ShapeKind.RECTANGLE, 4, 90, 45),
        (ShapeKind.HEXAGON, 6, 120, 60),
        (ShapeKind.OCTAGON, 8, 135, 67.5),
        (ShapeKind.CLIPPED, 8, 135, 67.5),
    ],
)
def test_corners_have_their_known_angles_and_mitres(
    kind: ShapeKind, count: int, angle: float, mitre: float
) -> None:
    corners = cut(Shape(kind)).corners
    assert [corner.angle for corner in corners] == [angle] * count
    assert {corner.mitre for corner in corners} == {mitre}


def test_an_inside_corner_is_named_as_such_and_has_no_mitre_and_no_stop() -> None:
    [inside] = [c for c in cut(Shape(ShapeKind.POLYGON, points=ARROW)).corners if c.inside]
    assert inside.angle == 270
    assert inside.mitre is None
    assert inside.stop(F(1, 4)) is None


def test_smooth_joins_of_edges_and_curves_are_no_corners() -> None:
    for kind in (ShapeKind.ROUNDED, ShapeKind.CIRCLE, ShapeKind.OVAL):
        assert cut(Shape(kind)).corners == ()


def test_a_point_on_a_straight_edge_is_no_corner() -> None:
    square = spots((0, 0), (20, 0), (40, 0), (40, 40), (0, 40))
    assert len(cut(Shape(ShapeKind.POLYGON, points=square)).corners) == 4


def test_the_smallest_radius_is_the_tightest_curve() -> None:
    assert cut(Shape(ShapeKind.ROUNDED, radius=F(6))).smallest_radius == 6
    assert cut(Shape(ShapeKind.CIRCLE)).smallest_radius == 25
    assert cut(Shape(ShapeKind.OVAL)).smallest_radius == F(25**2, 30)  # b²/a, textbook
    assert cut(Shape(ShapeKind.OCTAGON)).smallest_radius is None


def test_the_order_of_points_either_way_round_makes_the_same_outline() -> None:
    there = cut(Shape(ShapeKind.POLYGON, points=ARROW))
    back = cut(Shape(ShapeKind.POLYGON, points=ARROW[::-1]))
    assert set(there.points) == set(back.points)
    assert there.perimeter == back.perimeter
    assert {c.angle for c in there.corners} == {c.angle for c in back.corners}


def test_sides_face_where_they_should() -> None:
    assert [side.facing for side in cut(Shape()).sides] == list(Facing)


@pytest.mark.parametrize(
    ("points", "path", "said"),
    [
        (spots((0, 0), (10, 0)), "outline.points", "three corners"),
        (spots((0, 0), (99, 0), (10, 10)), "outline.points[1]", "off the quilt"),
        (spots((0, 0), (0, 0), (10, 10), (0, 20)), "outline.points[0]", "twice in a row"),
        (spots((0, 0), (40, 0), (20, 0), (20, 30)), "outline.points[1]", "straight back"),
        (
            spots((0, 0), (40, 40), (40, 0), (0, 40)),
            "outline.points",
            "point 1 to point 2 crosses or touches the edge from point 3 to point 4",
        ),
        (spots((0, 0), (40, 0), (40, 40), (20, 0), (0, 40)), "outline.points", "touches"),
    ],
)
def test_an_outline_that_is_none_is_refused_in_one_sentence(
    points: tuple[Spot, ...], path: str, said: str
) -> None:
    with pytest.raises(Refusal, match=said) as refused:
        cut(Shape(ShapeKind.POLYGON, points=points))
    assert refused.value.path == path


@pytest.mark.parametrize(
    ("shape", "path"),
    [
        (Shape(ShapeKind.ROUNDED, radius=F(26)), "outline.radius"),
        (Shape(ShapeKind.CLIPPED, clip=F(26)), "outline.clip"),
        (Shape(ShapeKind.SCALLOPED, depth=F(5)), "outline.depth"),
        (Shape(ShapeKind.SCALLOPED, depth=F(30)), "outline.depth"),
    ],
)
def test_a_shape_too_large_for_its_quilt_is_refused_with_what_would_do(
    shape: Shape, path: str
) -> None:
    with pytest.raises(Refusal, match="write at most") as refused:
        cut(shape)
    assert refused.value.path == path


def test_the_most_that_a_refusal_allows_is_allowed() -> None:
    for shape in (
        Shape(ShapeKind.ROUNDED, radius=F(25)),
        Shape(ShapeKind.CLIPPED, clip=F(25)),
        Shape(ShapeKind.SCALLOPED, depth=F(25, 6)),
    ):
        assert cut(shape).perimeter > 100


def test_a_circle_is_as_wide_as_it_is_long() -> None:
    with pytest.raises(Refusal, match="choose oval"):
        outline_of(Shape(ShapeKind.CIRCLE), F(50), F(60))


def test_the_binding_cannot_follow_a_curve_tighter_than_it_is_wide() -> None:
    outline = cut(Shape(ShapeKind.ROUNDED, radius=F(1, 4)))
    with pytest.raises(Refusal, match="cannot follow a radius of 1/4 in"):
        require_bindable(outline, F(1, 4), F(3, 8))
    require_bindable(cut(Shape(ShapeKind.ROUNDED, radius=F(1, 2))), F(1, 4), F(3, 8))


def test_an_edge_shorter_than_its_seams_is_refused() -> None:
    # At two corners of 90° the seam lines take a seam each: an edge of half an inch is used up.
    stubby = spots((0, 0), (40, 0), (40, 40))
    step = (*stubby, (F(20), F(40)), (F(20), F(81, 2)), (F(0), F(81, 2)))
    outline = cut(Shape(ShapeKind.POLYGON, points=step))
    with pytest.raises(Refusal, match="no room to sew between the seams"):
        require_bindable(outline, F(1), F(1))
    require_bindable(outline, F(1, 4), F(1, 4))


@given(st.integers(10, 900), st.integers(10, 900), st.integers(1, 300))
def test_millimetres_are_exact(width: int, length: int, clip: int) -> None:
    wide, high = width * INCHES_PER_MM, length * INCHES_PER_MM
    assert outline_of(Shape(), wide, high).perimeter == 2 * (wide + high)


@given(st.integers(3, 40), st.floats(0.2, 0.95))
def test_the_perimeter_of_a_star_is_that_of_an_independent_geometry(
    tips: int, share: float
) -> None:
    # Points of two circles in turn, to a 64th: shapely measures the same polygon.
    points = []
    for i in range(2 * tips):
        radius = 25 * (share if i % 2 else 1.0)
        angle = radians(180 / tips * i)
        points.append(tuple(F(round((25 + radius * f(angle)) * 64), 64) for f in (cos, sin)))
    shape = Shape(ShapeKind.POLYGON, points=tuple(points))  # type: ignore[arg-type]
    try:
        outline = cut(shape)
    except Refusal:
        ring = LinearRing([(float(x), float(y)) for x, y in points])
        assert not ring.is_simple or tips > 20
        return
    assert float(outline.perimeter) == pytest.approx(Polygon(outline.points).length, abs=1e-3)
    assert sum(180 - c.angle for c in outline.corners) == pytest.approx(360)
