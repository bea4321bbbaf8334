"""The bound edge, cut through: quilt, layers of binding, fold, seam and stitching to scale.

The first face is on top and the quilt's edge at the left. Widths and the quilt's
thickness are in true proportion; the layers of cloth, which are far thinner,
are drawn a little apart so that they can be counted.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, sin

from core.binding_choices import AccentKind, Face, Finishing
from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.drawing.shapes import moved
from core.figures import usual
from core.finish.binding_plan import BindingPlan
from core.finish.binding_width import REACH_BY_MACHINE, REACH_BY_MACHINE_MM
from core.language import told
from core.lengths import Units, show
from core.plan import Plan
from core.quilt import Binding, Fold

_GAP = 1 / 64  # inches between two layers as drawn
_ROW = 0.12  # inches for a line of words
_TICK = 0.03  # half of one
_TO_WORDS = 0.09  # from a measure to the middle of its words
_BESIDE = 0.5  # inches of quilt past the widest face
_LEFT, _RIGHT = 0.2, 0.1
_LEAST_WIDTH = 1.6


def draw_edge_section(plan: Plan) -> Drawing | None:
    """The section of the plan's bound edge in inches; None where there is no binding."""
    spec, binding = plan.project.binding, plan.binding
    if spec is None or binding is None:
        return None
    section = _Section(spec, binding, float(plan.project.quilt.edge_thickness), plan.project.units)
    marks = tuple(section.marks())
    points = [
        point
        for mark in marks
        for point in ((mark.centre,) if isinstance(mark, Label) else mark.points)
    ]
    top = min(y for _, y in points) - _ROW / 2
    height = max(y for _, y in points) + _ROW / 2 - top
    width = _LEFT + section.inward + _RIGHT
    return Drawing(
        told("The bound edge, cut through"),
        width,
        height,
        tuple(moved(mark, _LEFT, -top) for mark in marks),
    )


