"""A line of text that leaves Undo to the window when it has nothing to undo itself."""

from __future__ import annotations

from PySide6.QtCore import QEvent
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLineEdit


class LineEdit(QLineEdit):
    """A `QLineEdit` that takes Undo and Redo only while there is typing to undo.

    Qt's own claims both keys always, so that a change just committed could not be
    undone without leaving the field.
    """

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            undo = event.matches(QKeySequence.StandardKey.Undo) and not self.isUndoAvailable()
            redo = event.matches(QKeySequence.StandardKey.Redo) and not self.isRedoAvailable()
            if undo or redo:
                event.ignore()
                return False
        return super().event(event)
