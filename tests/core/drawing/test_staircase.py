"""The picture of the staircase: a block a step, in order, higher where more is bought."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from core.compare.choices import STRIP_WIDTH
from core.compare.staircase import staircase
from core.drawing.marks import ROLES, Area, Label
from core.drawing.staircase import HEIGHT, WIDTH, draw_staircase
from core.edit import put, remove
from core.quilt import Project
from tests.core.demos import demo


def binding_alone() -> Project:
    project = put(demo("harbour-lights"), "fabrics[0].sale_unit", "1/8 yd")
    for part in ("borders[1]", "borders[0]", "backing", "sleeve"):
        project = remove(project, part)
    return project


def test_every_step_is_a_block_as_wide_as_its_widths() -> None:
    project = binding_alone()
    stairs = staircase(project, STRIP_WIDTH, Fraction(1), Fraction(4))
    blocks = [m for m in draw_staircase(project, stairs).marks if isinstance(m, Area)]
    assert [block.key for block in blocks] == [str(n + 1) for n in range(len(stairs.steps))]
    assert len(stairs.steps) > 5
    for before, after in pairwise(blocks):
        assert abs(before.points[1][0] - after.points[0][0]) < 1e-9


def test_more_to_buy_stands_higher() -> None:
    project = binding_alone()
    stairs = staircase(project, STRIP_WIDTH, Fraction(1), Fraction(4))
    marks = draw_staircase(project, stairs).marks
    tops = {m.key: m.points[0][1] for m in marks if isinstance(m, Area) and m.role != "offcut"}
    heights = [tops[str(n + 1)] for n, step in enumerate(stairs.steps) if step.bought]
    assert heights == sorted(heights, reverse=True)
    assert len(set(heights)) == len(heights)


def test_the_present_step_is_told_from_the_others_and_said() -> None:
    project = binding_alone()
    stairs = staircase(project, STRIP_WIDTH, Fraction(1), Fraction(4))
    marks = draw_staircase(project, stairs).marks
    now = [m.key for m in marks if isinstance(m, Area) and m.role == "step now"]
    assert stairs.present_step is not None
    assert now == [str(stairs.steps.index(stairs.present_step) + 1)]
    assert any(isinstance(m, Label) and m.texts[0] == "now 2 1/2 in" for m in marks)


def test_all_marks_lie_on_the_picture_in_known_roles() -> None:
    project = demo("harbour-lights")
    stairs = staircase(project, STRIP_WIDTH, Fraction(1), Fraction(4))
    for mark in draw_staircase(project, stairs).marks:
        assert mark.role in ROLES
        points = [mark.centre] if isinstance(mark, Label) else mark.points
        assert all(0 <= x <= WIDTH and 0 <= y <= HEIGHT for x, y in points)
