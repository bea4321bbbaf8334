"""The planner: a project in, its plan out, by signal; the work is done in another process.

Asking never waits. A newer project makes the older one void, here and in the
solver, which gives it up. If the solver dies it is started again and asked
again; the window keeps the last good plan meanwhile.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QProcess, QTimer, Signal

import app
from app.languages import language_spoken
from app.solver.talk import Answer, AsDrafted, Ask, Fault, Unpacker, packed
from core.language import told

if TYPE_CHECKING:
    from app.solver.talk import Job
    from core.plan import Plan

SLOW_MS = 300  # a plan that takes longer is announced
MOST_DEATHS = 3  # in a row, without an answer between them
ROOT = Path(app.__file__).resolve().parents[1]


class Planner(QObject):
    """Emits `planned(Plan)` or `refused(Refusal)` for the newest project asked for.

    A draft comes first as a rule, and the plan itself if it is another one; `busy`
    until then. Asked a question about a project instead, it emits the answer as `planned`.

    `failed(sentence)` says that there will be neither, and why; `restarted` that the
    solver had died; `slow(bool)` that a plan takes its time, and later that it is there.
    """

    planned = Signal(object)
    refused = Signal(object)
    failed = Signal(str)
    restarted = Signal()
    slow = Signal(bool)

    def __init__(self) -> None:
        super().__init__()
        self._number = 0
        self._wanted: Job | None = None
        self._previous: Plan | None = None
        self._deaths = 0
        self._unpacker = Unpacker()
        self._then: list[Callable[[], None]] = []
        self._late = QTimer(self, singleShot=True, interval=SLOW_MS)
        self._late.timeout.connect(lambda: self.slow.emit(True))
        self._solver = QProcess(self)
        self._solver.setWorkingDirectory(str(ROOT))
        self._solver.setProgram(sys.executable)
        self._solver.setArguments(["-m", "app.solver", language_spoken()])
        self._solver.setProcessChannelMode(QProcess.ProcessChannelMode.ForwardedErrorChannel)
        self._solver.readyReadStandardOutput.connect(self._read)
        self._solver.finished.connect(self._died)
        self._solver.errorOccurred.connect(self._not_started)

    def start(self) -> None:
        """Start the solver. The sooner the better: it takes as long as the window to be ready."""
        self._unpacker = Unpacker()
        self._solver.start()

    def ask(self, job: Job, previous: Plan | None = None) -> None:
        """Plan a project, or answer a question; whatever was asked before is void.

        A plan is made as like the `previous` one as costs nothing, so that pictures keep still.
        """
        self._number += 1
        self._wanted, self._previous = job, previous
        self._late.start()
        self._send()

    def know(self, plan: Plan) -> None:
        """The plan of a project is known: it is emitted soon; whatever was asked before is void."""
        self._number += 1
        self._wanted, self._previous = plan.project, plan
        QTimer.singleShot(0, self, partial(self._known, self._number, plan))

    def _known(self, number: int, plan: Plan) -> None:
        if number == self._number and self.busy:
            self._settle(plan)

    @property
    def busy(self) -> bool:
        """Whether a plan is still to come."""
        return self._wanted is not None

    def when_settled(self, act: Callable[[], None]) -> None:
        """Call `act` once nothing is left to plan, perhaps at once."""
        if self.busy:
            self._then.append(act)
        else:
            act()

    def close(self) -> None:
        """End the solver; nothing is emitted any more."""
        self.blockSignals(True)
        self._late.stop()
        self._solver.blockSignals(True)
        self._solver.kill()
        self._solver.waitForFinished()

    def _send(self) -> None:
        if self._solver.state() is QProcess.ProcessState.NotRunning:
            self.start()
        if self._wanted is not None and self._solver.isWritable():
            self._solver.write(packed(Ask(self._number, self._wanted, self._previous)))

    def _read(self) -> None:
        data = self._solver.readAllStandardOutput().data()
        for message in self._unpacker.take(bytes(data)):
            if isinstance(message, Answer) and message.number == self._number:
                self._deaths = 0
                if message.draft:
                    self.planned.emit(message.result)
                else:
                    self._settle(message.result)

    def _settle(self, result: object) -> None:
        from core.refusal import Refusal  # only now: the window is seen sooner without it

        self._wanted = None
        self._late.stop()
        self.slow.emit(False)
        if isinstance(result, Refusal):
            self.refused.emit(result)
        elif isinstance(result, Fault):
            self.failed.emit(
                told(
                    "No plan could be made: the program has a fault ({fault}).",
                    fault=result.sentence,
                )
            )
        elif not isinstance(result, AsDrafted):
            self.planned.emit(result)
        waiting, self._then = self._then, []
        for act in waiting:
            self.when_settled(act)

    def _died(self) -> None:
        """Start again and ask again, unless it dies each time."""
        self._deaths += 1
        if self._deaths < MOST_DEATHS:
            self.restarted.emit()
            self._send()
        elif self.busy:
            self._deaths = 0
            self._settle(Fault(told("the solver stops each time it is started")))

    def _not_started(self, error: QProcess.ProcessError) -> None:
        if error is QProcess.ProcessError.FailedToStart and self.busy:
            said = self._solver.errorString()
            self._settle(Fault(told("the solver does not start: {reason}", reason=said)))
