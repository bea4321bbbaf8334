"""The free rectangles round what has its place."""

from __future__ import annotations

from itertools import combinations
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.lay.partition import Side, overlap, partitions
from core.lay.slabs import Box, NotGuillotine, slabs

SHEET: Box = (0, 0, 20, 30)
PINWHEEL: list[Box] = [(0, 0, 12, 8), (12, 0, 8, 18), (8, 18, 12, 12), (0, 8, 8, 22)]


def area(boxes: tuple[Box, ...] | list[Box]) -> int:
    return sum(int(box[2] * box[3]) for box in boxes)


def test_an_empty_sheet_is_free_as_a_whole() -> None:
    assert list(partitions(SHEET, [], [], Random(0))) == [(SHEET,)]


def test_what_fills_the_sheet_leaves_nothing() -> None:
    assert list(partitions(SHEET, [SHEET], [], Random(0))) == [()]
    assert list(partitions(SHEET, [], [SHEET], Random(0))) == [()]


def test_a_corner_can_be_cut_round_in_two_ways() -> None:
    found = set(partitions(SHEET, [(0, 0, 5, 8)], [], Random(0)))
    assert found == {((0, 8, 20, 22), (5, 0, 15, 8)), ((0, 8, 5, 22), (5, 0, 15, 30))}


def test_a_pinwheel_cannot_be_cut_free_but_may_be_cut_away() -> None:
    with pytest.raises(NotGuillotine):
        next(partitions(SHEET, PINWHEEL, [], Random(0)))
    free = next(partitions(SHEET, [], PINWHEEL, Random(0)))
    assert area(free) == 20 * 30 - area(PINWHEEL)


boxes = st.builds(
    lambda x, y, w, h: (x, y, min(w, 20 - x), min(h, 30 - y)),
    st.integers(0, 19),
    st.integers(0, 29),
    st.integers(1, 12),
    st.integers(1, 12),
)


def test_an_end_is_left_for_a_piece_that_nothing_is_in_the_way_of() -> None:
    found = set(partitions(SHEET, [(5, 20, 4, 4)], [], Random(0), [Side(True, 15)]))
    assert [free for free in found if (0, 0, 20, 15) in free]
    assert not [free for free in found if (0, 15, 20, 15) in free], "something lies there"
    across = set(partitions(SHEET, [], [(5, 20, 4, 4)], Random(0), [Side(False, 10)]))
    assert [free for free in across if (10, 0, 10, 30) in free]


sides = st.lists(st.builds(Side, st.booleans(), st.integers(1, 25)), max_size=3)


@given(st.lists(boxes, max_size=4), st.lists(boxes, max_size=3), sides)
def test_free_rectangles_miss_everything_and_can_be_cut_free(
    kept: list[Box], flaws: list[Box], sides: list[Side]
) -> None:
    kept = [one for i, one in enumerate(kept) if not any(overlap(one, o) for o in kept[:i])]
    try:
        found = list(partitions(SHEET, kept, flaws, Random(0), sides))
    except NotGuillotine:
        with pytest.raises(NotGuillotine):
            slabs(SHEET, [(one, one) for one in kept])
        return
    for free in found:
        assert not any(overlap(one, other) for one, other in combinations([*free, *kept], 2))
        assert not any(overlap(one, flaw) for one in free for flaw in flaws)
        tree = slabs(SHEET, [(one, one) for one in (*free, *kept)])
        if not flaws:
            assert area(free) + area(kept) == 20 * 30
        assert tree is not None


def test_two_overlapping_flaws_cost_only_what_they_cover() -> None:
    free = next(partitions((0, 0, 4, 4), [], [(0, 0, 2, 2), (1, 1, 2, 2)], Random(0)))
    assert area(free) == 16 - 7
