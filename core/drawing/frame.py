"""Where cloth coordinates lie on the picture of a sheet."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from core.drawing.marks import Area, Label, Line, Point
from core.lay.lay import Rect
from core.lengths import Inches

MARGIN = Fraction(4)  # inches of cloth beside the selvages, for the ruler and the arrow
_PADDING = 0.94  # share of a piece that its words may fill


class Heading(StrEnum):
    """Which way the length of the cloth runs on the picture."""

    RIGHT = "right"
    DOWN = "down"


class Frame:
    """Where cloth coordinates lie on the picture.

    `size` is the cloth from its raw end and with its selvages, in cloth coordinates.
    It is turned into floats once, since a picture has a thousand points.
    """

    def __init__(self, heading: Heading, size: Rect) -> None:
        self.size = size
        self._down = heading is Heading.DOWN
        self._left, self._top = float(size.x - MARGIN), float(size.y)
        sides = float(size.across + 2 * MARGIN), float(size.along)
        self.width, self.height = sides if self._down else sides[::-1]

    def point(self, across: Inches, along: Inches) -> Point:
        """Picture inches, y down, of a place on the cloth."""
        return self.point_at(float(across), float(along))

    def point_at(self, across: float, along: float) -> Point:
        """The same of a place that is a float already."""
        down, over = along - self._top, across - self._left
        return (over, down) if self._down else (down, self.height - over)

    def place(self, point: Point) -> tuple[float, float]:
        """The place on the cloth, across and along, that a point of the picture shows."""
        x, y = point
        over, down = (x, y) if self._down else (self.height - y, x)
        return over + self._left, down + self._top

    def corners(self, rect: Rect) -> tuple[Point, ...]:
        left, right = float(rect.x), float(rect.right)
        start, end = float(rect.y), float(rect.end)
        return (
            self.point_at(left, start),
            self.point_at(right, start),
            self.point_at(right, end),
            self.point_at(left, end),
        )

    def line(self, rect: Rect, role: str) -> Line:
        """The rectangle's outline alone."""
        corners = self.corners(rect)
        return Line((*corners, corners[0]), role)

    def area(self, rect: Rect, role: str, key: str = "") -> Area:
        return Area(self.corners(rect), role, key)

    def label(self, rect: Rect, texts: tuple[str, ...], role: str, key: str = "") -> Label:
        """Words in the middle of `rect`, within most of it."""
        (x1, y1), _, (x2, y2), _ = self.corners(rect)
        room = (abs(x2 - x1) * _PADDING, abs(y2 - y1) * _PADDING)
        return Label(((x1 + x2) / 2, (y1 + y2) / 2), texts, room, role, key)
