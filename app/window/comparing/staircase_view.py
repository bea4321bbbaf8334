"""The staircase in the window: the picture, its steps as a list, and a key to take one."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QPushButton, QSplitter, QVBoxLayout, QWidget

from app.comparing import room_text, step_range, step_text
from app.solver.talk import Question
from app.style import Theme
from app.window.canvas import Canvas, Fit
from app.window.comparing.asking_view import AskingView
from app.window.comparing.choice_bar import ChoiceBar
from app.window.drawing_item import DrawingItem
from app.window.furniture import Sentence
from app.window.planner import Planner
from app.window.read_table import ReadTable, Row
from core.compare.choices import STRIP_WIDTH, USABLE_WIDTH, with_value
from core.compare.questions import Steps
from core.compare.staircase import Staircase, Step, usual_range
from core.drawing.staircase import draw_staircase
from core.language import told
from core.lengths import exact_text, show, typeset
from core.quilt import Project

HEIGHTS = [340, 300]  # of the picture and the list, in parts of the whole


class StaircaseView(AskingView):
    """Emits `taken(project, phrase)` when the widest strip of a step is to be the project's."""

    taken = Signal(object, str)

    def __init__(self, solver: Planner) -> None:
        super().__init__(solver)
        self.stairs: Staircase | None = None
        self.bar = ChoiceBar((STRIP_WIDTH, USABLE_WIDTH), values=False)
        self.room = Sentence("note")
        self.canvas = Canvas(told("Staircase"), Fit.ALL)
        self.list = ReadTable(told("Steps"), (told("From … to"), told("Buys")), 1, whole=False)
        self.take = QPushButton(told("&Take the widest of this step"))
        self.take.setToolTip(told("Make the strip as wide as this step allows (Enter in the list)"))
        self._lay_out()
        self.bar.asked.connect(self.ask)
        self.canvas.picked.connect(self.list.choose)
        self.list.selectionModel().selectionChanged.connect(lambda *_: self._chosen_changed())
        self.list.activated.connect(lambda _: self.take_chosen())
        self.take.clicked.connect(self.take_chosen)

    def _lay_out(self) -> None:
        lower = QWidget()
        column = QVBoxLayout(lower)
        column.setContentsMargins(8, 4, 8, 4)
        column.addWidget(self.room)
        column.addWidget(self.list, 1)
        column.addWidget(self.take, 0, Qt.AlignmentFlag.AlignRight)
        self.splitter = QSplitter(Qt.Orientation.Vertical)
        self.splitter.addWidget(self.canvas)
        self.splitter.addWidget(lower)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.setSizes(HEIGHTS)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.setSpacing(0)
        outer.addWidget(self.bar)
        outer.addWidget(self.said)
        outer.addWidget(self.splitter, 1)

    def question(self, project: Project) -> Question:
        choice = self.bar.choice
        return Steps(project, choice, *usual_range(choice, project.units), self.bar.place)

    def show_project(self, project: Project) -> None:
        self.bar.show_project(project)
        super().show_project(project)

    def set_theme(self, theme: Theme) -> None:
        if theme.words != self.canvas.theme.words:  # a list needs more room for larger ones
            upper, lower = HEIGHTS
            self.splitter.setSizes([upper, round(lower * theme.words)])
        self.canvas.set_theme(theme)

    def show_found(self, found: object) -> None:
        if not isinstance(found, Staircase) or self.project is None:
            return
        self.stairs = found
        self.room.say(typeset(room_text(found, self.project.units)))
        self.canvas.show_items(
            [DrawingItem(draw_staircase(self.project, found), "", self.canvas.theme)]
        )
        self.list.show_rows(
            [self._row(self.project, n, step) for n, step in enumerate(found.steps)]
        )
        self._chosen_changed()

    def _row(self, project: Project, number: int, step: Step) -> Row:
        widths = step_range(step, project.units)
        if self.stairs is not None and step is self.stairs.present_step:
            widths = told("{value} (now)", value=widths)
        return Row((typeset(widths), typeset(step_text(project, step))), str(number + 1))

    def _chosen(self) -> Step | None:
        keys = self.list.chosen()
        if self.stairs is None or len(keys) != 1:
            return None
        return self.stairs.steps[int(next(iter(keys))) - 1]

    def _chosen_changed(self) -> None:
        self.canvas.choose(self.list.chosen())
        step = self._chosen()
        strips = self.stairs is not None and self.stairs.choice == STRIP_WIDTH
        self.take.setEnabled(strips and step is not None and bool(step.bought))

    def take_chosen(self) -> None:
        """Make the strip as wide as the chosen step allows."""
        step, project, stairs = self._chosen(), self.project, self.stairs
        if step is None or project is None or stairs is None or not self.take.isEnabled():
            return
        text = exact_text(step.last, project.units)
        taken = with_value(project, stairs.choice, stairs.place, text)
        width = show(step.last, project.units)
        self.taken.emit(
            taken, told("Take {choice} {value}", choice=stairs.choice.said, value=width)
        )
