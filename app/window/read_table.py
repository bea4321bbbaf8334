"""A table to read: rows of text that can be chosen, copied and heard."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

from PySide6.QtCore import (
    QAbstractTableModel,
    QEvent,
    QItemSelection,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QSize,
    Qt,
    QTimer,
)
from PySide6.QtGui import (
    QFont,
    QFontMetrics,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QPalette,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
)

from app.window.tips import HEADERS
from app.window.words import taught
from core.language import told

Index = QModelIndex | QPersistentModelIndex
AIR = 6  # pixels
LEAST_WIDE = 16  # letters that the wide column always has room for: a long word of German
NOWHERE = QModelIndex()


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its cells, what it stands for, and whether it heads those below."""

    cells: tuple[str, ...]
    key: str = ""
    heading: bool = False


class Rows(QAbstractTableModel):
    """Rows under headers, which are told where they are shown; replaced as a whole."""

    def __init__(self, headers: Sequence[str]) -> None:
        super().__init__()
        self.headers = tuple(headers)
        self.rows: tuple[Row, ...] = ()

    def replace(self, rows: Sequence[Row]) -> None:
        """Show these rows in place of the last ones."""
        self.beginResetModel()
        self.rows = tuple(rows)
        self.endResetModel()

    def rowCount(self, parent: Index = NOWHERE) -> int:  # noqa: N802 - Qt's name
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = NOWHERE) -> int:  # noqa: N802 - Qt's name
        return 0 if parent.isValid() else len(self.headers)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self.rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole and index.column() < len(row.cells):
            return row.cells[index.column()]
        if role == Qt.ItemDataRole.ToolTipRole and index.column() < len(row.cells):
            return _tip(taught(row.cells[index.column()]))
        if role == Qt.ItemDataRole.FontRole and row.heading:
            font = QFont(QGuiApplication.font())
            font.setBold(True)
            return font
        return None

    def headerData(  # noqa: N802 - Qt's name
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        if orientation is Qt.Orientation.Horizontal:
            if role == Qt.ItemDataRole.DisplayRole:
                return told(self.headers[section])
            if role == Qt.ItemDataRole.ToolTipRole:
                return told(HEADERS.get(self.headers[section], ""))
            if role == Qt.ItemDataRole.TextAlignmentRole:
                return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        return None


def _tip(text: str) -> str | None:
    """A tool tip of paragraphs, which Qt then breaks into lines; None for no words."""
    return "".join(f"<p>{escape(part)}</p>" for part in text.split("\n\n")) if text else None


class _Airy(QStyledItemDelegate):
    """Cells with some air above and below; long words wrap before they push others out."""

    def __init__(self, letters: int, table: QTableView) -> None:
        super().__init__(table)
        self._letters = letters
        self.room: int | None = None  # pixels that a column may take, if that is less

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:  # noqa: N802
        hint = super().sizeHint(option, index) + QSize(0, AIR)
        metrics = QFontMetrics(QGuiApplication.font())
        widest = self._letters * metrics.averageCharWidth()
        room = widest if self.room is None else min(widest, self.room)
        return hint.boundedTo(QSize(room, hint.height()))


class ReadTable(QTableView):
    """Shows `Rows`; `wide` is the column that takes what room there is.

    `whole` tables are as high as their rows and never scroll. The other columns
    take no more room than `letters` of average width.
    """

    def __init__(
        self, name: str, headers: Sequence[str], wide: int, *, whole: bool, letters: int = 20
    ) -> None:
        super().__init__()
        self.rows = Rows(headers)
        self._whole, self._wide = whole, wide
        self.setModel(self.rows)
        self.setAccessibleName(name)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setWordWrap(True)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self._airy = _Airy(letters, self)
        self.setItemDelegate(self._airy)
        self.verticalHeader().hide()
        self.viewport().setBackgroundRole(QPalette.ColorRole.Window)
        self._set_headers(headers, wide)
        self._settle = QTimer(self)
        self._settle.setSingleShot(True)
        self._settle.timeout.connect(self._settled)
        if whole:
            self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def _set_headers(self, headers: Sequence[str], wide: int) -> None:
        header = self.horizontalHeader()
        header.setHighlightSections(False)
        header.setMinimumSectionSize(28)
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(wide, QHeaderView.ResizeMode.Fixed)
        header.setVisible(any(headers))

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show these rows; headings run over the whole width. The same rows are left alone."""
        if tuple(rows) == self.rows.rows:
            return
        self.clearSpans()
        self.rows.replace(rows)
        for number, row in enumerate(rows):
            if row.heading and len(self.rows.headers) > 1:
                self.setSpan(number, 0, 1, len(self.rows.headers))
        self._settled()

    def choose(self, key: str) -> None:
        """Choose the row that stands for `key`, if there is one."""
        place = next((i for i, row in enumerate(self.rows.rows) if row.key == key), None)
        if key and place is not None:
            self.selectRow(place)
        else:
            self.clearSelection()

    def choose_all(self, keys: frozenset[str]) -> None:
        """Choose every row that stands for one of `keys`, and show the first."""
        places = [i for i, row in enumerate(self.rows.rows) if row.key and row.key in keys]
        selection = QItemSelection()
        for place in places:
            index = self.rows.index(place, 0)
            selection.select(index, index)
        flags = QItemSelectionModel.SelectionFlag
        self.selectionModel().select(selection, flags.ClearAndSelect | flags.Rows)
        if places:
            first = self.rows.index(places[0], 0)
            self.selectionModel().setCurrentIndex(first, flags.NoUpdate)
            self.scrollTo(first)

    def chosen(self) -> frozenset[str]:
        """The keys of the chosen rows."""
        rows = {index.row() for index in self.selectionModel().selectedIndexes()}
        return frozenset(self.rows.rows[row].key for row in rows) - {""}

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        self._widen()
        self._settle.start()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "_settle"):
            self._settle.start()

    def _widen(self) -> None:
        """Give the wide column what room there is; for less than it needs, the table scrolls."""
        header = self.horizontalHeader()
        others = header.length() - header.sectionSize(self._wide)
        header.resizeSection(self._wide, max(self.viewport().width() - others, self._least))

    @property
    def _least(self) -> int:
        return LEAST_WIDE * self.fontMetrics().averageCharWidth()

    def _give_way(self) -> None:
        """Let the one column beside the wide one wrap before it leaves that too little room."""
        room = self.viewport().width() - self._least
        if len(self.rows.headers) == 2 and room != self._airy.room:
            self._airy.room = max(room, self._least)
            self.resizeColumnToContents(1 - self._wide)

    def _settled(self) -> None:
        """Give wrapped words the height they need at the width there is."""
        self._give_way()
        self._widen()
        self.resizeRowsToContents()
        if self._whole:
            self.setFixedHeight(self.sizeHint().height())

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        hint = super().sizeHint()
        if not self._whole:
            return hint
        header = self.horizontalHeader()
        top = 0 if header.isHidden() else header.sizeHint().height()
        bar = self.horizontalScrollBar()
        below = bar.sizeHint().height() if bar.maximum() > 0 else 0
        return QSize(hint.width(), top + self.verticalHeader().length() + 2 + below)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
        else:
            super().keyPressEvent(event)

    def copy(self) -> None:
        """Put the chosen rows on the clipboard, cells parted by tabs."""
        places = sorted({index.row() for index in self.selectionModel().selectedIndexes()})
        lines = ["\t".join(self.rows.rows[place].cells) for place in places]
        QGuiApplication.clipboard().setText("\n".join(lines))
