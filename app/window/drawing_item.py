"""A drawing as one item of a scene, with its title above it."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QTransform
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from app.paint_qt import Picture, canvas_font, text_width
from app.style import Theme
from core.drawing.marks import Drawing

HEADROOM = 6.0  # inches kept above a drawing for its title
TITLE_SHARE = 0.5  # of the headroom, for the letters
TITLE_SIZE = 14.0  # pixels, at most
SMALLEST_TITLE = 7.0


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
        width = max(drawing.width, text_width(self.title) * TITLE_SHARE * HEADROOM)
        return QRectF(-0.5, -headroom, width + 1, drawing.height + headroom + 0.5)

    def paint(
        self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        self.picture.paint(painter, scale, self.theme, self.chosen, option.exposedRect)
        size = min(TITLE_SIZE, TITLE_SHARE * HEADROOM * scale)
        if self.title and size >= SMALLEST_TITLE:
            self._paint_title(painter, size)

    def _paint_title(self, painter: QPainter, size: float) -> None:
        """The title, on the table above the drawing."""
        at = painter.worldTransform().map(QPointF(0, 0))
        font = QFont(canvas_font())
        font.setPixelSize(int(size))
        painter.save()
        painter.setWorldTransform(QTransform())
        painter.setFont(font)
        painter.setPen(QColor(self.theme.ink))
        drop = QFontMetricsF(font).descent() + 4
        painter.drawText(QPointF(at.x(), at.y() - drop), self.title)
        painter.restore()

    def choose(self, keys: frozenset[str]) -> None:
        """Ring these pieces."""
        if keys != self.chosen:
            self.chosen = keys
            self.update()
