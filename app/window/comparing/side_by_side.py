"""Side by side: one choice over several values, in numbers and drawn to one scale."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QPushButton,
    QSplitter,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from app.solver.talk import Question
from app.style import Theme
from app.window.canvas import Canvas, Fit
from app.window.comparing.asking_view import AskingView
from app.window.comparing.choice_bar import ChoiceBar
from app.window.comparing.values_model import ValuesModel
from app.window.drawing_item import DrawingItem
from app.window.furniture import RowOrColumn, Sentence
from app.window.planner import Planner
from core.by_hand.sheets import sheets_of
from core.compare.choices import CHOICES
from core.compare.columns import Column, Comparison
from core.compare.questions import SideBySide
from core.drawing.cloth import draw_sheet
from core.drawing.edge_sections import draw_edge_sections
from core.drawing.enlarging import enlarged
from core.drawing.frame import Heading
from core.language import told
from core.lengths import typeset
from core.quilt import Project

LEAST_COLUMN = 64  # pixels of a column, for letters of the usual size
HEIGHTS = [320, 130, 190]  # of the table, the edges and the cloths, in parts of the whole
GAP = 6.0  # inches of table between two cloths
EDGES_ENLARGED = 40.0  # so that the room round a drawing is little beside it


class SideBySideView(AskingView):
    """Emits `taken(project, phrase)` when a column is to become the project."""

    taken = Signal(object, str)

    def __init__(self, solver: Planner) -> None:
        super().__init__(solver)
        self.bar = ChoiceBar(CHOICES, values=True)
        self.values = ValuesModel()
        self.table = _table(self.values)
        self.notice = Sentence("note")
        self.take = QPushButton(told("&Take this value"))
        self.take.setToolTip(told("Put the chosen column into the project (Enter in the table)"))
        self.canvas = Canvas(told("Cloth, side by side"), Fit.ALL)
        self.edges = Canvas(told("Bound edges, side by side"), Fit.ALL)
        self._lay_out()
        self.bar.asked.connect(self.ask)
        self.take.clicked.connect(self.take_chosen)
        self.table.activated.connect(lambda _: self.take_chosen())
        self.table.selectionModel().currentChanged.connect(lambda *_: self._may_take())

    def _lay_out(self) -> None:
        upper = QWidget()
        column = QVBoxLayout(upper)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        foot = RowOrColumn(60)
        foot.box.addWidget(self.notice, 1)
        foot.box.addWidget(self.take, 0, Qt.AlignmentFlag.AlignRight)
        column.addWidget(self.bar)
        column.addWidget(self.said)
        column.addWidget(self.table, 1)
        column.addWidget(foot)
        self.splitter = QSplitter(Qt.Orientation.Vertical)
        self.splitter.addWidget(upper)
        self.splitter.addWidget(self.edges)
        self.splitter.addWidget(self.canvas)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.setSizes(HEIGHTS)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self.splitter)
        self.take.setEnabled(False)

    def question(self, project: Project) -> Question:
        return SideBySide(project, self.bar.choice, self.bar.values, self.bar.place)

    def show_project(self, project: Project) -> None:
        self.bar.show_project(project)
        super().show_project(project)

    def set_theme(self, theme: Theme) -> None:
        larger = theme.words != self.canvas.theme.words
        for canvas in (self.canvas, self.edges):
            canvas.set_theme(theme)
        if larger:  # a table needs more room for them, a picture does not
            upper, *lower = HEIGHTS
            self.splitter.setSizes([round(upper * theme.words), *lower])
            self.show_found(self.values.comparison)

    def show_found(self, found: object) -> None:
        if not isinstance(found, Comparison) or self.project is None:
            return
        self.values.replace(found, self.project.units)
        self._widen_columns(found)
        refusals = [f"{c.said}: {c.refusal}." for c in found.columns if c.refusal is not None]
        said = dict.fromkeys([*refusals, found.notice or ""])
        self.notice.say(typeset(" ".join(said).strip()))
        self.canvas.show_items(_pictures(found, self.canvas.theme))
        edges = draw_edge_sections(found)
        self.edges.setVisible(edges is not None)
        shown = [] if edges is None else [enlarged(edges, EDGES_ENLARGED)]
        self.edges.show_items([DrawingItem(drawing, "", self.edges.theme) for drawing in shown])
        self._may_take()

    def _widen_columns(self, found: Comparison) -> None:
        """No column is narrower than its heading, nor than a few letters."""
        header = self.table.horizontalHeader()
        widest = max(header.fontMetrics().horizontalAdvance(typeset(c.said)) for c in found.columns)
        least = round(LEAST_COLUMN * self.canvas.theme.words)
        header.setMinimumSectionSize(max(least, widest + header.fontMetrics().height()))

    def _chosen(self) -> Column | None:
        comparison, index = self.values.comparison, self.table.currentIndex()
        if comparison is None or not index.isValid():
            return None
        return comparison.columns[index.column()]

    def _may_take(self) -> None:
        column = self._chosen()
        self.take.setEnabled(column is not None and column.plan is not None and not column.present)

    def take_chosen(self) -> None:
        """Put the chosen column into the project."""
        column, comparison = self._chosen(), self.values.comparison
        if column is not None and comparison is not None and column.plan is not None:
            phrase = told("Take {choice} {value}", choice=comparison.choice.said, value=column.said)
            self.taken.emit(column.project, phrase)


def _table(model: ValuesModel) -> QTableView:
    table = QTableView()
    table.setModel(model)
    table.setAccessibleName(told("Comparison"))
    table.setFrameShape(QFrame.Shape.NoFrame)
    table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectColumns)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    table.setTabKeyNavigation(False)
    table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
    table.horizontalHeader().setMinimumSectionSize(LEAST_COLUMN)
    table.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    return table


def _pictures(comparison: Comparison, theme: Theme) -> list[DrawingItem]:
    """The first cloth that the columns lay in different ways, a lane a column."""
    shown = comparison.differing or 0
    items: list[DrawingItem] = []
    left = 0.0
    for column in comparison.columns:
        if column.plan is None:
            continue
        for sheet in sheets_of(column.plan.fabrics[shown]):
            drawing = draw_sheet(column.plan, shown, sheet, Heading.DOWN)
            item = DrawingItem(drawing, typeset(f"{column.said}: {drawing.title}"), theme)
            item.setPos(left, 0.0)
            left += item.boundingRect().width() + GAP
            items.append(item)
    return items
