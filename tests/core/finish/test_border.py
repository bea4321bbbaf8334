"""Borders: sizes from the inside out, and the ways of cutting them."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.fabric import Grain
from core.finish.border import BorderPlan, border_options
from core.lay.problem import Piece, Run
from core.quilt import Border, Corners, First, Joins
from core.refusal import Refusal
from tests.core.finish.published import cloth

F = Fraction
PLAIN = Border("cloth", F(3))
SIZES = st.integers(20, 400).map(lambda quarters: F(quarters, 4))
WIDTHS = st.integers(1, 40).map(lambda eighths: F(eighths, 8))


def ways(border: Border, width: int = 50, length: int = 60) -> tuple[BorderPlan, ...]:
    return border_options(border, 1, F(width), F(length), lambda _: cloth(42))


def cut_whole(plan: BorderPlan) -> list[tuple[Fraction, Fraction, int]]:
    """Size across, size along and count of every piece."""
    wanted = [demand.wanted for demand in plan.demands]
    return [(p.across, p.along, p.count) for p in wanted if isinstance(p, Piece)]


@given(SIZES, SIZES, st.sampled_from(list(Corners)), WIDTHS)
def test_a_border_adds_its_finished_width_on_every_side(
    width: Fraction, length: Fraction, corners: Corners, finished: Fraction
) -> None:
    border = replace(PLAIN, width=finished, corners=corners)
    for plan in border_options(border, 1, width, length, lambda _: cloth(42)):
        assert plan.outer_width == width + 2 * finished
        assert plan.outer_length == length + 2 * finished


@pytest.mark.parametrize("corners", [corner for corner in Corners if corner != Corners.MITRED])
@given(SIZES, SIZES, WIDTHS, st.sampled_from(First))
def test_sewn_strips_fill_the_ring_round_the_centre_once(
    corners: Corners, width: Fraction, length: Fraction, b: Fraction, first: First
) -> None:
    seam = PLAIN.seam
    border = replace(PLAIN, width=b, corners=corners, first=first, grain=Grain.LENGTHWISE)
    [plan] = border_options(border, 1, width, length, lambda _: cloth(200))
    inner = width - 2 * seam, length - 2 * seam
    ring = (inner[0] + 2 * b) * (inner[1] + 2 * b) - inner[0] * inner[1]
    sewn = sum((strip.length - 2 * seam) * b * strip.count for strip in plan.strips)
    assert sewn + (4 * b * b if corners is Corners.SQUARES else 0) == ring


@pytest.mark.parametrize(("joins", "loss"), [(Joins.DIAGONAL, F(7, 2)), (Joins.STRAIGHT, F(1, 2))])
def test_a_pieced_border_is_one_run_long_enough_for_its_four_strips(
    joins: Joins, loss: Fraction
) -> None:
    [plan] = ways(replace(PLAIN, joins=joins))
    [demand] = plan.demands
    assert plan.joined
    assert isinstance(demand.wanted, Run)
    squared = 4 * PLAIN.squaring
    assert (demand.wanted.strip, demand.wanted.needs) == (F(7, 2), 2 * 60 + 2 * 56 + squared)
    assert demand.wanted.join_loss == loss


def test_strips_that_fit_across_are_cut_whole_and_pieced_only_as_a_last_resort() -> None:
    whole, pieced = ways(PLAIN, 30, 40)
    assert (whole.joined, whole.last_resort) == (False, False)
    assert (pieced.joined, pieced.last_resort) == (True, True)
    assert cut_whole(whole) == [(F(40), F(7, 2), 2), (F(36), F(7, 2), 2)]


def test_lengthwise_strips_are_never_joined() -> None:
    [plan] = ways(replace(PLAIN, grain=Grain.LENGTHWISE))
    assert not plan.joined
    assert cut_whole(plan) == [(F(7, 2), F(60), 2), (F(7, 2), F(56), 2)]


def test_either_grain_gives_both_ways() -> None:
    plans = ways(replace(PLAIN, grain=Grain.EITHER))
    assert [(plan.grain, plan.joined) for plan in plans] == [
        (Grain.CROSSWISE, True),
        (Grain.LENGTHWISE, False),
    ]


def test_corner_squares_come_from_their_own_fabric() -> None:
    border = replace(PLAIN, corners=Corners.SQUARES, corner_fabric="dots")
    [plan] = ways(border)
    [squares] = [demand.wanted for demand in plan.demands if demand.role == "border corner"]
    assert squares == Piece("border 1 corner", "dots", F(7, 2), F(7, 2), 4)


def test_a_border_that_no_cloth_gives_in_one_piece_is_refused() -> None:
    with pytest.raises(Refusal, match="lengthwise strip of 43 in is wider") as refused:
        ways(replace(PLAIN, width=F(85, 2), grain=Grain.LENGTHWISE))
    assert refused.value.path == "borders[0].width"


def test_joins_that_use_up_the_strip_are_refused() -> None:
    with pytest.raises(Refusal, match="each join would use up a whole strip") as refused:
        ways(replace(PLAIN, width=F(85, 2)))
    assert refused.value.path == "borders[0].width"
