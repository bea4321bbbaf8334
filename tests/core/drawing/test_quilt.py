"""The quilt's picture: parts to scale that cover what they cover as sewn."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest

from core.drawing.marks import Area, Drawing, Line, Point
from core.drawing.quilt import draw_quilt
from core.fabric import Fabric
from core.plan import make_plan
from core.quilt import (
    Backing,
    Batting,
    Binding,
    Border,
    Corners,
    Joins,
    Piecing,
    Project,
    Quilt,
    Seams,
    Sizing,
)

F = Fraction
PLUM = Fabric("plum", F(43), F(1, 2))
PROJECT = Project(Quilt("Lap", F(50), F(60)), (PLUM,))


def drawn(**changes: object) -> Drawing:
    return draw_quilt(make_plan(replace(PROJECT, **changes)))  # type: ignore[arg-type]


def areas(drawing: Drawing, role: str) -> list[Area]:
    return [mark for mark in drawing.marks if isinstance(mark, Area) and mark.role == role]


def area(points: tuple[Point, ...]) -> float:
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairwise((*points, points[0])))) / 2


def total(drawing: Drawing, *roles: str) -> float:
    return sum(area(mark.points) for role in roles for mark in areas(drawing, role))


@pytest.mark.parametrize("corners", list(Corners))
def test_the_borders_fill_the_ring_round_the_top(corners: Corners) -> None:
    drawing = drawn(borders=(Border("plum", F(3), corners), Border("plum", F(5), corners)))
    assert total(drawing, "top") == 50 * 60
    assert total(drawing, "border", "border corner") == pytest.approx(66 * 76 - 50 * 60)


@pytest.mark.parametrize("sides", [F(0), F(2), F(5)])
def test_a_coping_strip_of_two_widths_fills_its_ring_too(sides: Fraction) -> None:
    coping = Border("plum", F(3), sizing=Sizing.SIZE, to_width=50 + 2 * sides, to_length=F(66))
    drawing = drawn(borders=(coping, Border("plum", F(2))))
    around = (54 + 2 * sides) * 70 - 50 * 60
    assert total(drawing, "border") == pytest.approx(float(around))


def seams(drawing: Drawing) -> list[Line]:
    return [mark for mark in drawing.marks if isinstance(mark, Line) and mark.role == "seam"]


def test_one_join_centred_is_drawn_in_the_middle_of_each_side() -> None:
    border = Border("plum", F(3), piecing=Piecing.CENTRED, joins=Joins.STRAIGHT)
    lines = seams(drawn(borders=(border,)))
    middles = sorted(
        tuple((a + b) / 2 for a, b in zip(*line.points, strict=True)) for line in lines
    )
    expected = [(3.5, 35.0), (30.0, 3.5), (30.0, 66.5), (56.5, 35.0)]
    for (x, y), (wanted_x, wanted_y) in zip(middles, expected, strict=True):
        assert x == pytest.approx(wanted_x, abs=1 / 8)
        assert y == pytest.approx(wanted_y, abs=1 / 8)


def test_a_diagonal_join_leans_across_the_strip() -> None:
    for line in seams(drawn(borders=(Border("plum", F(3)),))):
        (x1, y1), (x2, y2) = line.points
        assert abs(x2 - x1) == abs(y2 - y1) == 3


def test_only_squared_borders_have_corners_of_their_own() -> None:
    assert len(areas(drawn(borders=(Border("plum", F(3), Corners.SQUARES),)), "border corner")) == 4
    assert areas(drawn(borders=(Border("plum", F(3)),)), "border corner") == []


def test_a_mitred_border_meets_on_the_diagonal() -> None:
    drawing = drawn(borders=(Border("plum", F(3), Corners.MITRED),))
    for mark in areas(drawing, "border"):
        slanted = [
            abs(x2 - x1) == abs(y2 - y1) == 3
            for (x1, y1), (x2, y2) in pairwise((*mark.points, mark.points[0]))
        ]
        assert slanted.count(True) == 2


def test_butted_ends_reach_over_the_sides() -> None:
    drawing = drawn(borders=(Border("plum", F(3)),))
    widths = sorted(
        max(x for x, _ in mark.points) - min(x for x, _ in mark.points)
        for mark in areas(drawing, "border")
    )
    assert widths == [3, 3, 56, 56]


def test_the_keys_of_borders_are_the_letters_of_their_parts() -> None:
    plan = make_plan(replace(PROJECT, borders=(Border("plum", F(3), Corners.SQUARES),)))
    keys = {mark.key for mark in draw_quilt(plan).marks if isinstance(mark, Area)} - {""}
    assert keys == {part.letter for part in plan.parts}


def test_the_binding_shows_its_first_face_inside_the_edge() -> None:
    drawing = drawn(binding=Binding("plum", F(5, 2)))
    assert total(drawing, "binding") == pytest.approx(50 * 60 - 49.5 * 59.5)


def test_the_layers_lie_behind_the_quilt_and_show_round_it() -> None:
    drawing = drawn(backing=Backing("plum", F(4)), batting=Batting(F(4)))
    roles = [mark.role for mark in drawing.marks if isinstance(mark, Area)]
    assert roles.index("backing") < roles.index("batting") < roles.index("top")
    assert total(drawing, "backing") == 58 * 68
    assert 50 * 60 < total(drawing, "batting") < 58 * 68
    assert (drawing.width, drawing.height) == (58 + 4, 68 + 4)


@pytest.mark.parametrize(
    ("seams", "usable", "places"),
    [
        (Seams.LENGTHWISE, 42, [41.5]),
        (Seams.CROSSWISE, 42, [41.5]),
        (Seams.LENGTHWISE, 24, [23.5, 46.5]),
    ],
)
def test_the_seams_of_the_backing_lie_where_its_panels_meet(
    seams: Seams, usable: int, places: list[float]
) -> None:
    fabric = Fabric("plum", F(usable), F(0))
    drawing = drawn(fabrics=(fabric,), backing=Backing("plum", F(4), F(1, 2), seams))
    [backing] = areas(drawing, "backing")
    axis = 0 if seams is Seams.LENGTHWISE else 1
    start = min(point[axis] for point in backing.points)
    lines = [m for m in drawing.marks if isinstance(m, Line) and m.role == "seam"]
    assert [line.points[0][axis] - start for line in lines] == places
    assert all(line.points[0][axis] == line.points[1][axis] for line in lines)


@pytest.mark.parametrize(("name", "title"), [("Lap", "Lap"), ("", "the quilt")])
def test_the_picture_is_named_after_the_quilt(name: str, title: str) -> None:
    assert drawn(quilt=Quilt(name, F(50), F(60))).title == title
