"""The table of quilt sizes to start from, as the person has changed it, and its dialog."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from app.assets import asset
from app.window.field import Called
from app.window.furniture import Sentence, open_at
from app.window.memory import Memory
from core.language import marked, told
from core.lengths import Units, exact_text
from core.numerals import told_to_edit
from core.reading import Fields
from core.refusal import Refusal
from core.sizes import QuiltSize, QuiltSizes, loads, read_list, told_usual

KEY = "quilt sizes"
COLUMNS = {"name": marked("Name"), "width": marked("Width"), "length": marked("Length")}
_ABOUT = {
    Units.INCHES: marked(
        "The size of a top before its borders. A number without a unit is in inches."
    ),
    Units.CENTIMETRES: marked(
        "The size of a top before its borders. A number without a unit is in centimetres."
    ),
    Units.MILLIMETRES: marked(
        "The size of a top before its borders. A number without a unit is in millimetres."
    ),
}


def usual_sizes() -> QuiltSizes:
    """The table that the program comes with."""
    return loads(asset("quilt-sizes.json").read_text(encoding="utf-8"))


def remembered_sizes(memory: Memory) -> QuiltSizes:
    """The person's own table; the usual one if there is none that can be read."""
    text = memory.text(KEY, "")
    try:
        return loads(text) if text else usual_sizes()
    except Refusal:
        return usual_sizes()


class SizesDialog(QDialog):
    """Edits the list for projects in `units`. Calls `changed` with the new table."""

    def __init__(
        self,
        table: QuiltSizes,
        units: Units,
        changed: Callable[[QuiltSizes], None],
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        self._table, self._units, self._changed = table, units, changed
        self.setWindowTitle(told("Quilt sizes to start from"))
        self.rows = QTableWidget(0, len(COLUMNS))
        self.rows.setAccessibleName(told("Quilt sizes"))
        self.rows.setHorizontalHeaderLabels([told(name) for name in COLUMNS.values()])
        self.rows.verticalHeader().hide()
        self.rows.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.rows.setTabKeyNavigation(False)  # Tab leaves the table, arrows move in it
        self.rows.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header = self.rows.horizontalHeader()
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        header.setHighlightSections(False)
        self.said = Sentence("note")
        self.problem = Sentence("problem")
        self._lay_out()
        self.fill(table.of(units))

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.addWidget(self.said)
        column.addWidget(self.rows, 1)
        tools = QHBoxLayout()
        for text, act in (
            (told("Add a size"), self.add),
            (told("Remove"), self.remove),
            (told("Back to the usual sizes"), self.back),
        ):
            button = QPushButton(text)
            button.setAutoDefault(False)
            button.clicked.connect(act)
            tools.addWidget(button)
        tools.addStretch(1)
        column.addLayout(tools)
        column.addWidget(self.problem)
        keys = QDialogButtonBox.StandardButton
        buttons = QDialogButtonBox(keys.Ok | keys.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column.addWidget(buttons)
        open_at(self, 72, 30)
        self.said.say(told(_ABOUT[self._units]))

    def fill(self, sizes: tuple[QuiltSize, ...]) -> None:
        """Show these sizes in place of those that are there."""
        self.rows.setRowCount(0)
        for size in sizes:
            self._append(self._cells(size), told_usual(size.source))

    def _cells(self, size: QuiltSize) -> tuple[str, ...]:
        texts = (exact_text(side, self._units) for side in (size.width, size.length))
        return told_usual(size.name), *map(told_to_edit, texts)

    def _append(self, cells: tuple[str, ...], source: str = "") -> None:
        row = self.rows.rowCount()
        self.rows.insertRow(row)
        for column, text in enumerate(cells):
            item = QTableWidgetItem(text)
            item.setToolTip(source)
            self.rows.setItem(row, column, item)

    def add(self) -> None:
        """A row to fill in, the cursor in its name."""
        self._append(("", "", ""))
        self.rows.setCurrentCell(self.rows.rowCount() - 1, 0)
        self.rows.editItem(self.rows.currentItem())

    def remove(self) -> None:
        """Take the chosen rows out."""
        for row in sorted({index.row() for index in self.rows.selectedIndexes()}, reverse=True):
            self.rows.removeRow(row)

    def back(self) -> None:
        """Show the usual sizes."""
        self.fill(usual_sizes().of(self._units))

    def accept(self) -> None:
        """Take the list if every row can be read; else say which cannot, and go there."""
        rows = [self._form(row) for row in range(self.rows.rowCount())]
        try:
            sizes = read_list(Fields({"row": rows}, ""), "row", self._units)
        except Refusal as refusal:
            self._point_at(refusal)
            return
        self._changed(self._table.having(self._units, sizes))
        super().accept()

    def _form(self, row: int) -> dict[str, str]:
        model = self.rows.model()
        cells = tuple(str(model.index(row, i).data() or "") for i in range(len(COLUMNS)))
        form = dict(zip(COLUMNS, cells, strict=True))
        for size in self._table.of(self._units):
            if cells == self._cells(size):  # its source still holds, and its name in any language
                return {**form, "name": size.name, "source": size.source}
        return {**form, "source": ""}

    def _point_at(self, refusal: Refusal) -> None:
        place, _, key = refusal.path.partition(".")
        row = int(place.removeprefix("row[").removesuffix("]"))
        self.rows.setCurrentCell(row, list(COLUMNS).index(key))
        # Once the sentence has taken its room from the table.
        QTimer.singleShot(0, self.rows, lambda: self.rows.scrollTo(self.rows.currentIndex()))
        self.problem.say(
            told(
                "Row {row}, {column:small}: {sentence}.",
                row=row + 1,
                column=Called(told(COLUMNS[key])),
                sentence=refusal.in_units(self._units).sentence,
            )
        )
