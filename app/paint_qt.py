"""Painting a drawing on the screen, as often as it is looked at.

A `Picture` prepares one drawing once (areas of one role in a row become one
batch, since each call from Python costs more than what it draws) and paints it
at any zoom. Lines and words keep their size on screen; hatches keep theirs
within a factor of two and stay fixed to the cloth. What would be too small to
see is left out. Antialiasing is off but for slanted lines and words.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field
from itertools import groupby
from math import floor, log2

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QPainter,
    QPolygonF,
)

from app.colour import ink_on
from app.hatch import hatch_lines
from app.pens_qt import colour, hatch_colour, pen
from app.photos_qt import NO_PHOTOS, Photos, SeenPhoto
from app.real_cloth import LEFT_OVER, PALE, in_colour, style_of
from app.style import Style, Theme
from app.words_qt import Words
from core.drawing.marks import Area, Drawing, Label, Line, Point

HATCH_PITCH = 8.0  # pixels, at least
SMALLEST_HATCHED = 5.0  # pixels; a narrower piece is plain
MOST_SMOOTH_LINES = 4000  # beyond this, slanted lines are drawn without antialiasing
_CASING = 2.5  # pixels that show beside a line on cloth of any colour
SEWN = frozenset({"edge", "seam"})  # lines that lie on cloth
_MOST_PEN = 8.0  # pixels that no outline is wider than
_LEAST = 1e-6  # inches, by which a line is as wide as Qt wants


@dataclass(slots=True)
class _Areas:
    """Areas that follow each other and look alike; `hatch` is kept for the last one used."""

    areas: tuple[Area, ...]
    rects: list[QRectF] = field(default_factory=list)
    polygons: list[QPolygonF] = field(default_factory=list)
    hatch: tuple[tuple[str, float], list[QLineF]] = (("", 0.0), [])
    box: QRectF = field(default_factory=QRectF)

    def prepare(self) -> None:
        for area in self.areas:
            polygon = _polygon(area.points)
            self.box |= polygon.boundingRect()
            if _is_level(area.points):
                self.rects.append(polygon.boundingRect())
            else:
                self.polygons.append(polygon)

    def hatch_at(self, hatch_id: str, pitch: float, narrowest: float) -> list[QLineF]:
        if self.hatch[0] != (hatch_id, pitch):
            lines = [
                QLineF(*start, *end)
                for area in self.areas
                if _narrow(area.points) >= narrowest
                for start, end in hatch_lines(area.points, hatch_id, pitch)
            ]
            self.hatch = (hatch_id, pitch), lines
        return self.hatch[1]


@dataclass(slots=True)
class _Lines:
    """Lines that follow each other and look alike; straight ones are painted at once."""

    role: str
    straight: list[QLineF]
    bent: list[QPolygonF]
    box: QRectF

    @classmethod
    def of(cls, lines: Sequence[Line]) -> _Lines:
        pairs = [line.points for line in lines if len(line.points) == 2]
        straight = [QLineF(*start, *end) for start, end in pairs]
        bent = [_polygon(line.points) for line in lines if len(line.points) != 2]
        box = _polygon([point for line in lines for point in line.points]).boundingRect()
        return cls(lines[0].role, straight, bent, box)

    def draw(self, painter: QPainter) -> None:
        painter.drawLines(self.straight)
        for line in self.bent:
            painter.drawPolyline(line)


class Picture:
    """One drawing, ready to be painted in a theme."""

    def __init__(self, drawing: Drawing) -> None:
        self.drawing = drawing
        marks = [mark for mark in drawing.marks if not isinstance(mark, Label)]
        self._words = Words(drawing)
        real = {mark.real for mark in marks if isinstance(mark, Area) and mark.real is not None}
        self._photos = {cloth.photo for cloth in real if cloth.photo is not None}
        self._cased = SEWN if real else frozenset()
        self._shapes: list[_Areas | _Lines] = []
        for kind, group in groupby(marks, _looks):
            if kind[0] is Area:
                areas = _Areas(tuple(mark for mark in group if isinstance(mark, Area)))
                areas.prepare()
                self._shapes.append(areas)
            else:
                lines = [mark for mark in group if isinstance(mark, Line)]
                self._shapes.append(_Lines.of(lines))

    def paint(
        self,
        painter: QPainter,
        scale: float,
        theme: Theme,
        chosen: Collection[str] = (),
        exposed: QRectF | None = None,
        photos: Photos = NO_PHOTOS,
    ) -> None:
        """Paint in the painter's coordinates, inches; `scale` is pixels to an inch.

        What is outside `exposed` may be left out; None means that all is seen.
        """
        near = None if exposed is None else exposed.adjusted(*_round(_MOST_PEN / scale))
        for shape in self._shapes:
            if near is not None and not _meet(near, shape.box):
                continue
            if isinstance(shape, _Lines):
                cased = theme.real_cloth and shape.role in self._cased
                _paint_lines(painter, shape, theme[shape.role], cased=cased)
            else:
                _paint_areas(painter, shape, theme, scale, photos)
        self._words.paint(painter, scale, theme, exposed)
        self.ring(painter, theme, chosen)

    def paint_fills(self, painter: QPainter, theme: Theme, exposed: QRectF) -> None:
        """Paint the areas alone and plain, for a moment."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        painter.setPen(Qt.PenStyle.NoPen)
        for shape in self._shapes:
            if isinstance(shape, _Areas) and exposed.intersects(shape.box):
                painter.setBrush(colour(style_of(shape.areas[0], theme).fill))
                _draw(painter, shape)

    def stamps(self, photos: Photos) -> tuple[int, ...]:
        """What tells whether the photos in this picture look as they did."""
        seen = (photos.seen(photo) for photo in self._photos)
        return tuple(sorted(0 if photo is None else photo.stamp for photo in seen))

    def key_at(self, x: float, y: float) -> str:
        """The key of the topmost keyed area at a place, or nothing."""
        for mark in reversed(self.drawing.marks):
            if isinstance(mark, Area) and mark.key:
                polygon = _polygon(mark.points)
                if polygon.containsPoint(QPointF(x, y), Qt.FillRule.OddEvenFill):
                    return mark.key
        return ""

    def ring(self, painter: QPainter, theme: Theme, chosen: Collection[str]) -> None:
        """A dark and a light line round each chosen piece, seen on any fill."""
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for mark in self.drawing.marks if chosen else ():
            if isinstance(mark, Area) and mark.key in chosen:
                polygon = _polygon(mark.points)
                for name, width in ((theme.table, 4.0), (theme.chosen, 2.0)):
                    painter.setPen(pen(name, width))
                    painter.drawPolygon(polygon)


