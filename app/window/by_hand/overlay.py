"""What a gesture shows over the picture: the rectangle in the hand, and a line of words."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QColor,
    QFontMetricsF,
    QPainter,
    QPen,
)
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QFrame,
    QGraphicsItem,
    QLabel,
    QStyleOptionGraphicsItem,
    QVBoxLayout,
    QWidget,
)

from app.style import Theme
from app.words_qt import canvas_font

SEEN_THROUGH = 190  # of 255: what lies under a held piece shows a little
LETTERS = 14  # pixels
_DASH = [4.0, 3.0]


class HeldItem(QGraphicsItem):
    """A rectangle in scene units. Where it may not lie it is dashed and crossed out."""

    def __init__(self, theme: Theme, role: str, words: str) -> None:
        super().__init__()
        self.theme, self.role = theme, role
        self.good = True
        self._rect = QRectF()
        self._words = Words(self, theme, role, words)
        self.setZValue(1)

    def show_at(self, rect: QRectF, *, good: bool) -> None:
        """Lie there."""
        self.prepareGeometryChange()
        self._rect, self.good = rect, good
        self.update()

    def write_within(self, seen: QRectF, zoom: float) -> None:
        """Write its words in the middle of what of it is in sight; above it, were it covered."""
        rect = self._rect & seen or self._rect
        self._words.setPos(rect.center())
        self._words.keep_off(rect.width() * zoom, rect.height() * zoom)
        corner = (seen.topLeft() - rect.center()) * zoom
        self._words.keep_in(QRectF(corner, seen.size() * zoom))

    def boundingRect(self) -> QRectF:  # noqa: N802 - Qt's name
        return self._rect.adjusted(-1, -1, 1, 1)

    def paint(
        self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        style = self.theme[self.role]
        fill = QColor(style.fill)
        fill.setAlpha(SEEN_THROUGH)
        painter.fillRect(self._rect, fill)
        for colour, width in ((self.theme.table, 5.0), (self.theme.chosen, 3.0)):
            pen = QPen(QColor(colour), width)
            pen.setCosmetic(True)
            if not self.good and width < 5.0:
                pen.setDashPattern(_DASH)
            painter.setPen(pen)
            painter.drawRect(self._rect)
            if not self.good:
                painter.drawLine(self._rect.topLeft(), self._rect.bottomRight())
                painter.drawLine(self._rect.bottomLeft(), self._rect.topRight())


class Words(QGraphicsItem):
    """A held rectangle's letter, round its own place, in pixels: as large at any zoom."""

    def __init__(self, held: QGraphicsItem, theme: Theme, role: str, words: str) -> None:
        super().__init__(held)
        self.style, self.words = theme[role], words
        self.font = canvas_font()
        self.font.setPixelSize(int(LETTERS * theme.words))
        metrics = QFontMetricsF(self.font)
        wide, high = metrics.horizontalAdvance(words) + 6, metrics.height()
        self._box = QRectF(-wide / 2, -high / 2, wide, high)
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations)

    def keep_off(self, wide: float, high: float) -> None:
        """Stand above a rectangle of so many pixels, if most of it were covered."""
        covered = wide < 2 * self._box.width() and high < 2 * self._box.height()
        self.prepareGeometryChange()
        self._box.moveCenter(QPointF(0, -(high + self._box.height()) / 2 - 3 if covered else 0))

    def keep_in(self, room: QRectF) -> None:
        """Move into `room`, pixels, as far as they are out of it and as they go in."""
        self.prepareGeometryChange()
        box = self._box
        left = max(room.left(), min(box.left(), room.right() - box.width()))
        top = max(room.top(), min(box.top(), room.bottom() - box.height()))
        box.moveTo(left, top)

    def boundingRect(self) -> QRectF:  # noqa: N802 - Qt's name
        return self._box

    def paint(
        self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        painter.fillRect(self._box, QColor(self.style.fill))
        painter.setFont(self.font)
        painter.setPen(QColor(self.style.ink))
        painter.drawText(self._box, Qt.AlignmentFlag.AlignCenter, self.words)


class SaidLine(QFrame):
    """One sentence at the foot of a picture while something is in the hand."""

    def __init__(self, canvas: QAbstractScrollArea) -> None:
        super().__init__(canvas)  # not in its viewport, whose children are scrolled with it
        self._canvas = canvas
        self.setObjectName("said-line")
        self.setAutoFillBackground(True)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.text = QLabel()
        self.text.setWordWrap(True)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 4, 8, 4)
        column.addWidget(self.text)
        self.hide()

    def say(self, sentence: str) -> None:
        """Show a sentence, to the eye and to a screen reader; "" hides the line."""
        changed = sentence != self.text.text()
        self.text.setText(sentence)
        self.setVisible(bool(sentence))
        self.place()
        if sentence and changed:
            news = QAccessibleAnnouncementEvent(self._canvas, sentence)
            QAccessible.updateAccessibility(news)

    def place(self) -> None:
        """Keep at the foot, as wide as the picture."""
        seen = self._canvas.viewport().geometry()
        high = self.text.heightForWidth(seen.width() - 20) + 12
        self.setGeometry(seen.left(), seen.bottom() - high + 1, seen.width(), high)
