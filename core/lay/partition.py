"""A sheet cut edge to edge round what has its place: the rectangles that are left free.

What is *kept* (pinned, or holding a motif) must come out whole; a *flaw* only has
to stay out of what is left free, and may be cut through. A cut along an edge of
something kept or flawed is always enough: if any edge-to-edge cut misses all that
is kept, so does one that is moved until it touches something.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import chain
from random import Random
from typing import NamedTuple, TypeAlias

from core.lay.slabs import Box, Measure, NotGuillotine

# So many partitions are made at random, after those that usually serve.
AT_RANDOM = 6


class Chance(NamedTuple):
    """A cut that could be made next: crosswise or not, where, and the free area it leaves."""

    crosswise: bool
    at: Measure
    freed: Measure


Choice: TypeAlias = Callable[[list[Chance]], Chance]


class Side(NamedTuple):
    """The length of a piece along the sheet, or across it, for which room could be kept."""

    along: bool
    length: Measure


def partitions(
    box: Box, kept: Sequence[Box], flaws: Sequence[Box], rng: Random, sides: Sequence[Side] = ()
) -> Iterator[tuple[Box, ...]]:
    """Different sets of free rectangles; raises `NotGuillotine` if what is kept comes not free.

    After those that leave most free come some with a whole end or edge of the sheet left
    for a piece with one of these sides, where nothing is in the way.
    """
    seen: set[tuple[Box, ...]] = set()
    for free in map(tuple, map(sorted, _each(box, kept, flaws, rng, sides))):
        if free not in seen:
            seen.add(free)
            yield free


def _each(
    box: Box, kept: Sequence[Box], flaws: Sequence[Box], rng: Random, sides: Sequence[Side]
) -> Iterator[Iterator[Box]]:
    choices: list[Choice] = [
        lambda cuts: max(cuts, key=lambda cut: (cut.freed, cut.crosswise, -cut.at)),
        lambda cuts: max(cuts, key=lambda cut: (cut.crosswise, cut.freed, -cut.at)),
        lambda cuts: max(cuts, key=lambda cut: (not cut.crosswise, cut.freed, -cut.at)),
    ]
    for choice in choices:
        yield _free(box, kept, flaws, choice)
    for _ in range(AT_RANDOM):
        yield _free(box, kept, flaws, partial(_any, rng))
    for band, rest in _bands(box, (*kept, *flaws), sides):
        yield chain([band], _free(rest, kept, flaws, choices[0]))


def _bands(box: Box, things: Sequence[Box], sides: Sequence[Side]) -> Iterator[tuple[Box, Box]]:
    """Ends and edges of the sheet that a side just fits in and nothing lies on, each with the rest.

    Of a sheet that nothing lies on there are none: it is free already.
    """
    for side in sides if things else ():
        low, size = (box[1], box[3]) if side.along else (box[0], box[2])
        if side.length < size:
            near, rest = _halves(box, low + side.length, crosswise=side.along)
            before, far = _halves(box, low + size - side.length, crosswise=side.along)
            for band, other in ((near, rest), (far, before)):
                if not any(overlap(band, thing) for thing in things):
                    yield band, other


def _any(rng: Random, cuts: list[Chance]) -> Chance:
    return rng.choice(cuts)


def _free(box: Box, kept: Sequence[Box], flaws: Sequence[Box], choice: Choice) -> Iterator[Box]:
    kept = [one for one in kept if overlap(one, box)]
    flaws = [one for one in flaws if overlap(one, box)]
    if not kept and not flaws:
        yield box
        return
    if len(kept) == 1 and kept[0] == box:
        return
    chances = list(_chances(box, kept, flaws))
    if not chances and kept:
        raise NotGuillotine(f"no edge-to-edge cut through {box} misses all that has its place")
    if chances:
        cut = choice(chances)
        for half in _halves(box, cut.at, crosswise=cut.crosswise):
            yield from _free(half, kept, flaws, choice)


def _chances(box: Box, kept: Sequence[Box], flaws: Sequence[Box]) -> Iterator[Chance]:
    """Cuts inside the box along the edges of things, through nothing that is kept."""
    for axis in (0, 1):
        low, high = box[axis], box[axis] + box[axis + 2]
        edges = {edge for one in (*kept, *flaws) for edge in (one[axis], one[axis] + one[axis + 2])}
        for at in sorted(edge for edge in edges if low < edge < high):
            if not any(one[axis] < at < one[axis] + one[axis + 2] for one in kept):
                halves = _halves(box, at, crosswise=axis == 1)
                empty = [
                    half[2] * half[3]
                    for half in halves
                    if not any(overlap(half, one) for one in (*kept, *flaws))
                ]
                yield Chance(axis == 1, at, max(empty, default=0))


def _halves(box: Box, at: Measure, *, crosswise: bool) -> tuple[Box, Box]:
    x, y, across, along = box
    if crosswise:
        return (x, y, across, at - y), (x, at, across, y + along - at)
    return (x, y, at - x, along), (at, y, x + across - at, along)


def overlap(one: Box, other: Box) -> bool:
    """Whether the interiors meet; boxes that only touch do not overlap."""
    return all(
        one[axis] < other[axis] + other[axis + 2] and other[axis] < one[axis] + one[axis + 2]
        for axis in (0, 1)
    )
