"""When the program itself fails: keep a copy of the work, say so once."""

from __future__ import annotations

import sys
import traceback
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QDateTime
from PySide6.QtWidgets import QMessageBox

from app.os_words import said_of
from app.window.asker import message
from app.window.autosave import recovery_folder
from app.window.document import Document
from core.language import told
from core.project_file import SUFFIX, save


def keep_copy(document: Document) -> Path:
    """Save the project, beside nothing else of its name; raises `OSError`."""
    folder = recovery_folder()
    folder.mkdir(parents=True, exist_ok=True)
    moment = QDateTime.currentDateTime().toString("yyyy-MM-dd HH.mm.ss.zzz")
    path = folder / f"{moment}{SUFFIX}"
    save(document.project, path)
    return path


class FaultWatch:
    """Takes exceptions that nothing else took; one dialog, however many follow."""

    def __init__(self, document: Document) -> None:
        self._document = document
        self._told = False

    def install(self) -> None:
        """Be the program's last resort."""
        sys.excepthook = self.took

    def took(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        """Print the fault for whoever mends it, keep a copy, tell the person once."""
        traceback.print_exception(kind, error, trace)
        if self._told or not issubclass(kind, Exception):
            return
        self._told = True
        try:
            place = keep_copy(self._document)
            kept = told("A copy of your project was kept at {place}.", place=place)
        except OSError as failure:
            kept = told(
                "No copy of your project could be kept ({reason}): save it now.",
                reason=said_of(failure),
            )
        self._tell(error, kept)
        self._told = False

    def _tell(self, error: BaseException, kept: str) -> None:
        fault = f"{type(error).__name__}: {error}"
        words = told(
            "Something went wrong in the program ({fault}). {kept}", fault=fault, kept=kept
        )
        title = told("Crossgrain has a fault")
        message(None, QMessageBox.Icon.Critical, title, words).exec()
