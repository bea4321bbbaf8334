"""What a bound looks at: the things of a task, seen across the cloth or along it.

Seen along, the cloth is turned: what was across is along, and a crosswise run
lies lengthwise. The same bars then limit the rows that lie one after the other.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from core.lay.shares import divided, fewest_places
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

    Each of `copies` needs Σ (segment − loss) ≥ `demand` and, since it has no
    fewer joins than its longest segments allow, Σ segment ≥ `total`. Counting a
    segment longer than `alone` as a whole row, beside which no other segment
    has room, Σ ≥ `rows`. Of `per_row` places in a row, such a segment takes all
    and any other at least one: together at least `places`. `shortest` is the
    length of the shortest segment of any run. None has use for more than `segments`.
    """

    strip: int
    demand: int
    loss: int
    total: int
    rows: int
    places: int
    per_row: int
    shortest: int
    alone: int
    widest: int
    needs: int
    least: int
    segments: int
    crosswise: bool
    lengthwise: bool
    copies: int


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
            across = [(run.least, run.strip)] if run.crosswise else []
            yield across + ([(run.strip, run.least)] if run.lengthwise else [])

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
    """The same with across and along exchanged; there rows and places are not counted."""
    needs = across_view(task, room)
    longest = max([room, *(board.along for board in task.boards)])
    return Needs(
        tuple(
            Rectangles(tuple((along, across) for across, along in things.shapes), things.copies)
            for things in needs.rectangles
        ),
        tuple(
            run._replace(
                crosswise=run.lengthwise,
                lengthwise=run.crosswise,
                rows=run.total,
                places=0,
                alone=longest,
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
    alone = task.alone(widest)
    per_row = widest // max(1, widest - alone)
    for strip in task.strips:
        segment = max(widest * strip.crosswise, longest * strip.lengthwise)
        gain = max(1, segment - strip.loss)
        segments = max(1, -(-strip.demand // gain))
        total = max(strip.needs, strip.demand + segments * strip.loss)
        rows, places = total, 0
        if not strip.lengthwise:
            rows = max(total, divided(strip, widest, alone).length)
            places = fewest_places(strip, widest, alone, per_row)
        yield Lengths(
            strip=strip.strip,
            demand=max(0, strip.demand),
            loss=strip.loss,
            total=total,
            rows=rows,
            places=places,
            per_row=per_row,
            shortest=widest - alone,
            alone=widest if strip.lengthwise else alone,
            widest=widest,
            needs=strip.needs,
            least=strip.least,
            segments=max(1, -(-strip.demand // (strip.joined - strip.loss))),
            crosswise=strip.crosswise,
            lengthwise=strip.lengthwise,
            copies=strip.copies,
        )
