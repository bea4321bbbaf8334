"""Starting the window."""

from __future__ import annotations

import sys
from contextlib import suppress
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QLocale, QSettings, QTimer, Signal
from PySide6.QtGui import QFileOpenEvent, QIcon
from PySide6.QtWidgets import QApplication

from app.assets import asset
from app.window.appearance import Appearance
from app.window.furnishing import AfterPaint
from app.window.main_window import MainWindow
from app.window.memory import Memory
from app.window.planner import Planner
from app.window.spoken import language_of, speak_in

if TYPE_CHECKING:
    from app.window.document import Document
    from core.quilt import Project

DEMO = "harbour-lights.crossgrain"


class Application(QApplication):
    """Emits `asked(Path)` for a file that macOS hands to the program while it runs.

    A filter would see every event of every widget, and each would cost time in Python.
    """

    asked = Signal(Path)

    def event(self, event: QEvent) -> bool:
        if isinstance(event, QFileOpenEvent) and event.file():
            self.asked.emit(Path(event.file()))
            return True
        return super().event(event)


def run(argv: list[str], project_path: Path | None) -> int:
    """Open the window on a file, or on the demo; return the exit status once it is closed."""
    application = Application([sys.argv[0], *argv])
    memory = Memory(QSettings(QSettings.Format.IniFormat, QSettings.Scope.UserScope, "Crossgrain"))
    speak_in(application, language_of(memory))
    planner = Planner()
    planner.start()
    try:
        return _run(application, planner, memory, project_path)
    finally:
        planner.close()


def _run(
    application: Application, planner: Planner, memory: Memory, project_path: Path | None
) -> int:
    application.setApplicationName("Crossgrain")
    application.setOrganizationName("Crossgrain")
    application.setDesktopFileName("crossgrain")
    application.setWindowIcon(QIcon(str(asset("icon.svg"))))
    appearance = Appearance(application, closely=False)
    appearance.recall(memory)
    window = MainWindow(None, planner, memory, appearance)
    application.asked.connect(partial(_open_asked, window))
    window.restore_shape()
    window.when_furnished(partial(_go_on, window, project_path))
    AfterPaint(window, window.furnishing(partial(_first_document, project_path)))
    window.show()
    status = application.exec()
    # Else the stack clears itself, and tells the window of it, when both are half gone.
    window.when_furnished(lambda: window.document.undo_stack.clear())
    window.deleteLater()
    return status


def _open_asked(window: MainWindow, path: Path) -> None:
    window.when_furnished(lambda: window.files.open_path(path))


def _go_on(window: MainWindow, project_path: Path | None) -> None:
    """What is to be done once the window can be used."""
    from app.window.recovery import FaultWatch

    FaultWatch(window.document).install()
    window.appearance.look_closely()
    if project_path is not None:
        window.files.open_path(project_path)
        if window.document.path is None:  # refused, or held by another window
            window.document.start(_blank())
    QTimer.singleShot(0, window.files.offer_kept)


def _first_document(project_path: Path | None) -> Document:
    from app.window.document import Document

    return Document(first_project(project_path))


def first_project(project_path: Path | None) -> Project:
    """The demo; else the file that is about to be opened, so that its plan is made meanwhile.

    If it cannot be opened, which opening it will say, a new project.
    """
    from core.project_file import load
    from core.refusal import Refusal

    if project_path is None:
        return load(asset(DEMO))
    with suppress(Refusal, OSError):
        return load(project_path)
    return _blank()


def _blank() -> Project:
    from app.window.files import new_project
    from core.lengths import Units

    metric = QLocale().measurementSystem() is QLocale.MeasurementSystem.MetricSystem
    return new_project(Units.CENTIMETRES if metric else Units.INCHES)
