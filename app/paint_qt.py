"""Painting a drawing on the screen, as often as it is looked at.

A `Picture` prepares one drawing once (areas of one role in a row become one
batch, since each call from Python costs more than what it draws) and paints it
at any zoom. Lines and words keep their size on screen; hatches keep theirs
within a factor of two and stay fixed to the cloth. What would be too small to
see is left out. Antialiasing is off but for slanted lines and words.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from itertools import groupby
from math import floor, log2

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontDatabase,
    QFontMetricsF,
    QPainter,
    QPolygonF,
    QTransform,
)

from app.assets import asset
from app.hatch import hatch_lines
from app.pens_qt import colour, hatch_colour, pen
from app.photos_qt import NO_PHOTOS, Photos, SeenPhoto
from app.real_cloth import LEFT_OVER, PALE, in_colour, roles_on_cloth, style_of
from app.style import Style, Theme
from app.type_fit import Setting, Sizes, fit
from core.drawing.marks import Area, Drawing, Label, Line, Point
from core.lengths import typeset

LABEL_SIZES = Sizes(least=7.0, easy=10.0, most=14.0)  # pixels
HATCH_PITCH = 8.0  # pixels, at least
SMALLEST_HATCHED = 5.0  # pixels; a narrower piece is plain
MOST_SMOOTH_LINES = 4000  # beyond this, slanted lines are drawn without antialiasing
_SLACK = 2.0  # pixels that words may take of the padding that a page needs and a screen does not
_HALO = 2.0  # pixels of plain fill round words on a hatch


@cache
def canvas_font() -> QFont:
    """The program's own typeface, which has every fraction."""
    number = QFontDatabase.addApplicationFont(str(asset("fonts/DejaVuSans.ttf")))
    return QFont(QFontDatabase.applicationFontFamilies(number))


@cache
def text_width(text: str) -> float:
    """Width of `text` at size 1."""
    font = QFont(canvas_font())
    font.setPixelSize(100)
    return QFontMetricsF(font).horizontalAdvance(text) / 100


@dataclass(slots=True)
class _Areas:
    """Areas that follow each other and look alike; `hatch` is kept for the last one used."""

    areas: tuple[Area, ...]
    rects: list[QRectF] = field(default_factory=list)
    polygons: list[QPolygonF] = field(default_factory=list)
    hatch: tuple[tuple[str, float], list[QLineF]] = (("", 0.0), [])

    def prepare(self) -> None:
        for area in self.areas:
            polygon = QPolygonF([QPointF(x, y) for x, y in area.points])
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


