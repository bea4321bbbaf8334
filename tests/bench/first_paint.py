"""`python3 -m tests.bench.first_paint ours|empty`: one start of a window, timed and weighed.

Prints the CPU seconds from the start of the process to the first paint and until a plan
is on the screen, and the megabytes of memory then (not a number where the system does not tell).
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from time import process_time

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QApplication, QMainWindow

SIZE = 1280, 780
SETTLED_MS = 100


class FirstPaint(QObject):
    """Prints when `window` was first painted, then its memory once `ready`, and ends."""

    def __init__(self, window: QMainWindow, ready: Callable[[], bool]) -> None:
        super().__init__(window)
        self._ready = ready
        window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if event.type() == QEvent.Type.Paint:
            watched.removeEventFilter(self)
            QTimer.singleShot(0, self._painted)
        return False

    def _painted(self) -> None:
        print(process_time())
        self._wait()

    def _wait(self) -> None:
        if self._ready():
            print(process_time())
            QTimer.singleShot(SETTLED_MS, self._weigh)
        else:
            QTimer.singleShot(5, self._wait)

    def _weigh(self) -> None:
        print(megabytes())
        QApplication.quit()


def megabytes() -> float:
    """The most memory that this process has had."""
    if sys.platform == "win32":
        return float("nan")
    import resource

    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / (
        2**20 if sys.platform == "darwin" else 2**10
    )


def empty() -> None:
    """A window with nothing in it."""
    application = QApplication([])
    window = QMainWindow()
    window.resize(*SIZE)
    FirstPaint(window, lambda: True)
    window.show()
    application.exec()


def ours() -> None:
    """The program, opened on the demo."""
    from app.command_line import main
    from app.window.main_window import MainWindow

    def watched(window: MainWindow) -> None:
        window.resize(*SIZE)
        FirstPaint(window, lambda: window.plan is not None)

    setattr(MainWindow, "restore_shape", watched)  # noqa: B010 - mypy forbids the plain way
    main([])


if __name__ == "__main__":
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    {"ours": ours, "empty": empty}[sys.argv[1]]()
