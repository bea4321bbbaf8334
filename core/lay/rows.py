"""Rows filled by subset sums: strong where many pieces are equally long.

The longest piece that is left opens a row; of all sets of others that fit beside
it, the one that leaves the least of the width is taken. It is the minimum bin
slack heuristic (J. N. D. Gupta and J. C. Ho, "A new heuristic algorithm for the
one-dimensional bin-packing problem", 1999; from memory), for rows of cloth.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from itertools import accumulate
from random import Random

from core.lay.completion import in_rows
from core.lay.start import Packing
from core.lay.ticks import Laid, Task

# More rows than this are filled one after the other only.
MOST_ROWS = 300


def can_fill_rows(task: Task) -> bool:
    """Whether there is nothing but pieces and the bolt."""
    return not task.boards and not task.strips and task.cloth.buy_more


def one_dimensional(task: Task) -> bool:
    """Whether all pieces are equally long and keep their way: rows are all there is."""
    return can_fill_rows(task) and len({along for s in task.sizes for _, along in s.shapes}) == 1


def fill_rows(task: Task, rng: Random) -> Packing:
    """All pieces, each the first way it fits, in rows across the bolt; takes no runs."""
    left = [size.copies for size in task.sizes]
    order = sorted(
        range(len(left)),
        key=lambda item: (-_shape(task, item)[1], -_shape(task, item)[0]),
    )
    slip = rng.choice((0.0, 0.02, 0.1, 0.1))
    laid: list[Laid] = []
    y = 0
    while any(left):
        first = next(item for item in order if left[item])
        left[first] -= 1
        room = task.width - _across(task, first)
        row = [first, *_beside(task, order, left, room, rng, slip)]
        x = 0
        for item in row:
            across, along = _shape(task, item)
            turned = across != task.sizes[item].across
            laid.append(Laid(item, 0, task.bolt, x, y, across, along, turned))
            x += across
        y += _shape(task, first)[1]
    return Packing(tuple(laid), y, ())


def fewer_rows(task: Task, used: int, effort: int, stop: Callable[[], bool]) -> Packing | None:
    """Equally long pieces in a row less than `used` holds, or None; see `core.lay.completion`."""
    [along] = {along for size in task.sizes for _, along in size.shapes}
    rows = used // along - 1
    if not 0 < rows <= MOST_ROWS:
        return None
    widths = [size.across for size in task.sizes for _ in range(size.copies)]
    found = in_rows(widths, task.width, rows, effort, stop)
    return None if found is None else _packed(task, found, along)


def _packed(task: Task, rows: list[tuple[int, ...]], along: int) -> Packing:
    items: defaultdict[int, list[int]] = defaultdict(list)
    for item, size in enumerate(task.sizes):
        items[size.across] += [item] * size.copies
    laid = [
        Laid(items[across].pop(), 0, task.bolt, x, place * along, across, along, False)
        for place, row in enumerate(rows)
        for across, x in zip(row, accumulate(row, initial=0), strict=False)
    ]
    return Packing(tuple(laid), len(rows) * along, ())


def _beside(
    task: Task, order: list[int], left: list[int], room: int, rng: Random, slip: float
) -> list[int]:
    """Pieces whose widths add up to the most within `room`; they are taken from `left`.

    With a chance of `slip` the next smaller sum is taken.
    """
    items = [item for item in order if left[item] and _across(task, item) <= room]
    spread = rng.choice((0.0, 1.0, 8.0, 30.0))
    places = {item: place + rng.uniform(-spread, spread) for place, item in enumerate(items)}
    items.sort(key=lambda item: -places[item])
    mask, sums = (1 << (room + 1)) - 1, [1]
    single = [item for item in items for _ in range(min(left[item], room // _across(task, item)))]
    for item in single:
        sums.append(sums[-1] | (sums[-1] << _across(task, item)) & mask)
    total, taken = _total(sums[-1], rng, slip), []
    for item, before in zip(reversed(single), reversed(sums[:-1]), strict=True):
        across = _across(task, item)
        if across <= total and before >> (total - across) & 1:
            taken.append(item)
            left[item] -= 1
            total -= across
    return taken


def _total(sums: int, rng: Random, slip: float) -> int:
    while True:
        total = sums.bit_length() - 1
        if total == 0 or rng.random() >= slip:
            return total
        sums ^= 1 << total


def _shape(task: Task, item: int) -> tuple[int, int]:
    return next(shape for shape in task.sizes[item].shapes if shape[0] <= task.width)


def _across(task: Task, item: int) -> int:
    return _shape(task, item)[0]
