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
    """A crosswise segment of any length from `least` to `most`: worth `rate` × length − `off`.

    Where it leaves no room for another (longer than `alone`) it is worth `more`
    for each unit of the whole `width` instead of its length. One such is enough
    in a bar: of two, the dearer may take the other's length until it is a whole
    run, which counts among the items.
    """

    rate: int
    off: int
    least: int
    most: int
    more: int
    alone: int
    width: int

    def worth(self, length: int) -> int:
        if length < self.least:
            return 0
        length = min(length, self.most)
        row = self.width if length > self.alone else length
        return max(0, self.rate * length + self.more * row - self.off)


class Places(NamedTuple):
    """Segments by the place that they take: so much for each, of which a row has `per_row`.

    A segment longer than `alone` takes all places of its row.
    """

    price: int
    least: int
    alone: int
    per_row: int

    def worth(self, length: int) -> int:
        places = self.per_row if length > self.alone else length // self.least
        return self.price * min(places, self.per_row)


def dearest_bar(
    width: int, items: Sequence[Across], fillers: Sequence[Filler], places: Sequence[Places] = ()
) -> int:
    """The highest price that a bar of this width can fetch, or a figure above it."""
    useful = _distinct(width, [i for i in items if i.width <= width and i.price > 0])
    totals = {0: 0}
    for item in useful:
        totals = _with(totals, item, width)
        if len(totals) > MOST_WIDTHS:
            loose = _loose(width, useful, fillers)
            return loose + max((p.price * p.per_row for p in places), default=0)
    return max(
        price
        + max((filler.worth(width - taken) for filler in fillers), default=0)
        + max((place.worth(width - taken) for place in places), default=0)
        for taken, price in totals.items()
    )


def _distinct(width: int, items: Sequence[Across]) -> list[Across]:
    """Of things equally wide that fill a bar alone, only the dearest."""
    few = [item for item in items if not _fills(item, width)]
    many: dict[int, Across] = {}
    for item in items:
        if _fills(item, width) and item.price > many.get(item.width, item._replace(price=0)).price:
            many[item.width] = item
    return few + list(many.values())


def _fills(item: Across, width: int) -> bool:
    return item.copies >= width // item.width


def _with(totals: dict[int, int], item: Across, width: int) -> dict[int, int]:
    """The best price for every total width, with up to `copies` of the item added."""
    grown = dict(totals)
    if _fills(item, width):
        for taken in sorted(totals):
            price = totals[taken] + item.price
            while (taken := taken + item.width) <= width and grown.get(taken, -1) < price:
                grown[taken] = price
                price += item.price
        return grown
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
    return max(best, *(width * _per_unit(filler) for filler in fillers), 0)


def _per_unit(filler: Filler) -> int:
    """No unit of a segment's length is worth more."""
    return filler.rate + -(-filler.more * filler.width // max(1, filler.alone))