def _round(width: float) -> tuple[float, float, float, float]:
    return -width, -width, width, width


def _looks(mark: Area | Line) -> tuple[object, ...]:
    """What marks that are painted at once have in common."""
    if isinstance(mark, Area):
        return Area, mark.role, mark.real, mark.turned
    return Line, mark.role


def _paint_areas(
    painter: QPainter, areas: _Areas, theme: Theme, scale: float, photos: Photos
) -> None:
    first = areas.areas[0]
    style = style_of(first, theme)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(Qt.PenStyle.NoPen)
    photo = first.real.photo if first.real is not None and theme.real_cloth else None
    if photo is not None and (seen := photos.seen(photo)) is not None:
        style = _paint_photo(painter, areas, theme[first.role], seen, scale)
    else:
        painter.setBrush(colour(style.fill))
        _draw(painter, areas)
    if style.hatch:
        pitch = 2.0 ** -floor(log2(scale / HATCH_PITCH))
        lines = areas.hatch_at(style.hatch, pitch, SMALLEST_HATCHED / scale)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, len(lines) < MOST_SMOOTH_LINES)
        painter.setPen(pen(hatch_colour(style), 1.0))
        painter.drawLines(lines)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, bool(areas.polygons))
    painter.setPen(pen(style.outline, style.width * 4 / 3, style.dash))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    _draw(painter, areas)


def _paint_photo(
    painter: QPainter, areas: _Areas, style: Style, seen: SeenPhoto, scale: float
) -> Style:
    """The cloth itself, paler where it is left over; the style that shows on it."""
    first = areas.areas[0]
    left_over = first.role in LEFT_OVER
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    painter.setBrush(seen.brush(scale * painter.device().devicePixelRatioF(), turned=first.turned))
    _draw(painter, areas)
    if left_over:
        veil = QColor(style.fill)
        veil.setAlphaF(1 - PALE)
        painter.setBrush(veil)
        _draw(painter, areas)
    shown = in_colour(style, seen.mean, pale=left_over)
    # A print is dark here and light there: each outline has the other of the two behind it.
    painter.setPen(pen(ink_on(shown.outline), shown.width * 4 / 3 + _CASING))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    _draw(painter, areas)
    painter.setPen(Qt.PenStyle.NoPen)
    return shown


def _draw(painter: QPainter, areas: _Areas) -> None:
    if areas.rects:
        painter.drawRects(areas.rects)
    for polygon in areas.polygons:
        painter.drawPolygon(polygon)


def _paint_lines(painter: QPainter, lines: _Lines, style: Style, *, cased: bool) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    if cased:
        painter.setPen(pen(ink_on(style.outline), style.width * 4 / 3 + _CASING))
        lines.draw(painter)
    painter.setPen(pen(style.outline, style.width * 4 / 3, style.dash))
    lines.draw(painter)


def _polygon(points: Sequence[Point]) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in points])


def _meet(sight: QRectF, box: QRectF) -> bool:
    """Whether something of `box` is in sight; it may be a line, which Qt calls empty."""
    return sight.intersects(box.adjusted(-_LEAST, -_LEAST, _LEAST, _LEAST))


def _is_level(points: Sequence[Point]) -> bool:
    """Whether the points are a rectangle with level and upright sides."""
    xs, ys = {x for x, _ in points}, {y for _, y in points}
    return len(points) == 4 and len(xs) == 2 and len(ys) == 2


def _narrow(points: Sequence[Point]) -> float:
    """The smaller side of the box round the points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(max(xs) - min(xs), max(ys) - min(ys))
