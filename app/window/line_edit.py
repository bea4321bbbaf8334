"""A line of text that shows its beginning, and leaves Undo to the window when it has none."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence
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

    def setText(self, text: str | None) -> None:  # noqa: N802 - Qt's name
        """Show a text, from its beginning unless one is writing here."""
        super().setText(text)
        if not self.hasFocus():
            self.home(False)

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802 - Qt's name
        """Show the beginning again; what is chosen stays so while a menu is open."""
        super().focusOutEvent(event)
        reasons = Qt.FocusReason
        passing = (reasons.PopupFocusReason, reasons.ActiveWindowFocusReason)
        if event.reason() not in passing:
            self.home(False)
