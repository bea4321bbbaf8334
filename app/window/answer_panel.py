"""The right side: what to buy, what to know, what to cut and in which order."""

from __future__ import annotations

from collections.abc import Iterator, Set
from contextlib import contextmanager

from PySide6.QtCore import QEvent, QModelIndex, Signal
from PySide6.QtWidgets import QFrame, QTabWidget, QVBoxLayout, QWidget

from app.window import answer_rows
from app.window.furniture import Sentence, add_tab, group_title
from app.window.read_table import ReadTable
from core.language import marked, told
from core.plan import Plan

# The pictures of `app.window.yardage` lie so; the packet's have words of their own.
NEAR_EDGE = marked(
    "In the pictures, the straight end is at the left and the near edge, the one with the ruler, "
    "is at the bottom. Selvages are not counted: trim them off, or measure from inside them."
)

# Pixels, and letters and lines of any size; the width of letters is asked for up to a limit.
LEAST_WIDTH, MOST_LEAST_WIDTH, LEAST_LETTERS, LEAST_LINES = 320, 380, 36, 12


class AnswerPanel(QWidget):
    """Shows a plan in words.

    What is chosen is a set of pieces: one list shows them one by one, another their
    parts. Emits `chosen(keys)` with their labels and their parts' letters, and
    `asked(path)` when a warning is followed to its field.
    """

    chosen = Signal(object)
    asked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._plan: Plan | None = None
        self._listed: set[ReadTable] = set()  # the lists that show this plan already
        self._letters: dict[str, str] = {}  # of each piece's part, by the piece's label
        self._chosen: frozenset[str] = frozenset()
        self._quiet = False
        buy = answer_rows.BUY_HEADERS
        self.buy = ReadTable(told("What to buy"), buy, 1, whole=True, numbers=(2, 3))
        self.notes = ReadTable(told("Before you cut"), ("",), 0, whole=True)
        self.cut = ReadTable(told("What to cut"), answer_rows.CUT_HEADERS, 1, whole=False)
        self.pieces = ReadTable(told("Pieces"), answer_rows.PIECE_HEADERS, 1, whole=False)
        self.order = ReadTable(told("Cut order"), ("", marked("Cut")), 1, whole=False)
        self.sewing = ReadTable(told("Sewing"), ("", marked("Sew")), 1, whole=False)
        self.figures = ReadTable(told("Figures"), ("", ""), 1, whole=False, letters=36)
        self.notes_title = group_title(told("Before you cut"))
        self.warned = QFrame()
        self.warned.setObjectName("warned")
        _column(self.warned, self.notes_title, self.notes, margin=6)
        self.warned.hide()
        self.near_edge = Sentence("note")
        self.near_edge.say(told(NEAR_EDGE))
        ordered = QWidget()
        _column(ordered, self.near_edge, self.order)
        self.near_edge.setContentsMargins(4, 6, 4, 2)
        self.tabs = QTabWidget(documentMode=True)
        for part in (self.tabs, self.tabs.tabBar()):
            part.setAccessibleName(told("Lists"))
        add_tab(self.tabs, self.cut, "To cut")
        add_tab(self.tabs, self.pieces, "Pieces")
        add_tab(self.tabs, ordered, "Cut order")
        add_tab(self.tabs, self.sewing, "Sewing")
        add_tab(self.tabs, self.figures, "Figures")
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(4)
        column.addWidget(group_title(told("To buy")))
        column.addWidget(self.buy)
        column.addWidget(self.warned)
        column.addSpacing(8)
        column.addWidget(self.tabs, 1)
        self._take_room()
        self.cut.selectionModel().selectionChanged.connect(self._parts_chosen)
        self.pieces.selectionModel().selectionChanged.connect(self._pieces_chosen)
        self.tabs.currentChanged.connect(self._list_front)
        self.notes.activated.connect(self._followed)
        self.notes.setToolTip(told("Press Enter, or click twice, to go to the field"))

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "tabs"):
            self._take_room()

    def _take_room(self) -> None:
        letters = self.fontMetrics()
        wanted = LEAST_LETTERS * letters.averageCharWidth()
        self.setMinimumWidth(min(max(LEAST_WIDTH, wanted), MOST_LEAST_WIDTH))
        self.tabs.setMinimumHeight(LEAST_LINES * letters.lineSpacing())

    def show_plan(self, plan: Plan) -> None:
        """Put the plan into words."""
        self.buy.show_rows(answer_rows.to_buy(plan))
        notes = answer_rows.warnings(plan)
        self.notes.show_rows(notes)
        self.warned.setVisible(bool(notes))
        self._plan, self._listed = plan, set()
        self._letters = {
            plan.label(placement): plan.part(placement.name).letter
            for fabric_plan in plan.fabrics
            for placement in fabric_plan.lay.placements
        }
        with self._quietly():
            self.cut.show_rows(answer_rows.to_cut(plan))
        self._list_front()
        self._choose(self._chosen & self._letters.keys())

    def choose(self, key: str) -> None:
        """Choose the piece of that label, or every piece of the part of that letter."""
        self._choose(frozenset(k for k, letter in self._letters.items() if key in (k, letter)))

    def _choose(self, labels: Set[str]) -> None:
        """Show the same pieces as chosen in both lists, and say so."""
        self._chosen = frozenset(labels)
        letters = frozenset(self._letters[label] for label in labels)
        with self._quietly():
            self.cut.choose_all(letters)
            self.pieces.choose_all(self._chosen)
        self.chosen.emit(self._chosen | letters)

    def _list_front(self) -> None:
        """Fill the list in front once it is looked at: a kit may have thousands of pieces."""
        filled = {
            1: (self.pieces, answer_rows.pieces),
            2: (self.order, answer_rows.cut_order),
            3: (self.sewing, answer_rows.sewing_order),
            4: (self.figures, answer_rows.figures),
        }
        if self._plan is None or self.tabs.currentIndex() not in filled:
            return
        table, rows = filled[self.tabs.currentIndex()]
        if table not in self._listed:
            self._listed.add(table)
            with self._quietly():
                table.show_rows(rows(self._plan))
                self.pieces.choose_all(self._chosen)

    def _parts_chosen(self) -> None:
        if not self._quiet:
            letters = self.cut.chosen()
            self._choose({label for label, letter in self._letters.items() if letter in letters})

    def _pieces_chosen(self) -> None:
        if not self._quiet:
            self._choose(self.pieces.chosen())

    @contextmanager
    def _quietly(self) -> Iterator[None]:
        """Change the lists without taking it for the person's choice."""
        before, self._quiet = self._quiet, True
        try:
            yield
        finally:
            self._quiet = before

    def _followed(self, index: QModelIndex) -> None:
        self.asked.emit(self.notes.rows.rows[index.row()].key)


def _column(outer: QWidget, *inner: QWidget, margin: int = 0) -> None:
    """Put widgets under each other."""
    column = QVBoxLayout(outer)
    column.setContentsMargins(margin, margin, margin, margin)
    column.setSpacing(4)
    for widget in inner:
        column.addWidget(widget)
