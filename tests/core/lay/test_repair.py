"""A lay after a change: what can stay stays, and nothing is paid for it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core.lay.check import check
from core.lay.lay import ClothLay, Lay, Placement, Rect
from core.lay.problem import Flaw, LayProblem, Motif, Piece, Pin, Run
from core.lay.repair import repair
from core.lay.solve import Stop, solve
from tests.core.lay.problems import BINDING, PLUM, lay_problems

F = Fraction
PIECES = (
    Piece("panel", "plum", F(20), F(30), 2),
    Piece("side", "plum", F(9), F(40), 3),
    Piece("patch", "plum", F(6), F(6), 5, may_turn=True),
)
PROBLEM = LayProblem((PLUM,), PIECES, (BINDING,))
LAY = solve(PROBLEM)


def at(lay: Lay) -> dict[tuple[str, int], Placement]:
    return {(p.name, p.copy): p for cloth in lay.cloths for p in cloth.placements}


def stayed(one: Lay, other: Lay) -> int:
    there = at(other)
    return sum(there.get(key) == placed for key, placed in at(one).items())


def joins(cloth: ClothLay) -> int:
    runs = [(p.name, p.run_copy) for p in cloth.placements if p.run_copy]
    return len(runs) - len(set(runs))


def repaired(problem: LayProblem, before: Lay = LAY) -> Lay:
    fresh = solve(problem)
    lay = repair(problem, fresh, before)
    assert check(problem, lay) == ()
    assert lay == repair(problem, fresh, before)
    for new, one in zip(lay.cloths, fresh.cloths, strict=True):
        assert new.bought_along <= one.bought_along
        assert joins(new) <= joins(one) or new.bought_along < one.bought_along
    return lay


def with_piece(name: str, **changes: object) -> LayProblem:
    return replace(
        PROBLEM,
        pieces=tuple(
            replace(piece, **changes) if piece.name == name else piece  # type: ignore[arg-type]
            for piece in PIECES
        ),
    )


def test_nothing_changed_leaves_everything_where_it_was() -> None:
    assert repaired(PROBLEM) == LAY


def test_a_mirrored_lay_stays_mirrored() -> None:
    """What lies otherwise than the solver would lay it is kept as well."""
    pins = tuple(
        Pin(p.name, F(42) - p.rect.right, p.rect.y, copy=p.copy)
        for p in LAY.cloths[0].placements
        if p.run_copy is None
    )
    mirrored = solve(replace(PROBLEM, pins=pins))
    assert stayed(mirrored, LAY) < len(pins)
    assert repaired(PROBLEM, mirrored).cloths[0].placements == mirrored.cloths[0].placements


@pytest.mark.parametrize(
    "change",
    [
        lambda: with_piece("patch", count=4),
        lambda: with_piece("patch", across=F(25, 4)),
        lambda: with_piece("side", along=F(41)),
        lambda: replace(PROBLEM, runs=(replace(BINDING, needs=F(270)),)),
        lambda: replace(PROBLEM, runs=(replace(BINDING, needs=F(300)),)),
        lambda: replace(PROBLEM, cloths=(replace(PLUM, usable_width=F(83, 2)),)),
        lambda: replace(PROBLEM, flaws=(Flaw("plum", Rect(F(2), F(3), F(1), F(1))),)),
        lambda: replace(PROBLEM, pins=(Pin("patch", F(36), F(0), copy=3),)),
        lambda: replace(PROBLEM, motifs=(Motif("panel", Rect(F(4), F(3), F(1), F(1))),)),
    ],
)
def test_a_change_is_paid_by_nothing_that_a_fresh_lay_does_not_pay(
    change: Callable[[], LayProblem],
) -> None:
    repaired(change())


def test_a_patch_less_moves_nothing_else() -> None:
    before = solve(replace(PROBLEM, runs=()))
    lay = repaired(replace(with_piece("patch", count=4), runs=()), before)
    assert stayed(lay, before) == len(at(lay)) == 9


def test_a_flaw_moves_little() -> None:
    last = max(LAY.cloths[0].placements, key=lambda p: (p.rect.end, p.rect.right))
    flaw = Flaw("plum", Rect(last.rect.x, last.rect.y, F(1), F(1)))
    lay = repaired(replace(PROBLEM, flaws=(flaw,)))
    assert stayed(LAY, lay) >= len(at(LAY)) // 2


def test_copies_keep_their_numbers_where_they_lie() -> None:
    [cloth] = LAY.cloths
    swapped = {("side", 1): 2, ("side", 2): 1}
    other = replace(
        cloth,
        placements=tuple(
            replace(p, copy=swapped.get((p.name, p.copy), p.copy)) for p in cloth.placements
        ),
    )
    lay = repaired(replace(PROBLEM, pieces=PIECES[:2]), Lay((other,)))
    sides = {p.copy: p.rect for p in lay.cloths[0].placements if p.name == "side"}
    assert sides == {p.copy: p.rect for p in other.placements if p.name == "side"}


def test_a_lay_of_other_cloths_is_of_no_use_and_does_no_harm() -> None:
    problem = LayProblem((replace(PLUM, name="tide"),), (Piece("a", "tide", F(3), F(3)),))
    fresh = solve(problem)
    assert repair(problem, fresh, LAY) == fresh


def test_a_run_on_several_cloths_is_left_as_it_is_laid() -> None:
    cloths = (PLUM, replace(PLUM, name="tide"))
    run = Run("r", "plum", F(2), F(90), F(2), F(12), cloths=("tide",))
    problem = LayProblem(cloths, runs=(run,))
    fresh = solve(problem)
    assert repair(problem, fresh, LAY) == fresh


@settings(deadline=None, max_examples=40, suppress_health_check=[HealthCheck.too_slow])
@given(lay_problems(), lay_problems(), st.booleans())
def test_whatever_was_before_the_lay_is_right_and_costs_no_more(
    one: LayProblem, other: LayProblem, alike: bool
) -> None:
    if alike:
        other = replace(one, pieces=one.pieces[:-1], runs=one.runs[:-1])
    quick = Stop(8)
    fresh = solve(one, stop=quick)
    lay = repair(one, fresh, solve(other, stop=quick), stop=quick)
    assert check(one, lay) == ()
    assert lay.cloths[0].bought_along <= fresh.cloths[0].bought_along
    assert lay.unplaced == fresh.unplaced
