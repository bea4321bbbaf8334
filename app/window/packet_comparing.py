"""What the packet's comparing pages show, worked out beside the window by a solver of its own."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import replace

from PySide6.QtCore import QObject, Signal

from app.packet.choice import NOTHING_ASKED, Asked, AskedFor, Pages
from app.window.planner import Planner
from core.language import marked, told
from core.quilt import Project
from core.refusal import Refusal

WORKING = marked("Working out what is compared…")


class PacketComparing(QObject):
    """Emits `found` when `asked` holds more than before, or `said` tells why it will not.

    The solver is started when it is first needed, so that a packet without such
    pages costs nothing; it is another than the views', which ask it something else.
    """

    found = Signal()

    def __init__(self, project: Project, solver: Callable[[], Planner] = Planner) -> None:
        super().__init__()
        self._project, self._make = project, solver
        self._solver: Planner | None = None
        self._waiting: AskedFor | None = None
        self._refused: dict[AskedFor, str] = {}
        self.asked: Asked = NOTHING_ASKED
        self.said = ""

    @property
    def busy(self) -> bool:
        return self._waiting is not None

    def ask(self, pages: Collection[Pages]) -> None:
        """See that `asked` comes to hold what these pages compare."""
        missing = AskedFor(self._project, self.asked.missing(pages))
        self.said = self._refused.get(missing, told(WORKING) if missing.pages else "")
        if not missing.pages or missing in self._refused:
            self._waiting = None
        elif missing != self._waiting:
            self._waiting = missing
            self._started().ask(missing)

    def close(self) -> None:
        """End the solver, if there is one."""
        if self._solver is not None:
            self._solver.close()

    def _started(self) -> Planner:
        if self._solver is None:
            self._solver = self._make()
            self._solver.setParent(self)
            self._solver.planned.connect(self._planned)
            self._solver.refused.connect(self._none)
            self._solver.failed.connect(self._none)
        return self._solver

    def _planned(self, found: object) -> None:
        if self._waiting is None or not isinstance(found, Asked):
            return
        self._waiting = None
        self.asked = replace(
            self.asked,
            comparison=found.comparison or self.asked.comparison,
            stairs=found.stairs or self.asked.stairs,
        )
        self.found.emit()

    def _none(self, why: Refusal | str) -> None:
        if self._waiting is not None:
            sentence = why if isinstance(why, str) else why.in_units(self._project.units).sentence
            self._refused[self._waiting] = sentence
            self._waiting = None
            self.found.emit()
