"""One step of the cut order as a small picture: the cloth in hand, the cuts, what falls off.

It lies as on the picture of its cloth, near edge at the left and straight end on
top. It is not to scale: a long cloth is drawn shorter than it is, and a narrow one
wider, so that the cuts can be told. The edge that is measured from is drawn heavy.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import groupby

from core.cloth_names import told_cloth
from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.language import told
from core.lay.lay import Direction
from core.lengths import show
from core.plan import Plan
from core.steps import Becomes, CutStep, Fall, ranges

WIDTH, HEIGHT = 50.0, 24.0  # the most that a picture measures, in its own measure
_LEFT, _TOP, _FOOT = 15.0, 4.5, 3.25  # free at the near edge, above and below, for words
_RIGHT = 2.0
_TICK = 1.6
_BROAD = 2.0  # of a strip as drawn; heavy lines would cover a narrower one
_LEAST = 6.0  # of a side of the cloth
_THIN = 3.2  # of a band that cannot hold its own words
_WORDS = 16.0  # wide, for the measure over the cloth
_ROLES = {Becomes.SECTION: "cloth", Becomes.OFFCUT: "offcut", Becomes.WASTE: "straightening"}


def draw_cut(plan: Plan, step: CutStep) -> Drawing:
    """The picture of a step."""
    cut = _Cut(plan, step)
    height = _TOP + cut.high + _FOOT
    return Drawing(told("step {number}", number=step.number), WIDTH, height, tuple(cut.marks()))


class _Cut:
    """Places on the picture; `wide` × `high` is the cloth as drawn."""

    def __init__(self, plan: Plan, step: CutStep) -> None:
        self.plan, self.step = plan, step
        self.across = step.direction is Direction.CROSSWISE
        region = step.region
        along = region.along + (step.measure if step.straightening else 0)
        most_wide, most_high = WIDTH - _LEFT - _RIGHT, HEIGHT - _TOP - _FOOT
        scale = min(most_wide / float(region.across), most_high / float(along))
        self.wide = min(max(float(region.across) * scale, most_wide / 2), most_wide)
        self.high = min(max(float(along) * scale, _LEAST), most_high)
        self.whole = along if self.across else region.across

    def marks(self) -> Iterator[Mark]:
        yield self._band(0.0, 1.0, "cloth")
        yield from self._bands()
        yield from self._cuts()
        yield from self._names()
        yield from self._folds()
        yield from self._measure()

    def _share(self, length: Fraction) -> float:
        return float(length / self.whole)

    def _point(self, along_cut: float, measured: float) -> Point:
        """A place by shares: of the cut's own length, and of the side that is measured."""
        x, y = (along_cut, measured) if self.across else (measured, along_cut)
        return _LEFT + x * self.wide, _TOP + y * self.high

    def _band(self, start: float, end: float, role: str, key: str = "") -> Area:
        corners = ((0.0, start), (1.0, start), (1.0, end), (0.0, end))
        return Area(tuple(self._point(*corner) for corner in corners), role, key)

    def _thick(self, share: float) -> float:
        return share * (self.high if self.across else self.wide)

    def _ends(self) -> Iterator[tuple[Fall, float, float]]:
        """What comes off, from share to share, one after the other; the rest is bare cloth."""
        each = self._share(self.step.measure)
        for place, fall in enumerate(self.step.falls):
            start = place * each
            yield fall, start, start + each if place < self.step.times else 1.0

    def _bands(self) -> Iterator[Mark]:
        for fall, start, end in self._ends():
            key = fall.label if fall.becomes is Becomes.PIECE else ""
            yield self._band(start, end, self._role(fall), key)

    def _names(self) -> Iterator[Mark]:
        """What each band becomes; pieces in thin bands are named together, over the cuts."""
        each = self._share(self.step.measure)
        groups = groupby(self._ends(), lambda band: self._together(band[0], each))
        for together, bands in groups:
            found = list(bands)
            if together:
                named = ", ".join(ranges([fall.label for fall, _, _ in found]))
                yield self._words(found[0][1], found[-1][2], named, self._role(found[0][0]))
                continue
            for fall, start, end in found:
                key = fall.label if fall.becomes is Becomes.PIECE else ""
                yield self._words(start, end, told_cloth(fall.label), self._role(fall), key)
        if len(self.step.falls) == self.step.times:
            yield self._words(self.step.times * each, 1.0, told_cloth(self.step.source), "note")

    def _together(self, fall: Fall, each: float) -> str:
        """The role of pieces that are named together; "" for what is named for itself."""
        thin = self.step.times > 1 and self._thick(each) < _THIN
        return self._role(fall) if thin and fall.becomes is Becomes.PIECE else ""

    def _role(self, fall: Fall) -> str:
        if fall.becomes is not Becomes.PIECE:
            return _ROLES[fall.becomes]
        letters = fall.label.rstrip("0123456789")
        return next(part.role for part in self.plan.parts if part.letter == letters)

    def _words(self, start: float, end: float, said: str, role: str, key: str = "") -> Label:
        thick, long = self._thick(end - start) * 0.94, 0.94
        room = (self.wide * long, thick) if self.across else (thick, self.high * long)
        return Label(self._point(0.5, (start + end) / 2), (said,), room, role, key)

    def _folds(self) -> Iterator[Mark]:
        """Where the cloth is folded, and how many layers the blade goes through."""
        held = self.step.hold(self.plan.project.cutting_table)
        parts = 2**held.folds
        for fold in range(1, parts):
            x = fold / parts
            at, top = self._point(x, 0.0)
            yield Line(((at, top - _TICK), (at, top)), "cut")
        if held.folds:
            yield self._below(told("folded: {layers} layers", layers=parts))
        elif held.moves > 1:
            yield self._below(told("ruler laid {count} times", count=held.moves))

    def _below(self, said: str) -> Label:
        """Words under the cloth, which may be wider than it."""
        x = _LEFT + self.wide / 2
        return Label(
            (x, _TOP + self.high + _FOOT / 2), (said,), (2 * min(x, WIDTH - x), _FOOT), "note"
        )

    def _cuts(self) -> Iterator[Mark]:
        """The cuts, and the edge that the first is measured from."""
        each = self._share(self.step.measure)
        yield Line((self._point(0.0, 0.0), self._point(1.0, 0.0)), "edge")
        role = "cut" if self._thick(each) >= _BROAD else "ruler"
        for cut in range(1, self.step.times + 1):
            yield Line((self._point(-0.03, cut * each), self._point(1.03, cut * each)), role)

    def _measure(self) -> Iterator[Mark]:
        """A line beside the cloth from the edge to the first cut, with its length."""
        units, each = self.plan.project.units, self._share(self.step.measure)
        said = show(self.step.measure, units)
        if self.across:
            x, foot = _LEFT - 1.5, _TOP + each * self.high
            yield Line(((x, _TOP), (x, foot)), "ruler")
            y = max((_TOP + foot) / 2, _TOP + 0.6)
            yield Label(((_LEFT - 2) / 2, y), (said,), (_LEFT - 2.5, 3.2), "ruler")
            return
        y, right = _TOP - 0.9, _LEFT + each * self.wide
        yield Line(((_LEFT, y), (right, y)), "ruler")
        room = max(right - _LEFT, _WORDS)
        yield Label(((_LEFT + right) / 2, y / 2), (said,), (room, y), "ruler")
