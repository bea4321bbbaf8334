"""Spans on a ring, held against sets of single places."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from core.edge.spans import Span, Spans, both, moved, on_ring, spread

RING = 24
INTERVALS = st.lists(
    st.tuples(st.integers(-30, 50), st.integers(0, 26)).map(lambda pair: (pair[0], sum(pair))),
    max_size=4,
)


def places(spans: Spans | list[Span]) -> set[int]:
    """The whole places, the ring's end being its start."""
    return {place % RING for start, end in spans for place in range(start, end + 1)}


@given(INTERVALS)
def test_intervals_come_onto_the_ring(intervals: list[Span]) -> None:
    spans = on_ring(intervals, RING)
    assert places(spans) == places(intervals)
    assert all(0 <= start <= end <= RING for start, end in spans)
    assert list(spans) == sorted(spans)


@given(INTERVALS, st.integers(-60, 60))
def test_moving_moves_every_place(intervals: list[Span], by: int) -> None:
    spans = on_ring(intervals, RING)
    assert places(moved(spans, by, RING)) == {(place + by) % RING for place in places(spans)}


@given(INTERVALS, INTERVALS)
def test_both_are_the_places_in_both(first: list[Span], second: list[Span]) -> None:
    one, other = on_ring(first, RING), on_ring(second, RING)
    assert places(both(one, other)) == places(one) & places(other)


@given(INTERVALS, st.integers(0, 9), st.integers(0, 9))
def test_spreading_gives_the_places_that_lead_there(
    intervals: list[Span], back: int, more: int
) -> None:
    spans = on_ring(intervals, RING)
    on = back + more
    there = places(spans)
    expected = {
        place
        for place in range(RING)
        if any((place + move) % RING in there for move in range(back, on + 1))
    }
    assert places(spread(spans, back, on, RING)) == expected
