"""Dropping on the window: a project is opened, of anything else it is said why it is not."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from shutil import copy

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QWidget

from app.assets import asset
from app.window.asker import Answer
from app.window.cloth_editors import PhotoEditor
from app.window.main_window import MainWindow
from core.project_file import load
from tests.app.window.conftest import ScriptedAsker, editor_at

RUNNER = asset("tide-pool-runner.crossgrain")


def drop(widget: QWidget, data: QMimeData) -> bool:
    """Drop as Qt does: on the widget there, or the next around it that takes drops."""
    target: QWidget | None = widget
    while target is not None and not target.acceptDrops():
        target = target.parentWidget()
    assert target is not None
    how = Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(QPoint(5, 5), *how)
    enter.ignore()
    QApplication.sendEvent(target, enter)
    if enter.isAccepted():
        QApplication.sendEvent(target, QDropEvent(QPointF(5, 5), *how))
        QApplication.processEvents()
    return enter.isAccepted()


def files(*paths: Path) -> QMimeData:
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    return data


PLACES: dict[str, Callable[[MainWindow], QWidget]] = {
    "window": lambda window: window,
    "yardage": lambda window: window.centre.yardage.viewport(),
    "quilt": lambda window: window.centre.quilt.viewport(),
    "parts": lambda window: window.parts.column,
    "answer": lambda window: window.answer,
}


@pytest.mark.parametrize("place", PLACES)
def test_a_project_is_opened_wherever_it_is_dropped(window: MainWindow, place: str) -> None:
    assert drop(PLACES[place](window), files(RUNNER))
    assert window.document.project == load(RUNNER)


def test_a_suffix_in_capitals_is_one_too(window: MainWindow, tmp_path: Path) -> None:
    path = tmp_path / "RUNNER.CROSSGRAIN"
    copy(RUNNER, path)
    drop(window, files(path))
    assert window.document.path == path


def test_unsaved_changes_are_asked_about(window: MainWindow, asker: ScriptedAsker) -> None:
    window.document.put("quilt.name", "changed", "Change name")
    asker.answer = Answer.CANCEL
    drop(window, files(RUNNER))
    assert len(asker.asked) == 1
    assert window.document.project.quilt.name == "changed"


@pytest.mark.parametrize("name", ["packet.pdf", "plum.jpg", "a folder", "folder.crossgrain"])
def test_what_is_no_project_is_told_and_nothing_is_asked(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path, name: str
) -> None:
    path = tmp_path / name
    if path.suffix in (".pdf", ".jpg"):
        path.write_bytes(b"anything")
    else:
        path.mkdir()
    window.document.put("quilt.name", "changed", "Change name")
    project = window.document.project
    assert drop(window, files(path))
    assert window.document.project is project
    assert asker.asked == []
    [said] = asker.told
    assert said.startswith(f"Nothing was opened: {name} is no project; drop a file that ends in ")


def test_several_files_are_told(window: MainWindow, asker: ScriptedAsker) -> None:
    project = window.document.project
    drop(window, files(RUNNER, asset("harbour-lights.crossgrain")))
    assert window.document.project is project
    assert asker.told == ["Nothing was opened: These are 2 files; drop one project."]


def test_a_project_that_is_gone_before_it_is_opened_is_told(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    project = window.document.project
    drop(window, files(tmp_path / "gone.crossgrain"))
    assert window.document.project is project
    [said] = asker.told
    assert said.startswith("gone.crossgrain was not opened: ")


def test_text_and_addresses_are_not_taken(window: MainWindow, asker: ScriptedAsker) -> None:
    text, address = QMimeData(), QMimeData()
    text.setText("50 1/2")
    address.setUrls([QUrl("https://example.org/quilt.crossgrain")])
    assert not drop(window, text)
    assert not drop(window, address)
    assert asker.told == []


def test_a_photo_dropped_on_its_field_is_seen_from_the_project(
    window: MainWindow, tmp_path: Path
) -> None:
    window.document.path = tmp_path / "quilt.crossgrain"
    window.document.renamed.emit()
    path = "fabrics[0].photo"
    window.parts.show_field(path)
    editor = editor_at(window, path)
    assert isinstance(editor, PhotoEditor)
    data = files(tmp_path / "photos" / "plum 1.jpg")
    data.setText(data.urls()[0].toString())
    assert drop(editor.line, data)
    editor.commit()
    real = window.document.project.fabrics[0].real
    assert real is not None
    assert real.photo is not None
    assert real.photo.file == "photos/plum 1.jpg"
    window.document.undo_stack.undo()
    assert window.document.project.fabrics[0].real is None
