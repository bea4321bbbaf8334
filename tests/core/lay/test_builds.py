"""Builds: within the least there is a lay, and one tick less is proved impossible."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core.lay.builds import can_build, within
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.slabs import slabs
from core.lay.ticks import Task, task_of
from tests.core.lay.exhaustive import least_along
from tests.core.lay.problems import BINDING, DOTS, PLUM

F = Fraction
PATIENT = 10**6


def never() -> bool:
    return False


def task_for(problem: LayProblem) -> Task:
    [cloth] = problem.cloths
    return task_of(cloth, problem.pieces, problem.runs)


def area_laid(task: Task, room: int) -> int:
    """The area of a found lay; raises if no edge-to-edge cuts take it apart."""
    verdict = within(task, room, PATIENT, never)
    assert verdict.laid is not None
    boxes = [((one.x, one.y, one.across, one.along), one) for one in verdict.laid]
    slabs((0, 0, task.width, room), boxes)
    return sum(one.across * one.along for one in verdict.laid)


TINY = st.lists(
    st.tuples(st.integers(1, 8), st.integers(1, 8), st.integers(1, 2), st.booleans()),
    min_size=1,
    max_size=3,
)


@settings(deadline=None, max_examples=100, suppress_health_check=[HealthCheck.too_slow])
@given(TINY)
def test_the_verdict_agrees_with_trying_everything(
    sizes: list[tuple[int, int, int, bool]],
) -> None:
    pieces = tuple(
        Piece(str(i), "plum", F(a), F(b), n, turn) for i, (a, b, n, turn) in enumerate(sizes)
    )
    problem = LayProblem((Cloth("plum", F(8), F(1)),), pieces)
    task = task_for(problem)
    least = int(least_along(problem) / task.tick)
    area = sum(size.across * size.along * size.copies for size in task.sizes)
    assert area_laid(task, least) == area
    assert within(task, least - 1, PATIENT, never).impossible


@pytest.mark.parametrize(
    ("width", "sizes", "least"),
    [
        # M. Hifi, Comput. Oper. Res. 25 (1998): SCP3 and SCP9's lengths, from his own files.
        (5, [(1, 3, 4), (2, 2, 2), (4, 3, 2), (3, 2, 1), (3, 5, 1)], 13),
        # J. E. Beasley's ngcut1 as a strip, proved by two independent programs.
        (10, [(2, 3, 4)], 3),
    ],
)
def test_known_least_lengths_are_reached_and_proved(
    width: int, sizes: list[tuple[int, int, int]], least: int
) -> None:
    pieces = tuple(Piece(str(i), "c", F(a), F(b), n) for i, (a, b, n) in enumerate(sizes))
    task = task_for(LayProblem((Cloth("c", F(width), F(1)),), pieces))
    assert within(task, least, PATIENT, never).laid is not None
    assert within(task, least - 1, PATIENT, never).impossible


def test_a_run_fills_what_pieces_leave_without_waste() -> None:
    # 42 x 20: a panel 30 x 20, and beside it strips of 12 in, 2 1/2 in wide: 8 x 12 - 7 x 2 1/2.
    run = Run("run", "plum", F(5, 2), F(157, 2), F(5, 2), F(12))
    task = task_for(LayProblem((PLUM,), (Piece("panel", "plum", F(30), F(20)),), (run,)))
    verdict = within(task, int(20 / task.tick), PATIENT, never)
    assert verdict.laid is not None
    assert len(verdict.laid) == 9


def test_with_a_run_nothing_is_called_impossible_but_too_small_an_area() -> None:
    panel = Piece("panel", "plum", F(30), F(20))
    task = task_for(LayProblem((PLUM,), (panel,), (BINDING,)))
    assert within(task, int(20 / task.tick), PATIENT, never).impossible
    assert not within(task, int(34 / task.tick), 20_000, never).impossible


def test_pieces_as_wide_as_the_cloth_lie_in_rows_of_their_own() -> None:
    pieces = (Piece("row", "plum", F(42), F(9), 2), Piece("half", "plum", F(21), F(10), 2))
    task = task_for(LayProblem((PLUM,), pieces))
    assert area_laid(task, int(28 / task.tick)) == 42 * 28 / task.tick**2


def test_no_effort_gives_no_verdict() -> None:
    pieces = (Piece("a", "plum", F(20), F(9), 7), Piece("b", "plum", F(13), F(8), 7))
    task = task_for(LayProblem((PLUM,), pieces))
    assert within(task, int(60 / task.tick), 0, never) == (None, False)
    assert within(task, int(60 / task.tick), PATIENT, lambda: True) == (None, False)


def test_cloth_on_hand_is_left_to_the_other_search() -> None:
    piece = Piece("a", "dots", F(20), F(9), 7)
    assert not can_build(task_for(LayProblem((DOTS,), (piece,))))
