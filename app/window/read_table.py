"""A table to read: rows of text that can be chosen, copied and heard."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from html import escape

from PySide6.QtCore import (
    QAbstractTableModel,
    QEvent,
    QItemSelection,
    QItemSelectionModel,
    QModelIndex,
    QSize,
    Qt,
    QTimer,
)
from PySide6.QtGui import (
    QFont,
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
    QStyle,
    QTableView,
)

from app.window.airy_cells import AiryCells, Index
from app.window.table_widths import shares, wanted_and_least
from app.window.tips import HEADERS
from app.window.words import taught
from core.language import told

GAP = 6  # pixels between columns
LEAST_WIDE = 16  # letters that the wide column has room for, before the others give way
_MARGIN = QStyle.PixelMetric.PM_FocusFrameHMargin
NOWHERE = QModelIndex()
SHOWN = Qt.ItemDataRole.DisplayRole
TIP, FONT = Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.FontRole
SIDE = Qt.ItemDataRole.TextAlignmentRole
ROLES = frozenset((SHOWN, TIP, FONT, SIDE))


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its cells, what it stands for, and whether it heads those below."""

    cells: tuple[str, ...]
    key: str = ""
    heading: bool = False

    @property
    def columns(self) -> range:
        """The columns in which the row has words of its own; a heading runs over all."""
        return range(0 if self.heading else len(self.cells))


class Rows(QAbstractTableModel):
    """Rows under headers, which are told where they are shown; replaced as a whole."""

    def __init__(self, headers: Sequence[str], numbers: Collection[int] = ()) -> None:
        super().__init__()
        self.headers = tuple(headers)
        self.numbers = frozenset(numbers)
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

    def data(self, index: Index, role: int = SHOWN) -> object:
        if role not in ROLES:  # of each cell that is painted a dozen are asked for
            return None
        row, column = self.rows[index.row()], index.column()
        if role == SHOWN:
            return row.cells[column] if column < len(row.cells) else None
        if role == TIP and column < len(row.cells):
            return _tip(taught(row.cells[column]))
        if role == FONT and row.heading:
            font = QFont(QGuiApplication.font())
            font.setBold(True)
            return font
        if role == SIDE:
            return Qt.AlignmentFlag.AlignTop | self._side(column)
        return None

    def _side(self, column: int) -> Qt.AlignmentFlag:
        sides = Qt.AlignmentFlag
        return sides.AlignRight if column in self.numbers else sides.AlignLeft

    def headerData(  # noqa: N802 - Qt's name
        self, section: int, orientation: Qt.Orientation, role: int = SHOWN
    ) -> object:
        if orientation is Qt.Orientation.Horizontal:
            if role == SHOWN:
                return told(self.headers[section])
            if role == TIP:
                return told(HEADERS.get(self.headers[section], ""))
            if role == SIDE:
                return Qt.AlignmentFlag.AlignVCenter | self._side(section)
        return None


def _tip(text: str) -> str | None:
    """A tool tip of paragraphs, which Qt then breaks into lines; None for no words."""
    return "".join(f"<p>{escape(part)}</p>" for part in text.split("\n\n")) if text else None


class ReadTable(QTableView):
    """Shows `Rows`; `wide` is the column that takes what room there is.

    `whole` tables are as high as their rows and never scroll. The other columns
    take no more room than `letters` of average width; those in `numbers` end at the right.
    """

    def __init__(
        self,
        name: str,
        headers: Sequence[str],
        wide: int,
        *,
        whole: bool,
        letters: int = 20,
        numbers: Collection[int] = (),
    ) -> None:
        super().__init__()
        self.rows = Rows(headers, numbers)
        self._whole, self._wide, self._letters = whole, wide, letters
        self._wanted, self._least = [0] * len(headers), [0] * len(headers)
        self._ease = 0  # what the wide one has, as long as the others can give way
        self._measured = False
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
        self.setItemDelegate(AiryCells(self))
        self.verticalHeader().hide()
        self.viewport().setBackgroundRole(QPalette.ColorRole.Window)
        self._set_headers(headers)
        self._settle = QTimer(self)
        self._settle.setSingleShot(True)
        self._settle.timeout.connect(self._settled)
        if whole:
            self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def _set_headers(self, headers: Sequence[str]) -> None:
        header = self.horizontalHeader()
        header.setHighlightSections(False)
        header.setMinimumSectionSize(28)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
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
        self._measured = False
        self._settled()

    def choose(self, key: str) -> None:
        """Choose the row that stands for `key`, or none; whatever keys are held down."""
        self.choose_all(frozenset({key}))

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
        self._share_out()
        self._settle.start()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "_settle"):
            self._measured = False  # the heading's letters may change only now
            self._settle.start()

    def _measure(self) -> None:
        """Find what room the words in each column want and need."""
        self._measured = True
        metrics, header = self.fontMetrics(), self.horizontalHeader()
        margin = 2 * (self.style().pixelMetric(_MARGIN, None, self) + 1) + GAP
        for column in range(len(self.rows.headers)):
            texts = (row.cells[column] for row in self.rows.rows if column in row.columns)
            most = self._letters * metrics.averageCharWidth()
            sizes = wanted_and_least(texts, metrics, most)
            title = 0 if header.isHidden() else header.sectionSizeHint(column)
            floor = max(title, header.minimumSectionSize())
            self._wanted[column], self._least[column] = (max(s + margin, floor) for s in sizes)
        ease = min(self._wanted[self._wide], LEAST_WIDE * metrics.averageCharWidth())
        self._ease = max(self._least[self._wide], ease)

    def _share_out(self) -> None:
        """Share the room among the columns; where it is too little, the table scrolls."""
        room = self.viewport().width()
        widths = shares(self._wanted, self._least, self._wide, self._ease, room)
        for column, width in enumerate(widths):
            self.horizontalHeader().resizeSection(column, width)

    def _settled(self) -> None:
        """Give wrapped words the height they need at the width there is."""
        if not self._measured:
            self._measure()
        self._share_out()
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
