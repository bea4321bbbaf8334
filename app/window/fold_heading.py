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
GAP, AIR = 8, 7  # pixels
LEAST_WIDTH = 160
MOST_LINES = 3  # of a title; what is longer ends in dots
LONGEST = 18  # letters; a longer word may be cut off
PLENTY = 10_000  # pixels, for words that may take as many lines as they like
WRAPPED = Qt.TextFlag.TextWordWrap


class FoldHeading(QAbstractButton):
    """Arrow, title, and a quiet summary at the right, or below; click, Space or Enter folds."""

    def __init__(self) -> None:
        super().__init__()
        self.summary = ""
        self.trouble = False
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.toggled.connect(lambda _: self.updateGeometry())  # words come, go and grow bold

    def say(self, title: str, summary: str, *, trouble: bool) -> None:
        """Set the words; `trouble` marks a part with something to mend."""
        self.setText(title)
        self.summary, self.trouble = summary, trouble
        self.setAccessibleName(title)
        mend = told("{summary}, has something to mend", summary=summary)
        self.setAccessibleDescription(mend if trouble else summary)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(LEAST_WIDTH, self.heightForWidth(max(self.width(), LEAST_WIDTH)))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """As wide as the widest word."""
        bold = QFontMetrics(_bold(self.font()))
        words = {*self.text().split(), *self.summary.split()}
        widest = max(map(bold.horizontalAdvance, words), default=0)
        most = LONGEST * bold.averageCharWidth()
        return QSize(3 * GAP + self._arrow() + min(widest, most), bold.height() + 2 * AIR)

    def heightForWidth(self, width: int) -> int:  # noqa: N802 - Qt's name
        return max(box.bottom() for box in self.boxes(width)) + AIR

    def boxes(self, width: int) -> tuple[QRect, QRect]:
        """Where title and summary stand in a heading so wide: on one line, if that has room."""
        letters = QFontMetrics(self._title_font())
        left = 2 * GAP + self._arrow()
        room = width - left - GAP
        shown = self._shown(room)
        title = letters.boundingRect(QRect(left, AIR, room, PLENTY), WRAPPED, shown)
        title.setWidth(room)
        aside = self.fontMetrics().horizontalAdvance(self.summary) + 2 * GAP
        if self.isChecked() or letters.horizontalAdvance(shown) + aside <= room:
            return title, title
        below = QRect(left, title.bottom() + 1, room, PLENTY)
        summary = self.fontMetrics().boundingRect(below, WRAPPED, self.summary)
        summary.setWidth(room)
        return title, summary

    def _shown(self, room: int) -> str:
        """The title, as much of it as goes on its lines."""
        title = f"{self.text()} !" if self.trouble else self.text()
        letters = QFontMetrics(self._title_font())
        return letters.elidedText(title, Qt.TextElideMode.ElideRight, MOST_LINES * room)

    def _arrow(self) -> int:
        return round(self.fontMetrics().height() * ARROW_SHARE)

    def _title_font(self) -> QFont:
        return _bold(self.font()) if self.isChecked() else self.font()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        if self.underMouse():
            painter.fillRect(self.rect(), self.palette().color(QPalette.ColorRole.AlternateBase))
        title, summary = self.boxes(self.width())
        arrow = self._arrow()
        top = AIR + (self.fontMetrics().height() - arrow) // 2 + 1
        self._paint_arrow(painter, QRect(GAP, top, arrow, arrow))
        painter.setFont(self._title_font())
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawText(title, WRAPPED, self._shown(title.width()))
        if not self.isChecked():
            self._paint_summary(painter, summary, beside=summary == title)
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

    def _paint_summary(self, painter: QPainter, box: QRect, *, beside: bool) -> None:
        """The summary in the quieter colour of a placeholder; right-aligned beside the title."""
        painter.setFont(self.font())
        painter.setPen(self.palette().color(QPalette.ColorRole.PlaceholderText))
        align = Qt.AlignmentFlag.AlignRight if beside else Qt.AlignmentFlag.AlignLeft
        painter.drawText(box, align | WRAPPED, self.summary)


def _bold(font: QFont) -> QFont:
    font = QFont(font)
    font.setBold(True)
    return font
