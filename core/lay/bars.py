"""The most that a bar can hold: one line across the cloth, priced.

Cut any lay along a line from edge to edge across the cloth: the pieces and
segments that the line meets lie side by side. Give every piece a price per unit
of its width that it holds the line for; a *bar* is such a line, and the dearest
bar limits what a length of cloth can hold (G. Belov, V. Kartak, H. Rohling,
G. Scheithauer, "One-dimensional relaxations and LP bounds for orthogonal
packing", Int. Trans. Oper. Res. 16 (2009), doi:10.1111/j.1475-3995.2009.00713.x).

Prices are whole numbers, so the limit is exact.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

# Beyond so many different bar widths a looser limit is taken, that needs no enumeration.
MOST_WIDTHS = 4000


class Across(NamedTuple):
    """Something `width` wide of which up to `copies` lie in one bar, for `price` each."""

    width: int
    price: int
    copies: int


class Filler(NamedTuple):
    """A crosswise segment of any length from `least`: worth `rate` × (length − loss)."""

    rate: int
    loss: int
    least: int

    def worth(self, length: int) -> int:
        return self.rate * (length - self.loss) if length >= self.least else 0


def dearest_bar(width: int, items: Sequence[Across], fillers: Sequence[Filler]) -> int:
    """The highest price that a bar of this width can fetch, or a figure above it."""
    useful = [item for item in items if item.width <= width and item.price > 0]
    totals = {0: 0}
    for item in useful:
        totals = _with(totals, item, width)
        if len(totals) > MOST_WIDTHS:
            return _loose(width, useful, fillers)
    return max(
        price + max((filler.worth(width - taken) for filler in fillers), default=0)
        if fillers
        else price
        for taken, price in totals.items()
    )


def _with(totals: dict[int, int], item: Across, width: int) -> dict[int, int]:
    """The best price for every total width, with up to `copies` of the item added."""
    grown = dict(totals)
    for taken, price in totals.items():
        for _ in range(min(item.copies, (width - taken) // item.width)):
            taken += item.width
            price += item.price
            if grown.get(taken, -1) < price:
                grown[taken] = price
    return grown


def _loose(width: int, items: Sequence[Across], fillers: Sequence[Filler]) -> int:
    """A bar filled with fractions of the dearest thing for its width."""
    best = max((-(-width * item.price // item.width) for item in items), default=0)
    return max(best, *(width * filler.rate for filler in fillers), 0)
