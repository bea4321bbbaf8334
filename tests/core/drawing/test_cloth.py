"""A sheet of cloth: everything on it to scale, the right way round."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest

from core.by_hand.sheets import sheets_of
from core.drawing.cloth import draw_sheet, sheet_title
from core.drawing.frame import MARGIN, Heading
from core.drawing.marks import Area, Drawing, Label, Line, Point
from core.fabric import Fabric, OnHand
from core.lay.lay import Sheet
from core.lengths import Units
from core.plan import Plan, make_plan
from core.quilt import Backing, Binding, Project, Quilt
from tests.core.demos import demo

F = Fraction
BOLT = Fabric("plum", F(43), F(1, 2), straightening=F(1), on_hand=(OnHand(F(30), F(20), 2),))
PROJECT = Project(
    Quilt("", F(50), F(60)), (BOLT,), backing=Backing("plum"), binding=Binding("plum", F(5, 2))
)


@pytest.fixture(scope="module")
def plan() -> Plan:
    return make_plan(PROJECT)


def picture(plan: Plan, heading: Heading = Heading.DOWN, sheet: Sheet | None = None) -> Drawing:
    return draw_sheet(plan, 0, sheet or Sheet(), heading)


def areas(drawing: Drawing, role: str) -> list[Area]:
    return [mark for mark in drawing.marks if isinstance(mark, Area) and mark.role == role]


def size(points: tuple[Point, ...]) -> tuple[float, float]:
    across, down = zip(*points, strict=True)
    return max(across) - min(across), max(down) - min(down)


def signed_area(points: tuple[Point, ...]) -> float:
    """Twice the area, positive where the points go round with the clock (y is down)."""
    return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairwise((*points, points[0])))


def test_every_piece_is_drawn_in_its_size_and_place(plan: Plan) -> None:
    drawing = picture(plan)
    drawn = {mark.key: mark for mark in drawing.marks if isinstance(mark, Area) and mark.key}
    laid = [placed for placed in plan.fabrics[0].lay.placements if placed.sheet == Sheet()]
    assert len(drawn) == len(laid) > 0
    for placed in laid:
        mark = drawn[plan.label(placed)]
        assert mark.role == plan.part(placed.name).role
        assert size(mark.points) == (float(placed.rect.across), float(placed.rect.along))
        left = min(x for x, _ in mark.points)
        top = min(y for _, y in mark.points)
        assert left == float(placed.rect.x + F(1, 2) + MARGIN)
        assert top == float(placed.rect.y + 1)


def test_the_picture_is_as_large_as_the_cloth_with_its_edges(plan: Plan) -> None:
    drawing = picture(plan)
    bought = plan.fabrics[0].buy.along
    assert (drawing.width, drawing.height) == (43 + 2 * float(MARGIN), float(bought))


def test_the_two_headings_are_quarter_turns_and_never_mirror_images(plan: Plan) -> None:
    down, right = picture(plan, Heading.DOWN), picture(plan, Heading.RIGHT)
    assert (down.width, down.height) == (right.height, right.width)
    for one, other in zip(down.marks, right.marks, strict=True):
        if isinstance(one, Area) and isinstance(other, Area):
            turned = tuple((y, down.width - x) for x, y in one.points)
            assert turned == other.points
            assert signed_area(one.points) == pytest.approx(signed_area(other.points))


def test_selvages_lie_on_both_sides_and_the_raw_end_before_all(plan: Plan) -> None:
    drawing = picture(plan)
    left, right = areas(drawing, "selvage")
    [cloth] = areas(drawing, "cloth")
    [raw] = areas(drawing, "straightening")
    assert size(left.points)[0] == size(right.points)[0] == 0.5
    assert max(x for x, _ in left.points) == min(x for x, _ in cloth.points)
    assert min(x for x, _ in right.points) == max(x for x, _ in cloth.points)
    assert max(y for _, y in raw.points) == min(y for _, y in cloth.points) == 1


def test_cloth_on_hand_has_neither_selvage_nor_raw_end() -> None:
    plan = make_plan(replace(PROJECT, backing=None))
    sheets = sheets_of(plan.fabrics[0])
    assert sheets[0] == Sheet("on_hand[0]", 1)
    drawing = picture(plan, sheet=sheets[0])
    assert areas(drawing, "selvage") == areas(drawing, "straightening") == []
    assert drawing.title == "plum, on hand 30 × 20 in, piece 1 of 2"


def test_a_single_piece_on_hand_is_called_by_its_size() -> None:
    fabric = replace(BOLT, on_hand=(OnHand(F(30), F(20)),))
    title = sheet_title(fabric, Sheet("on_hand[0]", 1), F(20), Units.INCHES)
    assert title == "plum, on hand 30 × 20 in"


@pytest.mark.parametrize(("one_way", "heads"), [(False, 2), (True, 1)])
def test_a_one_way_print_has_an_arrow_with_one_head(one_way: bool, heads: int) -> None:
    fabric = replace(BOLT, one_way_print=one_way)
    drawing = picture(make_plan(replace(PROJECT, fabrics=(fabric,))))
    assert len(areas(drawing, "grain")) == heads
    words = [mark.texts[0] for mark in drawing.marks if isinstance(mark, Label)]
    assert ("print, this way up" in words) == one_way


def test_the_arrow_of_a_one_way_print_points_to_the_straightened_end() -> None:
    drawing = picture(make_plan(replace(PROJECT, fabrics=(replace(BOLT, one_way_print=True),))))
    [head] = areas(drawing, "grain")
    tip, *back = head.points
    assert all(tip[1] < y for _, y in back)


def ticks(drawing: Drawing) -> list[float]:
    """Where the ruler's marks lie along the cloth."""
    lines = [mark for mark in drawing.marks if isinstance(mark, Line) and mark.role == "ruler"]
    return [line.points[0][1] for line in lines]