class Picture:
    """One drawing, ready to be painted in a theme."""

    def __init__(self, drawing: Drawing) -> None:
        self.drawing = drawing
        marks = [mark for mark in drawing.marks if not isinstance(mark, Label)]
        self._labels = [_typeset(mark) for mark in drawing.marks if isinstance(mark, Label)]
        self._rooms = [_room(label) for label in self._labels]
        self._shapes: list[_Areas | Line] = []
        for kind, group in groupby(marks, _looks):
            if kind[0] is Area:
                areas = _Areas(tuple(mark for mark in group if isinstance(mark, Area)))
                areas.prepare()
                self._shapes.append(areas)
            else:
                self._shapes.extend(mark for mark in group if isinstance(mark, Line))
        self._set_for = (0.0, 0.0)  # the scale and the size of words that these were set for
        self._settings: dict[int, Setting | None] = {}
        self._too_small: dict[int, float] = {}  # the largest scale at which a label was left out

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

        Words outside `exposed` are left out; None means that all is seen.
        """
        for shape in self._shapes:
            if isinstance(shape, Line):
                _paint_line(painter, shape, theme[shape.role])
            else:
                _paint_areas(painter, shape, theme, scale, photos)
        self._paint_labels(painter, scale, theme, exposed)
        self._ring(painter, theme, chosen)

    def key_at(self, x: float, y: float) -> str:
        """The key of the topmost keyed area at a place, or nothing."""
        for mark in reversed(self.drawing.marks):
            if isinstance(mark, Area) and mark.key:
                polygon = QPolygonF([QPointF(px, py) for px, py in mark.points])
                if polygon.containsPoint(QPointF(x, y), Qt.FillRule.OddEvenFill):
                    return mark.key
        return ""

    def _ring(self, painter: QPainter, theme: Theme, chosen: Collection[str]) -> None:
        """A dark and a light line round each chosen piece, seen on any fill."""
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for mark in self.drawing.marks if chosen else ():
            if isinstance(mark, Area) and mark.key in chosen:
                polygon = QPolygonF([QPointF(x, y) for x, y in mark.points])
                for name, width in ((theme.table, 4.0), (theme.chosen, 2.0)):
                    painter.setPen(pen(name, width))
                    painter.drawPolygon(polygon)

    def _paint_labels(
        self, painter: QPainter, scale: float, theme: Theme, exposed: QRectF | None
    ) -> None:
        to_screen = painter.worldTransform()
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
        painter.setWorldTransform(QTransform())
        font = QFont(canvas_font())
        on_cloth = roles_on_cloth(self.drawing, theme)
        for place, label in enumerate(self._labels):
            if exposed is not None and not exposed.intersects(self._rooms[place]):
                continue
            if (setting := self._setting_of(place, label, scale, theme.words)) is not None:
                room = to_screen.mapRect(self._rooms[place])
                style = theme[label.role]
                plain = bool(style.hatch) or label.role in on_cloth
                _paint_words(painter, setting, room, (style, plain), font)
        painter.restore()

    def _setting_of(self, place: int, label: Label, scale: float, larger: float) -> Setting | None:
        """How a label is set at this scale; worked out once, and only when it is seen."""
        if self._set_for != (scale, larger):
            self._set_for, self._settings = (scale, larger), {}
        if scale <= self._too_small.get(place, 0.0):
            return None
        if place not in self._settings:
            self._settings[place] = setting = _setting(label, scale, larger)
            if setting is None:
                self._too_small[place] = scale
        return self._settings[place]


def _typeset(label: Label) -> Label:
    return replace(label, texts=tuple(typeset(text) for text in label.texts))


def _room(label: Label) -> QRectF:
    (x, y), (wide, high) = label.centre, label.room
    return QRectF(x - wide / 2, y - high / 2, wide, high)


def _setting(label: Label, scale: float, larger: float) -> Setting | None:
    """How a label is set; words that do not go in `larger` go in at their usual sizes."""
    room = (label.room[0] * scale + _SLACK, label.room[1] * scale + _SLACK)
    if max(room) < LABEL_SIZES.least or min(room) < LABEL_SIZES.least / 2:
        return None
    if larger > 1 and (setting := fit(label.texts, room, text_width, LABEL_SIZES.times(larger))):
        return setting
    return fit(label.texts, room, text_width, LABEL_SIZES)


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
    painter.setBrush(seen.brush(scale, turned=first.turned))
    _draw(painter, areas)
    if left_over:
        veil = QColor(style.fill)
        veil.setAlphaF(1 - PALE)
        painter.setBrush(veil)
        _draw(painter, areas)
    return in_colour(style, seen.mean, pale=left_over)


def _draw(painter: QPainter, areas: _Areas) -> None:
    if areas.rects:
        painter.drawRects(areas.rects)
    for polygon in areas.polygons:
        painter.drawPolygon(polygon)


def _paint_line(painter: QPainter, line: Line, style: Style) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(pen(style.outline, style.width * 4 / 3, style.dash))
    painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in line.points]))


def _paint_words(
    painter: QPainter, setting: Setting, room: QRectF, look: tuple[Style, bool], font: QFont
) -> None:
    """Words in the middle of their room (pixels); plain fill behind them, not over the next one.

    `look` is their style, and whether they need the plain fill.
    """
    style, plain = look
    centre = room.center()
    wide, high = (side + 2 * _HALO for side in setting.extent(text_width))
    if plain:
        back = QRectF(centre.x() - wide / 2, centre.y() - high / 2, wide, high)
        painter.fillRect(back & room, colour(style.fill))
    size = int(setting.size)
    font.setPixelSize(size)
    painter.setFont(font)
    painter.setPen(colour(style.ink))
    if setting.turned:
        painter.setWorldTransform(QTransform.fromTranslate(centre.x(), centre.y()).rotate(-90))
        centre = QPointF(0, 0)
    for text, below in setting.baselines():
        start = QPointF(centre.x() - text_width(text) * size / 2, centre.y() + below)
        painter.drawText(start, text)
    if setting.turned:
        painter.setWorldTransform(QTransform())


def _is_level(points: Sequence[Point]) -> bool:
    """Whether the points are a rectangle with level and upright sides."""
    xs, ys = {x for x, _ in points}, {y for _, y in points}
    return len(points) == 4 and len(xs) == 2 and len(ys) == 2


def _narrow(points: Sequence[Point]) -> float:
    """The smaller side of the box round the points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(max(xs) - min(xs), max(ys) - min(ys))
