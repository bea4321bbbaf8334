"""Questions to the person, behind one interface so that logic never waits for a dialog."""

from __future__ import annotations

from enum import Enum, auto
from pathlib import Path
from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QGridLayout, QLabel, QMessageBox, QSpacerItem, QWidget

from app.window.furniture import open_at
from core.language import told
from core.project_file import SUFFIX

WIDE = 64  # letters, of a box at least: large ones would stand in a narrow column


def projects() -> str:
    """The kind of file that a project is kept in, for a file dialog."""
    return told("Crossgrain projects (*{suffix})", suffix=SUFFIX)


def packets() -> str:
    """The kind of file that a packet is exported to."""
    return told("PDF documents (*.pdf)")


class Answer(Enum):
    """What to do with changes that are not saved."""

    SAVE = auto()
    DISCARD = auto()
    CANCEL = auto()


class KeptAnswer(Enum):
    """What to do with unsaved work that a crash left behind."""

    OPEN = auto()
    LATER = auto()
    REMOVE = auto()


class Asker(Protocol):
    """What the window may have to ask or tell."""

    def about_changes(self, name: str, left_out: str) -> Answer: ...
    def about_kept(self, name: str, when: str) -> KeptAnswer: ...
    def go_on(self, title: str, sentence: str, button: str) -> bool: ...
    def file_to_open(self, folder: Path) -> Path | None: ...
    def file_to_save(self, title: str, proposed: Path, kinds: str) -> Path | None: ...
    def folder(self, title: str, start: Path) -> Path | None: ...
    def tell(self, title: str, sentence: str) -> None: ...


def message(
    parent: QWidget | None, icon: QMessageBox.Icon, title: str, sentence: str
) -> QMessageBox:
    """A box with a headline and a sentence under it, whose words can be copied.

    Not every platform shows the title of such a window, so the box itself has it.
    """
    box = QMessageBox(parent)
    box.setIcon(icon)
    box.setWindowTitle("Crossgrain")
    box.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    box.setText(title)
    box.setInformativeText(sentence)
    for label in box.findChildren(QLabel):
        label.setTextFormat(Qt.TextFormat.PlainText)  # the sentence too, which has no say in it
    grid = box.layout()
    if isinstance(grid, QGridLayout):
        wide = WIDE * box.fontMetrics().averageCharWidth()
        grid.addItem(QSpacerItem(wide, 0), grid.rowCount(), 0, 1, grid.columnCount())
    return box


class Dialogs:
    """Asks with the platform's own dialogs, as sheets or windows over `parent`."""

    def __init__(self, parent: QWidget) -> None:
        self._parent = parent

    def about_changes(self, name: str, left_out: str) -> Answer:
        """Save, discard or go back; `left_out` says what cannot be saved, if anything."""
        buttons = QMessageBox.StandardButton
        lost = told("Changes that are not saved will be lost.")
        box = message(
            self._parent,
            QMessageBox.Icon.Warning,
            told("Save the changes to {name}?", name=name),
            f"{lost} {left_out}".strip(),
        )
        box.setStandardButtons(buttons.Save | buttons.Discard | buttons.Cancel)
        box.setDefaultButton(buttons.Save)
        box.exec()
        chosen = box.standardButton(box.clickedButton())
        return {buttons.Save: Answer.SAVE, buttons.Discard: Answer.DISCARD}.get(
            chosen, Answer.CANCEL
        )

    def about_kept(self, name: str, when: str) -> KeptAnswer:
        """Open, put off or remove what was kept of unsaved work."""
        box = message(
            self._parent,
            QMessageBox.Icon.Question,
            told("The program ended before your changes to {name} were saved.", name=name),
            told("They were kept on {when}. Opening them changes no file.", when=when),
        )
        opened = box.addButton(told("Open what was kept"), QMessageBox.ButtonRole.AcceptRole)
        later = box.addButton(told("Ask again later"), QMessageBox.ButtonRole.RejectRole)
        removed = box.addButton(told("Throw it away"), QMessageBox.ButtonRole.DestructiveRole)
        box.setDefaultButton(opened)
        box.setEscapeButton(later)
        box.exec()
        chosen = box.clickedButton()
        answers = {opened: KeptAnswer.OPEN, removed: KeptAnswer.REMOVE}
        return next((a for b, a in answers.items() if b is chosen), KeptAnswer.LATER)

    def go_on(self, title: str, sentence: str, button: str) -> bool:
        """Whether to go on although something speaks against it; `button` says with what."""
        box = message(self._parent, QMessageBox.Icon.Warning, title, sentence)
        going = box.addButton(button, QMessageBox.ButtonRole.DestructiveRole)
        box.setDefaultButton(box.addButton(QMessageBox.StandardButton.Cancel))
        box.exec()
        return box.clickedButton() is going

    def file_to_open(self, folder: Path) -> Path | None:
        """A project file that exists."""
        dialog = QFileDialog(self._parent, told("Open a project"), str(folder), projects())
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        return _chosen(dialog)

    def file_to_save(self, title: str, proposed: Path, kinds: str) -> Path | None:
        """Where to save; the dialog itself asks before a file is replaced."""
        dialog = QFileDialog(self._parent, title, str(proposed.parent), kinds)
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix(proposed.suffix)
        dialog.selectFile(proposed.name)
        return _chosen(dialog)

    def folder(self, title: str, start: Path) -> Path | None:
        """A folder that exists; the dialog can make one."""
        dialog = QFileDialog(self._parent, title, str(start))
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly)
        return _chosen(dialog)

    def tell(self, title: str, sentence: str) -> None:
        """Say what could not be done."""
        message(self._parent, QMessageBox.Icon.Warning, title, sentence).exec()


def _chosen(dialog: QFileDialog) -> Path | None:
    open_at(dialog, 112, 34)  # where it is Qt's own, it is small for large letters
    accepted = dialog.exec() == QFileDialog.DialogCode.Accepted
    files = dialog.selectedFiles()
    dialog.deleteLater()
    return Path(files[0]) if accepted and files else None
