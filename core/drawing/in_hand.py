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

_LONG = 4.0  # times its height is how long the picture's room is on a screen, more or less
_MARGIN = 0.17  # of the cloth, in such a room, where words or measures stand
_NO_WORDS = 1 / 3  # of a margin, where none do
_WIDE = 1.5  # times its height: a picture of a narrow strip has room for words beside it
_PADDING = 0.94  # share of a rectangle that its words may fill
_BEYOND = 1 / 4  # of a margin: how far the cut is drawn beyond the cloth
_THIN = 0.4  # of a margin; words in a thinner strip could not be read
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
        self.margin = _MARGIN * max(self.across, self.along / _LONG)
        falls = (cut.off,) if cut.rest is None else (cut.off, cut.rest)
        thin = any(self._thin(fall.rect) for fall in falls) and not cut.step.straightening
        named = thin or not self.crosswise
        self.above = self.margin * (1 if self.crosswise else _NO_WORDS)
        self.below = self.margin * (1 if named else _NO_WORDS)
        self.height = self.across + self.above + self.below
        self.width = max(self.along + 4 * self.margin, _WIDE * self.height)
        self.left = (self.width - self.along) / 2
        self.measure = float(cut.step.measure)

    def marks(self) -> Iterator[Mark]:
        yield self._area(self.cut.region, "cloth")
        yield from self._fallen(self.cut.off)
        if self.cut.rest is not None:
            yield from self._fallen(self.cut.rest)
        elif not self._thin(self.cut.left):
            size = show_size(self.cut.left.across, self.cut.left.along, self.units)
            source = told_cloth(self.cut.step.source)
            yield self._label(self.cut.left, (f"{source}\n{size}", f"{source} {size}"), "cloth")
        yield from self._edges()
        yield from self._line()
        yield from self._measured()

    def _point(self, across: float, along: float) -> Point:
        """A place on the picture, measured from the near edge and the straight end."""
        return self.left + along, self.height - self.below - across

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
        if not self._thin(fall.rect):
            yield self._label(fall.rect, (f"{name}\n{size}", name, short), role, key)
        elif not self.cut.step.straightening:
            yield self._beside(fall)

    def _thin(self, rect: Rect) -> bool:
        """Whether what falls or is left is too thin for words on it."""
        thick = float(rect.along if self.crosswise else rect.across)
        return thick < _THIN * self.margin

    def _beside(self, fall: Fall) -> Label:
        """The name of a thin strip, at the end where its measure is not.

        It keeps to its own side of the cut: what lies on the other may be thin too.
        """
        near, far, start, end = self._box(fall.rect)
        high = self.margin * 0.7
        if self.crosswise:
            half = max(end - start, 2 * self.margin) / 2
            aside = half + self.margin / 5  # clear of the line
            aside = aside if start >= self.measure else -aside
            at, room = self._point(-self.margin / 2, self.measure + aside), (2 * half, high)
        else:
            half = max(far - near, high) / 2
            aside = half if near >= self.measure else -half
            at = self._point(self.measure + aside, self.along + self.left / 2)
            room = self.left * _PADDING, 2 * half
        return Label(at, (told_cloth(fall.label),), room, "note")

    def _edges(self) -> Iterator[Mark]:
        """The edge to measure from, heavy, and what it is called."""
        if self.crosswise:
            yield Line((self._point(0, 0), self._point(self.across, 0)), "edge")
            name = told("raw end") if self.cut.step.straightening else told("straight end")
            near = self.measure < 4 * self.margin  # then the measure's words are in the way
            middle = self.height - self.below - self.across / 2 if near else self.height / 2
            at, high = (self.left - self.margin / 2, middle), self.across if near else self.height
            room = self.margin * 0.9, high
        else:
            yield Line((self._point(0, 0), self._point(0, self.along)), "edge")
            name = told("near edge")
            at = self.width / 2, self.height - self.margin / 2
            room = (self.width, self.margin * 0.9)
        yield Label(at, (name,), room, "note")

    def _line(self) -> Iterator[Mark]:
        """The cut, a little beyond the cloth."""
        beyond = _BEYOND * self.margin
        if self.crosswise:
            ends = (-beyond, self.measure), (self.across + beyond, self.measure)
        else:
            ends = (self.measure, -beyond), (self.measure, self.along + beyond)
        yield Line((self._point(*ends[0]), self._point(*ends[1])), "next cut")

    def _measured(self) -> Iterator[Mark]:
        """A line beside the cloth from the edge to the cut, with its length."""
        beside, said = self.margin / 4, show(self.cut.step.measure, self.units)
        tick, middle, words = beside / 2, self.measure / 2, self.margin * 0.65
        if self.crosswise:
            far = self.across + beside
            ends = self._point(far, 0), self._point(far, self.measure)
            ticks = ((0.0, -tick), (0.0, tick))
            at = self._point(self.across + words, middle)
            room = 2 * min(at[0], self.width - at[0]), words
        else:
            ends = self._point(0, -beside), self._point(self.measure, -beside)
            ticks = ((-tick, 0.0), (tick, 0.0))
            reach = min(self.left, 2.5 * self.margin)
            at = self._point(middle, -(beside + reach) / 2)
            room = (reach - beside) * _PADDING, 2 * min(at[1], self.height - at[1])
        yield Line(ends, "ruler")
        for x, y in ends:
            yield Line(tuple((x + dx, y + dy) for dx, dy in ticks), "ruler")
        yield Label(at, (said,), room, "ruler")
