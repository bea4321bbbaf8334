"""Backing: panels that cover what they must, and the ways that the project allows."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.fabric import Fabric, OnHand
from core.finish.backing import BackingPlan, backing_options
from core.lay.problem import Piece, Run
from core.lengths import INCHES_PER_MM
from core.plan import make_plan
from core.quilt import Backing, Panels, Project, Quilt, Seams
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
        assert plan.panels == 1 or min(plan.widths) >= BACKING.narrowest_panel


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


# --- halves, accent strips, sides, wide pieces on hand


def test_two_halves_lie_on_either_side_of_a_full_panel() -> None:
    halves = replace(BACKING, panels=Panels.HALVES, seams=Seams.LENGTHWISE)
    [plan] = backing_options(halves, F(60), F(80), cloth(42))
    assert plan.widths == (F(14), F(42), F(14))
    assert [(p.name, p.across, p.count) for p in pieces(plan)] == [
        ("backing panel", F(42), 1),
        ("narrow backing panel", F(14), 2),
    ]


@given(QUARTERS, QUARTERS)
def test_no_seam_of_halves_runs_down_the_middle(width: Fraction, length: Fraction) -> None:
    halves = replace(BACKING, panels=Panels.HALVES)
    for plan in backing_options(halves, width, length, cloth(42)):
        assert plan.widths == plan.widths[::-1]
        assert plan.panels % 2 == 1
        assert max(plan.widths) <= 42
        assert plan.panels == 1 or min(plan.widths) >= BACKING.narrowest_panel


def test_whole_panels_are_never_pieced_from_short_strips() -> None:
    whole = replace(BACKING, panels=Panels.WHOLE)
    assert {p.pieced_last for p in backing_options(whole, F(48), F(60), cloth(42))} == {1}
    assert max(p.pieced_last for p in ways(48, 60)) > 1


def test_an_accent_strip_widens_the_backing_between_the_first_panels() -> None:
    accent = replace(BACKING, seams=Seams.LENGTHWISE, accent_fabric="dots", accent_width=F(15))
    plan, *_ = backing_options(accent, F(60), F(80), cloth(42), cloth(42, name="dots"))
    assert (plan.widths, plan.accent_at, plan.panels) == ((F(42), F(16), F(12)), 1, 2)
    strip = plan.demands[-1].wanted
    assert isinstance(strip, Run), "88 in are more than the cloth's width"
    assert (strip.cloth, strip.strip, strip.needs, strip.join_loss) == ("dots", F(16), F(88), F(1))


def test_an_accent_strip_splits_a_panel_that_would_do_alone() -> None:
    accent = replace(BACKING, seams=Seams.LENGTHWISE, accent_fabric="dots", accent_width=F(10))
    plan, *_ = backing_options(accent, F(40), F(30), cloth(42), cloth(42, name="dots"))
    assert plan.widths == (F(39, 2), F(11), F(39, 2))
    strip = plan.demands[-1].wanted
    assert isinstance(strip, Piece)
    assert (strip.across, strip.along) == (F(38), F(11))


@pytest.mark.parametrize(("width", "words"), [(F(57), "no room for panels"), (F(42), "is wider")])
def test_an_accent_strip_that_cannot_be_is_refused(width: Fraction, words: str) -> None:
    accent = replace(BACKING, accent_fabric="dots", accent_width=width)
    with pytest.raises(Refusal, match=words) as refused:
        backing_options(accent, F(60), F(80), cloth(42), cloth(42, name="dots"))
    assert refused.value.path == "backing.accent_width"


def test_each_side_has_its_own_overage() -> None:
    framed = replace(BACKING, overage=F(3), overage_top=F(6), overage_bottom=F(5))
    plan = backing_options(framed, F(60), F(80), cloth(42))[0]
    assert (plan.across, plan.along) == (F(66), F(91))


@pytest.mark.parametrize(
    ("hand", "size"), [((70, 60), (F(68), F(56))), ((60, 70), (F(56), F(68))), ((67, 67), None)]
)
def test_a_piece_on_hand_wider_than_the_bolt_is_tried_both_ways(
    hand: tuple[int, int], size: tuple[Fraction, Fraction] | None
) -> None:
    """48 × 60 with 4 in over: 56 × 68 in one panel, as it is or turned."""
    on_hand = OnHand(F(hand[0]), F(hand[1]))
    fabric = cloth(42, on_hand=(on_hand,), sale_unit=F(1))
    plan = make_plan(Project(Quilt("", F(48), F(60)), (fabric,), backing=BACKING))
    assert plan.backing is not None
    placed = plan.fabrics[0].lay.placements
    if size is None:
        assert plan.backing.panels > 1
    else:
        assert [(one.rect.across, one.rect.along) for one in placed] == [size]
        assert plan.fabrics[0].buy.along == 0


def test_a_one_way_print_is_not_turned_on_a_wide_piece() -> None:
    fabric = cloth(42, on_hand=(OnHand(F(70), F(60)),), one_way_print=True)
    plan = make_plan(Project(Quilt("", F(48), F(60)), (fabric,), backing=BACKING))
    assert plan.backing is not None
    assert plan.backing.panels > 1


def test_a_repeat_longer_than_any_cloth_there_is_is_refused() -> None:
    fabric = cloth(42, on_hand=(OnHand(F(42), F(90), 3),), repeat=F(100), buy_more=False)
    with pytest.raises(Refusal, match="repeats every 100 in, but the longest piece") as refused:
        make_plan(Project(Quilt("", F(60), F(80)), (fabric,), backing=BACKING))
    assert refused.value.path == "fabrics[0].repeat"
