"""Undo and redo as commands that name their step, in our words and not in Qt's."""

from __future__ import annotations

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QUndoStack

from core.language import marked, told


class StepAction(QAction):
    """`name` is told where there is no step and on the tool bar, `named` with the `{step}`."""

    def __init__(self, parent: QObject, name: str, named: str) -> None:
        super().__init__(parent)
        self._name, self._named = told(name), named

    def show_step(self, step: str) -> None:
        """Name the step that is next; "" for none."""
        self.setText(told(self._named, step=step) if step else self._name)
        self.setIconText(self._name)


def undo_action(stack: QUndoStack, parent: QObject) -> StepAction:
    """Takes back the last step of the stack."""
    action = StepAction(parent, marked("Undo"), marked("Undo {step}"))
    action.triggered.connect(stack.undo)
    action.setEnabled(stack.canUndo())
    action.show_step(stack.undoText())
    stack.canUndoChanged.connect(action.setEnabled)
    stack.undoTextChanged.connect(action.show_step)
    return action


def redo_action(stack: QUndoStack, parent: QObject) -> StepAction:
    """Takes the step again that was taken back last."""
    action = StepAction(parent, marked("Redo"), marked("Redo {step}"))
    action.triggered.connect(stack.redo)
    action.setEnabled(stack.canRedo())
    action.show_step(stack.redoText())
    stack.canRedoChanged.connect(action.setEnabled)
    stack.redoTextChanged.connect(action.show_step)
    return action
