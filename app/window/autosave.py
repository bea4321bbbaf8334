"""Autosave: what is not saved yet, kept in a file of its own against a crash or a power cut.

A kept file holds the project and where it came from. It lies in the recovery folder
beside a lock of the program that writes it, and goes when the project is saved, undone
to what was saved, or let go. One whose lock nobody holds any more was left by a program
that ended in the middle of its work, and is offered at the next start.
"""

from __future__ import annotations

import json
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from uuid import uuid4

from PySide6.QtCore import QLockFile, QObject, QStandardPaths, QTimer, Signal
from shiboken6 import isValid

from app.os_words import said_of
from app.window.document import Document
from core.language import told
from core.project_file import from_document
from core.quilt import Project
from core.reading import json_object, text_of
from core.refusal import Refusal
from core.whole_file import write_whole

FORMAT, VERSION = "crossgrain-kept", 1
SUFFIX = ".kept"
PAUSE_MS = 1000  # from the first change not kept to its keeping; two seconds are promised


def recovery_folder() -> Path:
    """Where kept files lie."""
    place = QStandardPaths.StandardLocation.AppLocalDataLocation
    return Path(QStandardPaths.writableLocation(place)) / "recovery"


class Autosave(QObject):
    """Keeps the unsaved state of a document. Emits `failed(sentence)` once while it cannot."""

    failed = Signal(str)

    def __init__(self, document: Document, folder: Path | None = None) -> None:
        super().__init__()
        self._document = document
        self._path = (folder or recovery_folder()) / f"{uuid4().hex}{SUFFIX}"
        self._lock = _lock(self._path)
        self._well = True
        self._timer = QTimer(self, singleShot=True, interval=PAUSE_MS)
        self._timer.timeout.connect(self.keep)
        document.changed.connect(self._changed)
        document.undo_stack.cleanChanged.connect(self._changed)

    def _changed(self) -> None:
        stack = self._document.undo_stack
        if not isValid(stack):
            return  # it clears itself as it goes, and what was kept may be needed
        if stack.isClean():
            self.let_go()
        elif not self._timer.isActive():
            self._timer.start()

    def keep(self) -> None:
        """Keep the document as it is now."""
        self._timer.stop()
        document = self._document
        form = {
            "format": FORMAT,
            "version": VERSION,
            "path": str(document.path) if document.path else None,
            "kept": datetime.now().isoformat(timespec="seconds"),
            "project": document.form,
        }
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            self._lock.tryLock(0)
            write_whole(self._path, json.dumps(form, ensure_ascii=False).encode())
        except OSError as error:
            self._complain(error)
        else:
            self._well = True

    def let_go(self) -> None:
        """Nothing is unsaved any more: remove what was kept."""
        self._timer.stop()
        try:
            self._path.unlink(missing_ok=True)
        except OSError as error:
            self._complain(error)
        self._lock.unlock()

    def _complain(self, error: OSError) -> None:
        if self._well:
            self.failed.emit(
                told(
                    "Changes cannot be kept against a power cut ({reason}): save often.",
                    reason=said_of(error),
                )
            )
        self._well = False


@dataclass(frozen=True, slots=True)
class Kept:
    """What a program that ended in the middle of its work had kept. `path` is None if unsaved."""

    file: Path
    project: Project
    path: Path | None
    moment: datetime
    lock: QLockFile

    @property
    def name(self) -> str:
        """What the person knows it by."""
        return self.path.name if self.path else self.project.quilt.name or told("Untitled quilt")

    def leave(self) -> None:
        """Keep it for another start."""
        self.lock.unlock()

    def remove(self) -> None:
        """It is not needed any more."""
        with suppress(OSError):  # what stays is offered again at the next start
            self.file.unlink(missing_ok=True)
        self.lock.unlock()


def left_behind(folder: Path | None = None) -> list[Kept]:
    """What was kept and is nobody's now, the latest first, each claimed until it is decided on."""
    found: list[Kept] = []
    for file in (folder or recovery_folder()).glob(f"*{SUFFIX}"):
        lock = _lock(file)
        if lock.tryLock(0):
            try:
                found.append(_read(file, lock))
            except (Refusal, OSError, ValueError, OverflowError):
                # Of another version, or not ours: whoever wrote it may still want it.
                lock.unlock()
    return sorted(found, key=lambda kept: kept.moment, reverse=True)


def _read(file: Path, lock: QLockFile) -> Kept:
    form = json_object(text_of(file), FORMAT, VERSION)
    path = Path(form["path"]) if isinstance(form.get("path"), str) else None
    if path and "\0" in str(path):
        raise ValueError(path)
    written = datetime.fromisoformat(str(form.get("kept")))
    moment = datetime.fromtimestamp(written.timestamp())  # of whatever zone, to sort by
    return Kept(file, from_document(form.get("project", {})), path, moment, lock)


def _lock(file: Path) -> QLockFile:
    """The lock beside a kept file; that of a program which has died counts for nothing."""
    lock = QLockFile(str(file.with_suffix(".lock")))
    lock.setStaleLockTime(0)
    return lock
