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
    QPen,
    QPolygonF,
    QTransform,
)

from app.assets import asset
from app.hatch import hatch_lines
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
    """Areas of one role that follow each other; `hatch` is kept for the last pitch used."""

    role: str
    areas: tuple[Area, ...]
    rects: list[QRectF] = field(default_factory=list)
    polygons: list[QPolygonF] = field(default_factory=list)
    hatch: tuple[float, list[QLineF]] = (0.0, [])

    def prepare(self) -> None:
        for area in self.areas:
            polygon = QPolygonF([QPointF(x, y) for x, y in area.points])
            if _is_level(area.points):
                self.rects.append(polygon.boundingRect())
            else:
                self.polygons.append(polygon)

    def hatch_at(self, hatch_id: str, pitch: float, narrowest: float) -> list[QLineF]:
        if self.hatch[0] != pitch:
            lines = [
                QLineF(*start, *end)
                for area in self.areas
                if _narrow(area.points) >= narrowest
                for start, end in hatch_lines(area.points, hatch_id, pitch)
            ]
            self.hatch = pitch, lines
        return self.hatch[1]


class Picture:
    """One drawing, ready to be painted in a theme."""

    def __init__(self, drawing: Drawing) -> None:
        self.drawing = drawing
        marks = [mark for mark in drawing.marks if not isinstance(mark, Label)]
        self._labels = [_typeset(mark) for mark in drawing.marks if isinstance(mark, Label)]
        self._rooms = [_room(label) for label in self._labels]
        self._shapes: list[_Areas | Line] = []
        for (kind, role), group in groupby(marks, lambda mark: (type(mark), mark.role)):
            if kind is Area:
                areas = _Areas(role, tuple(mark for mark in group if isinstance(mark, Area)))
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
    ) -> None:
        """Paint in the painter's coordinates, inches; `scale` is pixels to an inch.

        Words outside `exposed` are left out; None means that all is seen.
        """
        for shape in self._shapes:
            style = theme[shape.role]
            if isinstance(shape, Line):
                _paint_line(painter, shape, style)
            else:
                _paint_areas(painter, shape, style, scale)
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
                for colour, width in ((theme.table, 4.0), (theme.chosen, 2.0)):
                    painter.setPen(_pen(colour, width))
                    painter.drawPolygon(polygon)

    def _paint_labels(
        self, painter: QPainter, scale: float, theme: Theme, exposed: QRectF | None
    ) -> None:
        to_screen = painter.worldTransform()
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
        painter.setWorldTransform(QTransform())
        font = QFont(canvas_font())
        for place, label in enumerate(self._labels):
            if exposed is not None and not exposed.intersects(self._rooms[place]):
                continue
            if (setting := self._setting_of(place, label, scale, theme.words)) is not None:
                room = to_screen.mapRect(self._rooms[place])
                _paint_words(painter, setting, room, theme[label.role], font)
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


def _paint_areas(painter: QPainter, areas: _Areas, style: Style, scale: float) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(_colour(style.fill))
    _draw(painter, areas)
    if style.hatch:
        pitch = 2.0 ** -floor(log2(scale / HATCH_PITCH))
        lines = areas.hatch_at(style.hatch, pitch, SMALLEST_HATCHED / scale)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, len(lines) < MOST_SMOOTH_LINES)
        painter.setPen(_pen(_hatch_colour(style), 1.0))
        painter.drawLines(lines)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, bool(areas.polygons))
    painter.setPen(_pen(style.outline, style.width * 4 / 3, style.dash))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    _draw(painter, areas)


@cache
def _hatch_colour(style: Style) -> str:
    """Between outline and fill. Mixed here: lines that let through are four times as slow."""
    outline, fill = QColor(style.outline), QColor(style.fill)
    mixed = (
        round(a * style.strength + b * (1 - style.strength))
        for a, b in zip(outline.getRgb()[:3], fill.getRgb()[:3], strict=True)  # type: ignore[index]
    )
    return QColor(*mixed).name()


def _draw(painter: QPainter, areas: _Areas) -> None:
    if areas.rects:
        painter.drawRects(areas.rects)
    for polygon in areas.polygons:
        painter.drawPolygon(polygon)


def _paint_line(painter: QPainter, line: Line, style: Style) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(_pen(style.outline, style.width * 4 / 3, style.dash))
    painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in line.points]))


def _paint_words(
    painter: QPainter, setting: Setting, room: QRectF, style: Style, font: QFont
) -> None:
    """Words in the middle of their room (pixels); plain fill behind them, not over the next one."""
    centre = room.center()
    wide, high = (side + 2 * _HALO for side in setting.extent(text_width))
    if style.hatch:
        back = QRectF(centre.x() - wide / 2, centre.y() - high / 2, wide, high)
        painter.fillRect(back & room, _colour(style.fill))
    size = int(setting.size)
    font.setPixelSize(size)
    painter.setFont(font)
    painter.setPen(_colour(style.ink))
    if setting.turned:
        painter.setWorldTransform(QTransform.fromTranslate(centre.x(), centre.y()).rotate(-90))
        centre = QPointF(0, 0)
    for text, below in setting.baselines():
        start = QPointF(centre.x() - text_width(text) * size / 2, centre.y() + below)
        painter.drawText(start, text)
    if setting.turned:
        painter.setWorldTransform(QTransform())


@cache
def _colour(name: str) -> QColor:
    """A colour by its name; reading one takes longer than painting with it."""
    return QColor(name)


def _pen(colour: str, width: float, dash: Sequence[float] = ()) -> QPen:
    """A pen of a width on screen, whatever the zoom; Qt fades lines that are under a pixel."""
    pen = QPen(_colour(colour), max(width, 1.0))
    pen.setCosmetic(True)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if dash:
        pen.setDashPattern(list(dash))
    return pen


def _is_level(points: Sequence[Point]) -> bool:
    """Whether the points are a rectangle with level and upright sides."""
    xs, ys = {x for x, _ in points}, {y for _, y in points}
    return len(points) == 4 and len(xs) == 2 and len(ys) == 2


def _narrow(points: Sequence[Point]) -> float:
    """The smaller side of the box round the points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(max(xs) - min(xs), max(ys) - min(ys))
