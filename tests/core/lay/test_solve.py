"""What the solver makes: always legal, never above what is known, the same every time."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core.fabric import Grain
from core.lay.check import check
from core.lay.lay import BOLT, ClothLay, Lay
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.solve import Stop, solve
from tests.core.lay.exhaustive import least_along
from tests.core.lay.problems import BINDING, DOTS, PLUM, lay_problems

F = Fraction
QUICK = Stop(30)


def one_cloth(problem: LayProblem, stop: Stop | None = None) -> ClothLay:
    lay = solve(problem, stop=stop)
    assert check(problem, lay) == ()
    assert lay.unplaced == ()
    [cloth] = lay.cloths
    return cloth


def test_a_binding_is_cut_in_full_width_strips_and_proved_least() -> None:
    # Each strip after the first adds 39 1/2 in; 280 in take 8 strips of 2 1/2 in: 20 in of cloth.
    cloth = one_cloth(LayProblem((PLUM,), runs=(BINDING,)))
    assert cloth.used_along == 20
    assert cloth.bought_along == F(45, 2)
    assert cloth.proved_least
    assert {placed.rect.across for placed in cloth.placements} == {F(42)}


def test_the_last_strip_is_shared_where_that_saves_cloth() -> None:
    # 42 + 17 - 2 = 57: beside the second strip lies a patch that would need a row of its own.
    run = Run("strip", "plum", F(2), F(57), F(2), F(12))
    cloth = one_cloth(LayProblem((PLUM,), (Piece("patch", "plum", F(25), F(2)),), (run,)))
    assert cloth.used_along == 4
    assert sorted(p.rect.across for p in cloth.placements if p.name == "strip") == [17, 42]


def test_two_panels_side_by_side_need_one_length() -> None:
    cloth = one_cloth(LayProblem((PLUM,), (Piece("panel", "plum", F(21), F(76), 2),)))
    assert cloth.used_along == 76
    assert cloth.proved_least


def test_segments_fill_what_lies_beside_the_borders() -> None:
    # Four strips of 5 in leave 22 in of the width over 80 in: room for the whole binding.
    pieces = (Piece("side", "plum", F(5), F(80), 4),)
    cloth = one_cloth(LayProblem((PLUM,), pieces, (BINDING,)))
    assert cloth.used_along == 80
    assert cloth.proved_least


def test_cloth_on_hand_is_used_before_the_bolt() -> None:
    problem = LayProblem((DOTS,), (Piece("square", "dots", F(10), F(10), 12),))
    cloth = one_cloth(problem)
    assert cloth.bought_along == 0
    assert cloth.proved_least
    assert {placed.sheet.on for placed in cloth.placements} == {"on_hand[0]"}
    assert {placed.sheet.copy for placed in cloth.placements} == {1, 2}


def test_what_is_too_much_for_the_cloth_on_hand_is_unplaced() -> None:
    cloth = replace(DOTS, buy_more=False)
    problem = LayProblem((cloth,), (Piece("square", "dots", F(10), F(10), 15),))
    lay = solve(problem)
    assert check(problem, lay) == ()
    assert [(gone.name, gone.count) for gone in lay.unplaced] == [("square", 3)]
    assert lay.cloths[0].bought_along == 0


def test_a_run_that_cannot_be_finished_is_not_begun() -> None:
    cloth = replace(DOTS, buy_more=False)
    run = Run("strip", "dots", F(8), F(100), F(2), F(12), count=2)
    problem = LayProblem((cloth,), runs=(run,))
    lay = solve(problem)
    assert check(problem, lay) == ()
    assert [(gone.name, gone.count) for gone in lay.unplaced] == [("strip", 1)]


def test_a_lengthwise_run_is_joined_where_that_saves_cloth() -> None:
    # 8 strips lie side by side; joined in two they need 42 1/2 in of length instead of 80.
    run = Run("side", "plum", F(5), F(80), F(5), F(12), Grain.LENGTHWISE, 4)
    cloth = one_cloth(LayProblem((PLUM,), runs=(run,)))
    assert cloth.bought_along <= 45


def test_a_lengthwise_run_that_may_not_be_joined_stays_whole() -> None:
    run = Run("side", "plum", F(5), F(80), F(5), F(80), Grain.LENGTHWISE, 4)
    cloth = one_cloth(LayProblem((PLUM,), runs=(run,)))
    assert cloth.used_along == 80
    assert cloth.proved_least


def test_fewer_joins_win_among_lays_that_use_the_same() -> None:
    # The leftover beside the panel could give segments, but rows of the bolt are needed anyway.
    panel = Piece("panel", "plum", F(20), F(20))
    run = Run("strip", "plum", F(20), F(42), F(2), F(8))
    cloth = one_cloth(LayProblem((PLUM,), (panel,), (run,)))
    assert cloth.used_along == 40
    assert len([p for p in cloth.placements if p.name == "strip"]) == 1


def test_every_cloth_gets_its_own_lay_in_the_order_of_the_problem() -> None:
    pieces = (Piece("a", "dots", F(10), F(10)), Piece("b", "plum", F(10), F(10)))
    lay = solve(LayProblem((PLUM, DOTS), pieces))
    assert [cloth.name for cloth in lay.cloths] == ["plum", "dots"]
    assert [[p.name for p in cloth.placements] for cloth in lay.cloths] == [["b"], ["a"]]


def test_nothing_to_cut_buys_nothing() -> None:
    cloth = one_cloth(LayProblem((PLUM,)))
    assert cloth.bought_along == cloth.used_along == 0
    assert cloth.placements == ()
    assert cloth.proved_least


def test_no_time_at_all_still_gives_a_legal_lay() -> None:
    problem = LayProblem((PLUM, DOTS), (Piece("a", "dots", F(10), F(10)),), (BINDING,))
    lay = solve(problem, stop=Stop.after(0))
    assert check(problem, lay) == ()
    assert lay.unplaced == ()


def test_a_short_rest_of_one_run_makes_room_for_another() -> None:
    # The border's third strip leaves 14 in: as a segment of the binding that saves its 8th strip.
    border = Run("border", "plum", F(4), F(100), F(4), F(12))
    assert one_cloth(LayProblem((PLUM,), runs=(BINDING, border))).used_along == 3 * 4 + 7 * F(5, 2)


def test_better_lays_are_reported_as_they_are_found_and_are_legal() -> None:
    problem = LayProblem((PLUM,), (Piece("a", "plum", F(11), F(9), 7, True),), (BINDING,))
    seen: list[Lay] = []
    last = solve(problem, on_better=seen.append)
    assert seen[-1] == last
    assert all(check(problem, lay) == () for lay in seen)
    lengths = [lay.cloths[0].bought_along for lay in seen]
    assert lengths == sorted(lengths, reverse=True)


def test_a_binding_takes_whole_strips_where_the_cloth_that_is_bought_has_room() -> None:
    # Beside the sides three segments of 31 in would do; but 36 in must be bought all the same.
    pieces = (Piece("side", "plum", F(31, 4), F(31), 4),)
    run = replace(BINDING, needs=F(81))
    cloth = one_cloth(LayProblem((PLUM,), pieces, (run,)))
    assert cloth.bought_along == 36
    assert len([p for p in cloth.placements if p.name == "binding"]) == 2


def test_equal_sections_come_together_and_the_longest_first() -> None:
    runs = (BINDING, Run("border", "plum", F(4), F(100), F(4), F(12)))
    cloth = one_cloth(LayProblem((PLUM,), runs=runs))
    heights = [placed.rect.along for placed in cloth.placements if placed.rect.x == 0]
    assert heights == sorted(heights, reverse=True)


SLOW = settings(deadline=None, max_examples=120, suppress_health_check=[HealthCheck.too_slow])


@SLOW
@given(lay_problems())
def test_every_lay_is_legal(problem: LayProblem) -> None:
    lay = solve(problem, stop=QUICK)
    assert check(problem, lay) == ()
    if problem.cloths[0].buy_more:
        assert lay.unplaced == ()


@settings(SLOW, max_examples=40)
@given(lay_problems())
def test_the_same_problem_and_seed_give_the_same_lay(problem: LayProblem) -> None:
    assert solve(problem, stop=QUICK, seed=7) == solve(problem, stop=QUICK, seed=7)


TINY_PIECES = st.lists(
    st.builds(
        Piece,
        st.uuids().map(str),
        st.just("plum"),
        st.integers(1, 8).map(F),
        st.integers(1, 8).map(F),
        st.just(1),
        st.booleans(),
    ),
    min_size=1,
    max_size=4,
)
TINY_RUNS = st.lists(
    st.builds(
        Run,
        st.uuids().map(str),
        st.just("plum"),
        st.integers(1, 3).map(F),
        st.integers(3, 14).map(F),
        st.integers(0, 2).map(F),
        st.integers(0, 4).map(F),
        st.sampled_from([Grain.CROSSWISE, Grain.LENGTHWISE, Grain.EITHER]),
    ),
    max_size=1,
)


@settings(deadline=None, max_examples=75, suppress_health_check=[HealthCheck.too_slow])
@given(TINY_PIECES, TINY_RUNS)
def test_the_bound_is_never_above_the_least(pieces: list[Piece], runs: list[Run]) -> None:
    cloth = Cloth("plum", F(8), F(1))
    problem = LayProblem((cloth,), tuple(pieces), tuple(runs))
    laid = one_cloth(problem, Stop(60))
    least = least_along(problem)
    assert laid.bound_along <= least
    if laid.proved_least:
        assert laid.bought_along <= cloth.bought(least)


@pytest.mark.parametrize("grain", [Grain.CROSSWISE, Grain.LENGTHWISE, Grain.EITHER])
@pytest.mark.parametrize("count", [1, 2, 5])
def test_equal_runs_are_told_apart(grain: Grain, count: int) -> None:
    run = replace(BINDING, needs=F(100), grain=grain, count=count)
    cloth = one_cloth(LayProblem((PLUM,), runs=(run,)))
    assert {placed.run_copy for placed in cloth.placements} == set(range(1, count + 1))


def test_the_bolt_comes_after_the_cloth_on_hand_in_the_list_of_sheets() -> None:
    problem = LayProblem((DOTS,), (Piece("square", "dots", F(10), F(10), 15),))
    assert [sheet.on for sheet, _ in one_cloth(problem).sheets] == ["on_hand[0]"] * 2 + [BOLT]
