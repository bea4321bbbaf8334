"""Widths of a binding: the strip folded numerically, the reverse, and the reach that is needed."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.binding_choices import Finishing, WidthRule
from core.finish.binding_width import needed_reach, reach_warning, strip_for, widths_of
from core.lengths import INCHES_PER_MM, Units
from core.quilt import Binding, Fold
from core.refusal import Refusal

F = Fraction
BOUND = (Fold.DOUBLE, Fold.SINGLE)
FINISHED = st.integers(2, 16).map(lambda sixteenths: F(sixteenths, 16))
THICK = st.integers(0, 8).map(lambda sixteenths: F(sixteenths, 16))


def binding(strip: Fraction | None = None, **choices: object) -> Binding:
    return Binding("plum", strip, **choices)  # type: ignore[arg-type]


def walked(strip: Fraction, fold: Fold, seam: Fraction, thickness: Fraction) -> Fraction:
    """Where the strip's fold lands, by walking its outer layer from the raw edge: x from the edge.

    Sewn with its raw edge on the quilt's edge it runs inward to the seam, back out over its own
    allowance to the edge, round the edge, and inward on the other face.
    """
    left = strip / 2 if fold is Fold.DOUBLE else strip - seam  # up to the fold
    for stretch in (seam, seam, thickness):
        left -= stretch
    return left


@pytest.mark.parametrize("fold", BOUND)
@given(st.integers(10, 40).map(lambda eighths: F(eighths, 8)), THICK)
def test_the_faces_are_where_the_strip_lands_when_it_is_walked(
    fold: Fold, strip: Fraction, thickness: Fraction
) -> None:
    lands = walked(strip, fold, F(1, 4), thickness)
    if lands <= 0:
        with pytest.raises(Refusal, match="used up"):
            widths_of(binding(strip, fold=fold), thickness)
        return
    widths = widths_of(binding(strip, fold=fold), thickness)
    assert (widths.first_face, widths.second_face) == (F(1, 4), lands)
    assert widths.reach == lands - F(1, 4)


@pytest.mark.parametrize("fold", BOUND)
@pytest.mark.parametrize("finishing", list(Finishing))
@given(FINISHED, THICK)
def test_a_wished_width_on_both_faces_comes_out_with_the_reach_that_is_needed(
    fold: Fold, finishing: Finishing, finished: Fraction, thickness: Fraction
) -> None:
    wish = binding(fold=fold, finishing=finishing, finished_width=finished)
    widths = widths_of(wish, thickness)
    assert widths.seam == widths.first_face == finished
    assert widths.reach == needed_reach(wish, widths.strip) == widths.second_face - finished
    same = widths_of(binding(widths.strip, fold=fold, seam=finished), thickness)
    assert (same.first_face, same.second_face) == (widths.first_face, widths.second_face)


@pytest.mark.parametrize("fold", BOUND)
@given(FINISHED, THICK)
def test_with_the_seam_kept_the_two_faces_share_twice_the_wished_width(
    fold: Fold, finished: Fraction, thickness: Fraction
) -> None:
    wish = binding(fold=fold, finished_width=finished, width_rule=WidthRule.SEAM)
    if 2 * finished <= F(1, 4):  # the first face's seam alone shows as much
        with pytest.raises(Refusal, match="larger finished width"):
            widths_of(wish, thickness)
        return
    widths = widths_of(wish, thickness)
    assert widths.first_face + widths.second_face == 2 * finished
    assert widths.seam == F(1, 4)


@given(FINISHED, THICK)
def test_a_facing_shows_on_the_back_alone(finished: Fraction, thickness: Fraction) -> None:
    widths = widths_of(binding(fold=Fold.FACED, finished_width=finished), thickness)
    assert (widths.first_face, widths.second_face) == (F(0), finished)
    assert widths.strip == 2 * (finished + F(1, 4) + thickness)


def test_the_reach_that_is_needed_follows_the_finishing_the_ruler_and_the_person() -> None:
    assert needed_reach(binding(), F(5, 2)) == F(1, 16)
    assert needed_reach(binding(finishing=Finishing.MACHINE), F(5, 2)) == F(1, 8)
    assert (
        needed_reach(binding(finishing=Finishing.MACHINE), 60 * INCHES_PER_MM) == 3 * INCHES_PER_MM
    )
    assert needed_reach(binding(reach=F(0), finishing=Finishing.MACHINE), F(5, 2)) == 0


@pytest.mark.parametrize("fold", BOUND)
@pytest.mark.parametrize("finishing", list(Finishing))
@given(st.integers(9, 40).map(lambda eighths: F(eighths, 8)))
def test_the_width_that_a_warning_names_is_the_least_that_ends_it(
    fold: Fold, finishing: Finishing, strip: Fraction
) -> None:
    thickness = F(1, 8)

    def warned(width: Fraction) -> bool:
        spec = binding(width, fold=fold, finishing=finishing)
        return reach_warning(spec, widths_of(spec, thickness), Units.INCHES) is not None

    try:
        widths = widths_of(binding(strip, fold=fold, finishing=finishing), thickness)
    except Refusal:
        return
    shortfall = widths.needed_reach - widths.reach
    wider = strip + (2 if fold is Fold.DOUBLE else 1) * shortfall
    assert warned(strip) == (shortfall > 0)
    if shortfall > 0:
        assert not warned(wider)
        assert warned(wider - F(1, 64))


def test_six_times_finished_is_the_bare_rule_for_a_double_fold() -> None:
    wish = binding(finished_width=F(3, 8), reach=F(0))
    assert strip_for(wish, F(3, 8), F(0)) == 6 * F(3, 8)


def test_a_wish_that_the_seam_uses_up_is_refused_by_its_own_name() -> None:
    wish = binding(finished_width=F(1, 8), width_rule=WidthRule.SEAM)
    with pytest.raises(Refusal, match="larger finished width") as refused:
        widths_of(wish, F(1, 8))
    assert refused.value.path == "binding.finished_width"
