"""The small picture of a step shows what its words say."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction
from functools import cache
from math import dist

import pytest

from core.drawing.cut_step import HEIGHT, WIDTH, draw_cut
from core.drawing.marks import Area, Drawing, Label, Line, Point
from core.lay.lay import Direction
from core.lengths import Units, show
from core.plan import Plan, make_plan
from core.steps import Becomes, CutStep, reminder
from tests.core.demos import DEMOS, demo


@cache
def _steps() -> list[tuple[Plan, CutStep]]:
    plans = [make_plan(demo(name)) for name in DEMOS]
    return [(plan, step) for plan in plans for fabric in plan.fabrics for step in fabric.steps]


def _labels(drawing: Drawing) -> list[str]:
    return [mark.texts[0] for mark in drawing.marks if isinstance(mark, Label)]


def _lines(drawing: Drawing, role: str) -> list[Line]:
    return [mark for mark in drawing.marks if isinstance(mark, Line) and mark.role == role]


def test_every_step_shows_its_measure_and_all_that_falls_off() -> None:
    for plan, step in _steps():
        said = _labels(draw_cut(plan, step))
        assert show(step.measure, plan.project.units) in said
        for fall in step.falls:
            assert fall.label in _named(said)


def _named(labels: list[str]) -> set[str]:
    """Everything that labels name; "A1 to A3" names three."""
    named = set()
    for word in (word for label in labels for word in label.split(", ")):
        stretch = re.fullmatch(r"([A-Z]+)(\d+) to \1(\d+)", word)
        numbers = range(int(stretch[2]), int(stretch[3]) + 1) if stretch else ()
        named |= {f"{stretch[1]}{number}" for number in numbers} if stretch else {word}
    return named


def test_pieces_have_the_role_of_their_part() -> None:
    for plan, step in _steps():
        areas = (mark for mark in draw_cut(plan, step).marks if isinstance(mark, Area))
        roles = {area.key: area.role for area in areas if area.key}
        pieces = [fall.label for fall in step.falls if fall.becomes is Becomes.PIECE]
        assert list(roles) == pieces
        for part in plan.parts:
            for label in (part.label(copy) for copy in range(1, part.count + 1)):
                assert roles.get(label, part.role) == part.role


def test_a_cut_runs_from_edge_to_edge_and_the_measured_edge_is_heavy() -> None:
    for plan, step in _steps():
        drawing = draw_cut(plan, step)
        [edge] = _lines(drawing, "edge")
        (x1, y1), (x2, y2) = edge.points
        across = step.direction is Direction.CROSSWISE
        assert (y1 == y2) == across
        assert (x1 == x2) == (not across)
        runs = [abs(b[0] - a[0]) if across else abs(b[1] - a[1]) for a, b in _cuts(drawing, across)]
        whole = abs(x2 - x1) if across else abs(y2 - y1)
        assert len(runs) == step.times
        assert all(run >= whole for run in runs)


def _cuts(drawing: Drawing, across: bool) -> list[tuple[tuple[float, float], ...]]:
    """The cut lines; the short marks of a fold stand the other way on the top edge."""
    edge = _lines(drawing, "edge")[0].points
    found = [line.points for role in ("cut", "ruler") for line in _lines(drawing, role)]
    found = [p for p in found if _length(p) >= _length(edge)]
    return [p for p in found if (p[0][1] == p[1][1]) == across]


def _length(points: tuple[Point, ...]) -> float:
    return dist(points[0], points[-1])


def test_a_folded_cut_says_how_many_layers() -> None:
    for plan, step in _steps():
        folds = step.hold(plan.project.cutting_table).folds
        said = [words for words in _labels(draw_cut(plan, step)) if words.startswith("folded")]
        assert said == ([f"folded: {2**folds} layers"] if folds else [])


def test_nothing_lies_outside_the_picture() -> None:
    for plan, step in _steps():
        drawing = draw_cut(plan, step)
        assert drawing.width == WIDTH
        assert drawing.height <= HEIGHT
        for mark in drawing.marks:
            if not isinstance(mark, Label):
                for x, y in mark.points:
                    assert 0 <= x <= drawing.width
                    assert 0 <= y <= drawing.height


def _many(becomes: Becomes | None) -> CutStep:
    """Four strips off a cloth, with a remainder of 3/4 in or none."""
    step = next(
        step for _, step in _steps() if step.direction is Direction.CROSSWISE and step.times > 1
    )
    fall = step.falls[0]
    falls = [fall] * 4
    if becomes is not None:
        falls.append(replace(fall, becomes=becomes, rect=replace(fall.rect, along=Fraction(3, 4))))
    return replace(step, times=4, falls=tuple(falls))


@pytest.mark.parametrize(
    ("becomes", "said"),
    [
        (Becomes.WASTE, "straighten it if not: 3/4 in in all is to spare for that."),
        (Becomes.PIECE, "nothing is to spare for that, so trim no more than a thread."),
        (None, "straighten it if not."),
    ],
)
def test_many_cuts_have_a_reminder_that_says_what_is_to_spare(
    becomes: Becomes | None, said: str
) -> None:
    assert reminder(_many(becomes), Units.INCHES).endswith(said)


def test_few_cuts_and_cuts_along_the_grain_have_none() -> None:
    assert reminder(replace(_many(None), times=3), Units.INCHES) == ""
    assert reminder(replace(_many(None), direction=Direction.LENGTHWISE), Units.INCHES) == ""
