"""A fabric's colour and photo in the window: chosen, typed, undone, told where not found."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot

from app.window.cloth_editors import ColourEditor, PhotoEditor
from app.window.main_window import MainWindow
from core.fabric import Photo, RealCloth
from core.lengths import INCHES_PER_MM, Units
from tests.app.window.conftest import PlannerHere, ScriptedAsker, editor_at

COLOUR, PHOTO = "fabrics[0].colour", "fabrics[0].photo"


def real(window: MainWindow) -> RealCloth | None:
    return window.document.project.fabrics[0].real


def note(window: MainWindow) -> str:
    row = window.parts.row_at(PHOTO)
    assert row is not None
    return row.note.text()


def colour_editor(window: MainWindow) -> ColourEditor:
    window.parts.show_field(COLOUR)
    editor = window.parts.row_at(COLOUR)
    assert editor is not None
    assert isinstance(editor.editor, ColourEditor)
    return editor.editor


def photo_editor(window: MainWindow) -> PhotoEditor:
    window.parts.show_field(PHOTO)
    editor = window.parts.row_at(PHOTO)
    assert editor is not None
    assert isinstance(editor.editor, PhotoEditor)
    return editor.editor


def typed(line: QLineEdit, text: str) -> None:
    line.selectAll()
    QTest.keyClick(line, Qt.Key.Key_Delete)
    QTest.keyClicks(line, text)
    QTest.keyClick(line, Qt.Key.Key_Return)


def photo(window: MainWindow) -> Photo:
    found = real(window)
    assert found is not None
    assert found.photo is not None
    return found.photo


@pytest.fixture
def choose_photo(monkeypatch: pytest.MonkeyPatch) -> Callable[[Path], None]:
    """Answer the question for a photo."""

    def answer(path: Path) -> None:
        monkeypatch.setattr(PhotoEditor, "pick", lambda self, folder: str(path))

    return answer


@pytest.mark.parametrize(("text", "colour"), [("navy", "#000080"), ("#20305A", "#20305a")])
def test_a_colour_is_typed_undone_and_redone(window: MainWindow, text: str, colour: str) -> None:
    typed(colour_editor(window).line, text)
    assert real(window) == RealCloth(colour)
    window.document.undo_stack.undo()
    assert real(window) is None
    assert colour_editor(window).line.text() == ""
    window.document.undo_stack.redo()
    assert colour_editor(window).line.text() == colour


def test_a_colour_is_chosen(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(ColourEditor, "pick", lambda self, now: QColor("#abcdef"))
    colour_editor(window).button.click()
    assert real(window) == RealCloth("#abcdef")
    typed(colour_editor(window).line, "")
    assert real(window) is None


def test_what_is_no_colour_stays_where_it_was_typed(window: MainWindow) -> None:
    editor = colour_editor(window)
    typed(editor.line, "blueish")
    row = window.parts.row_at(COLOUR)
    assert row is not None
    assert "#7a1f2b" in row.problem.text()
    assert editor.line.text() == "blueish"
    assert real(window) is None


def test_a_photo_is_chosen_measured_undone_and_redone(
    window: MainWindow,
    asker: ScriptedAsker,
    tmp_path: Path,
    choose_photo: Callable[[Path], None],
    planner: PlannerHere,
) -> None:
    asker.save_file = tmp_path / "quilt.crossgrain"
    assert window.files.save_as()
    image = QImage(40, 40, QImage.Format.Format_RGB32)
    image.fill(QColor("#ff0000"))
    assert image.save(str(tmp_path / "sky.png"))
    choose_photo(tmp_path / "sky.png")
    photo_editor(window).button.click()
    planner.finish()
    assert photo(window) == Photo("sky.png", Fraction(12))
    assert note(window) == ""
    typed(photo_editor(window).shows.lineEdit(), "50 cm")
    assert photo(window).shows == 500 * INCHES_PER_MM
    window.document.undo_stack.undo()
    window.document.undo_stack.undo()
    assert real(window) is None
    window.document.undo_stack.redo()
    assert real(window) is not None


def test_a_photo_that_is_not_there_is_told_and_the_plan_goes_on(
    window: MainWindow, planner: PlannerHere
) -> None:
    photo_editor(window)
    window.document.put(PHOTO, {"file": "gone.jpg", "shows": "12"}, "Change photo")
    planner.finish()
    assert "There is no gone.jpg" in note(window)
    titles = [lane.item.title for lane in window.centre.yardage.lanes]
    assert [title.endswith("; without its photo") for title in titles] == [
        True,
        False,
        False,
        False,
    ]
    assert window.plan is not None
    assert window.plan.project == window.document.project
    assert window.centre.banner.isHidden()


def green(path: Path) -> None:
    image = QImage(30, 20, QImage.Format.Format_RGB32)
    image.fill(QColor("#00ff00"))
    assert image.save(str(path))


def test_a_photo_changed_by_another_program_is_seen_when_one_comes_back(
    window: MainWindow, planner: PlannerHere, tmp_path: Path, qtbot: QtBot
) -> None:
    file = tmp_path / "plum.png"
    green(file)
    window.document.path = tmp_path / "quilt.crossgrain"
    photo_editor(window)
    window.document.put(PHOTO, {"file": file.name, "shows": "12"}, "Change photo")
    planner.finish()

    def come_back() -> tuple[str, bool]:
        QApplication.sendEvent(window, QEvent(QEvent.Type.ActivationChange))
        return note(window), window.centre.yardage.lanes[0].item.title.endswith("photo")

    with qtbot.waitActive(window):
        window.activateWindow()
    assert come_back() == ("", False)
    before = window.centre.yardage.lanes[0]
    assert come_back() == ("", False)
    assert window.centre.yardage.lanes[0] is before
    file.unlink()
    assert come_back() == (
        "There is no plum.png beside the project; the cloth is shown without it.",
        True,
    )
    file.mkdir()
    assert come_back() == ("plum.png is a folder, no photo; the cloth is shown without it.", True)
    file.rmdir()
    green(file)
    assert come_back() == ("", False)


def test_a_photo_is_found_from_where_the_project_is_saved(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    (tmp_path / "here").mkdir()
    (tmp_path / "there").mkdir()
    asker.save_file = tmp_path / "here" / "quilt.crossgrain"
    assert window.files.save_as()
    window.document.put(PHOTO, {"file": "sky.png", "shows": "12"}, "Change photo")
    asker.save_file = tmp_path / "there" / "quilt.crossgrain"
    assert window.files.save_as()
    assert photo(window).file == "../here/sky.png"
    assert window.document.undo_stack.isClean()


def test_the_width_a_photo_shows_is_in_the_projects_units(window: MainWindow) -> None:
    window.document.put(PHOTO, {"file": "sky.png", "shows": "12"}, "Change photo")
    window.set_units(Units.CENTIMETRES)
    editor = photo_editor(window)
    assert editor.shows.lineEdit().text() == "30.48 cm"
    assert editor.shows.accessibleName().endswith("the width of cloth it shows")


def test_both_fields_have_names(window: MainWindow) -> None:
    for path in (COLOUR, PHOTO):
        window.parts.show_field(path)
        line = editor_at(window, path).focusProxy()
        assert line is not None
        assert line.accessibleName()
