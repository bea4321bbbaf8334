"""Runs that may draw on several cloths."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.fabric import OnHand
from core.lay.check import FaultKind, check
from core.lay.lay import Lay
from core.lay.lay_file import problem_from_text
from core.lay.problem import Cloth, LayProblem, Piece, Pin, Run
from core.lay.refuse import require_layable
from core.lay.solve import Stop, solve
from core.refusal import Refusal

F = Fraction
SHELF = Cloth("shelf", F(42), F(9, 2), on_hand=(OnHand(F(42), F(5)),), buy_more=False)
CHEAP = Cloth("cheap", F(40), F(9, 2), price=F(8))
DEAR = Cloth("dear", F(42), F(9, 2), price=F(12))
RUN = Run("binding", "shelf", F(5, 2), F(280), F(5, 2), F(12), cloths=("cheap", "dear"))
PROBLEM = LayProblem((SHELF, CHEAP, DEAR), runs=(RUN,))


def laid(problem: LayProblem, stop: Stop | None = None) -> Lay:
    require_layable(problem)
    lay = solve(problem, stop=stop)
    assert check(problem, lay) == ()
    return lay


def test_what_is_on_hand_comes_first_then_the_cheapest() -> None:
    # 277 1/2 in are to be gained: 2 × 39 1/2 on hand, then 6 strips of the cheap, 37 1/2 each.
    shelf, cheap, dear = laid(PROBLEM).cloths
    assert sum(p.rect.across for p in shelf.placements) == 84
    assert cheap.used_along == 15
    assert cheap.bought_along == 18
    assert dear.bought_along == 0
    assert shelf.proved_least
    assert dear.proved_least


def test_segments_are_numbered_over_all_the_cloths() -> None:
    lay = laid(PROBLEM)
    copies = [p.copy for cloth in lay.cloths for p in cloth.placements]
    assert sorted(copies) == list(range(1, len(copies) + 1))
    assert {p.run_copy for cloth in lay.cloths for p in cloth.placements} == {1}


def test_the_rest_of_a_bolt_that_is_bought_anyway_costs_nothing() -> None:
    panel = Piece("panel", "dear", F(20), F(38))
    problem = replace(PROBLEM, cloths=(SHELF, CHEAP, DEAR), pieces=(panel,))
    _, cheap, dear = laid(problem).cloths
    assert dear.bought_along == F(81, 2)
    assert cheap.bought_along == 0
    assert len(dear.placements) > 1


def test_cloth_on_hand_is_left_alone_where_it_saves_nothing() -> None:
    # One strip of 42 in at no cost is no use: it saves no sale unit, and costs a join.
    short = replace(RUN, needs=F(42), cloths=("dear",))
    problem = LayProblem((replace(SHELF, on_hand=(OnHand(F(13), F(5)),)), DEAR), runs=(short,))
    shelf, dear = laid(problem).cloths
    assert shelf.placements == ()
    assert len(dear.placements) == 1


def test_a_bolt_is_proved_least_where_the_shelf_gives_all_it_can() -> None:
    problem = LayProblem((SHELF, CHEAP), runs=(replace(RUN, cloths=("cheap",)),))
    _, cheap = laid(problem).cloths
    assert cheap.proved_least
    assert cheap.bound_along > F(27, 2)


def test_what_all_the_shelves_do_not_give_is_unplaced() -> None:
    other = replace(SHELF, name="other")
    problem = LayProblem((SHELF, other), runs=(replace(RUN, cloths=("other",)),))
    lay = laid(problem)
    assert [(gone.name, gone.count) for gone in lay.unplaced] == [("binding", 1)]
    assert all(cloth.placements == () for cloth in lay.cloths)


def test_shelves_that_are_enough_together_are_enough() -> None:
    other = replace(SHELF, name="other")
    run = replace(RUN, needs=F(158), cloths=("other",))
    lay = laid(LayProblem((SHELF, other), runs=(run,)))
    assert lay.unplaced == ()
    assert [len(cloth.placements) for cloth in lay.cloths] == [2, 2]


def test_a_segment_may_be_pinned_on_any_of_the_cloths() -> None:
    pin = Pin("binding", F(0), F(3), length=F(40), cloth="cheap")
    problem = replace(PROBLEM, pins=(pin,))
    lay = laid(problem)
    assert FaultKind.PIN in {fault.kind for fault in check(problem, laid(PROBLEM))}
    assert lay.cloths[1].placements


def test_a_pin_far_along_bounds_a_cloth_that_a_run_draws_on() -> None:
    pin = Pin("panel", F(0), F(30))
    panel = Piece("panel", "cheap", F(20), F(38))
    _, cheap, _ = laid(replace(PROBLEM, pieces=(panel,), pins=(pin,))).cloths
    assert cheap.bound_along == cheap.used_along == 68
    assert cheap.proved_least


def test_a_run_on_a_cloth_that_it_may_not_draw_on_is_a_fault() -> None:
    problem = replace(PROBLEM, runs=(replace(RUN, cloths=("dear",)),))
    assert FaultKind.WRONG_CLOTH in {fault.kind for fault in check(problem, laid(PROBLEM))}


def test_no_time_at_all_still_gives_a_legal_lay() -> None:
    assert laid(PROBLEM, Stop.after(0)).unplaced == ()


def test_better_lays_that_are_reported_are_legal() -> None:
    seen: list[Lay] = []
    last = solve(PROBLEM, on_better=seen.append)
    assert seen[-1] == last
    assert all(check(PROBLEM, lay) == () for lay in seen)


@pytest.mark.parametrize(
    ("run", "path"),
    [
        (replace(RUN, cloths=("cheap", "velvet")), "runs[0].cloths[1]"),
        (replace(RUN, cloth="velvet"), "runs[0].cloth"),
    ],
)
def test_an_unknown_cloth_is_refused(run: Run, path: str) -> None:
    with pytest.raises(Refusal, match='no cloth "velvet"') as refused:
        require_layable(replace(PROBLEM, runs=(run,)))
    assert refused.value.path == path


def test_a_pin_on_another_cloth_is_refused() -> None:
    pin = Pin("binding", F(0), F(0), length=F(40), cloth="dear")
    problem = replace(PROBLEM, runs=(replace(RUN, cloths=("cheap",)),), pins=(pin,))
    with pytest.raises(Refusal, match="write one of its cloths"):
        require_layable(problem)


def test_the_file_names_the_cloths_and_their_prices() -> None:
    text = """{"format": "crossgrain-lay", "version": 1, "cloths": [
        {"name": "a", "usable_width": "42", "sale_unit": "9", "price_per_yard": "12.50"},
        {"name": "b", "usable_width": "42", "sale_unit": "9"}],
        "runs": [{"name": "r", "cloths": ["a", "b"], "strip": "2", "needs": "50",
                  "join_loss": "2", "shortest": "10"}]}"""
    problem = problem_from_text(text)
    assert problem.runs[0].sources == ("a", "b")
    assert [cloth.price for cloth in problem.cloths] == [F(25, 2), None]
    with pytest.raises(Refusal, match="price_per_yard"):
        problem_from_text(text.replace('"12.50"', '"dear"'))
    with pytest.raises(Refusal, match=r"runs\[0\]\.cloths\[0\]"):
        problem_from_text(text.replace('["a", "b"]', "[1]"))
