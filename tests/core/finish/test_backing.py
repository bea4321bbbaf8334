"""Backing: panels that cover what they must, and the ways that the project allows."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.fabric import Fabric
from core.finish.backing import NARROWEST_PANEL, BackingPlan, backing_options
from core.lay.problem import Piece
from core.lengths import INCHES_PER_MM
from core.quilt import Backing, Seams
from core.refusal import Refusal
from tests.core.finish.published import cloth

F = Fraction
BACKING = Backing("cloth", F(4))
QUARTERS = st.integers(40, 480).map(lambda quarters: F(quarters, 4))


def pieces(plan: BackingPlan) -> list[Piece]:
    return [demand.wanted for demand in plan.demands if isinstance(demand.wanted, Piece)]


def ways(
    width: int, length: int, fabric: Fabric | None = None, seams: Seams = Seams.AUTO
) -> tuple[BackingPlan, ...]:
    backing = replace(BACKING, seams=seams)
    return backing_options(backing, F(width), F(length), fabric or cloth(42))


@given(QUARTERS, QUARTERS, st.sampled_from([F(30), F(83, 2), F(42), F(107)]))
def test_the_panels_of_every_way_cover_the_backing_exactly(
    width: Fraction, length: Fraction, usable: Fraction
) -> None:
    for plan in backing_options(BACKING, width, length, cloth(usable)):
        cover = plan.along if plan.seams is Seams.CROSSWISE else plan.across
        if plan.seams is Seams.NONE:
            cover = plan.widths[0]
            assert {cover, plan.panel_along} == {plan.across, plan.along}
        assert sum(plan.widths) - (plan.panels - 1) * 2 * plan.seam == cover
        assert all(part <= usable for part in plan.widths)
        assert plan.panels == 1 or min(plan.widths) >= NARROWEST_PANEL


@given(QUARTERS, QUARTERS)
def test_the_pieces_of_every_way_make_its_panels(width: Fraction, length: Fraction) -> None:
    for plan in backing_options(BACKING, width, length, cloth(42)):
        whole = [piece for piece in pieces(plan) if "short" not in piece.name]
        short = [piece for piece in pieces(plan) if "short" in piece.name]
        assert all(piece.along == plan.panel_along for piece in whole)
        assert sum(piece.count for piece in whole) == plan.panels - bool(short)
        for strips in short:
            assert strips.count == plan.pieced_last >= 2
            joined = strips.count * strips.along - (strips.count - 1) * 2 * plan.seam
            assert 0 <= joined - plan.panel_along < strips.count * F(1, 8)
            assert strips.count * strips.across <= 42, "they lie side by side"


def test_short_strips_of_a_metric_quilt_end_on_a_millimetre() -> None:
    cm = 10 * INCHES_PER_MM
    fabric = cloth(110 * cm)
    backing = replace(BACKING, overage=10 * cm, seam=cm)
    short = [
        piece
        for plan in backing_options(backing, 121 * cm, 153 * cm, fabric)
        for piece in pieces(plan)
        if "short" in piece.name
    ]
    assert short
    assert all((piece.along / INCHES_PER_MM).denominator == 1 for piece in short)


def test_wide_cloth_backs_without_a_seam_turned_if_need_be() -> None:
    plans = ways(94, 98, cloth(106))
    assert (plans[0].seams, plans[0].panel_along) == (Seams.NONE, F(106))
    assert (plans[-1].seams, plans[-1].panel_along) == (Seams.NONE, F(102))


@pytest.mark.parametrize("seams", [Seams.LENGTHWISE, Seams.CROSSWISE])
def test_only_the_seams_asked_for_are_offered(seams: Seams) -> None:
    assert {plan.seams for plan in ways(60, 80, seams=seams)} == {seams}


def test_a_one_way_print_is_never_laid_sideways() -> None:
    one_way = cloth(42, one_way_print=True)
    assert {plan.seams for plan in ways(60, 80, one_way)} == {Seams.LENGTHWISE}
    with pytest.raises(Refusal, match="sideways") as refused:
        ways(60, 80, one_way, Seams.CROSSWISE)
    assert refused.value.path == "backing.seams"


def test_no_seams_on_narrow_cloth_are_refused() -> None:
    with pytest.raises(Refusal, match="too narrow for a backing of 68 in × 88 in") as refused:
        ways(60, 80, seams=Seams.NONE)
    assert refused.value.path == "backing.seams"


def test_seams_that_leave_no_panel_are_refused() -> None:
    with pytest.raises(Refusal, match="leave too little") as refused:
        backing_options(replace(BACKING, seam=F(19)), F(60), F(80), cloth(42))
    assert refused.value.path == "backing.seam"


@pytest.mark.parametrize("repeat", [F(12), F(24), F(25, 2)])
def test_panels_that_match_a_print_are_whole_repeats_after_the_first(repeat: Fraction) -> None:
    first, other = ways(60, 80, cloth(42, repeat=repeat), Seams.LENGTHWISE)
    lead, *rest = pieces(first)
    assert lead.along == 88
    assert all((piece.along / repeat).denominator == 1 and piece.along >= 88 for piece in rest)
    assert other.last_resort
    assert all(piece.along == 88 + repeat for piece in pieces(other)[1:])


def test_the_repeat_shrinks_with_the_cloth() -> None:
    shrinking = cloth(42, repeat=F(12), shrinkage_along=F(1, 20))
    [first, _] = ways(60, 80, shrinking, Seams.LENGTHWISE)
    assert first.repeat == 12 * F(19, 20)
