"""Pieces that span the bolt, such as whole panels of a backing, taken out of a task.

Beside a piece that leaves less of the width than anything needs lies nothing in
any lay. The band that it takes can be cut out and the rest of the bolt put
together: the others fit `room` with it if and only if they fit what is left.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from core.lay.ticks import Size, Task


def without_spanning(task: Task, room: int) -> tuple[Task, int]:
    """The task and its `room` (ticks of bolt) without the pieces that must span it.

    The room is negative where these alone take more.
    """
    for number, size in enumerate(task.sizes):
        along = _spans(task, room, number)
        if along:
            rest = task.sizes[:number] + task.sizes[number + 1 :]
            return without_spanning(replace(task, sizes=rest), room - along * size.copies)
    return task, room


def _spans(task: Task, room: int, number: int) -> int:
    """How much of the bolt one piece of a size takes for itself; 0 if something may lie beside."""
    size = task.sizes[number]
    ways = [way for way in size.shapes if way[0] <= task.width and way[1] <= room]
    if not ways or _fits_on_hand(task, size):
        return 0
    others = task.sizes if size.copies > 1 else task.sizes[:number] + task.sizes[number + 1 :]
    narrowest = min(_widths(replace(task, sizes=others)), default=task.width)
    if any(across + narrowest <= task.width for across, _ in ways):
        return 0
    return min(along for _, along in ways)


def _fits_on_hand(task: Task, size: Size) -> bool:
    return any(
        across <= board.across and along <= board.along
        for across, along in size.shapes
        for board in task.boards
    )


def _widths(task: Task) -> Iterator[int]:
    """What the things of a task take of the width at least."""
    yield from (across for size in task.sizes for across, _ in size.shapes)
    for strip in task.strips:
        if strip.crosswise:
            yield strip.least
        if strip.lengthwise:
            yield strip.strip
