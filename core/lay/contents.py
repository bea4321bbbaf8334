"""What the dearest content of a rectangle is made of: the cuts behind a worth."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from core.lay.sections import Worth, Worths

# Two worths nearer than this are the same (prices are floats here).
NEAR = 1e-7


class Leaf(NamedTuple):
    """One thing in a rectangle at (x, y), in steps; `grade` is -1 for a piece.

    `kind` counts sizes for pieces and bands for segments. `across` and `along`
    are the thing's own, a segment's as long as the rectangle allows.
    """

    kind: int
    grade: int
    x: int
    y: int
    across: int
    along: int
    lengthwise: bool = False


def content(worths: Worths, across: int, along: int) -> tuple[Leaf, ...]:
    """The things in the dearest rectangle of this size."""
    return tuple(_Trace(worths).of(0, 0, across, along))


class _Trace:
    def __init__(self, worths: Worths) -> None:
        self.worths, self.scheme = worths, worths.scheme

    def of(self, x: int, y: int, across: int, along: int) -> Iterator[Leaf]:
        known = self.worths.floor(across)
        row = self.worths.rows[known]
        worth = row[along]
        if worth <= NEAR:
            return
        while along and row[along - 1] >= worth - NEAR:
            along -= 1
        leaf = self._single(x, y, known, across, along, worth)
        if leaf is not None:
            yield leaf
            return
        for first in range(1, along // 2 + 1):
            if row[first] + row[along - first] >= worth - NEAR:
                yield from self.of(x, y + along - first, across, first)
                yield from self.of(x, y, across, along - first)
                return
        yield from self._beside(x, y, known, across, along, worth)

    def _single(
        self, x: int, y: int, known: int, across: int, along: int, worth: Worth
    ) -> Leaf | None:
        for size, wide, long in self.scheme.items:
            price = self.worths.tariff.sizes[size]
            if wide <= known and long <= along and price >= worth - NEAR:
                return Leaf(size, -1, x, y, wide, long)
        for number, band in enumerate(self.scheme.bands):
            if band.rise and band.rise <= along and band.least <= known:
                best, grade = max(self.worths.grades(number, known))
                if best >= worth - NEAR:
                    return Leaf(number, grade, x, y, min(across, band.ends[-1]), band.rise)
            if band.breadth and band.breadth <= known and band.least <= along:
                best, grade = max(self.worths.grades(number, along))
                if best >= worth - NEAR:
                    length = min(along, band.ends[-1])
                    return Leaf(number, grade, x, y, band.breadth, length, lengthwise=True)
        return None

    def _beside(
        self, x: int, y: int, known: int, across: int, along: int, worth: Worth
    ) -> Iterator[Leaf]:
        """Two parts side by side; what is wider than known goes to the one that can use it."""
        for one in self.worths.widths[1:]:
            if one >= known:
                break
            if self.worths.of(one, along) + self.worths.of(known - one, along) >= worth - NEAR:
                yield from self.of(x, y, one, along)
                yield from self.of(x + one, y, across - one, along)
                return
        raise ArithmeticError(f"no content found for {known} × {along}")
