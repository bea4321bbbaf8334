"""The best prices reach the linear bound of cutting stock, and never pass the optimum."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings

from core.lay.bound import least_along, raised
from core.lay.dual import best_prices
from core.lay.needs import across_view
from core.lay.prices import least_at, least_by_prices
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.simplex import Column, Simplex
from core.lay.solve import Stop, solve
from core.lay.ticks import task_of
from tests.core.lay.problems import lay_problems

F = Fraction


@pytest.mark.parametrize(
    ("width", "sizes", "rolls"),
    [
        # R. Fourer, D. Gay, B. Kernighan, AMPL, 2nd ed. (2003), ch. 15, cut.dat: LP 46.25.
        (110, [(20, 48), (45, 35), (50, 24), (55, 10), (75, 8)], F(185, 4)),
        # V. Chvátal, Linear Programming (1983), ch. 13: LP 452.25.
        (100, [(45, 97), (36, 610), (31, 395), (14, 211)], F(1809, 4)),
    ],
)
def test_textbook_cutting_stock_has_its_linear_bound(
    width: int, sizes: list[tuple[int, int]], rolls: Fraction
) -> None:
    pieces = tuple(Piece(str(w), "paper", F(w), F(1), n) for w, n in sizes)
    task = task_of(Cloth("paper", F(width), F(1)), pieces, ())
    needs = across_view(task, 2000)
    least = least_at(needs, best_prices(needs, task.width, 2000, 100), task.width, 2000)
    assert rolls - F(1, 1000) <= least <= rolls


def test_things_that_lie_two_ways_are_priced_by_the_cheaper() -> None:
    # Two to a row across, or one: 5 turning panels 30 x 21 in on 42 in take 30 + 30 + 21 in or so.
    task = task_of(Cloth("c", F(42), F(1)), (Piece("p", "c", F(30), F(21), 5, True),), ())
    needs = across_view(task, 200)
    least = least_at(needs, best_prices(needs, task.width, 200, 100), task.width, 200) * task.tick
    assert F(149, 2) <= least <= 75


def test_segments_that_cannot_share_a_row_are_seen() -> None:
    # Each border takes a whole row and a segment of 18 in; of those, two fit a row of 43 in.
    run = Run("border", "plum", F(4), F(55), F(1, 2), F(18), count=4)
    task = task_of(Cloth("plum", F(43), F(1)), (), (run,))
    needs = across_view(task, 1000)
    assert least_by_prices(needs, task.width, 1000) * task.tick == 6 * 4


@settings(deadline=None, max_examples=40, suppress_health_check=[HealthCheck.too_slow])
@given(lay_problems())
def test_no_lay_is_shorter_than_the_raised_bound(problem: LayProblem) -> None:
    lay = solve(problem, stop=Stop(30))
    [cloth] = problem.cloths
    task = task_of(cloth, problem.pieces, problem.runs)
    used = int(lay.cloths[0].used_along / task.tick)
    if used and not lay.unplaced:
        known = used + used // 4
        bound = least_along(task, known)
        assert bound <= raised(task, bound, known) <= used


def test_a_programme_of_two_rows_is_solved() -> None:
    # Cover (3, 2) by columns (1, 0), (0, 1), (1, 1) that cost 2, 2 and 3: 2 x 3 + 1 x 2 = 8.
    simplex = Simplex({("a", 0): 3.0, ("b", 0): 2.0}, {("a", 0): 2.0, ("b", 0): 2.0})
    assert simplex.enter(Column(3.0, {("a", 0): 1.0, ("b", 0): 1.0}))
    duals = simplex.duals()
    assert 3 * duals["a", 0] + 2 * duals["b", 0] == pytest.approx(8)
    assert not simplex.enter(Column(0.0, {}))
