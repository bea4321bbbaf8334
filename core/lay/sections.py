"""What every rectangle can hold at most, priced: the guillotine knapsack.

A rectangle holds one thing, or is cut across or along into two that hold what
they can. Only some cuts need a look: things pushed to the near edge lie at sums
of widths, and of two parts one may be taken at such a sum (N. Christofides and
C. Whitlock, Oper. Res. 25 (1977), doi:10.1287/opre.25.1.30; J. E. Beasley,
J. Oper. Res. Soc. 36 (1985), doi:10.1057/jors.1985.51). A segment of free length
makes the worth of a rectangle rise between two such widths; it rises no faster
than the dearest stack of strips (`slope`), so that the figure between two known
widths is never below the truth.

A band's segments are worth a price for their grade and a rate for their length.
With whole prices every figure is whole and exact.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from operator import add
from typing import NamedTuple, TypeAlias

from core.lay.scheme import Band, Scheme

Worth: TypeAlias = float  # or int, for a proof


class Tariff(NamedTuple):
    """A price for each size, and for each band a price a grade and a rate a step of length."""

    sizes: Sequence[Worth]
    grades: Sequence[Sequence[Worth]]
    rates: Sequence[Worth]


class Worths:
    """The greatest worth of every rectangle of a scheme at a tariff."""

    def __init__(self, scheme: Scheme, tariff: Tariff, tiny: Worth = 0) -> None:
        self.scheme, self.tariff, self.tiny = scheme, tariff, tiny
        self.longest = scheme.longest
        self.slope = self._slopes()
        self.widths = [0]
        self.rows: dict[int, list[Worth]] = {0: [0] * (self.longest + 1)}
        self.uncut: dict[int, list[int]] = {0: []}
        self._fill()

    def of(self, across: int, along: int) -> Worth:
        """What a rectangle holds at most."""
        known = self.floor(across)
        worth = self.rows[known][along]
        if across > known and across >= self.scheme.least_across:
            worth += (across - known) * self.slope[along]
        return worth

    def floor(self, across: int) -> int:
        """The greatest width that is looked at and not above `across`."""
        return self.widths[bisect_right(self.widths, across) - 1]

    def _slopes(self) -> list[Worth]:
        """What one more step of width is worth, by length along."""
        slopes: list[Worth] = [0] * (self.longest + 1)
        rates = [
            (band.rise, rate)
            for band, rate in zip(self.scheme.bands, self.tariff.rates, strict=True)
            if band.rise and rate > 0
        ]
        for along in range(1, self.longest + 1):
            slopes[along] = max(
                [slopes[along - 1]]
                + [slopes[along - rise] + rate for rise, rate in rates if rise <= along]
            )
        return slopes

    def _fill(self) -> None:
        useful: list[int] = []
        last_whole: list[Worth] = []
        last = self.rows[0]
        for width in self.scheme.widths:
            whole = self._single(width)
            for one in useful:
                rest = width - one
                if rest <= 0:
                    break
                if rest < one and rest in self.scheme.sums:
                    continue
                known = self.floor(rest)
                if known:
                    whole = list(map(max, whole, map(add, self.rows[one], self._row(rest, known))))
            if whole == last_whole:
                row, self.uncut[width] = last, self.uncut[self.widths[-1]]
            else:
                row, self.uncut[width] = self._stacked(whole)
            if row != last and width in self.scheme.sums:
                useful.append(width)
            self.rows[width] = row
            self.widths.append(width)
            last, last_whole = row, whole

    def _row(self, width: int, known: int) -> list[Worth]:
        row = self.rows[known]
        more = width - known
        if not more or width < self.scheme.least_across:
            return row
        return [worth + more * slope for worth, slope in zip(row, self.slope, strict=True)]

    def _single(self, width: int) -> list[Worth]:
        """The dearest single thing at most so wide, by its length along; not filled up."""
        row: list[Worth] = [0] * (self.longest + 1)
        for size, across, along in self.scheme.items:
            if across <= width:
                row[along] = max(row[along], self.tariff.sizes[size])
        for number, band in enumerate(self.scheme.bands):
            if band.rise and band.least <= width and band.rise <= self.longest:
                row[band.rise] = max(row[band.rise], self.segment(number, width))
            if band.breadth and band.breadth <= width:
                for along in range(band.least, self.longest + 1):
                    row[along] = max(row[along], self.segment(number, along))
        return row

    def segment(self, number: int, length: int) -> Worth:
        """What the best segment of a band is worth, at most so long."""
        return max(worth for worth, _ in self.grades(number, length))

    def grades(self, number: int, length: int) -> list[tuple[Worth, int]]:
        """The worth of a segment at most so long, by grade."""
        band: Band = self.scheme.bands[number]
        prices, rate = self.tariff.grades[number], self.tariff.rates[number]
        return [
            (prices[grade] + rate * min(length, band.ends[grade]), grade)
            for grade, start in enumerate(band.starts)
            if start <= length
        ]

    def _stacked(self, whole: list[Worth]) -> tuple[list[Worth], list[int]]:
        """The best of rectangles one behind the other, and the lengths that one alone does best."""
        row: list[Worth] = [0] * (self.longest + 1)
        dear: list[tuple[int, Worth]] = []
        best: Worth = 0
        tiny = self.tiny
        for along in range(1, self.longest + 1):
            for length, worth in dear:
                total = row[along - length] + worth
                if total > best:
                    best = total
            if whole[along] > best + tiny:
                best = whole[along]
                dear.append((along, best))
            row[along] = best
        return row, [along for along, _ in dear]
