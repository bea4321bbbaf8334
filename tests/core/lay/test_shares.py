"""How runs are divided: never more than some division takes that is tried by hand."""

from __future__ import annotations

from itertools import combinations_with_replacement

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.lay.shares import divided, next_shared
from core.lay.ticks import Strip

WIDTH = 12


def strip(needs: int, loss: int, shortest: int) -> Strip:
    return Strip(2, needs - loss, loss, shortest, True, False, 1, "run")


@settings(deadline=None, max_examples=200)
@given(st.integers(3, 36), st.integers(0, 2), st.integers(3, 6), st.integers(3, 6))
def test_no_segments_take_less_than_the_division(
    needs: int, loss: int, shortest: int, other: int
) -> None:
    run = strip(needs, loss, shortest)
    least = min(run.least, other)
    alone = WIDTH - least
    length = divided(run, WIDTH, alone).length
    for count in range(1, 7):
        for segments in combinations_with_replacement(range(run.least, WIDTH + 1), count):
            joined = count == 1 or min(segments) >= run.joined
            if joined and sum(segments) - count * loss >= run.demand:
                rows = sum(WIDTH if one > alone else one for one in segments)
                assert length <= rows


def test_a_border_shares_rows_where_that_saves_cloth() -> None:
    # 95 3/4 in of 41 1/2 in cloth, joins of 5 1/2 in: a whole row and four segments, in quarters.
    border = Strip(22, 361, 22, 72, True, False, 1, "border")
    assert divided(border, 166, 94) == (1, 4, 471)


@pytest.mark.parametrize(("left", "demand"), [(4, 70), (2, 40), (1, 20)])
def test_the_next_segment_leaves_the_others_something_they_can_do(left: int, demand: int) -> None:
    run = strip(200, 1, 12)
    least, most = next_shared(run, demand, left, 23)
    assert 12 <= least <= most <= max(23, least)
    assert demand - (least - 1) <= (left - 1) * 22
