"""One cloth's share of a lay problem in whole ticks.

A tick is the greatest length of which every size of the cloth is a whole
multiple, so that the search counts in integers and stays exact. Pieces of one
size and grain rule count together as a `Size`, whatever their names; which name
goes where is decided once the lay is found. Sizes and runs are sorted, so that
the order in the file decides nothing.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import ceil, floor, gcd, lcm
from typing import NamedTuple

from core.fabric import Grain
from core.lay.lay import Sheet
from core.lay.problem import Cloth, Piece, Run
from core.lengths import Inches

# Segments that lie along the bolt may have any length; it is chosen in these parts of a tick.
LENGTHWISE_PARTS = 4


class Size(NamedTuple):
    """`copies` equal pieces, in ticks."""

    across: int
    along: int
    copies: int
    may_turn: bool

    @property
    def shapes(self) -> tuple[tuple[int, int], ...]:
        """The ways it may lie: (across, along), once each."""
        if self.may_turn and self.across != self.along:
            return (self.across, self.along), (self.along, self.across)
        return ((self.across, self.along),)


class Strip(NamedTuple):
    """A run in ticks: each of `copies` equal runs needs Σ (segment − loss) ≥ demand."""

    strip: int
    demand: int
    loss: int
    shortest: int
    crosswise: bool
    lengthwise: bool
    copies: int
    name: str

    @property
    def needs(self) -> int:
        """The length of the one segment that suffices alone."""
        return self.demand + self.loss

    @property
    def joined(self) -> int:
        """The shortest segment that is any use where it is joined to others."""
        return max(self.shortest, self.loss + 1)

    @property
    def least(self) -> int:
        """The shortest segment that is any use at all."""
        return min(self.needs, self.joined)


class Board(NamedTuple):
    """A piece of cloth on hand, or the rectangle of a sheet that starts at (x, y), in ticks."""

    sheet: Sheet
    across: int
    along: int
    x: int = 0
    y: int = 0


class Laid(NamedTuple):
    """A placement in ticks.

    `item` counts the sizes, then the runs; the `board` past the last is the bolt.
    """

    item: int
    run_copy: int
    board: int
    x: int
    y: int
    across: int
    along: int
    turned: bool


@dataclass(frozen=True)
class Task:
    """What to cut from one cloth, in ticks.

    The first `start` ticks of the bolt are bought anyway; the lay on the bolt
    begins behind them. Cuts are made in at most so many `stages` (None: any).
    """

    cloth: Cloth
    tick: Inches
    width: int
    sizes: tuple[Size, ...]
    strips: tuple[Strip, ...]
    boards: tuple[Board, ...]
    start: int = 0
    stages: int | None = None

    @property
    def bolt(self) -> int:
        """The number of the bolt among the boards."""
        return len(self.boards)

    def inches(self, ticks: int | Fraction) -> Inches:
        return ticks * self.tick

    def bought(self, used: int | Fraction) -> Inches:
        """What to buy for `used` ticks of the bolt, in inches."""
        return self.cloth.bought(self.inches(self.start + used))

    def room_in(self, bought: Inches) -> int:
        """The ticks of straight, washed bolt that `bought` inches give."""
        return floor(self.cloth.available(bought) / self.tick) - self.start

    def area(self, item: int) -> int:
        """Square ticks of one piece of a size, or of one run."""
        if item < len(self.sizes):
            return self.sizes[item].across * self.sizes[item].along
        strip = self.strips[item - len(self.sizes)]
        return strip.strip * strip.needs

    def alone(self, width: int) -> int:
        """A crosswise segment longer than this shares its row, so wide, with no other."""
        return width - min((s.least for s in self.strips if s.crosswise), default=width)

    @cached_property
    def free_lengthwise(self) -> bool:
        """Whether a segment of any length may lie along the bolt."""
        return any(strip.lengthwise for strip in self.strips)

    @cached_property
    def plenty(self) -> int:
        """A length of bolt that holds everything, one after the other."""
        pieces = sum(size.copies * max(max(shape) for shape in size.shapes) for size in self.sizes)
        return pieces + sum(_plenty(strip, self.width) for strip in self.strips)


def _plenty(strip: Strip, width: int) -> int:
    gain = max(1, width - strip.loss)
    rows = max(0, ceil(Fraction(strip.demand, gain))) + 2
    return strip.copies * max(strip.strip * rows, strip.needs if strip.lengthwise else 0)


def task_of(
    cloth: Cloth,
    pieces: tuple[Piece, ...],
    runs: tuple[Run, ...],
    marks: Collection[Inches] = (),
) -> Task:
    """The pieces and runs that are cut from `cloth`, counted in ticks that also make up `marks`."""
    tick = _tick(cloth, pieces, runs, marks)

    def ticks(length: Inches) -> int:
        return int(length / tick)

    counts: Counter[tuple[int, int, bool]] = Counter()
    for piece in pieces:
        counts[ticks(piece.across), ticks(piece.along), piece.may_turn] += piece.count
    sizes = [Size(across, along, n, turn) for (across, along, turn), n in counts.items()]
    return Task(
        cloth,
        tick,
        ticks(cloth.usable_width),
        tuple(sorted(sizes, key=lambda size: (-size.across * size.along, size))),
        tuple(sorted((_strip(run, tick) for run in runs), key=lambda strip: (-strip.strip, strip))),
        tuple(
            Board(Sheet(f"on_hand[{index}]", copy), ticks(hand.across), ticks(hand.along))
            for index, hand in enumerate(cloth.on_hand)
            for copy in range(1, hand.count + 1)
        ),
    )


def _strip(run: Run, tick: Inches) -> Strip:
    return Strip(
        int(run.strip / tick),
        int((run.needs - run.join_loss) / tick),
        int(run.join_loss / tick),
        int(run.shortest / tick),
        run.grain in (Grain.CROSSWISE, Grain.EITHER),
        run.grain in (Grain.LENGTHWISE, Grain.EITHER),
        run.count,
        run.name,
    )


def _tick(
    cloth: Cloth, pieces: tuple[Piece, ...], runs: tuple[Run, ...], marks: Collection[Inches]
) -> Inches:
    lengths = [cloth.usable_width, *marks]
    lengths += [side for hand in cloth.on_hand for side in (hand.across, hand.along)]
    lengths += [side for piece in pieces for side in (piece.across, piece.along)]
    for run in runs:
        lengths += [run.strip, run.needs, run.join_loss, run.shortest]
    bottom = lcm(*(length.denominator for length in lengths))
    top = gcd(*(int(length * bottom) for length in lengths))
    lengthwise = any(run.grain is not Grain.CROSSWISE for run in runs)
    return Fraction(top, bottom * (LENGTHWISE_PARTS if lengthwise else 1))
