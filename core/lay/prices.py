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

from core.lay.bars import Across, Filler, Places, dearest_bar
from core.lay.needs import Lengths, Needs, Rectangles, Shape

# Fekete and Schepers' u(k) for these k.
DIVISORS = range(1, 7)
# Only so many widths are tried as thresholds: prices beyond seldom add anything.
MOST_EDGES = 12


class Rate(NamedTuple):
    """What a unit of a run's area is worth: by length, by what segments add, by rows.

    By rows, a segment that has its row for itself counts as the whole row. Last,
    what a segment is worth by the places that it takes in its row.
    """

    whole: int = 0
    net: int = 0
    rows: int = 0
    places: int = 0

    @property
    def by_length(self) -> int:
        return self.whole + self.net + self.rows


class Prices(NamedTuple):
    """What a width is worth in a bar, and the rate of each run."""

    of_width: Callable[[int], int]
    of_run: Callable[[Lengths], Rate]


def least_by_prices(needs: Needs, width: int, known: int) -> Fraction:
    """The length along of a sheet `width` wide that the needs take, whatever the lay."""
    return max(
        (least_at(needs, prices, width, known) for prices in price_lists(needs, width)),
        default=Fraction(0),
    )


def too_much(needs: Needs, width: int, along: int) -> bool:
    """Whether plain prices show that a sheet width × along, with the boards, is too small."""
    return any(least_at(needs, prices, width, along) > along for prices in _plain_lists(needs))


def least_at(needs: Needs, prices: Prices, width: int, along: int) -> Fraction:
    """The length that the needs take by these prices, with no single thing above `along`."""
    worth = sum(_worth(things, prices) * things.copies for things in needs.rectangles)
    worth += sum(_run_worth(run, prices) * run.copies for run in needs.lengths)
    for across, length, longest in needs.boards:
        if worth <= 0:
            return Fraction(0)
        worth -= length * _dearest(needs, prices, across, longest)
    if worth <= 0:
        return Fraction(0)
    dearest = _dearest(needs, prices, width, along)
    return Fraction(worth, dearest) if dearest else Fraction(along + 1)


def _worth(things: Rectangles, prices: Prices) -> int:
    return min(prices.of_width(across) * along for across, along in things.shapes)


def _run_worth(run: Lengths, prices: Prices) -> int:
    rate = _unit(run, prices)
    by_length = rate.whole * run.total + rate.net * run.demand + rate.rows * run.rows
    return by_length + rate.places * run.places


def _unit(run: Lengths, prices: Prices) -> Rate:
    """What a unit of the run's length is worth, whichever way it lies."""
    rate = Rate(*(each * run.strip for each in prices.of_run(run)))
    if not run.lengthwise:
        return rate
    price = prices.of_width(run.strip)
    if not run.crosswise:
        return Rate(whole=price)
    return Rate(*(min(each, price) for each in rate[:3]))


def _dearest(needs: Needs, prices: Prices, width: int, along: int) -> int:
    """The dearest bar of a sheet this wide and this long."""
    items = [
        Across(across, prices.of_width(across), things.copies)
        for things in needs.rectangles
        for across, length in things.shapes
        if length <= along
    ]
    fillers: list[Filler] = []
    places: list[Places] = []
    # Where a run may end within a bar, so may another that is too short to begin alone.
    ends = any(run.needs < width for run in needs.lengths if run.crosswise)
    for run in needs.lengths:
        items += _as_items(run, prices, width, along)
        rate = prices.of_run(run)
        if run.crosswise and run.strip <= along:
            fillers.append(_filler(run, rate, 0 if ends else run.least))
            if not run.lengthwise:
                places.append(_places(run, rate))
    return dearest_bar(width, items, fillers, places)


def _filler(run: Lengths, rate: Rate, least: int) -> Filler:
    by_length, off = rate.whole + rate.net, rate.net * run.loss
    return Filler(by_length, off, least, run.needs, rate.rows, run.alone, run.widest)


def _places(run: Lengths, rate: Rate) -> Places:
    return Places(rate.places, run.shortest, run.alone, run.per_row)


def _as_items(run: Lengths, prices: Prices, width: int, along: int) -> Iterator[Across]:
    """A whole run in one row, and segments that lie along the sheet."""
    rate = prices.of_run(run)
    if run.crosswise and run.needs <= width and run.strip <= along:
        price = _filler(run, rate, 0).worth(run.needs) + _places(run, rate).worth(run.needs)
        yield Across(run.needs, price, min(run.copies, width // run.needs))
    if run.lengthwise and along >= run.least:
        longest = min(along, run.needs)
        unit = _unit(run, prices)
        worth = (unit.whole + unit.rows) * longest + unit.net * (longest - run.loss)
        yield Across(run.strip, -(-worth // longest), width // run.strip)


def price_lists(needs: Needs, width: int) -> Iterator[Prices]:
    """Price lists worth trying."""
    shapes: list[Shape] = [shape for things in needs.rectangles for shape in things.shapes]
    rates = _rates(needs)
    yield from _plain_lists(needs)
    edges = {across for across, _ in shapes if across <= width}
    edges |= {run.strip for run in needs.lengths if run.lengthwise}
    for edge in sorted(edges)[-MOST_EDGES:]:
        yield Prices(_counted(edge), _same(Rate()))
        if 2 * edge <= width:
            for rate in rates:
                yield Prices(_threshold(width, edge), _same(rate))
    for k in DIVISORS:
        for rate in rates:
            yield Prices(_divided(width, k), _same(Rate(*(k * each for each in rate))))
    if shapes and needs.lengths:
        for rate in rates:
            yield Prices(_nothing, _same(rate))


def _plain_lists(needs: Needs) -> Iterator[Prices]:
    for rate in _rates(needs):
        yield Prices(_plain, _same(rate))


def _rates(needs: Needs) -> tuple[Rate, ...]:
    """The ways to rate runs, one at a time."""
    ways = (Rate(net=1), Rate(whole=1), Rate(rows=1), Rate(places=1))
    return ways if needs.lengths else (Rate(net=1),)


def _same(rate: Rate) -> Callable[[Lengths], Rate]:
    return lambda run: rate


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
