"""Batting and sleeve, beyond what is published of them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.batting_packages import COMMON, Package
from core.finish.batting import plan_batting
from core.finish.label import plan_label
from core.finish.sleeve import plan_sleeve
from core.lay.problem import Piece, Run
from core.lengths import INCHES_PER_MM
from core.quilt import Batting, BattingFrom, Label, Sleeve, SleeveShape
from core.refusal import Refusal
from tests.core.finish.published import cloth

F = Fraction
SIZES = st.integers(4, 140).map(F)


@given(SIZES, SIZES)
def test_the_package_is_the_smallest_that_covers_either_way_up(
    width: Fraction, length: Fraction
) -> None:
    package = plan_batting(Batting(F(0)), width, length).package
    covering = [
        one
        for one in COMMON
        if (width <= one.width and length <= one.length)
        or (width <= one.length and length <= one.width)
    ]
    assert package == min(covering, key=lambda one: one.width * one.length, default=None)


def test_the_table_is_the_person_s_own() -> None:
    mine = Batting(F(0), packages=(Package("big", F(110), F(110)), Package("mine", F(61), F(81))))
    assert plan_batting(mine, F(80), F(60)).package == Package("mine", F(61), F(81))
    assert plan_batting(mine, F(82), F(60)).package == Package("big", F(110), F(110))


def test_a_package_asked_for_by_name_is_taken_and_told_where_it_is_too_small() -> None:
    twin = Batting(F(4), package="twin")
    assert not plan_batting(twin, F(60), F(80)).too_small
    small = plan_batting(twin, F(80), F(90))
    assert small.too_small
    assert small.package is not None
    assert small.package.name == "twin"


def test_a_package_of_no_name_in_the_table_is_refused() -> None:
    with pytest.raises(Refusal, match='no package is called "huge"') as refused:
        plan_batting(Batting(package="huge"), F(60), F(80))
    assert refused.value.path == "batting.package"


@pytest.mark.parametrize(
    ("width", "length", "copies", "pieces", "joins", "along"),
    [
        (60, 80, 1, 1, 0, 68),  # 68 × 88: turned, 68 of a 96 roll
        (90, 100, 1, 2, 1, 196),  # 98 × 108: two of 98, or two of 108
        (36, 48, 4, 1, 0, 112),  # 44 × 56: two of 44 side by side in each of two rows of 56
        (36, 48, 3, 1, 0, 112),  # the same for three; turned, three rows of 44
    ],
)
def test_batting_from_the_roll_is_as_short_as_the_fewest_joins_allow(
    width: int, length: int, copies: int, pieces: int, joins: int, along: int
) -> None:
    """Worked by hand, 4 in over on each side, roll of 96 in, sold by the inch."""
    batting = Batting(source=BattingFrom.ROLL, roll_sale_unit=F(1))
    roll = plan_batting(batting, F(width), F(length), copies).roll
    assert roll is not None
    assert (roll.pieces, roll.joins) == (pieces, joins)
    assert roll.along == along


def test_each_side_of_the_batting_has_its_own_overage() -> None:
    batting = Batting(F(4), overage_top=F(6), overage_bottom=F(5), overage_left=F(0))
    plan = plan_batting(batting, F(60), F(80))
    assert (plan.across, plan.along) == (F(64), F(91))


@given(SIZES, SIZES)
def test_the_batting_of_a_turned_quilt_is_turned(width: Fraction, length: Fraction) -> None:
    one = plan_batting(Batting(), width, length)
    other = plan_batting(Batting(), length, width)
    assert (one.across, one.along, one.package) == (other.along, other.across, other.package)


def test_a_sleeve_that_fits_across_is_one_piece_and_may_turn() -> None:
    [demand] = plan_sleeve(Sleeve("cloth", F(4)), F(43), cloth(42)).demands
    assert demand.wanted == Piece("sleeve", "cloth", F(42), F(17, 2), 1, may_turn=True)


def test_a_sleeve_s_seam_and_hem_may_be_said() -> None:
    tube = plan_sleeve(Sleeve("cloth", F(4), seam=F(1, 2)), F(43), cloth(42))
    one_layer = Sleeve("cloth", F(4), SleeveShape.SINGLE, hem=F(3, 8), ease=F(1))
    assert tube.cut_width == 2 * F(4) + 2 * F(1, 2)
    assert plan_sleeve(one_layer, F(43), cloth(42)).cut_width == 4 + 2 * F(3, 8) + 1


def test_a_longer_sleeve_is_joined_with_straight_seams() -> None:
    plan = plan_sleeve(Sleeve("cloth", F(4)), F(60), cloth(42))
    [demand] = plan.demands
    assert plan.joined
    assert isinstance(demand.wanted, Run)
    assert (demand.wanted.needs, demand.wanted.join_loss) == (F(59), F(1, 2))


@pytest.mark.parametrize(
    ("depth", "width", "path"), [(F(4), F(1), "sleeve"), (F(25), F(60), "sleeve.depth")]
)
def test_a_sleeve_that_cannot_be_is_refused(depth: Fraction, width: Fraction, path: str) -> None:
    with pytest.raises(Refusal) as refused:
        plan_sleeve(Sleeve("cloth", depth), width, cloth(42))
    assert refused.value.path == path


@pytest.mark.parametrize(
    ("shape", "ease", "strip"),
    [
        (SleeveShape.TUBE, None, F(17, 2)),
        (SleeveShape.TUBE, F(1), F(19, 2)),
        (SleeveShape.D, None, 10),
        (SleeveShape.SINGLE, None, F(11, 2)),
        (SleeveShape.SINGLE, F(0), 5),
    ],
)
def test_a_sleeve_s_strip_is_cut_by_its_shape(
    shape: SleeveShape, ease: Fraction | None, strip: Fraction | int
) -> None:
    sleeve = Sleeve("cloth", F(4), shape=shape, ease=ease)
    assert plan_sleeve(sleeve, F(40), cloth(42)).cut_width == strip


def test_a_long_sleeve_is_split_with_a_gap() -> None:
    plan = plan_sleeve(Sleeve("cloth", split_above=F(60), gap=F(4)), F(65), cloth(42))
    assert (plan.parts, plan.length, plan.joined) == (2, F(30), False)
    assert plan_sleeve(Sleeve("cloth", split_above=F(64)), F(65), cloth(42)).parts == 1


def test_a_metric_d_sleeve_has_round_millimetres() -> None:
    cm = 10 * INCHES_PER_MM
    sleeve = Sleeve("cloth", 10 * cm, SleeveShape.D, shorter=F(5, 2) * cm)
    plan = plan_sleeve(sleeve, 150 * cm, cloth(160 * cm))
    assert (plan.cut_width / cm, plan.length / cm) == (F(51, 2), F(295, 2))


def test_a_label_is_cut_with_its_hems() -> None:
    plan = plan_label(Label("cloth", F(6), F(4), F(1, 4)), (F(40), F(50)), cloth(42))
    assert (plan.across, plan.along) == (F(13, 2), F(9, 2))


@pytest.mark.parametrize(
    ("label", "usable", "path"),
    [
        (Label("cloth", F(41)), 42, "label.width"),
        (Label("cloth", F(6), F(51)), 42, "label.length"),
        (Label("cloth", F(30)), 20, "label.width"),
    ],
)
def test_a_label_that_cannot_be_is_refused(label: Label, usable: int, path: str) -> None:
    with pytest.raises(Refusal) as refused:
        plan_label(label, (F(40), F(50)), cloth(usable))
    assert refused.value.path == path
