"""What a bound looks at: the things of a task, seen across the cloth or along it.

Seen along, the cloth is turned: what was across is along, and a crosswise run
lies lengthwise. The same bars then limit the rows that lie one after the other.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from core.lay.ticks import Task

Shape = tuple[int, int]  # across, along


class Hold(NamedTuple):
    """Cloth beside the bolt on which something may lie, nothing longer than `longest`."""

    across: int
    along: int
    longest: int

    def takes(self, shape: Shape) -> bool:
        """Whether something of that size fits."""
        return shape[0] <= self.across and shape[1] <= self.longest


class Rectangles(NamedTuple):
    """`copies` equal pieces and the ways each may lie."""

    shapes: tuple[Shape, ...]
    copies: int


class Lengths(NamedTuple):
    """Equal runs as the bounds see them.

    Each of `copies` needs Σ (segment − loss) ≥ `demand`, with segments of `least` or
    more, or one alone that is `needs` long. Across, none is longer than `widest`,
    along, than `longest`; none has use for more than so many `segments`.
    """

    strip: int
    demand: int
    loss: int
    needs: int
    least: int
    widest: int
    longest: int
    segments: int
    crosswise: bool
    lengthwise: bool
    copies: int

    @property
    def shortest(self) -> int:
        """The shortest segment that it may have."""
        return min(self.least, self.needs)


class Needs(NamedTuple):
    """Everything to be cut, and the pieces on hand that can hold some of it."""

    rectangles: tuple[Rectangles, ...]
    lengths: tuple[Lengths, ...]
    boards: tuple[Hold, ...]

    @property
    def free_along(self) -> bool:
        """Whether segments of any length may lie along the cloth."""
        return any(run.lengthwise for run in self.lengths)

    def lengths_along(self) -> list[int]:
        """The different lengths along of single things, the shortest way each."""
        alongs = {min(along for _, along in things.shapes) for things in self.rectangles}
        return sorted(alongs | {run.strip for run in self.lengths if not run.lengthwise})

    def at_least(self, along: int) -> Needs:
        """Without the things that may be shorter than `along`."""
        return Needs(
            tuple(r for r in self.rectangles if min(a for _, a in r.shapes) >= along),
            tuple(run for run in self.lengths if not run.lengthwise and run.strip >= along),
            self.boards,
        )

    def single_things(self) -> Iterator[list[Shape]]:
        """The ways in which each thing's smallest part may lie."""
        for things in self.rectangles:
            yield list(things.shapes)
        for run in self.lengths:
            across = [(run.shortest, run.strip)] if run.crosswise else []
            yield across + ([(run.strip, run.shortest)] if run.lengthwise else [])

    def sums_along(self, most: int) -> Iterator[tuple[int, int]]:
        """Lengths along, each with how often it may occur in one line along the cloth."""
        for things in self.rectangles:
            for _, along in things.shapes:
                yield along, things.copies
        for run in self.lengths:
            yield run.strip, run.copies * run.segments


def across_view(task: Task, room: int) -> Needs:
    """The needs of a task whose bolt is `room` long."""
    copies: Counter[tuple[Shape, ...]] = Counter()
    for size in task.sizes:
        copies[ways_that_fit(task, size.shapes, room)] += size.copies
    return Needs(
        tuple(Rectangles(*things) for things in copies.items()),
        tuple(_lengths(task, room)),
        tuple(Hold(board.across, board.along, board.along) for board in task.boards),
    )


def turned_view(task: Task, room: int) -> Needs:
    """The same with across and along exchanged."""
    needs = across_view(task, room)
    return Needs(
        tuple(
            Rectangles(tuple((along, across) for across, along in things.shapes), things.copies)
            for things in needs.rectangles
        ),
        tuple(
            run._replace(
                widest=run.longest,
                longest=run.widest,
                crosswise=run.lengthwise,
                lengthwise=run.crosswise,
            )
            for run in needs.lengths
        ),
        tuple(Hold(board.along, board.across, board.across) for board in task.boards),
    )


def ways_that_fit(task: Task, shapes: tuple[Shape, ...], room: int) -> tuple[Shape, ...]:
    """The ways that fit some sheet; all of them if none does."""
    sheets = [(task.width, room), *((board.across, board.along) for board in task.boards)]
    fitting = tuple(
        shape
        for shape in shapes
        if any(shape[0] <= across and shape[1] <= along for across, along in sheets)
    )
    return fitting or shapes


def _lengths(task: Task, room: int) -> Iterator[Lengths]:
    widest = max([task.width, *(board.across for board in task.boards)])
    longest = max([room, *(board.along for board in task.boards)])
    for strip in task.strips:
        yield Lengths(
            strip=strip.strip,
            demand=max(0, strip.demand),
            loss=strip.loss,
            needs=strip.needs,
            least=strip.joined,
            widest=widest,
            longest=longest,
            segments=max(1, -(-strip.demand // (strip.joined - strip.loss))),
            crosswise=strip.crosswise,
            lengthwise=strip.lengthwise,
            copies=strip.copies,
        )
