"""The picture of a cut, as large as its room."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.paint_qt import Picture
from app.style import Theme
from app.words_qt import LABEL_SIZES
from core.drawing.marks import Drawing
from core.language import told

LARGER = 1.2  # times the size of the words beside it


class CutPicture(QWidget):
    """Paints one drawing to fit, on the table's colour."""

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self.theme = theme
        self.pixels = LABEL_SIZES.most  # of the words beside it
        self._picture: Picture | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(told("The cloth in hand"))

    def show_drawing(self, drawing: Drawing, words: str) -> None:
        """Show a drawing; `words` say the same to who does not see it."""
        self._picture = Picture(drawing)
        self.setAccessibleDescription(words)
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(640, 320)

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(200, 120)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(self.theme.table))
        if self._picture is None:
            return
        drawing = self._picture.drawing
        scale = min(self.width() / drawing.width, self.height() / drawing.height)
        painter.translate(
            (self.width() - drawing.width * scale) / 2, (self.height() - drawing.height * scale) / 2
        )
        painter.scale(scale, scale)
        larger = LARGER * self.pixels / LABEL_SIZES.most
        self._picture.paint(painter, scale, replace(self.theme, words=larger))
