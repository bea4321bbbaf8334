"""Lay a problem: cloth by cloth, the least that buys, with the cuts that make it.

What counts, in this order: what is bought, the joins, the length used, the cuts,
one large offcut. Each cloth is a problem of its own, since every piece and run
names its cloth.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator
from fractions import Fraction
from random import Random

from core.lay.cuts import cut_order
from core.lay.improve import Found, improve
from core.lay.lay import BOLT, ClothLay, Cut, Lay, Offcut, Placement, Rect, Sheet, Unplaced
from core.lay.problem import Cloth, LayProblem
from core.lay.stop import Stop
from core.lay.ticks import Laid, Task, task_of

__all__ = ["Stop", "solve"]


def solve(
    problem: LayProblem,
    *,
    stop: Stop | None = None,
    seed: int = 0,
    on_better: Callable[[Lay], None] | None = None,
) -> Lay:
    """The best lay found until `stop`; the same problem, seed and iterations give the same.

    Expects a problem that `core.lay.refuse.require_layable` lets pass. What finds
    no room, because no more may be bought, is `unplaced`. `on_better` is given
    each better lay as it is found.
    """
    stop = stop or Stop()
    found: dict[str, tuple[Task, Found]] = {}
    tasks = {cloth.name: _task(problem, cloth) for cloth in problem.cloths}

    def lay_so_far() -> Lay:
        return _lay(problem, found)

    for index, (name, task) in enumerate(tasks.items()):

        def better(new: Found, name: str = name, task: Task = task) -> None:
            found[name] = (task, new)
            if on_better is not None and len(found) == len(tasks):
                on_better(lay_so_far())

        part = stop.part(len(tasks) - index)
        found[name] = (task, improve(task, part, Random(seed), better))
    return lay_so_far()


def _task(problem: LayProblem, cloth: Cloth) -> Task:
    pieces = tuple(piece for piece in problem.pieces if piece.cloth == cloth.name)
    runs = tuple(run for run in problem.runs if run.cloth == cloth.name)
    return task_of(cloth, pieces, runs)


def _lay(problem: LayProblem, found: dict[str, tuple[Task, Found]]) -> Lay:
    cloths, unplaced = [], []
    for cloth in problem.cloths:
        task, result = found[cloth.name]
        names = _Names(problem, task)
        placements = tuple(names.placement(one) for one in result.packing.laid)
        cloths.append(_cloth_lay(task, result, placements))
        unplaced += names.unplaced()
    return Lay(tuple(cloths), tuple(unplaced))


def _cloth_lay(task: Task, found: Found, placements: tuple[Placement, ...]) -> ClothLay:
    used = task.inches(found.packing.used)
    bound = min(used, task.inches(found.bound))
    sheets = tuple(_sheets(task, found))
    cuts: list[Cut] = []
    offcuts: list[Offcut] = []
    for sheet, rect in sheets:
        on_sheet = [placed for placed in placements if placed.sheet == sheet]
        more_cuts, more_offcuts = cut_order(sheet, rect, on_sheet)
        cuts += more_cuts
        offcuts += more_offcuts
    bought = task.cloth.bought(used)
    return ClothLay(
        task.cloth.name,
        bought,
        used,
        bound,
        not found.packing.missing and task.cloth.bought(bound) == bought,
        sheets,
        placements,
        tuple(offcuts),
        tuple(cuts),
    )


def _sheets(task: Task, found: Found) -> Iterator[tuple[Sheet, Rect]]:
    """The sheets in use, pieces on hand first."""
    zero = Fraction(0)
    in_use = {one.board for one in found.packing.laid}
    for number, board in enumerate(task.boards):
        if number in in_use:
            size = task.inches(board.across), task.inches(board.along)
            yield board.sheet, Rect(zero, zero, *size)
    if task.bolt in in_use:
        along = task.cloth.available(task.bought(found.packing.used))
        yield Sheet(BOLT), Rect(zero, zero, task.cloth.usable_width, along)


class _Names:
    """Gives what was laid by size its names and copy numbers, in the order laid."""

    def __init__(self, problem: LayProblem, task: Task) -> None:
        self.task = task
        self.waiting: dict[tuple[Fraction, Fraction, bool], list[tuple[str, int]]] = defaultdict(
            list
        )
        for piece in sorted(problem.pieces, key=lambda piece: piece.name, reverse=True):
            if piece.cloth == task.cloth.name:
                key = (piece.across, piece.along, piece.may_turn)
                copies = [(piece.name, copy) for copy in range(piece.count, 0, -1)]
                self.waiting[key] += copies
        self.segments: dict[str, int] = defaultdict(int)
        self.finished: dict[str, set[int]] = defaultdict(set)

    def placement(self, one: Laid) -> Placement:
        name, copy = self._piece(one) if one.item < len(self.task.sizes) else self._segment(one)
        sheet = Sheet(BOLT) if one.board == self.task.bolt else self.task.boards[one.board].sheet
        sides = (self.task.inches(side) for side in (one.x, one.y, one.across, one.along))
        return Placement(name, copy, sheet, Rect(*sides), one.turned, one.run_copy or None)

    def _piece(self, one: Laid) -> tuple[str, int]:
        size = self.task.sizes[one.item]
        sides = self.task.inches(size.across), self.task.inches(size.along)
        return self.waiting[*sides, size.may_turn].pop()

    def _segment(self, one: Laid) -> tuple[str, int]:
        name = self.task.strips[one.item - len(self.task.sizes)].name
        self.segments[name] += 1
        self.finished[name].add(one.run_copy)
        return name, self.segments[name]

    def unplaced(self) -> list[Unplaced]:
        """Which names are still waiting, and which runs are not whole."""
        left: dict[str, int] = defaultdict(int)
        for copies in self.waiting.values():
            for name, _ in copies:
                left[name] += 1
        for strip in self.task.strips:
            left[strip.name] += strip.copies - len(self.finished[strip.name])
        return [Unplaced(name, count) for name, count in sorted(left.items()) if count]
