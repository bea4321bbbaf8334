"""What no lay can go below: the least length of bolt, by priced bars.

Whatever the prices, the worth of all things is at most what the pieces on hand
can hold and the bolt's length × its dearest bar (`core.lay.bars`). Bars may lie
across the cloth or along it: across, they see that two wide pieces do not lie
side by side; along, that only so many rows of strips lie one after the other.

Two more steps: things that are short along the cloth may be left out (the rest
needs its length all the same); and things pushed towards the straightened end
rest on each other, so that the length used is a sum of lengths along, and the
bound rises to the next such sum (N. Christofides and C. Whitlock, Oper. Res. 25
(1977), doi:10.1287/opre.25.1.30) unless segments of free length lie along it.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from core.lay.dual import best_prices
from core.lay.needs import Needs, across_view, turned_view
from core.lay.prices import least_at, least_by_prices, too_much
from core.lay.ticks import Task

# With more different lengths along than this, leaving out the short ones costs too much time.
MOST_LENGTHS = 8
# Bars made in the search for the best prices.
ROUNDS = 80


def least_along(task: Task, known: int) -> Fraction:
    """A length of bolt (ticks) that no lay goes below; `known` is what some lay uses.

    Never above the least possible. Takes a few milliseconds.
    """
    bound = Fraction(0)
    if not known:
        return bound
    for needs in _parts(across_view(task, known)):
        least = max(least_by_prices(needs, task.width, known), Fraction(_longest(task, needs)))
        bound = max(bound, _resting(task, needs, least, known))
    if bound >= known:
        return Fraction(known)
    return max(bound, _not_within(task, bound, known))


def raised(task: Task, bound: Fraction, known: int, rounds: int = ROUNDS) -> Fraction:
    """`bound` with the best prices that so many rounds of search find: slower, and stronger."""
    needs = across_view(task, known)
    prices = best_prices(needs, task.width, known, rounds)
    least = least_at(needs, prices, task.width, known)
    bound = max(bound, _resting(task, needs, least, known))
    if bound >= known:
        return Fraction(known)
    room = task.room_in(task.bought(known) - task.cloth.sale_unit)
    if room < bound:
        return bound
    turned = turned_view(task, room)
    prices = best_prices(turned, room, task.width, rounds)
    if least_at(turned, prices, room, task.width) <= task.width:
        return bound
    return above(task, room, known)


def above(task: Task, room: int, known: int) -> Fraction:
    """The least length that a lay can have which does not fit `room`."""
    if task.free_lengthwise:
        return Fraction(room)
    return _resting(task, across_view(task, known), Fraction(room + 1), known)


def _parts(needs: Needs) -> Iterator[Needs]:
    """All that is needed, then only what is at least so long along the cloth."""
    yield needs
    lengths = needs.lengths_along()
    if len(lengths) <= MOST_LENGTHS:
        for least in lengths[1:]:
            yield needs.at_least(least)


def _not_within(task: Task, bound: Fraction, known: int) -> Fraction:
    """The bound that bars along the cloth give, asked for the next length that buys less."""
    room = task.room_in(task.bought(known) - task.cloth.sale_unit)
    if room < bound or not too_much(turned_view(task, room), room, task.width):
        return bound
    return above(task, room, known)


def _longest(task: Task, needs: Needs) -> int:
    """What the longest single thing takes of the bolt, if no piece on hand can hold it."""
    least = [
        min(along for across, along in ways)
        for ways in needs.single_things()
        if ways and not any(_on_hand(task, *way) for way in ways)
    ]
    return max(least, default=0)


def _on_hand(task: Task, across: int, along: int) -> bool:
    return any(across <= board.across and along <= board.along for board in task.boards)


def _resting(task: Task, needs: Needs, bound: Fraction, known: int) -> Fraction:
    """The least sum of lengths along that is not below `bound`."""
    if needs.free_along:
        return bound
    sums = 1
    whole = (1 << (known + 1)) - 1
    for along, copies in needs.sums_along(known):
        sums = _add(sums, along, copies, whole)
    above = sums >> ceil(bound)
    if not above:
        return Fraction(known)
    return Fraction(ceil(bound) + (above & -above).bit_length() - 1)


def _add(sums: int, along: int, copies: int, whole: int) -> int:
    """The set of sums (a bit for each) with up to `copies` times `along` added."""
    step = 1
    while copies:
        step = min(step, copies)
        sums |= (sums << (along * step)) & whole
        copies -= step
        step *= 2
    return sums
