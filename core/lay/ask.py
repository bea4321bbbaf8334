"""What is asked of one cloth, and the rectangles that are left free on it.

Round what has its place, and round flaws, each sheet is cut into free rectangles,
in several ways; they are the boards that the ordinary search lays on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import count, islice
from random import Random

from core.lay.lay import BOLT, THE_BOLT, Rect
from core.lay.partition import Side, partitions
from core.lay.places import Arrangement, arrangements, box_of, end_of
from core.lay.problem import Cloth, Flaw, LayProblem, Piece, Run
from core.lay.rest import rest_of
from core.lay.ticks import Board, Task, task_of
from core.lengths import Inches

MOST_ARRANGEMENTS, MOST_PARTITIONS = 3, 12
# So many of the largest pieces are thought of when a sheet is cut up.
MOST_LARGEST = 2


@dataclass(frozen=True)
class Ask:
    """What one cloth is asked for, what may have its place on it, and what is spoilt.

    `reached` is a length of bolt that what has its place needs in any case.
    """

    cloth: Cloth
    pieces: tuple[Piece, ...]
    runs: tuple[Run, ...]
    arrangements: tuple[Arrangement, ...]
    flaws: tuple[Flaw, ...]
    reached: Inches
    stages: int | None = None

    def task(self, placed: Arrangement = ()) -> Task:
        """What is left to cut, in ticks, on sheets that are whole."""
        task = task_of(self.cloth, *rest_of(self.pieces, self.runs, placed), self.marks())
        return replace(task, stages=self.stages)

    def marks(self) -> list[Inches]:
        """Every length that the ticks must make up."""
        rects = [one.rect for arrangement in self.arrangements for one in arrangement]
        rects += [flaw.rect for flaw in self.flaws]
        return [side for rect in rects for side in (rect.x, rect.y, rect.across, rect.along)]

    def boards(self, placed: Arrangement, end: Inches, seed: int) -> Iterator[tuple[Board, ...]]:
        """The free rectangles of all sheets, cut in different ways; of the bolt up to `end`."""
        task = self.task(placed)
        sheets = list(task.boards)
        if self.cloth.buy_more and end >= task.tick:
            sheets.append(Board(THE_BOLT, task.width, int(end // task.tick)))
        if not sheets:
            yield ()
        ways = [self._free(task, placed, sheet, seed) for sheet in sheets]
        yield from _together(ways)

    def _sides(self, task: Task) -> list[Side]:
        """The sides of the largest pieces, the longest first."""
        largest = sorted(self.pieces, key=lambda one: (-one.across * one.along, one.name))
        sides = [
            Side(along, int(length / task.tick))
            for piece in largest[:MOST_LARGEST]
            for along, length in ((True, piece.along), (False, piece.across))
        ]
        return list(dict.fromkeys(sides))

    def _free(
        self, task: Task, placed: Arrangement, whole: Board, seed: int
    ) -> Iterator[tuple[Board, ...]]:
        sheet, across, along, _, _ = whole
        kept = [_ticks(task, one.rect) for one in placed if one.sheet == sheet]
        flaws = [_ticks(task, flaw.rect) for flaw in self.flaws if flaw.sheet == sheet]
        sides = self._sides(task)
        ways = partitions((0, 0, across, along), kept, flaws, Random(seed), sides)
        for free in islice(ways, MOST_PARTITIONS):
            yield tuple(Board(sheet, int(w), int(h), int(x), int(y)) for x, y, w, h in free)


def _together(ways: Sequence[Iterator[tuple[Board, ...]]]) -> Iterator[tuple[Board, ...]]:
    """A way of each sheet at a time, until each was had; none is worked out before its time."""
    had: list[list[tuple[Board, ...]]] = [[] for _ in ways]
    for number in count():
        more = [next(way, None) for way in ways]
        if not any(one is not None for one in more):
            return
        for known, one in zip(had, more, strict=True):
            known.extend(() if one is None else (one,))
        yield tuple(board for known in had for board in known[number % len(known)])


def _ticks(task: Task, rect: Rect) -> tuple[int, int, int, int]:
    x, y, across, along = (
        int(side / task.tick) for side in (rect.x, rect.y, rect.across, rect.along)
    )
    return x, y, across, along


def ask_of(problem: LayProblem, cloth: Cloth) -> Ask:
    """What a problem asks of one of its cloths."""
    pieces = tuple(piece for piece in problem.pieces if piece.cloth == cloth.name)
    runs = tuple(run for run in problem.runs if run.cloth == cloth.name)
    flaws = tuple(
        sorted(
            (flaw for flaw in problem.flaws if flaw.cloth == cloth.name),
            key=lambda flaw: (flaw.sheet.on, flaw.sheet.copy, *box_of(flaw.rect)),
        )
    )
    found = tuple(islice(arrangements(problem, cloth), MOST_ARRANGEMENTS))
    own = {piece.name for piece in pieces}
    motifs = [m.rect.end for m in problem.motifs if m.name in own and m.sheet.on == BOLT]
    pins = end_of(tuple(one for one in found[0] if one.pinned))
    return Ask(cloth, pieces, runs, found, flaws, max([pins, *motifs]), problem.stages)
