"""The most that a bar can hold: one line across the cloth, priced.

Cut any lay along a line from edge to edge across the cloth: the pieces and
segments that the line meets lie side by side. Give every piece a price per unit
of its width that it holds the line for; a *bar* is such a line, and the dearest
bar limits what a length of cloth can hold (G. Belov, V. Kartak, H. Rohling,
G. Scheithauer, "One-dimensional relaxations and LP bounds for orthogonal
packing", Int. Trans. Oper. Res. 16 (2009), doi:10.1111/j.1475-3995.2009.00713.x).

With prices in whole numbers the limit is exact.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple, TypeAlias

from core.lay.tariff import Tariff, Worth

# Beyond so many different bar widths a looser limit is taken, that needs no enumeration.
MOST_WIDTHS = 4000
# Of more segments than this in one bar, only their length counts.
MOST_SEGMENTS = 6


class Across(NamedTuple):
    """Something `width` wide of which up to `copies` lie in one bar, for `price` each."""

    width: int
    price: Worth
    copies: int


class Bar(NamedTuple):
    """What a bar is worth, how many of each item lie in it, and its segments' lengths."""

    worth: Worth
    counts: tuple[int, ...]
    segments: tuple[int, ...]


class Fill(NamedTuple):
    """Segments side by side, together `width` and `worth`; each unit more is worth `slope`."""

    width: int
    worth: Worth
    slope: Worth
    segments: tuple[int, ...]

    def within(self, room: int) -> Worth:
        """What they are worth where they have so much room."""
        return self.worth + self.slope * (room - self.width)


# For each total width the best worth; for each item, how many of it the best of a total takes.
Worths: TypeAlias = dict[int, Worth]
Taken: TypeAlias = list[dict[int, int]]


def dearest_bar(width: int, items: Sequence[Across], tariff: Tariff, least: int | None) -> Bar:
    """The dearest bar of this width, or a worth above it.

    Segments are `least` or longer; None where there are none.
    """
    fills = _fills(width, tariff, least)
    worths, taken = _totals(width, items)
    if len(worths) > MOST_WIDTHS:
        return Bar(_loose(width, items, fills), (), ())
    most: Worth = 0
    dearest: tuple[int, Fill] | None = None
    for total, worth in worths.items():
        room = width - total
        for fill in fills:
            if fill.width > room:
                break
            value = worth + fill.worth + fill.slope * (room - fill.width)
            if value > most:
                most, dearest = value, (total, fill)
    if dearest is None:
        return Bar(0, (), ())
    total, fill = dearest
    return Bar(most, _counts(items, taken, total), _stretched(fill, width - total))


def _totals(width: int, items: Sequence[Across]) -> tuple[Worths, Taken]:
    """The best worth for every total width; too many of them is the caller's to see."""
    worths: Worths = {0: 0}
    taken: Taken = []
    for item in items:
        if len(worths) > MOST_WIDTHS:
            break
        grown, counts = dict(worths), dict[int, int]()
        if item.width <= width and item.price > 0:
            for total, worth in worths.items():
                for count in range(1, 1 + min(item.copies, (width - total) // item.width)):
                    total += item.width
                    worth += item.price
                    known = grown.get(total)
                    if known is None or known < worth:
                        grown[total], counts[total] = worth, count
        worths = grown
        taken.append(counts)
    return worths, taken


def _counts(items: Sequence[Across], taken: Taken, total: int) -> tuple[int, ...]:
    """How many of each item the best of a total width takes."""
    counts = []
    for item, of_total in zip(reversed(items), reversed(taken), strict=True):
        counts.append(of_total.get(total, 0))
        total -= counts[-1] * item.width
    return tuple(reversed(counts))


def _fills(width: int, tariff: Tariff, least: int | None) -> list[Fill]:
    """Segments that may fill what is left of a bar, none first, the narrower before the wider."""
    empty = Fill(0, 0, 0, ())
    if least is None or least > width:
        return [empty]
    starts = [
        Fill(start, tariff.of_length(start), tariff.slope(start), (start,))
        for start in tariff.starts(least)
    ]
    if width // least > MOST_SEGMENTS:
        return [empty, _endless(starts, least)]
    return sorted([empty, *_sets(starts, empty, width)])


def _sets(starts: Sequence[Fill], so_far: Fill, width: int) -> Iterator[Fill]:
    """Every set of starts that has room, none narrower before a wider one."""
    for place, one in enumerate(starts):
        if so_far.width + one.width > width:
            break
        fill = Fill(
            so_far.width + one.width,
            so_far.worth + one.worth,
            max(so_far.slope, one.slope),
            (*so_far.segments, *one.segments),
        )
        yield fill
        yield from _sets(starts[place:], fill, width)


def _endless(starts: Sequence[Fill], least: int) -> Fill:
    """Segments without end, worth as much a unit as the dearest: above any real ones."""
    dearest = max(starts, key=lambda start: start.worth / start.width)
    rise = max(-(-dearest.worth // dearest.width), *(start.slope for start in starts))
    return Fill(least, rise * least, rise, (least,))


def _stretched(fill: Fill, room: int) -> tuple[int, ...]:
    """The lengths of the segments with what is left given to the shortest."""
    if not fill.segments:
        return ()
    first, *others = fill.segments
    return (first + room - fill.width, *others)


def _loose(width: int, items: Sequence[Across], fills: Sequence[Fill]) -> Worth:
    """A bar filled with fractions of the dearest thing for its width, and segments on top."""
    best = max((-(-width * item.price // item.width) for item in items), default=0)
    return best + max(fill.within(width) for fill in fills)
