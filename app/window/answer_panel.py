"""The right side: what to buy, what to know, what to cut and in which order."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtWidgets import QFrame, QTabWidget, QVBoxLayout, QWidget

from app.window import answer_rows
from app.window.furniture import Sentence, group_title
from app.window.read_table import ReadTable
from core.plan import Plan

# The pictures of `app.window.yardage` lie so; the packet's have words of their own.
NEAR_EDGE = (
    "In the pictures, the straight end is at the left and the near edge, the one with the ruler, "
    "is at the bottom. Selvages are not counted: trim them off, or measure from inside them."
)

LEAST_WIDTH, LEAST_LETTERS, LEAST_LINES = 320, 36, 12  # pixels, and in type of any size


class AnswerPanel(QWidget):
    """Shows a plan in words.

    Emits `chosen(letters)` when parts are chosen in the table, and `asked(path)`
    when a warning is followed to its field.
    """

    chosen = Signal(object)
    asked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.buy = ReadTable("What to buy", answer_rows.BUY_HEADERS, 1, whole=True)
        self.notes = ReadTable("Before you cut", ("",), 0, whole=True)
        self.cut = ReadTable("What to cut", answer_rows.CUT_HEADERS, 1, whole=False)
        self.order = ReadTable("Cut order", ("", "Cut"), 1, whole=False)
        self.sewing = ReadTable("Sewing", ("", "Sew"), 1, whole=False)
        self.figures = ReadTable("Figures", ("", ""), 1, whole=False, letters=36)
        self.notes_title = group_title("Before you cut")
        self.warned = QFrame()
        self.warned.setObjectName("warned")
        _column(self.warned, self.notes_title, self.notes, margin=6)
        self.near_edge = Sentence("note")
        self.near_edge.say(NEAR_EDGE)
        ordered = QWidget()
        _column(ordered, self.near_edge, self.order)
        self.tabs = QTabWidget(documentMode=True)
        self.tabs.tabBar().setAccessibleName("Lists")
        self.tabs.addTab(self.cut, "To cut")
        self.tabs.addTab(ordered, "Cut order")
        self.tabs.addTab(self.sewing, "Sewing")
        self.tabs.addTab(self.figures, "Figures")
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(4)
        column.addWidget(group_title("To buy"))
        column.addWidget(self.buy)
        column.addWidget(self.warned)
        column.addSpacing(8)
        column.addWidget(self.tabs, 1)
        letters = self.fontMetrics()
        self.setMinimumWidth(max(LEAST_WIDTH, LEAST_LETTERS * letters.averageCharWidth()))
        self.tabs.setMinimumHeight(LEAST_LINES * letters.lineSpacing())
        self.cut.selectionModel().selectionChanged.connect(self._selected)
        self.notes.activated.connect(self._followed)
        self.notes.setToolTip("Press Enter, or click twice, to go to the field")

    def show_plan(self, plan: Plan) -> None:
        """Put the plan into words."""
        self.buy.show_rows(answer_rows.to_buy(plan))
        notes = answer_rows.warnings(plan)
        self.notes.show_rows(notes)
        self.warned.setVisible(bool(notes))
        letters = self.cut.chosen()
        self.cut.show_rows(answer_rows.to_cut(plan))
        self.cut.choose(next(iter(letters), ""))
        self._selected()
        self.order.show_rows(answer_rows.cut_order(plan))
        self.sewing.show_rows(answer_rows.sewing_order(plan))
        self.figures.show_rows(answer_rows.figures(plan))

    def choose(self, letter: str) -> None:
        """Choose a part in the table of what to cut."""
        self.cut.choose(letter)

    def _selected(self) -> None:
        self.chosen.emit(self.cut.chosen())

    def _followed(self, index: QModelIndex) -> None:
        self.asked.emit(self.notes.rows.rows[index.row()].key)


def _column(outer: QWidget, *inner: QWidget, margin: int = 0) -> None:
    """Put widgets under each other."""
    column = QVBoxLayout(outer)
    column.setContentsMargins(margin, margin, margin, margin)
    column.setSpacing(4)
    for widget in inner:
        column.addWidget(widget)
