"""A view that asks the second solver a question about the project, when it is in sight."""

from __future__ import annotations

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QWidget

from app.solver.talk import Question
from app.window.furniture import Sentence
from app.window.planner import Planner
from app.wording import upper_first
from core.language import marked, told
from core.quilt import Project
from core.refusal import Refusal

WORKING = marked("Working it out…")


class AskingView(QWidget):
    """Asks anew when the project or what is asked has changed, but only while it is seen.

    Subclasses say what to ask in `question` and show what came of it in `show_found`.
    """

    def __init__(self, solver: Planner) -> None:
        super().__init__()
        self._solver = solver
        self._answered: Question | None = None
        self._waiting: Question | None = None
        self.project: Project | None = None
        self.said = Sentence("banner")
        solver.planned.connect(self._found)
        solver.refused.connect(self._refused)
        solver.failed.connect(self._failed)
        solver.slow.connect(self._slow)

    def question(self, project: Project) -> Question:
        raise NotImplementedError

    def show_found(self, found: object) -> None:
        raise NotImplementedError

    def show_project(self, project: Project) -> None:
        """Follow another project."""
        self.project = project
        self.ask()

    def ask(self) -> None:
        """Ask, if in sight and not yet answered."""
        if self.project is None or not self.isVisible():
            return
        question = self.question(self.project)
        if question not in (self._answered, self._waiting):
            self._waiting = question
            self._solver.ask(question)

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 - Qt's name
        super().showEvent(event)
        self._waiting = None  # whatever was asked may have been given up for another view
        self.ask()

    def _mine(self) -> bool:
        """Whether what the solver says now is for this view."""
        return self._waiting is not None and self.isVisible()

    def _slow(self, slow: bool) -> None:
        if slow and self._mine():
            self.said.say(told(WORKING), "waiting")

    def _found(self, found: object) -> None:
        if self._mine():
            self._answered, self._waiting = self._waiting, None
            self.said.say("")
            self.show_found(found)

    def _refused(self, refusal: Refusal) -> None:
        if self._mine() and self.project is not None:
            self._answered, self._waiting = self._waiting, None
            self.said.say(upper_first(f"{refusal.in_units(self.project.units).sentence}."))

    def _failed(self, sentence: str) -> None:
        if self._mine():
            self._waiting = None
            self.said.say(sentence)
