"""What no lay can go below: the least length of bolt, by priced bars.

For any prices, the bolt's length is at least (the worth of all things, less the
most that the pieces on hand can hold) ÷ (the dearest bar of the bolt): see
`core.lay.bars`. Area is the price list "as wide as it is". The other lists are
dual-feasible functions, which see that two wide pieces do not lie side by side:
S. P. Fekete and J. Schepers, "New classes of fast lower bounds for bin packing
problems", Math. Program. 91 (2001), doi:10.1007/s101070100243.

Things pushed towards the straightened end rest on each other, so the length
used is a sum of their lengths along; where no segment may take any length it
likes, the bound rises to the next such sum (N. Christofides and C. Whitlock,
Oper. Res. 25 (1977), doi:10.1287/opre.25.1.30).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from math import ceil

from core.lay.bars import Across, Filler, dearest_bar
from core.lay.ticks import Size, Strip, Task

Price = Callable[[int], int]
# Fekete and Schepers' u(k) for these k.
DIVISORS = range(1, 7)


def least_along(task: Task, known: int) -> Fraction:
    """A length of bolt (ticks) that no lay goes below; `known` is what some lay uses.

    Never above the least possible; where `known` is the least, at most that.
    """
    if known == 0:
        return Fraction(0)
    bound = max(
        (_by_prices(task, price, rate, known) for price, rate in _price_lists(task)),
        default=Fraction(0),
    )
    bound = max(bound, Fraction(_longest(task)))
    return min(Fraction(known), _resting(task, bound, known))


def _price_lists(task: Task) -> Iterator[tuple[Price, int]]:
    """Price lists worth trying: a price for a width, and the rate of a run's length."""
    width = task.width
    yield _plain, 1
    shapes = {shape[0] for size in task.sizes for shape in size.shapes}
    for edge in sorted(w for w in shapes if 2 * w <= width):
        yield _threshold(width, edge), 1
    for k in DIVISORS:
        yield _divided(width, k), k
    for edge in sorted(shapes):
        yield _counted(edge), 0
    yield _free, 1


def _plain(width: int) -> int:
    return width


def _free(width: int) -> int:
    return 0


def _threshold(width: int, edge: int) -> Price:
    return lambda w: width if w > width - edge else (0 if w < edge else w)


def _counted(edge: int) -> Price:
    return lambda w: int(w >= edge)


def _divided(width: int, k: int) -> Price:
    def price(w: int) -> int:
        share, rest = divmod((k + 1) * w, width)
        return k * w if rest == 0 else share * width

    return price


def _by_prices(task: Task, price: Price, rate: int, known: int) -> Fraction:
    worths = [
        min(price(across) * along for across, along in _open_shapes(task, size))
        for size in task.sizes
    ]
    worth = sum(each * size.copies for each, size in zip(worths, task.sizes, strict=True))
    worth += sum(rate * max(0, s.demand) * s.strip * s.copies for s in task.strips)
    for board in task.boards:
        if worth <= 0:
            return Fraction(0)
        worth -= board.along * _dearest(task, price, rate, board.across, board.along)
    dearest = _dearest(task, price, rate, task.width, known)
    return Fraction(max(0, worth), dearest) if dearest else Fraction(0)


def _open_shapes(task: Task, size: Size) -> list[tuple[int, int]]:
    """The ways a piece may lie on some sheet."""
    widest = max([task.width, *(board.across for board in task.boards)])
    return [shape for shape in size.shapes if shape[0] <= widest] or list(size.shapes)


def _dearest(task: Task, price: Price, rate: int, width: int, along: int) -> int:
    """The dearest bar of a sheet this wide and this long."""
    items = []
    for size in task.sizes:
        for across, length in size.shapes:
            if length <= along:
                items.append(Across(across, price(across), size.copies))
    fillers = []
    for strip in task.strips:
        if rate and strip.demand > 0:
            items += _as_items(strip, rate, width, along)
            if strip.crosswise and strip.strip <= along:
                fillers.append(Filler(rate, strip.loss, strip.least))
    return dearest_bar(width, items, fillers)


def _as_items(strip: Strip, rate: int, width: int, along: int) -> Iterator[Across]:
    """A whole run in one row, and segments that lie along the cloth."""
    if strip.crosswise and strip.needs <= width and strip.strip <= along:
        yield Across(strip.needs, rate * strip.demand, width // strip.needs)
    if strip.lengthwise and along >= strip.least:
        longest = min(along, strip.needs)
        worth = ceil(Fraction(rate * strip.strip * (longest - strip.loss), longest))
        yield Across(strip.strip, worth, width // strip.strip)


def _longest(task: Task) -> int:
    """What the longest single thing takes of the bolt, if no piece on hand can hold it."""
    least = [
        min(along for across, along in size.shapes if across <= task.width)
        for size in task.sizes
        if any(across <= task.width for across, _ in size.shapes)
        and not any(_holds(task, across, along) for across, along in size.shapes)
    ]
    for strip in task.strips:
        if not strip.crosswise and not _holds(task, strip.strip, strip.least):
            least.append(strip.least)
        if not strip.lengthwise and not _holds(task, strip.least, strip.strip):
            least.append(strip.strip)
    return max(least, default=0)


def _holds(task: Task, across: int, along: int) -> bool:
    return any(across <= board.across and along <= board.along for board in task.boards)


def _resting(task: Task, bound: Fraction, known: int) -> Fraction:
    """The least sum of lengths along that is not below `bound`."""
    if task.free_lengthwise:
        return bound
    sums = 1
    whole = (1 << (known + 1)) - 1
    for size in task.sizes:
        for _, along in size.shapes:
            sums = _add(sums, along, size.copies, whole)
    for strip in task.strips:
        sums = _add(sums, strip.strip, known // strip.strip, whole)
    above = sums >> ceil(bound)
    if not above:
        return Fraction(known)
    return Fraction(ceil(bound) + (above & -above).bit_length() - 1)


def _add(sums: int, along: int, count: int, whole: int) -> int:
    """The set of sums (a bit for each) with up to `count` times `along` added."""
    step = 1
    while count:
        step = min(step, count)
        sums |= (sums << (along * step)) & whole
        count -= step
        step *= 2
    return sums
