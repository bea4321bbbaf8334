"""Things of which no two lie one behind the other: what is beside them, and what is left.

Two things whose lengths together exceed the room lie in one section, and so do
all of a group of which that is true of any two. Edge-to-edge cuts leave the order
free in which sections, and the columns of a section, lie: the whole group may
stand on the straightened end, side by side. Beside it are *zones* of known width,
each as long as one thing of the group is longer than the next, and behind it is
the rest of the bolt. A single thing is such a group; so are, seen along, all
things wider than half the cloth.

Where nothing has room beside a group, its section can be cut out and the rest of
the bolt put together: a whole panel of a backing, or borders side by side.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

from core.lay.division import MOST_DIVISIONS
from core.lay.dual import best_prices
from core.lay.needs import Hold, Needs, Shape, across_view, turned_view, ways_that_fit
from core.lay.prices import FEW_DIVISIONS, least_at, plain_lists
from core.lay.sums import least_sum, settled
from core.lay.tariff import Tariff
from core.lay.ticks import Task


class Zoned(NamedTuple):
    """What is left to cut from the zones (among its boards) and from `along` ticks behind them."""

    needs: Needs
    along: int


def too_small(task: Task, room: int, rounds: int = 0) -> bool:
    """Whether it is shown that no lay fits `room` ticks of bolt.

    Asks plain prices, or the best prices that so many `rounds` find.
    """
    rest, left = without_sections(task, room)
    if left < 0:
        return True
    if _too_small(across_view(rest, left), rest.width, left, rounds):
        return True
    return left > 0 and _too_small(turned_view(rest, left), left, rest.width, rounds)


def _too_small(needs: Needs, width: int, along: int, rounds: int) -> bool:
    zoned = beside_group(settled(needs), width, along)
    if zoned.along < 0:
        return True
    divisions = MOST_DIVISIONS if rounds else FEW_DIVISIONS
    for prices in _prices(zoned.needs, width, along, rounds):
        least = least_at(zoned.needs, prices, width, along, divisions)
        if least > zoned.along:
            return True
        if zoned.along == along and least_sum(needs, least, along + 1) > along:
            return True
    return False


def _prices(needs: Needs, width: int, along: int, rounds: int) -> Iterator[Tariff]:
    if rounds:
        yield best_prices(needs, width, along, rounds)
    else:
        yield from plain_lists(needs, width)


def beside_group(needs: Needs, width: int, along: int) -> Zoned:
    """The needs without their longest group; `along` is negative where it is too wide together."""
    group = longest_group(needs, along)
    if not group:
        return Zoned(needs, along)
    zones: list[Hold] = []
    free = width
    for (across, length), (_, shorter) in zip(group, [*group[1:], (0, 0)], strict=True):
        free -= across
        if length > shorter:
            zones.append(Hold(free, length - shorter, along))
    if free < 0:
        return Zoned(needs, -1)
    taken = Counter(group)
    left = tuple(
        things._replace(
            copies=things.copies - (taken[things.shapes[0]] if len(things.shapes) == 1 else 0)
        )
        for things in needs.rectangles
    )
    rest = needs._replace(rectangles=left, boards=(*needs.boards, *zones))
    return Zoned(rest, along - group[0][1])


def longest_group(needs: Needs, along: int) -> list[Shape]:
    """The longest things of which no two fit one behind the other, the longest first."""
    group: list[Shape] = []
    for things in sorted(needs.rectangles, key=lambda things: -things.shapes[0][1]):
        [shape, *others] = things.shapes
        if others or any(hold.takes(shape) for hold in needs.boards):
            continue
        for _ in range(things.copies):
            if group and group[-1][1] + shape[1] <= along:
                return group
            group.append(shape)
    return group


def without_sections(task: Task, room: int) -> tuple[Task, int]:
    """The task and its room without the sections in which nothing else has room.

    The room is negative where these alone take more.
    """
    for group in _groups(task, room):
        if sum(across for across, _ in group) > task.width:
            return task, -1
        rest = _without(task, group, room)
        longest = max(along for _, along in group)
        free = task.width - sum(across for across, along in group if along == longest)
        if free < _narrowest(rest, room):
            return without_sections(rest, room - longest)
    return task, room


def _groups(task: Task, room: int) -> Iterator[list[Shape]]:
    """Any single thing, and the longest group."""
    needs = across_view(task, room)
    groups = [
        longest_group(needs._replace(rectangles=(one,)), room)[:1] for one in needs.rectangles
    ]
    yield from filter(None, [*groups, longest_group(needs, room)])


def _without(task: Task, group: Sequence[Shape], room: int) -> Task:
    """The task without the things of a group."""
    taken = Counter(group)
    sizes = []
    for size in task.sizes:
        ways = ways_that_fit(task, size.shapes, room)
        gone = min(size.copies, taken[ways[0]]) if len(ways) == 1 else 0
        taken[ways[0]] -= gone
        if size.copies > gone:
            sizes.append(size._replace(copies=size.copies - gone))
    return replace(task, sizes=tuple(sizes))


def _narrowest(task: Task, room: int) -> int:
    """What anything takes of the width at least; more than the width for nothing at all."""
    widths = [way[0] for size in task.sizes for way in ways_that_fit(task, size.shapes, room)]
    widths += [strip.least for strip in task.strips if strip.crosswise]
    widths += [strip.strip for strip in task.strips if strip.lengthwise]
    return min(widths, default=task.width + 1)