def test_the_ruler_has_a_mark_an_inch_and_numbers_that_name_their_place(plan: Plan) -> None:
    drawing = picture(plan)
    marks = ticks(drawing)
    assert all(after - before == 1 for before, after in pairwise(marks))
    numbers = [m for m in drawing.marks if isinstance(m, Label) and m.role == "ruler"]
    assert numbers
    for number in numbers:
        assert float(number.texts[0]) == pytest.approx(number.centre[1] - 1)
        assert float(number.texts[0]) % 6 == 0


def test_on_long_cloth_every_other_number_of_inches_goes(plan: Plan) -> None:
    def numbers(of: Plan) -> list[str]:
        marks = picture(of).marks
        return [m.texts[0] for m in marks if isinstance(m, Label) and m.role == "ruler"]

    short = make_plan(replace(PROJECT, quilt=replace(PROJECT.quilt, width=F(20), length=F(20))))
    assert short.fabrics[0].buy.along < 80 < plan.fabrics[0].buy.along
    assert numbers(short)[:3] == ["6", "12", "18"]
    assert numbers(plan)[:3] == ["12", "24", "36"]


def test_a_metric_ruler_has_a_mark_every_five_centimetres(plan: Plan) -> None:
    drawing = picture(make_plan(replace(PROJECT, units=Units.CENTIMETRES)))
    assert all(b - a == pytest.approx(5 / 2.54) for a, b in pairwise(ticks(drawing)))
    numbers = [m for m in drawing.marks if isinstance(m, Label) and m.role == "ruler"]
    assert [number.texts[0] for number in numbers][:3] == ["20", "40", "60"]
    assert numbers[0].centre[1] - 1 == pytest.approx(20 / 2.54)


def test_labels_go_from_the_fullest_to_the_shortest_words(plan: Plan) -> None:
    for mark in picture(plan).marks:
        if isinstance(mark, Label) and mark.key:
            lengths = [len(text) for text in mark.texts]
            assert lengths[0] >= lengths[-1]
            assert mark.texts[-1] == mark.key


def test_every_sheet_of_the_demo_is_drawn_once() -> None:
    plan = make_plan(demo("harbour-lights"))
    for fabric in plan.fabrics:
        sheets = sheets_of(fabric)
        assert len(sheets) == len(set(sheets))
        assert {placed.sheet for placed in fabric.lay.placements} == set(sheets)
