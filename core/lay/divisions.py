"""The cheapest division of a run into segments, at prices for grades and lengths.

Within a grade length costs one rate, so that shifting length from one segment
to another of the run changes nothing until one of them is as short or as long
as its grade allows: all segments but one are. The rest is a knapsack (P. C.
Gilmore and R. E. Gomory, Oper. Res. 9 (1961), doi:10.1287/opre.9.6.849).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple, TypeAlias

from core.lay.scheme import Band, Scheme, demand_of

Worth: TypeAlias = float  # or int, for a proof


class Part(NamedTuple):
    """One segment of a division: its grade and length (steps)."""

    grade: int
    length: int


class Division(NamedTuple):
    """What a division costs, and its segments."""

    cost: Worth
    parts: tuple[Part, ...]


def cheapest(
    scheme: Scheme, run: int, band: Band, prices: Sequence[Worth], rate: Worth
) -> Division:
    """The division of a run that costs the least, or one that costs a little less than any."""
    strip = scheme.task.strips[run]
    step = scheme.step_across
    demand, loss, joined = demand_of(strip, step)
    single = demand + loss
    best: Division | None = None
    if single <= band.ends[-1]:
        for grade in range(len(band.starts)):
            if band.starts[grade] <= single <= band.ends[grade]:
                cost = prices[grade] + rate * single
                if best is None or cost < best.cost:
                    best = Division(cost, (Part(grade, single),))
    joint = _Knapsack(_ranges(band, joined, loss), prices, rate, loss).best(demand)
    if best is None or (joint is not None and joint.cost < best.cost):
        best = joint
    if best is None:
        raise ValueError(f"no segments make up {strip.name}")
    return best


def _ranges(band: Band, joined: int, loss: int) -> list[tuple[int, int, int]]:
    """Grade, shortest and longest for each grade that a joined segment can have."""
    ranges = []
    for grade, (start, end) in enumerate(zip(band.starts, band.ends, strict=True)):
        if end >= joined and end > loss:
            ranges.append((grade, max(start, joined), end))
    return ranges


class _Knapsack:
    def __init__(
        self,
        ranges: list[tuple[int, int, int]],
        prices: Sequence[Worth],
        rate: Worth,
        loss: int,
    ) -> None:
        self.loss = loss
        self.ranges = [(prices[grade], grade, low, high) for grade, low, high in ranges]
        self.rate = rate
        self.ends = {
            (grade, length): (price + rate * length, Part(grade, length))
            for price, grade, low, high in self.ranges
            for length in (low, high)
        }
        self.known: dict[int, tuple[Worth, Part]] = {}

    def best(self, demand: int) -> Division | None:
        if not self.ranges:
            return None
        for left in self._wanted(max(1, demand)):
            self.known[left] = self._last(left)
        parts = []
        left, cost = max(1, demand), self.known[max(1, demand)][0]
        while left > 0:
            part = self.known[left][1]
            parts.append(part)
            left -= part.length - self.loss
        return Division(cost, tuple(parts))

    def _wanted(self, demand: int) -> list[int]:
        """All rests of the demand that come up, the least first."""
        nets = {part.length - self.loss for _, part in self.ends.values()}
        found, waiting = {demand}, [demand]
        while waiting:
            left = waiting.pop()
            for net in nets:
                if left > net > 0 and left - net not in found:
                    found.add(left - net)
                    waiting.append(left - net)
        return sorted(found)

    def _last(self, left: int) -> tuple[Worth, Part]:
        """The cheapest first part when so much is left: one that does it all, or goes on."""
        ways: list[tuple[Worth, Part]] = []
        for price, grade, low, high in self.ranges:
            if high - self.loss >= left:
                length = max(low, left + self.loss)
                ways.append((price + self.rate * length, Part(grade, length)))
        for cost, part in self.ends.values():
            rest = left - (part.length - self.loss)
            if 0 < rest < left:
                ways.append((cost + self.known[rest][0], part))
        return min(ways)
