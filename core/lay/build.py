"""What is built of pieces: rectangles made of two smaller ones, and how they are laid."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from core.lay.ticks import Laid, Task

Shape = tuple[int, int]  # across, along


class Build(NamedTuple):
    """A rectangle with its waste; `held` counts the pieces, `parts` are what it is made of.

    What a join loses, and what a run has too much, is waste.
    """

    across: int
    along: int
    held: int
    waste: int
    beside: bool = False
    parts: tuple[Build, ...] = ()
    item: int = 0
    turned: bool = False
    gained: tuple[int, ...] = ()  # by the segments of each run, joins taken off


def serves(one: Build, other: Build) -> bool:
    """Whether `one` can stand wherever `other` can; both hold the same pieces."""
    if one.across > other.across or one.along > other.along:
        return False
    return all(a >= b for a, b in zip(one.gained, other.gained, strict=True))


def sides_of(task: Task) -> Iterator[tuple[int, int, int]]:
    for size in task.sizes:
        for across, along in size.shapes:
            yield across, along, size.copies


def row_alone(task: Task, item: int) -> Shape | None:
    """How a piece lies that has nothing beside it in any lay; None for others."""
    ways = [shape for shape in task.sizes[item].shapes if shape[0] <= task.width]
    narrowest = min(across for across, _, _ in sides_of(task))
    narrowest = min([narrowest, *(strip.least for strip in task.strips)])
    return ways[0] if len(ways) == 1 and task.width - ways[0][0] < narrowest else None


def lay_rows(task: Task, rows: dict[int, Shape], y: int) -> Iterator[Laid]:
    for item, (across, along) in rows.items():
        turned = across != task.sizes[item].across
        for _ in range(task.sizes[item].copies):
            yield Laid(item, 0, task.bolt, 0, y, across, along, turned)
            y += along


def unfilled(whole: int, sides: list[tuple[int, int]], free: int) -> list[int]:
    """For each length, what no sum of sides can fill of the rest of `whole`.

    A rest from `free` on can be filled by a segment.
    """
    sums = 1
    mask = (1 << (whole + 1)) - 1
    for side, copies in sides:
        for _ in range(min(copies, whole // side)):
            sums |= (sums << side) & mask
    lost, last = [0] * (whole + 1), 0
    for rest in range(whole + 1):
        if sums >> rest & 1 or rest >= free:
            last = rest
        lost[whole - rest] = rest - last
    return lost


def lay_out(build: Build, x: int, y: int, bolt: int) -> Iterator[Laid]:
    if not build.parts:
        run_copy = int(any(build.gained))
        yield Laid(build.item, run_copy, bolt, x, y, build.across, build.along, build.turned)
    for part in build.parts:
        yield from lay_out(part, x, y, bolt)
        if build.beside:
            x += part.across
        else:
            y += part.along
