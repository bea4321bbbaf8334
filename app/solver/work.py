"""The solver's side: the newest ask is planned, and an older one given up at once.

A thread listens while the main thread plans. What it hears interrupts the main
thread as Ctrl+C would, wherever in the search it is: no part of the core has to
ask whether it should stop, and lays of single cloths that are done stay known.
"""

from __future__ import annotations

import _thread
import os
import signal
import sys
import traceback
from collections.abc import Callable
from threading import Condition, Thread
from types import FrameType

from app.languages import speak_language
from app.solver.talk import Answer, AsDrafted, Ask, Fault, Job, Unpacker, packed
from core.plan import Plan, make_plan
from core.quilt import Project
from core.refusal import Refusal

_CHUNK = 1 << 16


class _GivenUp(BaseException):
    """The ask being planned is void. Not an `Exception`, so that nothing takes it for a fault."""


def result_of(job: Job, previous: Plan | None = None, *, draft: bool = False) -> object:
    """The plan or answer, or why there is none; a fault is told on standard error as well."""
    try:
        return make_plan(job, previous, draft=draft) if isinstance(job, Project) else job.answer()
    except Refusal as refusal:
        return refusal
    except Exception as error:
        traceback.print_exc()
        return Fault(f"{type(error).__name__}: {error}")


def draft_of(job: Job, previous: Plan | None = None) -> Plan | None:
    """A plan made in a moment; None where there is none, and the answer will say why."""
    drafted = result_of(job, previous, draft=True) if isinstance(job, Project) else None
    return drafted if isinstance(drafted, Plan) else None


class Solver:
    """Answers on the file descriptor `answers` what is asked on `asks`, until that ends."""

    def __init__(self, asks: int, answers: int) -> None:
        self._asks = asks
        self._answers = answers
        self._news = Condition()
        self._wanted: Ask | None = None
        self._ended = False
        self._planning = False

    def serve(self) -> None:
        """Work until the asks end. Takes over Ctrl+C: the window alone decides when to end."""
        signal.signal(signal.SIGINT, self._interrupted)
        Thread(target=self._listen, daemon=True).start()
        while (ask := self._next()) is not None:
            try:
                self._answer(ask)
            except _GivenUp:
                continue
            except OSError:
                return  # the window has gone

    def _answer(self, ask: Ask) -> None:
        draft = self._worked(draft_of, ask)
        if draft is not None:
            self._write(packed(Answer(ask.number, draft, draft=True)))
        result = self._worked(result_of, ask)
        if draft is not None and result == draft:
            result = AsDrafted()
        self._write(packed(Answer(ask.number, result)))

    def _listen(self) -> None:
        unpacker = Unpacker()
        while data := os.read(self._asks, _CHUNK):
            for message in unpacker.take(data):
                if isinstance(message, Ask):
                    self._tell(message)
        self._tell(None)

    def _tell(self, ask: Ask | None) -> None:
        """Set what is wanted now, None for the end, and interrupt whatever is being planned."""
        with self._news:
            self._wanted, self._ended = ask, ask is None
            self._news.notify()
        _thread.interrupt_main(signal.SIGINT)

    def _next(self) -> Ask | None:
        """Wait for an ask; None once there are no more."""
        with self._news:
            self._news.wait_for(lambda: self._wanted is not None or self._ended)
            ask, self._wanted = self._wanted, None
            return ask

    def _worked(self, work: Callable[[Job, Plan | None], object], ask: Ask) -> object:
        """What comes of work. Raises `_GivenUp` if a newer ask comes before it is done."""
        try:
            self._planning = True
            self._interrupted()  # for news that came just before
            return work(ask.job, ask.previous)
        finally:
            self._planning = False

    def _interrupted(self, number: int = 0, frame: FrameType | None = None) -> None:
        """Give up what is being planned, if it is void. Runs in the main thread."""
        if self._planning and (self._wanted is not None or self._ended):
            self._planning = False
            raise _GivenUp

    def _write(self, data: bytes) -> None:
        """Raises `OSError` once nobody reads any more."""
        view = memoryview(data)
        while view:
            view = view[os.write(self._answers, view) :]


def main(language: str) -> None:
    """Serve on standard input and output, where nothing else may be printed from now on."""
    speak_language(language)
    answers = os.dup(sys.stdout.fileno())
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    Solver(sys.stdin.fileno(), answers).serve()
