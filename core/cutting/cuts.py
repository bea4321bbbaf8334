"""The steps of a cut order taken apart: one cut at a time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from core.lay.lay import Direction, Rect
from core.lengths import Inches
from core.steps import CutStep, Fall


@dataclass(frozen=True, slots=True)
class TableCut:
    """The `turn`-th of a step's equal cuts, `turn` from 1.

    `region` is the cloth in hand before it, a raw end included; `off` is what comes
    off; `rest` what is left, None where it stays in hand under the name it has.
    """

    step: CutStep
    turn: int
    region: Rect
    off: Fall
    rest: Fall | None

    @property
    def left(self) -> Rect:
        """What is left of the cloth in hand."""
        return parted(self.region, self.step.direction, self.step.measure)[1]

    @property
    def alone(self) -> CutStep:
        """This cut as a step of its own."""
        falls = (self.off,) if self.rest is None else (self.off, self.rest)
        return replace(self.step, region=self.region, times=1, falls=falls)


def parted(region: Rect, direction: Direction, by: Inches) -> tuple[Rect, Rect]:
    """A rectangle cut `by` from its straight end or near edge: what comes off, what is left."""
    if direction is Direction.CROSSWISE:
        off = replace(region, along=by)
        return off, replace(region, y=off.end, along=region.along - by)
    off = replace(region, across=by)
    return off, replace(region, x=off.right, across=region.across - by)


def single_cuts(steps: Iterable[CutStep]) -> tuple[TableCut, ...]:
    """Every cut of these steps, in order."""
    return tuple(cut for step in steps for cut in _cuts_of(step))


def _cuts_of(step: CutStep) -> Iterator[TableCut]:
    region = step.region
    if step.straightening:
        region = replace(region, y=region.y - step.measure, along=region.along + step.measure)
    for turn in range(1, step.times + 1):
        more = step.falls[step.times :] if turn == step.times else ()
        cut = TableCut(step, turn, region, step.falls[turn - 1], more[0] if more else None)
        yield cut
        region = cut.left
