"""The document: one frozen project, where it is kept, and how to go back.

State in the window is one `Project`. An edit makes a new one; undo is the old
one, so no edit needs an inverse. Nothing here asks or shows anything.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from time import monotonic

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from app.window.field import FileForm
from core import edit
from core.language import told
from core.project_file import load, save, to_document
from core.project_file.real_cloth import moved
from core.quilt import Project

# Arrow-key steps in one field that follow each other within this many seconds
# are one step to undo; nothing else is ever joined.
GESTURE_SECONDS = 1.0


class Document(QObject):
    """The project being edited. `path` is None until it is saved.

    Emits `changed` for another project, `renamed` for another file, `started` when
    what was there before has been left.
    """

    changed = Signal()
    renamed = Signal()
    started = Signal()

    def __init__(self, project: Project, path: Path | None = None) -> None:
        super().__init__()
        self.project = project
        self.path = path
        self.undo_stack = QUndoStack(self)
        self.beginning = False  # while another project takes the place of the last

    @property
    def name(self) -> str:
        """What the title bar calls it."""
        return self.path.name if self.path else self.project.quilt.name or told("Untitled quilt")

    @property
    def form(self) -> FileForm:
        """The project in the JSON form of its file, for fields to show."""
        return to_document(self.project)

    def edit(self, text: str, change: Callable[[Project], Project], gesture: int = -1) -> None:
        """Change the project as one step to undo, `text` being the user's phrase.

        `change` may raise `Refusal`, which reaches the caller and changes nothing.
        An edit that changes nothing is no step.
        """
        after = change(self.project)
        if after != self.project:
            self.undo_stack.push(_Edit(self, after, text, gesture))

    def put(self, path: str, value: object, text: str, gesture: int = -1) -> None:
        """Set one value by its path in the file; raises `Refusal` with that path."""
        self.edit(text, lambda project: edit.put(project, path, value), gesture)

    def start(self, project: Project, path: Path | None = None) -> None:
        """Begin afresh with another project; what there was to undo is gone."""
        self.undo_stack.clear()
        self.path = path
        self.beginning = True
        self.show(project)
        self.beginning = False
        self.started.emit()
        self.renamed.emit()

    def open(self, path: Path) -> None:
        """Begin with the file at `path`; raises `Refusal` or `OSError`, changing nothing."""
        self.start(load(path), path)

    def recover(self, project: Project, path: Path | None) -> None:
        """Begin with work that was never saved to `path`, its file; it counts as changed."""
        self.start(project, path)
        self.undo_stack.resetClean()

    def save(self, path: Path) -> None:
        """Save to `path` and keep it there from now on; raises `OSError`.

        In another folder the photos of cloth are seen from there.
        """
        seen = moved(self.project, folder_of(self.path), path.parent)
        save(seen, path)
        self.path = path
        if seen != self.project:
            self.show(seen)
        self.undo_stack.setClean()
        self.renamed.emit()

    def show(self, project: Project) -> None:
        """Make `project` the current one; for edits and their undoing."""
        self.project = project
        self.changed.emit()


def folder_of(path: Path | None) -> Path:
    """Where a project's photos are seen from; the person's own folder until it is saved."""
    return path.parent if path is not None else Path.home()


class _Edit(QUndoCommand):
    """The whole project before and after."""

    def __init__(self, document: Document, after: Project, text: str, gesture: int) -> None:
        super().__init__(text)
        self.document = document
        self.before = document.project
        self.after = after
        self.gesture = gesture
        self.time = monotonic()

    def redo(self) -> None:
        self.document.show(self.after)

    def undo(self) -> None:
        self.document.show(self.before)

    def id(self) -> int:
        return self.gesture

    def mergeWith(self, other: QUndoCommand) -> bool:  # noqa: N802 - Qt's name
        if not isinstance(other, _Edit) or other.time - self.time > GESTURE_SECONDS:
            return False
        self.after, self.time = other.after, other.time
        self.setObsolete(self.after == self.before)
        return True
