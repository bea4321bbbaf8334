"""The back's picture: panels that cover the backing, where they are sewn."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest

from core.drawing.back import draw_back
from core.drawing.marks import Area, Drawing
from core.drawing.marks import Label as Words
from core.fabric import Fabric, Grain
from core.plan import Plan, make_plan
from core.quilt import Backing, Border, Frame, Label, Panels, Project, Quilt, Seams, Sleeve

F = Fraction
PLUM = Fabric("plum", F(43), F(1, 2))
DOTS = replace(PLUM, name="dots")
PATCH = Label("dots", F(5), F(4))
PROJECT = Project(Quilt("Lap", F(50), F(60)), (PLUM, DOTS))


def planned(**changes: object) -> Plan:
    return make_plan(replace(PROJECT, **changes))  # type: ignore[arg-type]


def areas(drawing: Drawing, role: str) -> list[tuple[float, float, float, float]]:
    """Left, top, right and bottom of each area of a role."""
    found = [m.points for m in drawing.marks if isinstance(m, Area) and m.role == role]
    return [
        (min(x for x, _ in points), min(y for _, y in points),
         max(x for x, _ in points), max(y for _, y in points))
        for points in found
    ]  # fmt: skip


@pytest.mark.parametrize(
    "backing",
    [
        Backing("plum", seams=Seams.LENGTHWISE),
        Backing("plum", seams=Seams.CROSSWISE, panels=Panels.WHOLE),
        Backing("plum", panels=Panels.HALVES, overage_top=F(8), overage_left=F(1)),
        Backing("plum", accent_fabric="dots", accent_width=F(10), frame=Frame.SIDE),
    ],
)
def test_the_panels_cover_the_backing_once(backing: Backing) -> None:
    plan = planned(backing=backing)
    drawing = draw_back(plan)
    assert drawing is not None
    assert plan.backing is not None
    total = sum((r - x) * (b - y) for x, y, r, b in areas(drawing, "backing"))
    assert total == float(plan.backing.across * plan.backing.along)
    assert len(areas(drawing, "backing")) == len(plan.backing.widths) + plan.backing.pieced_last - 1


def test_left_and_right_are_as_seen_from_behind() -> None:
    """The narrow panel is at the quilt's right, so at the left from behind; so is its overage."""
    plan = planned(backing=Backing("plum", seams=Seams.LENGTHWISE, panels=Panels.WHOLE))
    drawing = draw_back(plan)
    assert drawing is not None
    wide, narrow = areas(drawing, "backing")
    assert wide[2] - wide[0] > narrow[2] - narrow[0]
    assert narrow[2] == wide[0]


def test_the_seams_lie_where_the_panels_are_cut() -> None:
    drawing = draw_back(planned(backing=Backing("plum", panels=Panels.HALVES)))
    assert drawing is not None
    across = sorted(areas(drawing, "backing"))
    assert all(a[2] == b[0] or a[3] == b[1] for a, b in pairwise(across))


def test_sleeve_and_label_lie_on_the_quilt() -> None:
    drawing = draw_back(planned(sleeve=Sleeve("plum", split_above=F(40)), label=Label("plum")))
    assert drawing is not None
    assert len(areas(drawing, "sleeve")) == 2
    [label] = areas(drawing, "label")
    assert label == (4, 60 - 2 - 4 + 2, 10, 60)


def test_a_quilt_with_nothing_behind_has_no_such_picture() -> None:
    border = Border("plum", F(3), grain=Grain.LENGTHWISE)
    assert draw_back(planned(borders=(border,))) is None


@pytest.mark.parametrize("size", [(F(50), F(60)), (F(14), F(16)), (F(60), F(9))])
def test_no_panels_letter_lies_on_a_sleeve_or_a_label_or_past_the_edge(
    size: tuple[Fraction, Fraction],
) -> None:
    plan = planned(
        quilt=Quilt("Small", *size), backing=Backing("plum"), sleeve=Sleeve("dots"), label=PATCH
    )
    drawing = draw_back(plan)
    assert drawing is not None
    letters = [m for m in drawing.marks if isinstance(m, Words) and m.role == "backing"]
    assert letters
    sewn_on = [*areas(drawing, "sleeve"), *areas(drawing, "label")]
    for letter in letters:
        (x, y), (wide, high) = letter.centre, letter.room
        left, top, right, bottom = x - wide / 2, y - high / 2, x + wide / 2, y + high / 2
        assert 2 + 4 <= left < right <= drawing.width - 2 - 4, "margin and overage"
        for x1, y1, x2, y2 in sewn_on:
            assert right <= x1 or left >= x2 or bottom <= y1 or top >= y2
