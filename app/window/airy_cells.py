"""How the cells of a table to read are painted."""

from __future__ import annotations

from PySide6.QtCore import QLocale, QModelIndex, QPersistentModelIndex, QSize
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from app.window.table_widths import bound

AIR = 6  # pixels, above and below words together
Index = QModelIndex | QPersistentModelIndex


class AiryCells(QStyledItemDelegate):
    """Cells with some air above and below; their words begin at the top."""

    def displayText(  # noqa: N802 - Qt's name
        self, value: object, locale: QLocale | QLocale.Language
    ) -> str:
        """A number keeps its unit on its line."""
        return bound(str(value))

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:  # noqa: N802
        return super().sizeHint(option, index) + QSize(0, AIR)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """What shows a cell as chosen fills it; the words keep off its edges."""
        self.initStyleOption(option, index)
        style = option.widget.style()
        panel = QStyle.PrimitiveElement.PE_PanelItemViewItem
        style.drawPrimitive(panel, option, painter, option.widget)
        option.rect.adjust(0, AIR // 2, 0, -AIR // 2)
        item = QStyle.ControlElement.CE_ItemViewItem
        style.drawControl(item, option, painter, option.widget)
