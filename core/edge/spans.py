"""Spans: sets of places on a ring, in whole ticks, as sorted closed intervals.

A span (a, b) has 0 ≤ a ≤ b ≤ ring; one that goes past the ring's end is held as
two. Nothing here knows what a quilt is.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeAlias

Span: TypeAlias = tuple[int, int]
Spans: TypeAlias = tuple[Span, ...]


def on_ring(spans: Iterable[Span], ring: int) -> Spans:
    """Intervals of any whole numbers, brought onto the ring and merged.

    >>> on_ring([(-2, 3), (2, 5), (12, 13)], 10)
    ((0, 5), (8, 10))
    """
    pieces: list[Span] = []
    for start, end in spans:
        if end - start >= ring:
            return ((0, ring),)
        start, length = start % ring, end - start
        pieces.append((start, min(start + length, ring)))
        if start + length > ring:
            pieces.append((0, start + length - ring))
        if start == 0:
            pieces.append((ring, ring))
        if start + length == ring:
            pieces.append((0, 0))
    return _merged(pieces)


def moved(spans: Spans, by: int, ring: int) -> Spans:
    """The spans moved along the ring."""
    return on_ring(((start + by, end + by) for start, end in spans), ring)


def spread(spans: Spans, back: int, on: int, ring: int) -> Spans:
    """All places from which a move of `back` to `on` leads into the spans."""
    return on_ring(((start - on, end - back) for start, end in spans), ring)


def both(first: Spans, second: Spans) -> Spans:
    """The places in both.

    >>> both(((0, 5), (8, 9)), ((4, 8),))
    ((4, 5), (8, 8))
    """
    found: list[Span] = []
    i = j = 0
    while i < len(first) and j < len(second):
        start = max(first[i][0], second[j][0])
        end = min(first[i][1], second[j][1])
        if start <= end:
            found.append((start, end))
        if first[i][1] < second[j][1]:
            i += 1
        else:
            j += 1
    return tuple(found)


def _merged(pieces: Iterable[Span]) -> Spans:
    merged: list[Span] = []
    for start, end in sorted(pieces):
        if merged and start <= merged[-1][1]:
            merged[-1] = merged[-1][0], max(end, merged[-1][1])
        else:
            merged.append((start, end))
    return tuple(merged)
