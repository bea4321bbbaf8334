"""Joins: what sewing strips end to end costs, worked out again from the strips themselves."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.edge.joins import (
    TUCKED_FOLD,
    TUCKED_OVERLAP,
    chain_length,
    closing_takes,
    join_loss,
    narrowest_strip_length,
    strips_needed,
)
from core.quilt import Closing, Joins

F = Fraction
QUARTERS = st.integers(1, 400).map(lambda quarters: F(quarters, 4))


@pytest.mark.parametrize("width", [F(3, 2), F(5, 2), F(3), F(8)])
@pytest.mark.parametrize("length", [F(20), F(42)])
def test_a_diagonal_join_costs_the_strip_width_as_sewn_on_paper(
    width: Fraction, length: Fraction
) -> None:
    """Two strips at right angles are sewn across the square where they cross and opened out."""
    # One lies from (0, 0) to (length, width); the other hangs from the square at its right end.
    seam_start = (length - width, width)
    hanging_end = [(length - width, width - length), (length, width - length)]
    opened = [mirrored(corner, seam_start) for corner in hanging_end]
    assert {y for _, y in opened} == {F(0), width}, "opened out, it runs on in line"
    assert {x for x, _ in opened} == {length + length - join_loss(Joins.DIAGONAL, width, F(1, 4))}


def mirrored(
    point: tuple[Fraction, Fraction], start: tuple[Fraction, Fraction]
) -> tuple[Fraction, Fraction]:
    """`point` mirrored in the seam that falls at 45° from `start`."""
    over, up = point[0] - start[0], point[1] - start[1]
    return start[0] - up, start[1] - over


def test_a_straight_join_costs_a_seam_of_each_strip() -> None:
    assert join_loss(Joins.STRAIGHT, F(5, 2), F(1, 4)) == F(1, 2)


@pytest.mark.parametrize(
    ("closing", "takes"),
    [
        (Closing.DIAGONAL, F(5, 2)),
        (Closing.STRAIGHT, F(1, 2)),
        (Closing.TUCKED, F(3, 8) + 2 + F(5, 2)),
    ],
)
def test_closing_takes_what_its_way_of_meeting_takes(closing: Closing, takes: Fraction) -> None:
    assert closing_takes(closing, F(5, 2), F(1, 4)) == takes


def test_the_tucked_closing_follows_common_practice() -> None:
    # Common practice, no source: folded a little over 1/4 in, 1 to 2 in tucked in.
    assert F(1, 4) < TUCKED_FOLD <= F(1, 2)
    assert 1 <= TUCKED_OVERLAP <= 2


@given(st.lists(QUARTERS, min_size=1, max_size=12), st.sampled_from([F(0), F(1, 2), F(9, 4)]))
def test_a_chain_grows_strip_by_strip(segments: list[Fraction], loss: Fraction) -> None:
    total = segments[0]
    for segment in segments[1:]:
        total = total + segment - loss
    assert chain_length(tuple(segments), loss) == total


def test_no_strips_make_no_chain() -> None:
    assert chain_length((), F(5, 2)) == 0


@given(QUARTERS, st.sampled_from([F(0), F(1, 2), F(9, 4)]), st.integers(12, 440))
def test_the_strips_needed_reach_and_one_less_does_not(
    needs: Fraction, loss: Fraction, quarters: int
) -> None:
    strip = F(quarters, 4)
    count = strips_needed(needs, loss, strip)
    assert chain_length((strip,) * count, loss) >= needs
    assert count == 1 or chain_length((strip,) * (count - 1), loss) < needs


@given(
    QUARTERS,
    st.sampled_from([F(0), F(1, 2), F(9, 4)]),
    st.integers(1, 9),
    st.lists(st.integers(72, 160).map(lambda quarters: F(quarters, 4)), max_size=3),
)
def test_the_narrowest_strip_just_reaches(
    needs: Fraction, loss: Fraction, full: int, others: list[Fraction]
) -> None:
    narrowest = narrowest_strip_length(needs, loss, full, sum(others, F(0)), len(others))
    assert chain_length((*(narrowest,) * full, *others), loss) == needs


def test_ends_cut_on_the_slant_would_cost_less() -> None:
    # Derived: two ends already cut at 45° lose 2·s·√2 along the strip. A strip cut square
    # loses its width, so the program's diagonal join is never the cheaper of the two.
    seam, width = F(1, 4), F(2)
    assert 2 * float(seam) * sqrt(2) < join_loss(Joins.DIAGONAL, width, seam)
