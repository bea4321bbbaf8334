"""Lays that are cut in few stages."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings

from core.lay.check import FaultKind, check
from core.lay.lay_file import problem_from_text
from core.lay.plain import plain_lay, stages_of
from core.lay.problem import LayProblem, Piece, Pin
from core.lay.refuse import require_layable
from core.lay.solve import Stop, solve
from core.lay.ticks import task_of
from core.refusal import Refusal
from tests.core.lay.problems import BINDING, DOTS, PLUM, lay_problems

F = Fraction
# Best with the short ones beside the long one, and the stub trimmed last: three stages.
PIECES = (
    Piece("long", "plum", F(20), F(30)),
    Piece("short", "plum", F(22), F(13)),
    Piece("stub", "plum", F(21), F(13)),
)
PROBLEM = LayProblem((PLUM,), PIECES)


@pytest.mark.parametrize(("stages", "used"), [(None, 30), (3, 30), (2, 56)])
def test_fewer_stages_may_take_more_cloth(stages: int | None, used: int) -> None:
    problem = replace(PROBLEM, stages=stages)
    lay = solve(problem)
    assert check(problem, lay) == ()
    assert lay.cloths[0].used_along == used


def test_too_many_stages_are_a_fault() -> None:
    kinds = {fault.kind for fault in check(replace(PROBLEM, stages=2), solve(PROBLEM))}
    assert kinds == {FaultKind.STAGES}


def test_one_stage_is_refused() -> None:
    with pytest.raises(Refusal, match="write 2 or more"):
        require_layable(replace(PROBLEM, stages=1))
    with pytest.raises(Refusal, match="stages: "):
        problem_from_text('{"format": "crossgrain-lay", "version": 1, "cloths": [], "stages": 0}')


def test_pins_that_take_more_stages_are_refused() -> None:
    pins = (Pin("long", F(0), F(0)), Pin("short", F(20), F(0)), Pin("stub", F(20), F(14)))
    require_layable(replace(PROBLEM, pins=pins))
    with pytest.raises(Refusal, match="takes more stages of cuts than 2"):
        require_layable(replace(PROBLEM, pins=pins, stages=2))


def test_pins_go_with_few_stages() -> None:
    problem = LayProblem((PLUM, DOTS), PIECES, (BINDING,), (Pin("short", F(5), F(7)),), stages=3)
    require_layable(problem)
    lay = solve(problem)
    assert check(problem, lay) == ()
    assert lay.unplaced == ()


@settings(deadline=None, max_examples=60)
@given(lay_problems())
def test_the_plainest_lay_takes_two_stages(problem: LayProblem) -> None:
    task = task_of(problem.cloths[0], problem.pieces, problem.runs)
    packing = plain_lay(task)
    assert not packing.missing or not problem.cloths[0].buy_more
    assert stages_of(task, packing) <= 2


def test_no_time_at_all_still_gives_a_lay_of_few_stages() -> None:
    problem = LayProblem((PLUM,), PIECES, (BINDING,), stages=2)
    assert check(problem, solve(problem, stop=Stop.after(0))) == ()
