"""The search behind the edge map, in whole ticks on a ring.

**Exact, not sampled.** Write u for the closing's place less the trim t, and c_k
for the way from there to join k. All that a distance D to the corners demands
are differences: u + c_k ≥ corner + D, u + c_k ≤ next corner − D, the same for
the closing with u + t, and bounds on t. So the largest D is half of a sum of
given lengths, and in ticks of half their greatest common measure it is a whole
number: halving the range between what can and what cannot be had ends at it.

Orders of unequal segments are tried depth first, and one is given up as soon as
its first joins alone cannot do better than the best so far.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from core.edge.spans import Spans, both, moved, on_ring, spread

MOST_TRIES = 4000  # orders begun; beyond this the best so far is kept and said to be that


@dataclass(frozen=True, slots=True)
class Ring:
    """An outline in ticks: its corners in order, and where the closing may be.

    A closing that is `given` stays there, however near to a corner; the joins alone are spread.
    """

    length: int
    corners: tuple[int, ...]
    allowed: Spans
    given: bool = False

    def clear_of(self, distance: int) -> Spans:
        """Places at least `distance` from every corner."""
        if not self.corners:
            return ((0, self.length),)
        gaps = ((start + distance, end - distance) for start, end in self.gaps)
        return on_ring((gap for gap in gaps if gap[0] <= gap[1]), self.length)

    def closings(self, distance: int) -> Spans:
        """Places for the closing at least `distance` from every corner, or the one given."""
        return self.allowed if self.given else both(self.clear_of(distance), self.allowed)

    @property
    def gaps(self) -> tuple[tuple[int, int], ...]:
        """From each corner to the next; the last goes past the ring's end."""
        following = (*self.corners[1:], self.corners[0] + self.length)
        return tuple(zip(self.corners, following, strict=True))

    def distance(self, place: int) -> int:
        """From a place to the nearest corner."""
        ways = ((place - corner) % self.length for corner in self.corners)
        return min(min(way, self.length - way) for way in ways)


@dataclass(frozen=True, slots=True)
class Strips:
    """The segments in ticks, `loss` at a join and `closing` both even; see `Chain`."""

    lengths: tuple[int, ...]
    loss: int
    closing: int
    least: int
    reorder: bool

    def joins(self, order: Sequence[int]) -> list[int]:
        """How far the join behind each of `order` lies past the untrimmed closing."""
        joins, sewn = [], -self.closing // 2
        for place in order:
            sewn += self.lengths[place]
            joins.append(sewn - self.loss // 2)
            sewn -= self.loss
        return joins


@dataclass(frozen=True, slots=True)
class Found:
    """The best: its least distance, the order, the untrimmed closing's place, and the trim."""

    distance: int
    order: tuple[int, ...]
    start: int
    trim: int


class Search:
    """All orders, starts and trims of `strips` round `ring`."""

    def __init__(self, ring: Ring, strips: Strips) -> None:
        self.ring, self.strips = ring, strips
        joins = len(strips.lengths) - 1
        used = ring.length + strips.closing + joins * strips.loss
        self.spare = sum(strips.lengths) - used
        self.tries = 0
        self.found: Found | None = None

    @property
    def proved(self) -> bool:
        """Whether every order was looked at, or given up for a reason."""
        return self.tries <= MOST_TRIES

    def run(self) -> Found | None:
        """The best of all orders; ties go to the order in which the segments were cut."""
        for order in self._orders():
            self.found = self._best_of(order) or self.found
            if self.found is not None and not self.ring.corners:
                break
        return self.found

    @property
    def _beat(self) -> int:
        """The least distance that would be better than the best so far."""
        return 0 if self.found is None else self.found.distance + 1

    def _orders(self) -> Iterator[tuple[int, ...]]:
        """Orders whose joins alone may be far enough from the corners."""
        lengths = self.strips.lengths
        if not self.strips.reorder or len(set(lengths)) == 1:
            yield tuple(range(len(lengths)))
            return
        yield from self._longer((), ((0, self.ring.length),))

    def _longer(self, begun: tuple[int, ...], starts: Spans) -> Iterator[tuple[int, ...]]:
        """All orders that begin so; `starts` are the places that the joins so far leave."""
        lengths = self.strips.lengths
        if len(begun) == len(lengths):
            yield begun
            return
        tried: set[int] = set()
        for place, length in enumerate(lengths):
            if place in begun or length in tried or not self.proved:
                continue
            tried.add(length)
            self.tries += 1
            order, left = (*begun, place), starts
            if len(order) < len(lengths):
                left = self._keeping(left, self.strips.joins(order)[-1], self._beat)
            if left:
                yield from self._longer(order, left)

    def _keeping(self, starts: Spans, join: int, distance: int) -> Spans:
        """Those of `starts` from which a join keeps its distance."""
        clear = self.ring.clear_of(distance)
        return both(starts, moved(clear, -join, self.ring.length))

    def _best_of(self, order: tuple[int, ...]) -> Found | None:
        """The best start and trim of one order, if it beats the best so far."""
        joins = self.strips.joins(order[:-1])
        trims = self._trims(joins)
        low = self._beat
        if trims is None or not self._starts(joins, trims, low):
            return None
        high = self.ring.length if self.ring.corners else low
        while low < high:
            middle = (low + high + 1) // 2
            if self._starts(joins, trims, middle):
                low = middle
            else:
                high = middle - 1
        first, last = self._starts(joins, trims, low)[0]
        start = (first + last) // 2
        return Found(low, order, start, self._trim(start, trims, low))

    def _trims(self, joins: Sequence[int]) -> tuple[int, int] | None:
        """What may be trimmed off the first segment: at least, at most."""
        if not joins:
            return 0, self.spare
        least = max(0, joins[-1] + self.strips.least - self.ring.length)
        most = min(self.spare, joins[0] - self.strips.least)
        return (least, most) if least <= most else None

    def _starts(self, joins: Sequence[int], trims: tuple[int, int], distance: int) -> Spans:
        """Places of the untrimmed closing from which all keep `distance` from the corners."""
        ring = self.ring
        starts = spread(ring.closings(distance), *trims, ring.length)
        for join in joins:
            if starts:
                starts = self._keeping(starts, join, distance)
        return starts

    def _trim(self, start: int, trims: tuple[int, int], distance: int) -> int:
        """The trim that brings the closing farthest from the corners; of equals the least."""
        ring = self.ring
        places = ring.closings(distance)
        reached = both(places, on_ring(((start + trims[0], start + trims[1]),), ring.length))
        ends = {place for span in reached for place in span}
        if not ring.corners:
            return min((end - start) % ring.length for end in ends)
        middles = {(first + last) // 2 % ring.length for first, last in ring.gaps}
        ends |= {m for m in middles if any(first <= m <= last for first, last in reached)}
        return min(
            ((place - start) % ring.length for place in ends),
            key=lambda trim: (-ring.distance((start + trim) % ring.length), trim),
        )
