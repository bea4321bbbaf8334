"""What long things leave beside them shows rooms to be too small, and never one that is not."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import HealthCheck, given, settings

from core.lay.beside import longest_group, too_small, without_sections
from core.lay.needs import across_view
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.solve import Stop, solve
from core.lay.ticks import Task, task_of
from tests.core.lay.problems import lay_problems

F = Fraction
IN = 4  # a binding of 2 1/4 in makes a tick a quarter of an inch
PLUM = Cloth("plum", F(42), F(9, 2))


def test_panels_as_wide_as_the_cloth_are_taken_out() -> None:
    panels = Piece("panel", "plum", F(42), F(90), 2), Piece("last", "plum", F(20), F(90))
    rest, room = without_sections(_task(panels, (_binding(),)), 300 * IN)
    assert [(size.across, size.along) for size in rest.sizes] == [(20 * IN, 90 * IN)]
    assert room == 120 * IN


def test_borders_that_leave_no_room_for_a_strip_are_taken_out_together() -> None:
    borders = Piece("side", "plum", F(7), F(70), 2), Piece("end", "plum", F(7), F(64), 2)
    rest, room = without_sections(_task(borders, (_binding(),)), 100 * IN)
    # Beside two alone, 6 in longer than the others, a strip of 18 in has room.
    assert (len(rest.sizes), room) == (2, 100 * IN)
    rest, room = without_sections(_task(borders[:1] * 2, (_binding(),)), 100 * IN)
    assert (rest.sizes, room) == ((), 30 * IN)


def test_a_group_ends_where_two_would_fit_one_behind_the_other() -> None:
    pieces = Piece("a", "plum", F(5), F(60), 2), Piece("b", "plum", F(5), F(41), 2)
    needs = across_view(_task(pieces, ()), 100)
    assert longest_group(needs, 100) == [(5, 60), (5, 60), (5, 41)]


def test_what_lies_beside_long_borders_is_only_as_wide_as_they_leave() -> None:
    # 12 borders side by side leave 12 in: no strip of 18 in. The binding needs 8 rows behind them.
    borders = (Piece("border", "plum", F(5, 2), F(86), 12),)
    task = _task(borders, (_binding(320),))
    behind = 86 * IN + 8 * 9
    assert too_small(task, behind - 1)
    assert not too_small(task, behind)


def test_borders_too_wide_together_need_another_section() -> None:
    borders = (Piece("border", "plum", F(9), F(60), 5),)
    task = _task(borders, ())
    two_sections = int(120 / task.tick)
    assert too_small(task, two_sections - 1)
    assert not too_small(task, two_sections)


@settings(deadline=None, max_examples=75, suppress_health_check=[HealthCheck.too_slow])
@given(lay_problems())
def test_no_room_that_a_lay_fits_is_called_too_small(problem: LayProblem) -> None:
    lay = solve(problem, stop=Stop(30))
    [cloth] = problem.cloths
    task = task_of(cloth, problem.pieces, problem.runs)
    if not lay.unplaced:
        used = int(lay.cloths[0].used_along / task.tick)
        assert not any(too_small(task, room) for room in (used, used + 1, used + used // 3))
        assert not too_small(task, used, 40)


def _task(pieces: tuple[Piece, ...], runs: tuple[Run, ...]) -> Task:
    return task_of(PLUM, pieces, runs)


def _binding(needs: int = 200) -> Run:
    return Run("binding", "plum", F(9, 4), F(needs), F(9, 4), F(18))
