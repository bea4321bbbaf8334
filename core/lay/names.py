"""What was laid by size gets its names and copy numbers.

Copies of equal pieces are numbered in the order laid, the segments of a run over
all its copies. A run that could not be finished is not begun: what was laid or
pinned of it is taken off again.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from core.lay.lay import BOLT, Placement, Rect, Sheet, Unplaced
from core.lay.places import Arrangement, Placed
from core.lay.problem import LayProblem
from core.lay.rest import copy_of
from core.lay.start import Packing
from core.lay.ticks import Laid, Task


class Result(NamedTuple):
    """What one cloth came to: things in their place, and a packing of the rest.

    No lay of this cloth uses less than `bound` ticks of the bolt.
    """

    task: Task
    packing: Packing
    bound: Fraction
    placed: Arrangement = ()


def named(
    problem: LayProblem, results: Sequence[Result]
) -> tuple[list[tuple[Placement, ...]], tuple[Unplaced, ...]]:
    """The placements cloth by cloth, and what found no room."""
    unfinished = {lost for result in results for lost in _unfinished(result)}
    numbers = _Numbers(problem, results)
    placements = [
        tuple(
            numbers.placement(one)
            for one in numbers.things(result)
            if (one.name, one.run_copy) not in unfinished
        )
        for result in results
    ]
    gone = Counter(name for name, _ in unfinished) + numbers.left()
    return placements, tuple(Unplaced(name, count) for name, count in sorted(gone.items()))


def where(task: Task, one: Laid) -> tuple[Sheet, Rect]:
    """The place of something laid, in inches of its sheet."""
    sheet, x, y = Sheet(BOLT), 0, task.start
    if one.board != task.bolt:
        sheet, _, _, x, y = task.boards[one.board]
    sides = (task.inches(side) for side in (x + one.x, y + one.y, one.across, one.along))
    return sheet, Rect(*sides)


def things(result: Result) -> Iterator[Placed]:
    """All that lies on a cloth; pieces of one size have no name yet."""
    for placed in result.placed:
        name, run_copy = copy_of(placed.name, placed.run_copy)
        yield placed._replace(name=name, run_copy=run_copy)
    task = result.task
    for one in result.packing.laid:
        name, run_copy = "", 0
        if one.item >= len(task.sizes):
            name, run_copy = copy_of(task.strips[one.item - len(task.sizes)].name, one.run_copy)
        yield Placed(name, *where(task, one), one.turned, None, run_copy)


def _unfinished(result: Result) -> Iterator[tuple[str, int]]:
    """The runs, by name and copy, of which something found no room."""
    task, first = result.task, len(result.task.sizes)
    there = {(one.item, one.run_copy) for one in result.packing.laid}
    for place, strip in enumerate(task.strips):
        lost = [copy for copy in range(1, strip.copies + 1) if (first + place, copy) not in there]
        yield from (copy_of(strip.name, copy) for copy in lost)


class _Numbers:
    """Names and numbers that are still to be given."""

    def __init__(self, problem: LayProblem, results: Sequence[Result]) -> None:
        placed = [one for result in results for one in result.placed]
        claimed = {(one.name, one.copy) for one in placed if one.copy}
        pinned = Counter(one.name for one in placed if one.copy is None)
        self.pinned: dict[str, list[int]] = {}
        self.waiting: dict[tuple[object, ...], list[tuple[str, int]]] = defaultdict(list)
        self.segments: dict[str, int] = defaultdict(int)
        for piece in sorted(problem.pieces, key=lambda piece: piece.name, reverse=True):
            copies = [
                copy for copy in range(piece.count, 0, -1) if (piece.name, copy) not in claimed
            ]
            rest = len(copies) - pinned[piece.name]
            self.pinned[piece.name] = copies[rest:]
            key = piece.cloth, piece.across, piece.along, piece.may_turn
            self.waiting[key] += [(piece.name, copy) for copy in copies[:rest]]

    def things(self, result: Result) -> Iterator[Placed]:
        """All that lies on a cloth, each piece with a name of its size."""
        task = result.task
        laid = iter(result.packing.laid)
        for number, thing in enumerate(things(result)):
            one = next(laid) if number >= len(result.placed) else None
            if one is not None and one.item < len(task.sizes):
                size = task.sizes[one.item]
                sides = task.inches(size.across), task.inches(size.along)
                name, copy = self.waiting[task.cloth.name, *sides, size.may_turn].pop()
                thing = thing._replace(name=name, copy=copy)
            yield thing

    def placement(self, one: Placed) -> Placement:
        copy = one.copy
        if one.run_copy:
            self.segments[one.name] += 1
            copy = self.segments[one.name]
        elif copy is None:
            copy = self.pinned[one.name].pop()
        return Placement(one.name, copy, one.sheet, one.rect, one.turned, one.run_copy or None)

    def left(self) -> Counter[str]:
        """How many pieces of each name are still waiting."""
        return Counter(name for copies in self.waiting.values() for name, _ in copies)
