"""What is dropped on the window: one project is opened, of any other file it is said why not."""

from __future__ import annotations

from functools import partial
from os.path import isdir
from pathlib import Path

from PySide6.QtCore import QEvent, QMimeData, QObject, QTimer
from PySide6.QtGui import QDragEnterEvent, QDropEvent

from app.window.paper_work import PaperWork
from core.language import told
from core.project_file import SUFFIX


class Dropping(QObject):
    """Takes files that are dropped on a window; text goes to the fields."""

    def __init__(self, window: PaperWork) -> None:
        super().__init__(window)
        self._window = window
        window.setAcceptDrops(True)
        window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if not isinstance(event, QDragEnterEvent | QDropEvent):
            return super().eventFilter(watched, event)
        paths = _files(event.mimeData())
        if paths:
            event.acceptProposedAction()
        if paths and event.type() == QEvent.Type.Drop:
            # Later, since the program that it was dragged from waits until this returns.
            QTimer.singleShot(0, partial(self.take, paths))
        return True

    def take(self, paths: list[Path]) -> None:
        """Open a project, or say why nothing is opened."""
        first = paths[0]
        if len(paths) > 1:
            said = told("These are {count} files; drop one project.", count=len(paths))
            self._window.asker.tell(told("Nothing was opened"), said)
        elif first.suffix.lower() != SUFFIX or isdir(first):
            said = told(
                "{file} is no project; drop a file that ends in {suffix}. "
                "A photo of cloth goes into a fabric's field for it.",
                file=first.name,
                suffix=SUFFIX,
            )
            self._window.asker.tell(told("Nothing was opened"), said)
        else:
            self._window.files.open_path(first)


def _files(data: QMimeData) -> list[Path]:
    """The files of this computer that are being dropped."""
    return [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]
