"""The pixels of a picture, kept from one paint to the next.

Moving a picture copies pixels, and paints only what comes into sight. While it is
zoomed the pixels there are stand in, larger or smaller; the sharp ones are painted a
slice at a time once the zoom rests, so that nothing waits for a picture of thousands.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from math import floor
from typing import cast

from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPixmap, QRegion, QTransform

ROUND = 64  # pixels kept beyond what is in sight
SLICE = 96  # pixels painted at once when there is time

# Paints, at so many pixels to the inch, what lies within a rectangle in inches.
Paint = Callable[[QPainter, float, QRectF], None]


@dataclass(frozen=True, slots=True)
class Place:
    """Where a picture lies on a screen, in the screen's own pixels.

    `corner` is the whole pixel that holds the picture's origin, `part` how far into it
    the origin lies, `ratio` the screen's pixels to one of Qt's, `scale` Qt's to an inch.
    """

    corner: QPoint
    part: tuple[float, float]
    scale: float
    ratio: float

    @classmethod
    def of(cls, painter: QPainter) -> Place:
        """Where the painter's origin lies."""
        device, world = painter.deviceTransform(), painter.worldTransform()
        corner = QPoint(floor(device.dx()), floor(device.dy()))
        part = round(device.dx() - corner.x(), 3), round(device.dy() - corner.y(), 3)
        return cls(corner, part, world.m11(), painter.device().devicePixelRatioF())

    def pixels(self, inches: QRectF) -> QRect:
        """The pixels, from the corner on, that hold a rectangle in inches."""
        return self._to_pixels().mapRect(inches).toAlignedRect()

    def inches(self, pixels: QRect) -> QRectF:
        """The other way round."""
        return self._to_pixels().inverted()[0].mapRect(QRectF(pixels))

    def _to_pixels(self) -> QTransform:
        factor = self.scale * self.ratio
        return QTransform(factor, 0, 0, factor, *self.part)


class _Layer:
    """Pixels for `rect`, some of them painted already."""

    def __init__(self, place: Place, rect: QRect, ground: QColor) -> None:
        self.place, self.rect = place, rect
        self.pixels = QPixmap(rect.size())
        self.pixels.fill(ground)
        self.todo = QRegion(rect)

    def take_over(self, other: _Layer) -> None:
        """Copy what another layer of the same place has already."""
        both = self.rect & other.rect
        painter = QPainter(self.pixels)
        at = both.topLeft() - self.rect.topLeft()
        painter.drawPixmap(at, other.pixels, both.translated(-other.rect.topLeft()))
        self.todo -= QRegion(both) - other.todo

    def paint(self, within: QRect, paint: Paint) -> None:
        """Paint one rectangle of it."""
        place = self.place
        self.pixels.setDevicePixelRatio(place.ratio)
        painter = QPainter(self.pixels)
        offset = QPointF(*place.part) - QPointF(self.rect.topLeft())
        to_pixmap = QTransform.fromTranslate(offset.x() / place.ratio, offset.y() / place.ratio)
        painter.setWorldTransform(to_pixmap.scale(place.scale, place.scale))
        inches = place.inches(within)
        painter.setClipRect(inches)
        paint(painter, place.scale, inches)
        painter.end()
        self.pixels.setDevicePixelRatio(1)
        self.todo -= QRegion(within)

    def slices(self) -> Iterator[QRect]:
        """What is still to paint, in bands."""
        for rect in _rects(self.todo):
            for top in range(rect.top(), rect.bottom() + 1, SLICE):
                yield QRect(rect.left(), top, rect.width(), SLICE) & rect


class KeptPixels:
    """The pixels of one picture. `rough` says that the zoom is being changed."""

    def __init__(self, paint: Paint, rough_paint: Paint) -> None:
        self._paint, self._rough_paint = paint, rough_paint
        self._layer: _Layer | None = None
        self._look: object = None
        self._ground = QColor()
        self._next: tuple[_Layer, Iterator[QRect]] | None = None
        self._seen: tuple[Place, QRect, QRect] | None = None
        self.rough = False

    def show(
        self, painter: QPainter, bounds: QRectF, sight: QRectF, look: object, ground: QColor
    ) -> None:
        """Show what lies within `bounds` and `sight`, inches; pixels of another `look` are void."""
        if look != self._look:
            self._layer, self._look, self._ground = None, look, ground
        place = Place.of(painter)
        room = place.pixels(bounds).adjusted(-1, -1, 1, 1)
        seen = place.pixels(sight) & room
        if seen.isEmpty():
            return
        if self._seen is None or self._seen[0] != place or self._seen[1] != seen:
            self._next = None
        self._seen = place, seen, room
        if self._layer is not None and self.rough and not self._same(place):
            self._show_rough(painter, place, seen)
            return
        self._show_sharp(painter, place)

    def _same(self, place: Place) -> bool:
        kept = self._layer.place if self._layer is not None else None
        return kept is not None and (kept.part, kept.scale, kept.ratio) == (
            place.part,
            place.scale,
            place.ratio,
        )

    def _show_sharp(self, painter: QPainter, place: Place) -> None:
        layer = self._begun(place)
        for rect in _rects(layer.todo):
            layer.paint(rect, self._paint)
        self._layer, self._next = layer, None
        _in_pixels(painter)
        painter.drawPixmap(place.corner + layer.rect.topLeft(), layer.pixels)

    def _begun(self, place: Place) -> _Layer:
        """A layer for all in sight, with what there is of it already."""
        assert self._seen is not None
        _, seen, room = self._seen
        same = self._same(place)
        if self._layer is not None and same and self._layer.rect.contains(seen):
            return self._layer
        layer = _Layer(place, seen.adjusted(-ROUND, -ROUND, ROUND, ROUND) & room, self._ground)
        if self._layer is not None and same:
            layer.take_over(self._layer)
        return layer

    def _show_rough(self, painter: QPainter, place: Place, seen: QRect) -> None:
        layer = self._layer
        assert layer is not None
        old = layer.place.inches(layer.rect)
        target = place.pixels(old)
        if not target.contains(seen):
            painter.save()
            self._rough_paint(painter, place.scale, place.inches(seen))
            painter.restore()
        _in_pixels(painter)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, False)
        painter.drawPixmap(target.translated(place.corner), layer.pixels)

    def sharpen(self) -> bool:
        """Paint one slice of what was shown roughly; whether that was the last."""
        if self._seen is None or self._same(self._seen[0]):
            return True
        if self._next is None:
            layer = self._begun(self._seen[0])
            self._next = layer, layer.slices()
        layer, slices = self._next
        rect = next(slices, None)
        if rect is None:
            self._layer, self._next = layer, None
            return True
        layer.paint(rect, self._paint)
        return False


def _rects(region: QRegion) -> list[QRect]:
    return list(cast(Iterable[QRect], region))


def _in_pixels(painter: QPainter) -> None:
    """Let the painter count the screen's own pixels."""
    to_screen = painter.worldTransform().inverted()[0] * painter.deviceTransform()
    painter.setWorldTransform(to_screen.inverted()[0])
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(Qt.PenStyle.NoPen)
