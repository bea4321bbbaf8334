"""The table of a comparison: a row a measure, a column a value."""

from __future__ import annotations

from textwrap import fill

from PySide6.QtCore import QAbstractTableModel, Qt
from PySide6.QtGui import QFont, QGuiApplication

from app.comparing import cell_note, value_text
from app.window.airy_cells import Index
from app.window.read_table import NOWHERE
from core.compare.columns import Comparison
from core.compare.rows import Cell, Row, rows
from core.language import marked, told
from core.lengths import Units, typeset

LETTERS = 24  # of a row's name in one line: the values are to have room beside it
WHY_NOT = marked("cannot be")


class ValuesModel(QAbstractTableModel):
    """Each cell says its value and, where that matters, whether it is the best of its row."""

    def __init__(self) -> None:
        super().__init__()
        self.comparison: Comparison | None = None
        self._rows: tuple[Row, ...] = ()
        self._units = Units.INCHES

    def replace(self, comparison: Comparison, units: Units) -> None:
        """Show another comparison."""
        self.beginResetModel()
        self.comparison, self._units = comparison, units
        self._rows = rows(comparison)
        self.endResetModel()

    def rowCount(self, parent: Index = NOWHERE) -> int:  # noqa: N802 - Qt's name
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = NOWHERE) -> int:  # noqa: N802 - Qt's name
        if parent.isValid() or self.comparison is None:
            return 0
        return len(self.comparison.columns)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self._rows[index.row()]
        cell = row.cells[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return self._words(row, cell)
        if role == Qt.ItemDataRole.FontRole and cell.best:
            font = QFont(QGuiApplication.font())
            font.setBold(True)
            return font
        return None

    def _words(self, row: Row, cell: Cell) -> str:
        note = cell_note(row, cell, self._units)
        value = value_text(row, cell.value, self._units)
        return typeset(f"{value}\n{note}" if note else value)

    def headerData(  # noqa: N802 - Qt's name
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        if self.comparison is None:
            return None
        if orientation is Qt.Orientation.Vertical:
            said = self._rows[section].said
            return fill(said, LETTERS) if role == Qt.ItemDataRole.DisplayRole else None
        column = self.comparison.columns[section]
        if role == Qt.ItemDataRole.DisplayRole:
            notes = [told("now")] if column.present else []
            if column.refusal is not None:
                notes.append(told(WHY_NOT))
            return typeset("\n".join([column.said, *(f"({note})" for note in notes)]))
        if role == Qt.ItemDataRole.ToolTipRole:
            return column.refusal
        return None
