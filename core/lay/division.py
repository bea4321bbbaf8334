"""How a run is divided where that is worth the least: what it costs at any tariff.

Each segment lies in a *reach*: lengths between which its worth rises evenly. Of two
segments inside their reaches, one may grow and the other shrink without loss, so
that all but one are as short or as long as their reach allows; that one makes up
the demand. Such divisions are gone through, those that are dear for what they add
last, and left where no better one can follow.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from math import gcd
from typing import NamedTuple

from core.lay.needs import Lengths
from core.lay.tariff import Step, Tariff, Worth

# After so many divisions the looser figure is taken that no division goes below.
MOST_DIVISIONS = 400
# A run of more segments than this at their longest is not gone through at all.
MOST_SEGMENTS = 24


class Reach(NamedTuple):
    """Segments of `least` to `most`: the shortest is worth `worth`, each unit more `rise`."""

    least: int
    most: int
    worth: Worth
    rise: Worth
    lengthwise: bool

    def of(self, length: int) -> Worth:
        return self.worth + self.rise * (length - self.least)


class Segment(NamedTuple):
    """One segment of a division."""

    length: int
    lengthwise: bool
    worth: Worth


class Division(NamedTuple):
    """What a run is worth at least, and a division that is worth so little (or nearly)."""

    worth: Worth
    segments: tuple[Segment, ...]


def least_division(run: Lengths, tariff: Tariff, most: int = MOST_DIVISIONS) -> Division:
    """The division of a run that is worth the least; `worth` is never above the truth."""
    return _Divider(run, list(_reaches(run, tariff)), most).least()


def least_worth(run: Lengths, tariff: Tariff, most: int = MOST_DIVISIONS) -> int:
    """What a run is worth at least, at prices in whole numbers.

    It is remembered, since many tariffs differ in the prices of pieces only.
    """
    price = int(tariff.of_width(run.strip)) if run.lengthwise else 0
    prices = [int(tariff.rate), int(tariff.shared), *(int(step.price) for step in tariff.steps)]
    scale = gcd(price, *prices) or 1
    rate, shared, *steps = (one // scale for one in prices)
    above = tuple(step.above for step in tariff.steps)
    least = _least_worth(run, price // scale, rate, shared, tariff.alone, above, tuple(steps), most)
    return scale * least


@lru_cache(maxsize=4096)
def _least_worth(
    run: Lengths,
    price: int,
    rate: int,
    shared: int,
    alone: int,
    above: tuple[int, ...],
    steps: tuple[int, ...],
    most: int,
) -> int:
    tariff = Tariff(lambda _: price, rate, shared, alone, tuple(map(Step, above, steps)))
    return int(least_division(run, tariff, most).worth)


def _reaches(run: Lengths, tariff: Tariff) -> Iterator[Reach]:
    least = min(run.least, run.needs)
    if run.crosswise:
        starts = [start for start in tariff.starts(least) if start <= run.widest]
        for start, following in pairwise([*starts, run.widest + 1]):
            worth = run.strip * tariff.of_length(start)
            yield Reach(start, following - 1, worth, run.strip * tariff.slope(start), False)
    if run.lengthwise and least <= run.longest:
        price = tariff.of_width(run.strip)
        yield Reach(least, run.longest, least * price, price, True)


class _Divider:
    """The divisions of one run; the best so far."""

    def __init__(self, run: Lengths, reaches: list[Reach], most: int) -> None:
        self.run, self.reaches = run, reaches
        ends = {
            _segment(reach, length) for reach in reaches for length in (reach.least, reach.most)
        }
        useful = [end for end in ends if end.length > run.loss and end.length >= run.least]
        self.ends = _undominated(useful)
        gains = [(end.worth, end.length - run.loss) for end in self.ends]
        self.cheapest = min((worth / gain for worth, gain in gains), default=0.0)
        self.left = most
        self.best = Division(0, ())

    def least(self) -> Division:
        alone = self._last(self.run.needs, self.run.needs)
        joined = self._last(self.run.demand + self.run.loss, self.run.least)
        firsts = [Division(one.worth, (one,)) for one in (alone, joined) if one is not None]
        if not firsts and not self.ends:
            return Division(0, ())
        self.best = min(firsts) if firsts else self._of_the_cheapest()
        longest = max((end.length - self.run.loss for end in self.ends), default=self.run.demand)
        if self.run.demand > MOST_SEGMENTS * longest:
            self.left = -1
        else:
            self._add(0, self.run.demand, 0, ())
        if self.left < 0:
            return Division(min(self.best.worth, self._floor(self.run.demand)), self.best.segments)
        return self.best

    def _of_the_cheapest(self) -> Division:
        end = min(self.ends, key=lambda end: end.worth / (end.length - self.run.loss))
        count = -(-self.run.demand // (end.length - self.run.loss))
        return Division(count * end.worth, (end,) * count)

    def _floor(self, demand: int) -> Worth:
        """No division of so much is worth less, whole numbers or not."""
        return int(self.cheapest * demand * (1 - 1e-9))

    def _add(self, first: int, demand: int, worth: Worth, so_far: tuple[Segment, ...]) -> None:
        """All divisions that go on with the ends from `first` on."""
        self.left -= 1
        if self.left < 0:
            return
        last = self._last(demand + self.run.loss, self.run.least) if so_far else None
        if last is not None and worth + last.worth < self.best.worth:
            self.best = Division(worth + last.worth, (*so_far, last))
        for place in range(first, len(self.ends)):
            end = self.ends[place]
            left = demand - (end.length - self.run.loss)
            total = worth + end.worth
            if left <= 0:
                if total < self.best.worth:
                    self.best = Division(total, (*so_far, end))
            elif total + self._floor(left) < self.best.worth:
                self._add(place, left, total, (*so_far, end))

    def _last(self, length: int, least: int) -> Segment | None:
        """The segment of least worth that is `length` or more, and `least` or more."""
        length = max(length, least)
        segments = [
            _segment(reach, max(length, reach.least))
            for reach in self.reaches
            if length <= reach.most
        ]
        return min(segments, key=lambda segment: segment.worth, default=None)


def _segment(reach: Reach, length: int) -> Segment:
    return Segment(length, reach.lengthwise, reach.of(length))


def _undominated(ends: Sequence[Segment]) -> list[Segment]:
    """Without ends that are shorter and no cheaper than another; the cheapest a unit first."""
    kept: list[Segment] = []
    for end in sorted(ends, key=lambda end: (-end.length, end.worth)):
        if not kept or end.worth < kept[-1].worth:
            kept.append(end)
    return sorted(kept, key=lambda end: end.worth / end.length)
