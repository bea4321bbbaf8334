"""What no lay can go below: the least length of bolt, by priced bars.

Whatever the prices, the worth of all things is at most what the pieces on hand
can hold and the bolt's length × its dearest bar (`core.lay.bars`). Bars may lie
across the cloth or along it: across, they see that two wide pieces do not lie
side by side; along, that only so many rows of strips lie one after the other.

Two more steps: things that are short along the cloth may be left out (the rest
needs its length all the same); and things pushed towards the straightened end
rest on each other, so that the bound rises to the next sum of lengths along
(`core.lay.sums`). Last, the room in which a sale unit less could be cut is asked
about, with the long things stood side by side (`core.lay.beside`).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from core.lay.beside import too_small
from core.lay.division import MOST_DIVISIONS
from core.lay.dual import best_prices
from core.lay.needs import Needs, across_view
from core.lay.prices import least_at, least_by_prices
from core.lay.sums import least_sum, settled
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
    for needs in _parts(settled(across_view(task, known))):
        least = max(least_by_prices(needs, task.width, known), Fraction(_longest(task, needs)))
        bound = max(bound, least_sum(needs, least, known))
    if bound >= known:
        return Fraction(known)
    return max(bound, _not_within(task, bound, known))


def raised(task: Task, bound: Fraction, known: int, rounds: int = ROUNDS) -> Fraction:
    """`bound` with the best prices that so many rounds of search find: slower, and stronger."""
    needs = settled(across_view(task, known))
    prices = best_prices(needs, task.width, known, rounds)
    least = least_at(needs, prices, task.width, known, MOST_DIVISIONS)
    bound = max(bound, least_sum(needs, least, known))
    if bound >= known:
        return Fraction(known)
    room = _less(task, known)
    if room < bound or not too_small(task, room, rounds):
        return bound
    return above(task, room, known)


def above(task: Task, room: int, known: int) -> Fraction:
    """The least length that a lay can have which does not fit `room`."""
    if task.free_lengthwise:
        return Fraction(room)
    return least_sum(across_view(task, known), Fraction(room + 1), known)


def _parts(needs: Needs) -> Iterator[Needs]:
    """All that is needed, then only what is at least so long along the cloth."""
    yield needs
    lengths = needs.lengths_along()
    if len(lengths) <= MOST_LENGTHS:
        for least in lengths[1:]:
            yield needs.at_least(least)


def _not_within(task: Task, bound: Fraction, known: int) -> Fraction:
    """The bound that bars along the cloth give, asked for the next length that buys less."""
    room = _less(task, known)
    if room < bound or not too_small(task, room):
        return bound
    return above(task, room, known)


def _less(task: Task, known: int) -> int:
    """The room to ask about: that of a sale unit less, and more where any length may come up."""
    room = task.room_in(task.bought(known) - task.cloth.sale_unit)
    return min(known, room + task.free_lengthwise)


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
