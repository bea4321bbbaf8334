"""What must hold between the lays of problems that differ a little."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from random import Random
from typing import TypeVar

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from core.fabric import OnHand
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.solve import Stop, solve
from tests.core.lay.at_random import problem_at
from tests.core.lay.problems import lay_problems

F = Fraction
Thing = TypeVar("Thing")
QUICK = Stop(12)
SLOW = settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])


def scaled(problem: LayProblem, by: Fraction) -> LayProblem:
    """Every length of a problem with one cloth, times `by`."""
    [cloth] = problem.cloths
    return LayProblem(
        (_cloth(cloth, by),),
        tuple(_piece(piece, by) for piece in problem.pieces),
        tuple(_run(run, by) for run in problem.runs),
    )


def _cloth(cloth: Cloth, by: Fraction) -> Cloth:
    return replace(
        cloth,
        usable_width=cloth.usable_width * by,
        sale_unit=cloth.sale_unit * by,
        straightening=cloth.straightening * by,
        on_hand=tuple(OnHand(h.across * by, h.along * by, h.count) for h in cloth.on_hand),
    )


def _piece(piece: Piece, by: Fraction) -> Piece:
    return replace(piece, across=piece.across * by, along=piece.along * by)


def _run(run: Run, by: Fraction) -> Run:
    return replace(
        run,
        strip=run.strip * by,
        needs=run.needs * by,
        join_loss=run.join_loss * by,
        shortest=run.shortest * by,
    )


@SLOW
@given(lay_problems(), st.sampled_from((F(2), F(1, 3), F(254, 100))))
def test_scaling_all_sizes_scales_the_lay(problem: LayProblem, by: Fraction) -> None:
    [one], [other] = (
        solve(asked, stop=Stop(30)).cloths for asked in (problem, scaled(problem, by))
    )
    assert other.bought_along == one.bought_along * by
    assert other.used_along == one.used_along * by
    assert other.bound_along == one.bound_along * by
    assert len(other.placements) == len(one.placements)


@SLOW
@given(lay_problems(), st.integers(1, 20), st.integers(1, 30))
def test_another_piece_never_makes_the_least_less(
    problem: LayProblem, across: int, along: int
) -> None:
    assume(problem.cloths[0].buy_more)
    more = replace(problem, pieces=(*problem.pieces, Piece("more", "plum", F(across), F(along))))
    [less], [grown] = (solve(asked, stop=QUICK).cloths for asked in (problem, more))
    assert less.bound_along <= grown.used_along
    if less.proved_least:
        assert less.bought_along <= grown.bought_along


@SLOW
@given(lay_problems(), st.integers(1, 12))
def test_wider_cloth_never_makes_the_least_more(problem: LayProblem, wider: int) -> None:
    [cloth] = problem.cloths
    assume(cloth.buy_more)
    wide = replace(cloth, usable_width=cloth.usable_width + wider)
    [narrow], [broad] = (
        solve(asked, stop=QUICK).cloths for asked in (problem, replace(problem, cloths=(wide,)))
    )
    assert broad.bound_along <= narrow.used_along
    if broad.proved_least:
        assert broad.bought_along <= narrow.bought_along


def mix(rng: Random, things: tuple[Thing, ...]) -> tuple[Thing, ...]:
    return tuple(rng.sample(things, len(things)))


@pytest.mark.parametrize("part", range(4))
def test_the_order_in_the_file_does_not_matter(part: int) -> None:
    for number in range(part * 30, (part + 1) * 30):
        problem, rng = problem_at(number), Random(number)
        mixed = replace(
            problem,
            pieces=mix(rng, problem.pieces),
            runs=mix(rng, problem.runs),
            pins=mix(rng, problem.pins),
            flaws=mix(rng, problem.flaws),
            motifs=mix(rng, problem.motifs),
        )
        assert solve(problem, stop=Stop(3)) == solve(mixed, stop=Stop(3)), number


@pytest.mark.parametrize("number", range(0, 200, 7))
def test_what_has_its_place_never_makes_the_least_less(number: int) -> None:
    problem = problem_at(number)
    free = replace(problem, pins=(), flaws=(), motifs=(), stages=None)
    for one, other in zip(
        solve(free, stop=QUICK).cloths, solve(problem, stop=QUICK).cloths, strict=True
    ):
        if all(cloth.buy_more for cloth in problem.cloths) and not problem.runs:
            assert one.bound_along <= other.used_along