class _Section:
    """Coordinates: x inward from the quilt's edge, y down from the first face's surface."""

    def __init__(self, spec: Binding, plan: BindingPlan, thickness: float, units: Units) -> None:
        self.spec, self.plan, self.units = spec, plan, units
        widths = plan.widths
        self.t, self.s = thickness, float(widths.seam)
        self.first, self.second = float(widths.first_face), float(widths.second_face)
        self.faced = spec.fold is Fold.FACED
        self.inward = max(self.first, self.second, self.s) + _BESIDE
        self.inward = max(self.inward, _LEAST_WIDTH - _LEFT - _RIGHT)
        # Under the first face lie the accent's two layers, where there is one.
        self.under = 2 * _GAP if plan.accent is not None and not self.faced else 0.0
        self.back = 2 * self.t if self.faced else self.t

    def marks(self) -> Iterator[Mark]:
        yield from self._quilt()
        yield from self._accent()
        yield Line(self._binding(), "binding")
        yield from self._stitching()
        yield from self._measures()

    def _quilt(self) -> Iterator[Mark]:
        thick = max(self.t, _GAP)
        yield Area(_rectangle(0, 0, self.inward, thick), "batting")
        if self.faced:
            yield Area(_rectangle(0, thick, self.s, 2 * thick), "batting")
        left = self.second if self.faced else max(self.first, self.second)
        middle = (left + self.inward) / 2
        yield Label((middle, thick / 2), (told("quilt"),), (self.inward - left, thick), "batting")

    def _accent(self) -> Iterator[Mark]:
        accent = self.plan.accent
        if accent is None or self.faced:
            return
        low, high, shows = -_GAP, -2 * _GAP, float(accent.shows)
        end = self.s + shows
        if accent.kind is AccentKind.FLANGE:
            turn: tuple[Point, ...] = ((end, low), (end + _GAP / 2, (low + high) / 2), (end, high))
        else:
            turn = tuple(
                (self.s + shows / 2 - shows / 2 * cos(a), -shows / 2 + shows / 2 * sin(a))
                for a in (2 * pi * step / 24 for step in range(1, 24))
            )
        yield Line(((0, low), (self.s, low), *turn, (self.s, high), (0, high)), "accent")

    def _binding(self) -> tuple[Point, ...]:
        """The strip's path: from one raw edge by way of the fold to the other."""
        if self.faced:
            return self._facing()
        s, b, base, under = self.s, self.second, self.back, -self.under
        if self.spec.fold is Fold.SINGLE:
            return (
                (0, under - _GAP), (s, under - _GAP),
                (s + _GAP / 2, under - 1.5 * _GAP), (s, under - 2 * _GAP),
                (-_GAP, under - 2 * _GAP), (-_GAP, base + 2 * _GAP),
                (b, base + 2 * _GAP), (b + _GAP / 2, base + 1.5 * _GAP),
                (b, base + _GAP), (b - s, base + _GAP),
            )  # fmt: skip
        outer = (
            (0, under - _GAP), (s, under - _GAP),
            (s + _GAP, under - 2.5 * _GAP), (s, under - 4 * _GAP),
            (-2 * _GAP, under - 4 * _GAP), (-2 * _GAP, base + 2 * _GAP), (b, base + 2 * _GAP),
        )  # fmt: skip
        inner = (
            (b, base + _GAP), (-_GAP, base + _GAP), (-_GAP, under - 3 * _GAP),
            (s, under - 3 * _GAP), (s + _GAP / 2, under - 2.5 * _GAP), (s, under - 2 * _GAP),
            (0, under - 2 * _GAP),
        )  # fmt: skip
        return (*outer, (b + _GAP / 2, base + 1.5 * _GAP), *inner)

    def _facing(self) -> tuple[Point, ...]:
        s, b, base = self.s, self.second, self.back
        return (
            (s, base + _GAP), (0, base + _GAP), (-_GAP, base + 2.5 * _GAP), (0, base + 4 * _GAP),
            (b, base + 4 * _GAP), (b + _GAP / 2, base + 3.5 * _GAP), (b, base + 3 * _GAP),
            (0, base + 3 * _GAP), (-_GAP / 2, base + 2.5 * _GAP), (0, base + 2 * _GAP),
            (s, base + 2 * _GAP),
        )  # fmt: skip

    def _stitching(self) -> Iterator[Mark]:
        """The seam of the first face, and what holds down the second."""
        if not self.faced:
            yield Line(((self.s, -self.under - 2 * _GAP), (self.s, self.t)), "seam")
        at, top = self.second, self.back - (_GAP if not self.faced else 0)
        if self.spec.finishing is Finishing.MACHINE and not self.faced:
            strip, said = self.plan.widths.strip, self.spec.stitching
            from_fold = usual(said, strip, REACH_BY_MACHINE, REACH_BY_MACHINE_MM)
            at, top = self.second - float(from_fold), -self.under - 5 * _GAP
            if at > self.s:
                top = -_GAP
        yield Line(((at, top), (at, self.back + 3 * _GAP)), "seam")

    def _measures(self) -> Iterator[Mark]:
        """Widths between ticks: the first face above, the second and the reach below."""
        above = -self.under - 5 * _GAP - _TICK
        if self.first > 0:
            said = show(self.plan.first_face_width, self.units)
            yield from self._measure(0, self.first, above, (self._first(said),), up=True)
        below = self.back + 5 * _GAP + _TICK
        said = show(self.plan.second_face_width, self.units)
        yield from self._measure(0, self.second, below, (self._second(said),), up=False)
        if not self.faced and self.second != self.s:
            said = show(abs(self.plan.reach), self.units)
            words = (
                told("{length} past the seam", length=said)
                if self.second > self.s
                else told("{length} short of the seam", length=said)
            )
            near, far = sorted((self.s, self.second))
            under = below + _TO_WORDS + _ROW / 2 + _TICK
            yield from self._measure(near, far, under, (words,), up=False)

    def _first(self, width: str) -> str:
        if self.spec.first_face is Face.FRONT:
            return told("first face (front) {width}", width=width)
        return told("first face (back) {width}", width=width)

    def _second(self, width: str) -> str:
        if self.faced:
            return told("facing on the back {width}", width=width)
        if self.spec.first_face is Face.FRONT:
            return told("second face (back) {width}", width=width)
        return told("second face (front) {width}", width=width)

    def _measure(
        self, start: float, end: float, y: float, texts: tuple[str, ...], *, up: bool
    ) -> Iterator[Mark]:
        yield Line(((start, y), (end, y)), "ruler")
        for x in (start, end):
            yield Line(((x, y - _TICK), (x, y + _TICK)), "ruler")
        room = self.inward - start
        yield Label(
            (start + room / 2, y + (-_TO_WORDS if up else _TO_WORDS)), texts, (room, _ROW), "note"
        )


def _rectangle(left: float, top: float, right: float, bottom: float) -> tuple[Point, ...]:
    return ((left, top), (right, top), (right, bottom), (left, bottom))
