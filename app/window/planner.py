"""The planner: a project in, its plan out, by signal.

Requests that follow each other quickly become one: only the newest project is
planned. Today the work is done in this process once the event queue is empty,
so that a plan never stands between a key press and its letter; the interface
allows for a worker process instead.
"""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer, Signal

from core.plan import make_plan
from core.quilt import Project
from core.refusal import Refusal

PAUSE_MS = 15


class Planner(QObject):
    """Emits `planned(Plan)` or `refused(Refusal)` once for the newest project asked for."""

    planned = Signal(object)
    refused = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._wanted: Project | None = None
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self.finish)

    def ask(self, project: Project) -> None:
        """Plan `project` shortly, dropping any project still waiting."""
        self._wanted = project
        self._timer.start(PAUSE_MS)

    def finish(self) -> None:
        """Plan what is waiting, if anything is, now."""
        self._timer.stop()
        project, self._wanted = self._wanted, None
        if project is None:
            return
        try:
            plan = make_plan(project)
        except Refusal as refusal:
            self.refused.emit(refusal)
        else:
            self.planned.emit(plan)
