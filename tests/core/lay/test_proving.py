"""Proofs by prices for whole sections."""

from __future__ import annotations

from fractions import Fraction
from random import Random

from core.fabric import Grain, OnHand
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.proving import too_small
from core.lay.solve import solve
from core.lay.ticks import Task, task_of
from tests.core.lay.exhaustive import least_along

F = Fraction
GRAINS = (Grain.CROSSWISE, Grain.CROSSWISE, Grain.EITHER, Grain.LENGTHWISE)


def task(problem: LayProblem) -> Task:
    return task_of(problem.cloths[0], problem.pieces, problem.runs)


def asked(problem: LayProblem, inches: F) -> bool:
    one = task(problem)
    return too_small(one, int(inches / one.tick), lambda: False)


def tiny(rng: Random) -> LayProblem:
    """One or two pieces and a run or two on a cloth of a few inches."""
    cloth = Cloth("c", F(rng.randint(4, 8)), F(1))
    pieces = tuple(
        Piece(f"p{i}", "c", F(rng.randint(1, 4)), F(rng.randint(1, 5)), 1, rng.random() < 0.5)
        for i in range(rng.randint(0, 3))
    )
    runs = tuple(
        Run(
            f"r{i}", "c", F(1), F(rng.randint(2, 9)), F(1), F(rng.randint(2, 3)), rng.choice(GRAINS)
        )
        for i in range(rng.randint(0 if pieces else 1, 1))
    )
    return LayProblem((cloth,), pieces, runs)


def test_no_room_in_which_a_lay_exists_is_called_too_small() -> None:
    rng = Random(3)
    shown = 0
    for _ in range(30):
        problem = tiny(rng)
        least = least_along(problem)
        assert not asked(problem, least), problem
        shown += least >= 1 and asked(problem, least - 1)
    assert shown > 15


def test_a_bound_by_sections_is_not_above_a_lay_with_segments_of_any_length() -> None:
    """The piece and the run fill 5 × 5 without waste."""
    cloth = Cloth("c", F(5), F(1))
    run = Run("r", "c", F(1), F(9), F(0), F(1), Grain.EITHER, 1)
    problem = LayProblem((cloth,), (Piece("p", "c", F(4), F(4)),), (run,))
    assert not asked(problem, F(5))
    assert asked(problem, F(4))


def test_it_sees_that_rows_do_not_fit_a_piece_on_hand() -> None:
    """On 41 × 12 there is one row of 8½, on 18 × 21 two: 41 + 18 + 18 are not 91."""
    hands = (OnHand(F(18), F(21)), OnHand(F(41), F(12)))
    cloth = Cloth("c", F(58), F(18), F(3, 2), on_hand=hands)
    problem = LayProblem((cloth,), runs=(Run("r", "c", F(17, 2), F(91), F(1, 2), F(18)),))
    assert asked(problem, F(0))
    [lay] = solve(problem).cloths
    assert lay.proved_least
    assert lay.bought_along == 18


def test_it_sees_that_the_room_left_by_panels_takes_one_row_only() -> None:
    cloth = Cloth("c", F(41), F(4))
    panels = (Piece("p", "c", F(41), F(105)), Piece("l", "c", F(25), F(105)))
    run = Run("r", "c", F(17, 2), F(55), F(1, 2), F(18))
    assert asked(LayProblem((cloth,), panels, (run,)), F(453, 2))
    assert not asked(LayProblem((cloth,), panels, (run,)), F(227))
