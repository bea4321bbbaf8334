"""Batting and sleeve, beyond what is published of them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.finish.batting import PACKAGES, plan_batting
from core.finish.sleeve import plan_sleeve
from core.lay.problem import Piece, Run
from core.quilt import Batting, Sleeve
from core.refusal import Refusal
from tests.core.finish.published import cloth

F = Fraction
SIZES = st.integers(4, 140).map(F)


@given(SIZES, SIZES)
def test_the_package_is_the_first_that_covers_either_way_up(
    width: Fraction, length: Fraction
) -> None:
    package = plan_batting(Batting(F(0)), width, length).package
    covering = [
        (name, one, other)
        for name, one, other in PACKAGES
        if (width <= one and length <= other) or (width <= other and length <= one)
    ]
    assert package == (covering[0] if covering else None)


def test_packages_grow() -> None:
    areas = [one * other for _, one, other in PACKAGES]
    assert areas == sorted(areas)


@given(SIZES, SIZES)
def test_the_batting_of_a_turned_quilt_is_turned(width: Fraction, length: Fraction) -> None:
    one = plan_batting(Batting(), width, length)
    other = plan_batting(Batting(), length, width)
    assert (one.across, one.along, one.package) == (other.along, other.across, other.package)


def test_a_sleeve_that_fits_across_is_one_piece_and_may_turn() -> None:
    [demand] = plan_sleeve(Sleeve("cloth", F(4)), F(43), cloth(42)).demands
    assert demand.wanted == Piece("sleeve", "cloth", F(42), F(17, 2), 1, may_turn=True)


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
