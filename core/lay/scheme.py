"""A task as sections see it: things to place, bands of strip, and lengths in grades.

Strips of one width are one *band*, whatever run they serve. What a segment is
good for depends little on its exact length, more on its *grade*: whether it
leaves room in its row for another, for two others, for a certain piece. A grade
begins at the shortest length that is in it and ends where the next begins.

A run is a choice of grades: segments that together reach its demand. Counting
them by grade, and their lengths together, loses nothing that matters and leaves
finitely many choices.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from math import gcd
from typing import NamedTuple

from core.lay.ticks import Strip, Task

# Rows of so many equal parts have a grade of their own.
MOST_ABREAST = 5
# A run's last rows may be divided into so many equal segments.
MOST_SHORT = 4


class Item(NamedTuple):
    """One way that a piece of a size may lie, in steps."""

    size: int
    across: int
    along: int


class Band(NamedTuple):
    """Strips of one width: the lengths at which their grades start and end (steps).

    `rise` is the width of the strip as a height (0 unless crosswise), `breadth`
    the same as a width (0 unless lengthwise).
    """

    runs: tuple[int, ...]
    rise: int
    breadth: int
    starts: tuple[int, ...]
    ends: tuple[int, ...]

    @property
    def least(self) -> int:
        return self.starts[0]


class Sheet(NamedTuple):
    """A piece of cloth in steps."""

    across: int
    along: int


@dataclass(frozen=True, slots=True)
class Scheme:
    """A task for a bolt of a certain room, in steps of `step_across` and `step_along` ticks.

    `sheets` are the pieces on hand, then the bolt. `sums` are the widths that
    things side by side add up to; `widths` adds what those leave of a sheet.
    """

    task: Task
    step_across: int
    step_along: int
    sheets: tuple[Sheet, ...]
    items: tuple[Item, ...]
    bands: tuple[Band, ...]
    sums: frozenset[int]
    widths: tuple[int, ...]

    @property
    def bolt(self) -> Sheet:
        return self.sheets[-1]

    @property
    def longest(self) -> int:
        return max(sheet.along for sheet in self.sheets)

    @property
    def least_across(self) -> int:
        """No crosswise segment is shorter."""
        return min((band.least for band in self.bands if band.rise), default=self.widths[-1] + 1)


def scheme_of(task: Task, room: int) -> Scheme:
    """The task on its pieces on hand and `room` ticks of bolt."""
    step_across, step_along = _steps(task)
    # Segments of free length may use the last part of a step.
    more = step_along - 1 if task.free_lengthwise else 0
    sheets = (
        *(Sheet(b.across // step_across, (b.along + more) // step_along) for b in task.boards),
        Sheet(task.width // step_across, (room + more) // step_along),
    )
    items = tuple(
        Item(number, across // step_across, along // step_along)
        for number, size in enumerate(task.sizes)
        for across, along in size.shapes
        if any(
            across // step_across <= sheet.across and along // step_along <= sheet.along
            for sheet in sheets
        )
    )
    bands = tuple(_bands(task, sheets, items, step_across, step_along))
    sums = _sums(items, bands, max(sheet.across for sheet in sheets))
    rests = {sheet.across - total for sheet in sheets for total in sums if total < sheet.across}
    widths = tuple(sorted((sums | rests) - {0}))
    return Scheme(task, step_across, step_along, sheets, items, bands, frozenset(sums), widths)


def _steps(task: Task) -> tuple[int, int]:
    """The greatest steps across and along of which every size is a whole number."""
    across = [task.width, *(board.across for board in task.boards)]
    along: list[int] = []
    for size in task.sizes:
        across += [shape[0] for shape in size.shapes]
        along += [shape[1] for shape in size.shapes]
    for strip in task.strips:
        lengths = [strip.demand, strip.loss, strip.shortest]
        across += [*lengths, strip.strip] if strip.lengthwise else lengths
        along += [*lengths, strip.strip] if strip.lengthwise else [strip.strip]
    if task.free_lengthwise:
        return gcd(*across, *along), gcd(*across, *along)
    return gcd(*across), gcd(*along)


def _bands(
    task: Task, sheets: tuple[Sheet, ...], items: tuple[Item, ...], across: int, along: int
) -> Iterator[Band]:
    runs: dict[tuple[int, bool, bool], list[int]] = defaultdict(list)
    for number, strip in enumerate(task.strips):
        runs[strip.strip, strip.crosswise, strip.lengthwise].append(number)
    leasts = {strip.least // across for strip in task.strips if strip.crosswise}
    for (width, crosswise, lengthwise), numbers in runs.items():
        strips = [task.strips[number] for number in numbers]
        fits = [sheet.across for sheet in sheets if crosswise]
        fits += [sheet.along for sheet in sheets if lengthwise]
        longest = min(max(strip.needs for strip in strips) // across, max(fits))
        least = min(strip.least for strip in strips) // across
        edges = {least, *(strip.needs // across for strip in strips)}
        if crosswise:
            edges |= set(_edges_across(sheets, items, leasts))
            for strip in strips:
                edges |= set(_rests(strip, sheets, across))
        if lengthwise:
            edges |= {item.along + 1 for item in items} | {s.along + 1 for s in sheets[:-1]}
        starts = sorted(edge for edge in edges if least <= edge <= longest) or [least]
        yield Band(
            tuple(numbers),
            width // along if crosswise else 0,
            width // across if lengthwise else 0,
            tuple(starts),
            (*starts[1:], max(longest, least)),
        )


def _edges_across(
    sheets: tuple[Sheet, ...], items: tuple[Item, ...], leasts: set[int]
) -> Iterator[int]:
    """Lengths from which a segment leaves less room in its row than before."""
    for width in {sheet.across for sheet in sheets}:
        yield width
        yield from (width - item.across + 1 for item in items)
        for others in range(1, MOST_ABREAST):
            yield from (width - others * least + 1 for least in leasts)
            yield width // (others + 1) + 1


def _rests(strip: Strip, sheets: tuple[Sheet, ...], step: int) -> Iterator[int]:
    """Equal parts of what a run still lacks beside whole rows, and beside one short segment too."""
    demand, loss, joined = demand_of(strip, step)
    gain = max(1, sheets[-1].across - loss)
    rows = -(-demand // gain)
    for whole in range(max(0, rows - 1 - MOST_SHORT // 2), rows):
        lack = demand - whole * gain
        for short in range(1, MOST_SHORT + 1):
            yield -(-lack // short) + loss
        yield lack - (joined - loss) + loss


def _sums(items: tuple[Item, ...], bands: tuple[Band, ...], most: int) -> set[int]:
    atoms = {item.across for item in items}
    for band in bands:
        atoms |= {*band.starts} if band.rise else set()
        atoms |= {band.breadth} if band.breadth else set()
    sums = 1
    whole = (1 << (most + 1)) - 1
    for atom in sorted(atoms):
        shift = atom
        while shift <= most:  # doubling: any number of this atom
            sums |= (sums << shift) & whole
            shift *= 2
    return {total for total in range(most + 1) if sums >> total & 1}


def demand_of(strip: Strip, step: int) -> tuple[int, int, int]:
    """Demand, join loss and the shortest joined segment of a run, in steps."""
    return strip.demand // step, strip.loss // step, max(strip.shortest, strip.loss) // step
