"""Price lists for bars, and what they show.

Area is the price list "as wide as it is". The others are dual-feasible
functions, which see that two wide pieces do not lie side by side: S. P. Fekete
and J. Schepers, "New classes of fast lower bounds for bin packing problems",
Math. Program. 91 (2001), doi:10.1007/s101070100243. A run counts at the division
that is worth the least (`core.lay.division`).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from fractions import Fraction

from core.lay.bars import Across, Bar, dearest_bar
from core.lay.division import least_worth
from core.lay.needs import Needs, Rectangles, Shape
from core.lay.tariff import Step, Tariff, Worth

# Fekete and Schepers' u(k) for these k.
DIVISORS = range(1, 7)
# Only so many widths are tried as thresholds: prices beyond seldom add anything.
MOST_EDGES = 12
# Divisions of a run that are gone through at ready prices, which have few steps.
FEW_DIVISIONS = 60


def least_by_prices(needs: Needs, width: int, known: int) -> Fraction:
    """The length along of a sheet `width` wide that the needs take, whatever the lay."""
    return max(
        (least_at(needs, prices, width, known) for prices in price_lists(needs, width)),
        default=Fraction(0),
    )


def least_at(
    needs: Needs, tariff: Tariff, width: int, along: int, divisions: int = FEW_DIVISIONS
) -> Fraction:
    """The length that the needs take at these prices, with no single thing above `along`.

    The prices must be whole numbers. So many `divisions` of each run are gone through.
    """
    worth = sum(_worth(things, tariff) * things.copies for things in needs.rectangles)
    worth += sum(least_worth(run, tariff, divisions) * run.copies for run in needs.lengths)
    for hold in needs.boards:
        if worth <= 0:
            return Fraction(0)
        worth -= hold.along * dearest(needs, tariff, hold.across, hold.longest).worth
    if worth <= 0:
        return Fraction(0)
    most = dearest(needs, tariff, width, along).worth
    return Fraction(int(worth), int(most)) if most else Fraction(along + 1)


def dearest(needs: Needs, tariff: Tariff, width: int, along: int) -> Bar:
    """The dearest bar so wide, with things up to `along` long; items as in `items_in`."""
    items = [
        Across(across, tariff.of_width(across), n) for across, n in items_in(needs, width, along)
    ]
    return dearest_bar(width, items, tariff, shortest_in(needs, along))


def items_in(needs: Needs, width: int, along: int) -> list[tuple[int, int]]:
    """The widths of single things and lengthwise strips in a bar, and how many it can have."""
    items: Counter[int] = Counter()
    for things in needs.rectangles:
        for across, length in things.shapes:
            if across <= width and length <= along:
                items[across] += things.copies
    for run in needs.lengths:
        if run.lengthwise and run.strip <= width and run.shortest <= along:
            items[run.strip] += width // run.strip
    return [(across, min(copies, width // across)) for across, copies in items.items() if copies]


def shortest_in(needs: Needs, along: int) -> int | None:
    """The shortest segment that may lie across a bar; None if none does."""
    runs = (run for run in needs.lengths if run.crosswise and run.strip <= along)
    return min((run.shortest for run in runs), default=None)


def alone(needs: Needs, width: int) -> int:
    """A segment longer than this has its bar for itself."""
    widest = max([width, *(hold.across for hold in needs.boards)])
    shortest = min((run.shortest for run in needs.lengths if run.crosswise), default=widest)
    return max(0, widest - shortest)


def _worth(things: Rectangles, tariff: Tariff) -> Worth:
    return min(tariff.of_width(across) * along for across, along in things.shapes)


def price_lists(needs: Needs, width: int) -> Iterator[Tariff]:
    """Price lists worth trying."""
    shapes: list[Shape] = [shape for things in needs.rectangles for shape in things.shapes]
    lists = list(_for_lengths(needs, width))
    yield from plain_lists(needs, width)
    edges = {across for across, _ in shapes if across <= width}
    edges |= {run.strip for run in needs.lengths if run.lengthwise}
    for edge in sorted(edges)[-MOST_EDGES:]:
        yield Tariff(_counted(edge))
        if 2 * edge <= width:
            yield from (tariff._replace(of_width=_threshold(width, edge)) for tariff in lists)
    for k in DIVISORS:
        yield from (_times(tariff, k)._replace(of_width=_divided(width, k)) for tariff in lists)
    if shapes and needs.lengths:
        yield from lists


def plain_lists(needs: Needs, width: int) -> Iterator[Tariff]:
    """The few in which a piece is worth its width."""
    yield from (tariff._replace(of_width=_plain) for tariff in _for_lengths(needs, width))


def _for_lengths(needs: Needs, width: int) -> Iterator[Tariff]:
    """The ways to price segments: by length, by the row, by the place that they take in it."""
    if not any(run.crosswise for run in needs.lengths):
        yield Tariff(_nothing)
        return
    most = alone(needs, width)
    shortest = max(1, min(run.shortest for run in needs.lengths if run.crosswise))
    per_row = max(1, (most + shortest) // shortest)
    yield Tariff(_nothing, rate=1)
    yield Tariff(_nothing, shared=1, alone=most, steps=(Step(most, shortest),))
    places = [
        Step(place * shortest - 1, 1) for place in range(1, per_row) if place * shortest <= most
    ]
    yield Tariff(_nothing, alone=most, steps=(*places, Step(most, per_row - len(places))))


def _times(tariff: Tariff, k: int) -> Tariff:
    steps = tuple(Step(step.above, k * step.price) for step in tariff.steps)
    return tariff._replace(rate=k * tariff.rate, shared=k * tariff.shared, steps=steps)


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
