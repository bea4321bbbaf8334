"""Price lists for bars, and what they show.

Area is the price list "as wide as it is". The others are dual-feasible
functions, which see that two wide pieces do not lie side by side: S. P. Fekete
and J. Schepers, "New classes of fast lower bounds for bin packing problems",
Math. Program. 91 (2001), doi:10.1007/s101070100243. A run is priced either by
what its segments add (length − loss) or by their whole length.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import NamedTuple

from core.lay.bars import Across, Filler, dearest_bar
from core.lay.needs import Lengths, Needs, Rectangles, Shape

# Fekete and Schepers' u(k) for these k.
DIVISORS = range(1, 7)
# Only so many widths are tried as thresholds: prices beyond seldom add anything.
MOST_EDGES = 12


class Prices(NamedTuple):
    """What a width is worth in a bar, a run's rate, and whether a run counts by whole length."""

    of_width: Callable[[int], int]
    rate: int
    whole: bool


def least_by_prices(needs: Needs, width: int, known: int) -> Fraction:
    """The length along of a sheet `width` wide that the needs take, whatever the lay."""
    return max(
        (_least(needs, prices, width, known) for prices in _price_lists(needs, width)),
        default=Fraction(0),
    )


def too_much(needs: Needs, width: int, along: int) -> bool:
    """Whether plain prices show that a sheet width × along, with the boards, is too small."""
    return any(_least(needs, prices, width, along) > along for prices in _plain_lists(needs))


def _least(needs: Needs, prices: Prices, width: int, along: int) -> Fraction:
    worth = sum(_worth(things, prices) * things.copies for things in needs.rectangles)
    worth += sum(_run_worth(run, prices) * run.copies for run in needs.lengths)
    for across, length in needs.boards:
        if worth <= 0:
            return Fraction(0)
        worth -= length * _dearest(needs, prices, across, length)
    if worth <= 0:
        return Fraction(0)
    dearest = _dearest(needs, prices, width, along)
    return Fraction(worth, dearest) if dearest else Fraction(along + 1)


def _worth(things: Rectangles, prices: Prices) -> int:
    return min(prices.of_width(across) * along for across, along in things.shapes)


def _run_worth(run: Lengths, prices: Prices) -> int:
    return _unit(run, prices) * (run.total if prices.whole else run.demand)


def _unit(run: Lengths, prices: Prices) -> int:
    """What a unit of the run's length is worth, whichever way it lies."""
    ways = [prices.rate * run.strip] if run.crosswise else []
    return min(ways + ([prices.of_width(run.strip)] if run.lengthwise else []))


def _dearest(needs: Needs, prices: Prices, width: int, along: int) -> int:
    """The dearest bar of a sheet this wide and this long."""
    items = [
        Across(across, prices.of_width(across), things.copies)
        for things in needs.rectangles
        for across, length in things.shapes
        if length <= along
    ]
    fillers = []
    for run in needs.lengths:
        items += _as_items(run, prices, width, along)
        if run.crosswise and run.strip <= along and prices.rate:
            loss = 0 if prices.whole else run.loss
            fillers.append(Filler(prices.rate, loss, run.least))
    return dearest_bar(width, items, fillers)


def _as_items(run: Lengths, prices: Prices, width: int, along: int) -> Iterator[Across]:
    """A whole run in one row, and segments that lie along the sheet."""
    loss = 0 if prices.whole else run.loss
    if not prices.whole and run.crosswise and run.needs <= width and run.strip <= along:
        yield Across(run.needs, prices.rate * (run.needs - loss), width // run.needs)
    if run.lengthwise and along >= run.least:
        longest = min(along, run.needs)
        worth = -(-_unit(run, prices) * (longest - loss) // longest)
        yield Across(run.strip, worth, width // run.strip)


def _price_lists(needs: Needs, width: int) -> Iterator[Prices]:
    """Price lists worth trying."""
    shapes: list[Shape] = [shape for things in needs.rectangles for shape in things.shapes]
    wholes = (False, True) if needs.lengths else (False,)
    yield from _plain_lists(needs)
    edges = {across for across, _ in shapes if across <= width}
    edges |= {run.strip for run in needs.lengths if run.lengthwise}
    for edge in sorted(edges)[-MOST_EDGES:]:
        yield Prices(_counted(edge), 0, False)
        if 2 * edge <= width:
            for whole in wholes:
                yield Prices(_threshold(width, edge), 1, whole)
    for k in DIVISORS:
        for whole in wholes:
            yield Prices(_divided(width, k), k, whole)
    if shapes and needs.lengths:
        for whole in wholes:
            yield Prices(_nothing, 1, whole)


def _plain_lists(needs: Needs) -> Iterator[Prices]:
    yield Prices(_plain, 1, whole=False)
    if needs.lengths:
        yield Prices(_plain, 1, whole=True)


def _plain(width: int) -> int:
    return width


def _nothing(width: int) -> int:
    return 0


def _counted(edge: int) -> Callable[[int], int]:
    return lambda w: int(w >= edge)


def _threshold(width: int, edge: int) -> Callable[[int], int]:
    return lambda w: width if w > width - edge else (0 if w < edge else w)


def _divided(width: int, k: int) -> Callable[[int], int]:
    def price(w: int) -> int:
        share, rest = divmod((k + 1) * w, width)
        return k * w if rest == 0 else share * width

    return price
