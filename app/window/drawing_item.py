"""A drawing as one item of a scene, with its title above it."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QTransform
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from app.paint_qt import Picture
from app.photos_qt import NO_PHOTOS, Photos
from app.style import Theme
from app.type_fit import LEADING, limited, wrap
from app.window.kept_pixels import KeptPixels
from app.words_qt import canvas_font, text_width
from core.drawing.marks import Drawing

HEADROOM = 6.0  # inches kept above a drawing for its title, in letters of the usual size
TITLE_SHARE = 0.5  # of the headroom, for the letters
TITLE_SIZE = 14.0  # pixels, at most
SMALLEST_TITLE = 7.0
MOST_TITLE = 100.0  # inches; a longer title is broken, unless its drawing is wider
MOST_LINES = 5
ROUND = 0.5  # inches round a drawing, for what its outlines take


class DrawingItem(QGraphicsItem):
    """Scene units are inches. `chosen` holds the keys of the pieces to ring."""

    def __init__(self, drawing: Drawing, title: str, theme: Theme) -> None:
        super().__init__()
        self.picture = Picture(drawing)
        self.title = title
        self.theme = theme
        self.photos: Photos = NO_PHOTOS
        self.pixels = KeptPixels(self._paint_sharp, self._paint_rough)
        self.lines: list[str] = []
        self.letters = self._usual_letters
        self._wrap(self._usual_room)
        self.chosen: frozenset[str] = frozenset()
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemUsesExtendedStyleOption)

    def shows(self, drawing: Drawing, title: str) -> bool:
        """Whether it looks the same as one made of these."""
        return (self.title, self.picture.drawing) == (title, drawing)

    def boundingRect(self) -> QRectF:  # noqa: N802 - Qt's name
        drawing, above = self.picture.drawing, self.above
        title = max((text_width(line) * self.letters for line in self.lines), default=0.0)
        width = max(drawing.width, title)
        return QRectF(-ROUND, -above, width + 2 * ROUND, drawing.height + above + ROUND)

    @property
    def _usual_letters(self) -> float:
        """The size of the title's letters in inches, until the zoom makes them too large."""
        return TITLE_SHARE * HEADROOM * self.theme.words

    @property
    def _usual_room(self) -> float:
        return max(self.picture.drawing.width, MOST_TITLE)

    @property
    def above(self) -> float:
        """Inches kept above the drawing for its title."""
        if not self.lines:
            return 0.0
        return self.letters / TITLE_SHARE + (len(self.lines) - 1) * LEADING * self.letters

    def set_title(self, letters: float, room: float) -> None:
        """Set the title in letters of so many inches, on lines no longer than `room`."""
        self.prepareGeometryChange()
        self.letters = letters
        self._wrap(max(room, self.picture.drawing.width))

    def _wrap(self, room: float) -> None:
        """Break a title that is longer than its room; what takes too many lines is cut short."""
        lines = wrap(self.title, room, text_width, self.letters) if self.title else []
        self.lines = limited(lines, MOST_LINES, room, text_width, self.letters)

    def paint(
        self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        painter.save()
        if widget is None:
            self._paint_sharp(painter, scale, option.exposedRect)
        else:
            seen = painter.worldTransform().inverted()[0].mapRect(QRectF(widget.rect()))
            look = self.theme, self.photos, self.picture.stamps(self.photos)
            drawing = self.picture.drawing
            bounds = QRectF(-ROUND, -ROUND, drawing.width + 2 * ROUND, drawing.height + 2 * ROUND)
            self.pixels.show(painter, bounds, seen, look, QColor(self.theme.table))
        painter.restore()
        self.picture.ring(painter, self.theme, self.chosen)
        size = min(TITLE_SIZE * self.theme.words, self.letters * scale)
        if self.lines and size >= SMALLEST_TITLE:
            self._paint_title(painter, size)

    def _paint_sharp(self, painter: QPainter, scale: float, seen: QRectF) -> None:
        self.picture.paint(painter, scale, self.theme, (), seen, self.photos)

    def _paint_rough(self, painter: QPainter, _: float, seen: QRectF) -> None:
        self.picture.paint_fills(painter, self.theme, seen)

    def _paint_title(self, painter: QPainter, size: float) -> None:
        """The title, on the table above the drawing."""
        at = painter.worldTransform().map(QPointF(0, 0))
        font = QFont(canvas_font())
        font.setPixelSize(int(size))
        painter.save()
        painter.setWorldTransform(QTransform())
        painter.setFont(font)
        painter.setPen(QColor(self.theme.ink))
        last = at.y() - QFontMetricsF(font).descent() - 4
        for above, line in enumerate(reversed(self.lines)):
            painter.drawText(QPointF(at.x(), last - above * LEADING * size), line)
        painter.restore()

    def wear(self, theme: Theme) -> None:
        """Be painted in another theme."""
        larger = theme.words != self.theme.words
        self.theme = theme
        if larger:
            self.set_title(self._usual_letters, self._usual_room)

    def choose(self, keys: frozenset[str]) -> None:
        """Ring these pieces."""
        if keys != self.chosen:
            self.chosen = keys
            self.update()
