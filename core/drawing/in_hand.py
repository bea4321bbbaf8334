"""The cloth in hand to scale, with the cut to make now as a heavy line.

It lies as on the picture of its cloth on the screen: the straight end at the left,
the near edge towards the reader. What comes off is filled as the part it is for.
"""

from __future__ import annotations

from collections.abc import Iterator

from core.cloth_names import told_cloth
from core.cutting.cuts import TableCut
from core.cutting.order import Order
from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.language import told
from core.lay.lay import Direction, Rect
from core.lengths import Units, show, show_size
from core.part_names import told_part
from core.steps import Becomes, Fall

_MARGIN = 0.09  # of the longer side, on every side, for words and measures
_PADDING = 0.94  # share of a rectangle that its words may fill
_BEYOND = 0.02  # of the longer side: how far the cut is drawn beyond the cloth
_THIN = 0.03  # of the longer side; words in a thinner strip could not be read
_ROLES = {Becomes.SECTION: "cloth", Becomes.OFFCUT: "offcut", Becomes.WASTE: "straightening"}


def draw_in_hand(order: Order, cut: TableCut, units: Units) -> Drawing:
    """The picture of a cut, in inches of cloth."""
    hand = _InHand(order, cut, units)
    return Drawing(told("the cloth in hand"), hand.width, hand.height, tuple(hand.marks()))


class _InHand:
    def __init__(self, order: Order, cut: TableCut, units: Units) -> None:
        self.order, self.cut, self.units = order, cut, units
        self.crosswise = cut.step.direction is Direction.CROSSWISE
        self.along, self.across = float(cut.region.along), float(cut.region.across)
        self.longer = max(self.along, self.across)
        self.margin = _MARGIN * self.longer
        self.width, self.height = self.along + 2 * self.margin, self.across + 2 * self.margin
        self.measure = float(cut.step.measure)

    def marks(self) -> Iterator[Mark]:
        yield self._area(self.cut.region, "cloth")
        yield from self._fallen(self.cut.off)
        if self.cut.rest is not None:
            yield from self._fallen(self.cut.rest)
        else:
            size = show_size(self.cut.left.across, self.cut.left.along, self.units)
            source = told_cloth(self.cut.step.source)
            yield self._label(self.cut.left, (f"{source}\n{size}", f"{source} {size}"), "cloth")
        yield from self._edges()
        yield from self._line()
        yield from self._measured()

    def _point(self, across: float, along: float) -> Point:
        """A place on the picture, measured from the near edge and the straight end."""
        return self.margin + along, self.height - self.margin - across

    def _box(self, rect: Rect) -> tuple[float, float, float, float]:
        """Where a rectangle of the cloth in hand starts and ends, across and along."""
        x, y = float(rect.x - self.cut.region.x), float(rect.y - self.cut.region.y)
        return x, x + float(rect.across), y, y + float(rect.along)

    def _area(self, rect: Rect, role: str, key: str = "") -> Area:
        near, far, start, end = self._box(rect)
        corners = ((near, start), (near, end), (far, end), (far, start))
        return Area(tuple(self._point(*corner) for corner in corners), role, key)

    def _label(self, rect: Rect, texts: tuple[str, ...], role: str, key: str = "") -> Label:
        near, far, start, end = self._box(rect)
        room = (end - start) * _PADDING, (far - near) * _PADDING
        return Label(self._point((near + far) / 2, (start + end) / 2), texts, room, role, key)

    def _fallen(self, fall: Fall) -> Iterator[Mark]:
        """What comes off or is left, with its letter."""
        role, key = _ROLES.get(fall.becomes, ""), ""
        name = short = told_cloth(fall.label)
        if fall.becomes is Becomes.PIECE:
            mark = next(mark for mark in self.order.pieces if mark.label == fall.label)
            role, key = self.order.part(mark.placed).role, fall.label
            name = f"{fall.label}\n{told_part(mark.placed.name)}"
        size = show_size(fall.rect.across, fall.rect.along, self.units)
        yield self._area(fall.rect, role, key)
        thick = float(fall.rect.along if self.crosswise else fall.rect.across)
        if thick >= _THIN * self.longer:
            yield self._label(fall.rect, (f"{name}\n{size}", name, short), role, key)
        elif not self.cut.step.straightening:
            yield self._beside(fall)

    def _beside(self, fall: Fall) -> Label:
        """The name of a thin strip, at the end where its measure is not."""
        near, far, start, end = self._box(fall.rect)
        if self.crosswise:
            at = self._point(-self.margin / 2, (start + end) / 2)
            room = 2 * min(at[0], self.width - at[0]), self.margin / 2
        else:
            at = self._point((near + far) / 2, self.along + self.margin / 2)
            room = self.margin * _PADDING, self.margin / 2
        return Label(at, (told_cloth(fall.label),), room, "note")

    def _edges(self) -> Iterator[Mark]:
        """The edge to measure from, heavy, and what it is called."""
        if self.crosswise:
            yield Line((self._point(0, 0), self._point(self.across, 0)), "edge")
            name = told("raw end") if self.cut.step.straightening else told("straight end")
            at, room = (self.margin / 2, self.height / 2), (self.margin * 0.9, self.height)
        else:
            yield Line((self._point(0, 0), self._point(0, self.along)), "edge")
            name = told("near edge")
            at = (self.width / 2, self.height - self.margin / 2)
            room = (self.width, self.margin * 0.9)
        yield Label(at, (name,), room, "note")

    def _line(self) -> Iterator[Mark]:
        """The cut, a little beyond the cloth."""
        beyond = _BEYOND * self.longer
        if self.crosswise:
            ends = (-beyond, self.measure), (self.across + beyond, self.measure)
        else:
            ends = (self.measure, -beyond), (self.measure, self.along + beyond)
        yield Line((self._point(*ends[0]), self._point(*ends[1])), "next cut")

    def _measured(self) -> Iterator[Mark]:
        """A line beside the cloth from the edge to the cut, with its length."""
        beside, said = self.margin / 3, show(self.cut.step.measure, self.units)
        tick, middle = beside / 3, self.measure / 2
        if self.crosswise:
            far = self.across + beside
            ends = self._point(far, 0), self._point(far, self.measure)
            ticks = ((0.0, -tick), (0.0, tick))
            at = self._point(self.across + self.margin * 2 / 3, middle)
            room = 2 * min(at[0], self.width - at[0]), self.margin / 2
        else:
            ends = self._point(0, -beside), self._point(self.measure, -beside)
            ticks = ((-tick, 0.0), (tick, 0.0))
            at = self._point(middle, -self.margin * 2 / 3)
            room = self.margin / 2, 2 * min(at[1], self.height - at[1])
        yield Line(ends, "ruler")
        for x, y in ends:
            yield Line(tuple((x + dx, y + dy) for dx, dy in ticks), "ruler")
        yield Label(at, (said,), room, "ruler")
