"""A drawing as one item of a scene, with its title above it."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QTransform
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from app.paint_qt import Picture, canvas_font, text_width
from app.style import Theme
from core.drawing.marks import Drawing

HEADROOM = 6.0  # inches kept above a drawing for its title
TITLE_SHARE = 0.5  # of the headroom, for the letters
TITLE_SIZE = 14.0  # pixels, at most
SMALLEST_TITLE = 7.0
MOST_TITLE = 100.0  # inches; a longer title is cut short in its middle


class DrawingItem(QGraphicsItem):
    """Scene units are inches. `chosen` holds the keys of the pieces to ring."""

    def __init__(self, drawing: Drawing, title: str, theme: Theme) -> None:
        super().__init__()
        self.picture = Picture(drawing)
        self.title = title
        self.theme = theme
        self.chosen: frozenset[str] = frozenset()
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemUsesExtendedStyleOption)

    def boundingRect(self) -> QRectF:  # noqa: N802 - Qt's name
        drawing = self.picture.drawing
        headroom = HEADROOM if self.title else 0.0
        title = min(text_width(self.title) * TITLE_SHARE * HEADROOM, MOST_TITLE)
        width = max(drawing.width, title)
        return QRectF(-0.5, -headroom, width + 1, drawing.height + headroom + 0.5)

    def paint(
        self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        self.picture.paint(painter, scale, self.theme, self.chosen, option.exposedRect)
        size = min(TITLE_SIZE, TITLE_SHARE * HEADROOM * scale)
        if self.title and size >= SMALLEST_TITLE:
            self._paint_title(painter, size, self.boundingRect().width() * scale)

    def _paint_title(self, painter: QPainter, size: float, room: float) -> None:
        """The title, on the table above the drawing, in `room` pixels."""
        at = painter.worldTransform().map(QPointF(0, 0))
        font = QFont(canvas_font())
        font.setPixelSize(int(size))
        painter.save()
        painter.setWorldTransform(QTransform())
        painter.setFont(font)
        painter.setPen(QColor(self.theme.ink))
        metrics = QFontMetricsF(font)
        shown = metrics.elidedText(self.title, Qt.TextElideMode.ElideMiddle, room)
        painter.drawText(QPointF(at.x(), at.y() - metrics.descent() - 4), shown)
        painter.restore()

    def choose(self, keys: frozenset[str]) -> None:
        """Ring these pieces."""
        if keys != self.chosen:
            self.chosen = keys
            self.update()
