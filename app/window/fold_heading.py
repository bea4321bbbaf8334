"""A heading that folds what is under it, and says in short what is folded away."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import (
    QAbstractButton,
    QSizePolicy,
    QStyle,
    QStyleOption,
    QStyleOptionFocusRect,
)

from core.language import told

ARROW_SHARE = 0.7  # of the height of the letters
GAP = 8


class FoldHeading(QAbstractButton):
    """Arrow, title, and a quiet summary at the right; click, Space or Enter folds."""

    def __init__(self) -> None:
        super().__init__()
        self.summary = ""
        self.trouble = False
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def say(self, title: str, summary: str, *, trouble: bool) -> None:
        """Set the words; `trouble` marks a part with something to mend."""
        self.setText(title)
        self.summary, self.trouble = summary, trouble
        self.setAccessibleName(title)
        mend = told("{summary}, has something to mend", summary=summary)
        self.setAccessibleDescription(mend if trouble else summary)
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(160, self.fontMetrics().height() + 14)

    def _title_font(self) -> QFont:
        font = QFont(self.font())
        font.setBold(self.isChecked())
        return font

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        room = self.rect().adjusted(GAP, 0, -GAP, 0)
        if self.underMouse():
            painter.fillRect(self.rect(), self.palette().color(QPalette.ColorRole.AlternateBase))
        metrics = QFontMetrics(self._title_font())
        arrow = round(metrics.height() * ARROW_SHARE)
        top = room.center().y() - arrow // 2 + 1
        self._paint_arrow(painter, QRect(room.left(), top, arrow, arrow))
        text = f"{self.text()} !" if self.trouble else self.text()
        left = room.left() + arrow + GAP
        title = metrics.elidedText(text, Qt.TextElideMode.ElideRight, room.right() - left)
        painter.setFont(self._title_font())
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        middle = Qt.AlignmentFlag.AlignVCenter
        painter.drawText(QRect(left, 0, room.right() - left, self.height()), middle, title)
        if not self.isChecked():
            self._paint_summary(painter, left + metrics.horizontalAdvance(title) + 2 * GAP, room)
        if self.hasFocus():
            option = QStyleOptionFocusRect()
            option.initFrom(self)
            self.style().drawPrimitive(
                QStyle.PrimitiveElement.PE_FrameFocusRect, option, painter, self
            )

    def _paint_arrow(self, painter: QPainter, box: QRect) -> None:
        option = QStyleOption()
        option.initFrom(self)
        option.rect = box
        primitives = QStyle.PrimitiveElement
        arrow = primitives.PE_IndicatorArrowRight
        if self.isChecked():
            arrow = primitives.PE_IndicatorArrowDown
        self.style().drawPrimitive(arrow, option, painter, self)

    def _paint_summary(self, painter: QPainter, left: int, room: QRect) -> None:
        """The summary, right-aligned, in the quieter colour of a placeholder."""
        painter.setFont(self.font())
        painter.setPen(self.palette().color(QPalette.ColorRole.PlaceholderText))
        width = room.right() - left
        text = self.fontMetrics().elidedText(self.summary, Qt.TextElideMode.ElideRight, width)
        where = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight
        painter.drawText(QRect(left, 0, width, self.height()), where, text)
