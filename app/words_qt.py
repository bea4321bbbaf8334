"""The words of a drawing on the screen: which are seen, how they are set, painted."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import replace
from functools import cache

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFont, QFontDatabase, QFontMetricsF, QPainter, QTransform

from app.assets import asset
from app.pens_qt import colour
from app.real_cloth import roles_on_cloth
from app.style import Style, Theme
from app.type_fit import Setting, Sizes, fit
from core.drawing.marks import Drawing, Label
from core.lengths import typeset

LABEL_SIZES = Sizes(least=7.0, easy=10.0, most=14.0)  # pixels
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


class _Rooms:
    """The rooms of labels, found by where they are."""

    def __init__(self, rooms: list[QRectF]) -> None:
        self.rooms = rooms
        self._by_top = sorted(range(len(rooms)), key=lambda place: rooms[place].top())
        self._tops = [rooms[place].top() for place in self._by_top]
        self._tallest = max((room.height() for room in rooms), default=0.0)

    def within(self, seen: QRectF | None) -> Iterator[int]:
        """The places of those that `seen` meets, in their order; of all if it is None."""
        if seen is None:
            yield from range(len(self.rooms))
            return
        first = bisect_left(self._tops, seen.top() - self._tallest)
        last = bisect_right(self._tops, seen.bottom())
        near = sorted(self._by_top[first:last])
        yield from (place for place in near if seen.intersects(self.rooms[place]))


class Words:
    """The labels of one drawing, ready to be set at any zoom; only those that are seen are set."""

    def __init__(self, drawing: Drawing) -> None:
        self._drawing = drawing
        self._labels = [mark for mark in drawing.marks if isinstance(mark, Label)]
        self._rooms = _Rooms([_room(label) for label in self._labels])
        self._on_cloth: dict[bool, frozenset[str]] = {}
        self._set_for = (0.0, 0.0)  # the scale and the size of words that these were set for
        self._settings: dict[int, Setting | None] = {}
        self._too_small: dict[int, float] = {}  # the largest scale at which a label was left out

    def paint(self, painter: QPainter, scale: float, theme: Theme, exposed: QRectF | None) -> None:
        """Paint the words that `exposed` meets, inches; all of them if it is None."""
        to_screen = painter.worldTransform()
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
        painter.setWorldTransform(QTransform())
        font = QFont(canvas_font())
        on_cloth = self._words_on_cloth(theme)
        for place in self._rooms.within(exposed):
            label = self._labels[place]
            if (setting := self._setting_of(place, label, scale, theme.words)) is not None:
                room = to_screen.mapRect(self._rooms.rooms[place])
                style = theme[label.role]
                plain = bool(style.hatch) or label.role in on_cloth
                _paint_words(painter, setting, room, (style, plain), font)
        painter.restore()

    def _words_on_cloth(self, theme: Theme) -> frozenset[str]:
        if theme.real_cloth not in self._on_cloth:
            self._on_cloth[theme.real_cloth] = roles_on_cloth(self._drawing, theme)
        return self._on_cloth[theme.real_cloth]

    def _setting_of(self, place: int, label: Label, scale: float, larger: float) -> Setting | None:
        """How a label is set at this scale; worked out once, and only when it is seen."""
        if self._set_for != (scale, larger):
            self._set_for, self._settings = (scale, larger), {}
        if scale <= self._too_small.get(place, 0.0):
            return None
        if place not in self._settings:
            self._settings[place] = setting = _setting(_typeset(label), scale, larger)
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
