"""Binding: needs, strips, faces and reach, before and after the lay."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.edge.bias import tube_yield
from core.fabric import Grain
from core.finish.binding_plan import as_laid
from core.lay.lay import Placement, Rect, Sheet
from core.lay.problem import Piece, Run
from core.lengths import round_up
from core.quilt import Closing, Fold, Joins
from core.refusal import Refusal
from tests.core.finish.published import bound, single_fold

F = Fraction
QUARTERS = st.integers(40, 480).map(lambda quarters: F(quarters, 4))


@given(QUARTERS, QUARTERS, st.sampled_from(list(Closing)), st.sampled_from(list(Joins)))
def test_needs_are_perimeter_closing_and_allowance_and_the_strips_reach_them(
    width: Fraction, length: Fraction, closing: Closing, joins: Joins
) -> None:
    plan = bound(width, length, 42, closing=closing, joins=joins)
    assert plan.perimeter == 2 * (width + length)
    assert plan.needs == plan.perimeter + plan.closing + 10
    assert plan.joined_length == plan.strips * 42 - plan.joins * plan.join_loss
    assert plan.spare >= 0
    assert plan.joins == plan.strips - 1


@given(QUARTERS, QUARTERS)
def test_the_plan_holds_down_to_the_narrowest_width(width: Fraction, length: Fraction) -> None:
    plan = bound(width, length, 42)
    narrowest = plan.narrowest_usable_width
    assert plan.strips * narrowest - plan.joins * plan.join_loss == plan.needs
    sixteenth = F(1, 16)  # cloth is measured in these
    assert bound(width, length, round_up(narrowest, sixteenth)).strips == plan.strips
    assert bound(width, length, round_up(narrowest, sixteenth) - sixteenth).strips > plan.strips


@pytest.mark.parametrize("thickness", [F(0), F(1, 8), F(1, 4)])
@pytest.mark.parametrize("strip", [F(9, 4), F(5, 2), F(3)])
def test_the_folds_use_up_the_whole_strip(strip: Fraction, thickness: Fraction) -> None:
    """From raw edges to fold: the first face out and back over its seam, the turn, the second."""
    double = bound(50, 60, 42, strip, thickness=thickness)
    seam = double.first_face_width
    assert 2 * (seam + seam + thickness + double.second_face_width) == strip
    assert double.reach == double.second_face_width - seam
    single = single_fold(50, 60, 42, strip, thickness=thickness)
    assert 3 * seam + thickness + single.second_face_width == strip


def test_a_run_asks_for_segments_along_the_grain_chosen() -> None:
    [demand] = bound(50, 60, 42, grain=Grain.LENGTHWISE).demands
    assert isinstance(demand.wanted, Run)
    assert demand.wanted.grain is Grain.LENGTHWISE


def test_bias_asks_for_equal_squares_that_give_enough() -> None:
    plan = bound(50, 60, 42, grain=Grain.BIAS)
    [demand] = plan.demands
    assert isinstance(demand.wanted, Piece)
    side = demand.wanted.across
    assert demand.wanted.along == side
    assert tube_yield(side, F(5, 2), F(1, 4)) >= plan.needs
    assert tube_yield(side - F(1, 2), F(5, 2), F(1, 4)) < plan.needs


def test_a_long_bias_binding_joins_several_squares() -> None:
    plan = bound(400, 400, 42, grain=Grain.BIAS)
    [demand] = plan.demands
    assert demand.wanted.count == plan.strips > 1
    assert plan.spare >= 0


def segment(length: Fraction, y: int, *, turned: bool = False) -> Placement:
    size = (F(5, 2), length) if turned else (length, F(5, 2))
    return Placement("binding", y + 1, Sheet(), Rect(F(0), F(y * 3), *size), turned, 1)


def test_the_plan_is_told_by_the_segments_as_they_lie() -> None:
    plan = bound(50, 60, 42)
    laid = (*(segment(F(42), y) for y in range(5)), segment(F(38), 5))
    told = as_laid(plan, laid, F(42))
    assert (told.strips, told.joins, told.strip_length) == (6, 5, F(42))
    assert told.joined_length == 5 * 42 + 38 - 5 * F(5, 2)
    # The five full strips may shrink as long as they and the short one still reach.
    assert 5 * told.narrowest_usable_width + 38 - 5 * F(5, 2) == told.needs


def test_with_no_full_strip_the_cloth_may_be_as_narrow_as_the_segments_lie() -> None:
    laid = tuple(segment(F(60), y, turned=True) for y in range(5))
    told = as_laid(bound(50, 60, 42, grain=Grain.LENGTHWISE), laid, F(42))
    assert told.strip_length == 60
    assert told.narrowest_usable_width == F(5, 2)


@pytest.mark.parametrize(
    ("strip", "choices", "words"),
    [
        (F(5, 4), {}, "used up by its seams of 1/4 in"),
        (F(3, 4), {"fold": Fold.SINGLE}, "used up by its seams"),
        (F(43), {}, "wider than its cloth's usable width of 42 in"),
        (F(42), {}, "each join would use up a whole strip"),
        (F(32), {"grain": Grain.BIAS}, "no square on this cloth"),
        (F(2), {"seam": F(1, 2)}, "used up by its seams of 1/2 in"),
    ],
)
def test_a_strip_that_cannot_be_is_refused(
    strip: Fraction, choices: dict[str, object], words: str
) -> None:
    with pytest.raises(Refusal, match=words) as refused:
        bound(50, 60, 42, strip, **choices)  # type: ignore[arg-type]
    assert refused.value.path in ("binding.strip_width", "binding.grain")


@pytest.mark.parametrize("fold", list(Fold))
@given(st.integers(1, 40).map(lambda eighths: F(eighths, 8)))
def test_the_strip_that_a_refusal_asks_for_is_let_pass(fold: Fold, strip: Fraction) -> None:
    try:
        bound(50, 60, 42, strip, fold=fold)
    except Refusal as refusal:
        least = refusal.lengths["least"]
        assert strip <= least
        assert bound(50, 60, 42, least + F(1, 64), fold=fold).second_face_width > 0
