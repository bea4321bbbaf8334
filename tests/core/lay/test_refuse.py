"""Lay problems that cannot be laid: one sentence about one field."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.fabric import Grain, OnHand
from core.lay.problem import LayProblem, Piece
from core.lay.refuse import require_layable
from core.refusal import Refusal
from tests.core.lay.problems import BINDING, DOTS, PLUM

F = Fraction
PIECE = Piece("panel", "plum", F(20), F(30), 2)
GOOD = LayProblem((PLUM, DOTS), (PIECE, replace(PIECE, name="other")), (BINDING,))


def with_cloth(**changes: object) -> LayProblem:
    return replace(GOOD, cloths=(replace(PLUM, **changes), DOTS))  # type: ignore[arg-type]


def with_piece(**changes: object) -> LayProblem:
    changed = replace(PIECE, name="other", **changes)  # type: ignore[arg-type]
    return replace(GOOD, pieces=(PIECE, changed))


def with_run(**changes: object) -> LayProblem:
    return replace(GOOD, runs=(replace(BINDING, **changes),))  # type: ignore[arg-type]


def test_a_good_problem_is_let_pass() -> None:
    require_layable(GOOD)


@pytest.mark.parametrize(
    ("problem", "path"),
    [
        (replace(GOOD, cloths=()), "cloths"),
        (replace(GOOD, cloths=(PLUM, DOTS, PLUM)), "cloths[2].name"),
        (replace(GOOD, pieces=(PIECE, PIECE)), "pieces[1].name"),
        (replace(GOOD, runs=(BINDING, BINDING)), "runs[1].name"),
        (with_run(name="panel"), "runs[0].name"),
        (with_cloth(usable_width=F(0)), "cloths[0].usable_width"),
        (with_cloth(sale_unit=F(0)), "cloths[0].sale_unit"),
        (with_cloth(straightening=F(-1)), "cloths[0].straightening"),
        (with_cloth(shrinkage_along=F(1)), "cloths[0].shrinkage_along"),
        (with_cloth(on_hand=(OnHand(F(0), F(4)),)), "cloths[0].on_hand[0].across"),
        (with_cloth(on_hand=(OnHand(F(4), F(0)),)), "cloths[0].on_hand[0].along"),
        (with_cloth(on_hand=(OnHand(F(4), F(4), 0),)), "cloths[0].on_hand[0].count"),
        (with_piece(cloth="velvet"), "pieces[1].cloth"),
        (with_piece(across=F(0)), "pieces[1].across"),
        (with_piece(along=F(-2)), "pieces[1].along"),
        (with_piece(count=0), "pieces[1].count"),
        (with_piece(count=100_000), "pieces[1].count"),
        (with_piece(count=1999), "pieces"),
        (with_piece(across=F(43), along=F(50)), "pieces[1].across"),
        (with_piece(across=F(43), along=F(50), may_turn=True), "pieces[1].across"),
        (with_piece(across=F(50), along=F(40)), "pieces[1].across"),
        (with_run(cloth="velvet"), "runs[0].cloth"),
        (with_run(strip=F(0)), "runs[0].strip"),
        (with_run(needs=F(0)), "runs[0].needs"),
        (with_run(join_loss=F(-1)), "runs[0].join_loss"),
        (with_run(shortest=F(-1)), "runs[0].shortest"),
        (with_run(count=0), "runs[0].count"),
        (with_run(grain=Grain.BIAS), "runs[0].grain"),
        (with_run(strip=F(43)), "runs[0].strip"),
        (with_run(shortest=F(43)), "runs[0].shortest"),
        (with_run(join_loss=F(42)), "runs[0].join_loss"),
        (with_run(needs=F(90_000)), "pieces"),
    ],
)
def test_the_field_that_is_wrong_is_named(problem: LayProblem, path: str) -> None:
    with pytest.raises(Refusal) as refused:
        require_layable(problem)
    assert refused.value.path == path


@pytest.mark.parametrize(
    "problem",
    [
        with_piece(across=F(50), along=F(40), may_turn=True),
        with_run(needs=F(40), shortest=F(60)),
        with_run(grain=Grain.LENGTHWISE, shortest=F(60)),
        with_cloth(on_hand=(OnHand(F(60), F(60)),)),
        with_cloth(buy_more=False),
    ],
)
def test_what_can_be_laid_is_not_refused(problem: LayProblem) -> None:
    require_layable(problem)


def test_a_piece_that_fits_only_turned_is_told_so() -> None:
    with pytest.raises(Refusal, match='fits "plum" only if it is turned'):
        require_layable(with_piece(across=F(50), along=F(40)))
