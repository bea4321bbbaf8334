"""Whatever the window says, asks and explains is told in the language spoken."""

from __future__ import annotations

import errno
from fractions import Fraction
from pathlib import Path

import pytest
from PySide6.QtCore import QLockFile
from PySide6.QtWidgets import QFileDialog, QMessageBox
from pytestqt.qtbot import QtBot

from app.assets import asset
from app.os_words import said_of
from app.photos_qt import Photos
from app.solver.talk import Fault
from app.window import help_pages
from app.window.answer_panel import AnswerPanel
from app.window.appearance import Appearance
from app.window.asker import Dialogs
from app.window.document import Document
from app.window.export import Kind
from app.window.hold import Hold
from app.window.main_window import MainWindow
from app.window.memory import Memory
from app.window.recovery import FaultWatch
from core.fabric import Photo
from core.lengths import Units
from core.project_file import load
from core.quilt import Project
from core.whole_file import write_whole
from tests.app.window.conftest import PlannerHere, ScriptedAsker, all_rows
from tests.app.window.told import left, texts
from tests.nameless import nameless

stood_in = pytest.mark.usefixtures("stand_in")


@pytest.fixture
def demo() -> Project:
    return nameless(load(asset("harbour-lights.crossgrain")))


def fill(window: MainWindow) -> None:
    """Look at every tab and every field once, so that it has something to say."""
    all_rows(window)
    for tabs in (window.centre.tabs, window.answer.tabs):
        for place in range(tabs.count()):
            tabs.setCurrentIndex(place)


@stood_in
def test_the_window_is_told(window: MainWindow) -> None:
    fill(window)
    window.document.put("quilt.width", "50", "")
    assert left(texts(window)) == {}


@stood_in
def test_the_frame_that_is_seen_first_is_told(
    qtbot: QtBot, planner: PlannerHere, memory: Memory, asker: ScriptedAsker
) -> None:
    from PySide6.QtWidgets import QApplication

    application = QApplication.instance()
    assert isinstance(application, QApplication)
    frame = MainWindow(None, planner, memory, Appearance(application), asker, PlannerHere())
    qtbot.addWidget(frame)
    assert left(texts(frame)) == {}


@stood_in
@pytest.mark.parametrize("page", help_pages.PAGES)
def test_every_page_of_help_is_told(window: MainWindow, page: str) -> None:
    shown = help_pages.PAGES[page](window)
    assert left(texts(shown), "DejaVu", "Sans") == {}
    shown.close()


@stood_in
def test_an_empty_list_and_a_plan_without_parts_are_told(qtbot: QtBot) -> None:
    panel = AnswerPanel()
    qtbot.addWidget(panel)
    assert left(texts(panel)) == {}


@stood_in
def test_what_the_window_says_in_passing_is_told(
    window: MainWindow, planner: PlannerHere, asker: ScriptedAsker, tmp_path: Path
) -> None:
    said: list[str] = []
    window.statusBar().messageChanged.connect(said.append)
    asker.save_file = tmp_path / "ω.crossgrain"
    asker.save_folder = tmp_path / "ψ"
    asker.save_folder.mkdir()
    planner.restarted.emit()
    window.set_units(Units.CENTIMETRES)
    said.append(window.document.undo_stack.undoText())
    planner.finish()
    window.files.save()
    window.export()
    for kind in Kind:
        window.export_files(kind)
    said.append(window.finished.text())
    window.autosave._complain(OSError(errno.ENOSPC, "No space left on device"))
    assert len(said) == 8
    assert left([*said, *asker.asked, *asker.told], ".pdf") == {}


@stood_in
def test_what_keeps_a_plan_from_being_made_is_told(
    window: MainWindow, planner: PlannerHere, qtbot: QtBot
) -> None:
    for fault in ("the first", "second"):
        with qtbot.waitSignal(planner.failed):
            planner._wanted = window.document.project
            planner._settle(Fault(fault))
        assert left([window.centre.banner.text.text()], "the first", "second") == {}
    planner._wanted, planner._deaths = window.document.project, 5
    planner._died()
    assert left([window.centre.banner.text.text()]) == {}


@stood_in
def test_what_goes_wrong_with_a_file_is_told(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    gone, torn = tmp_path / "ω.crossgrain", tmp_path / "ψ.crossgrain"
    torn.write_text('{"format": "ω"}')
    window.files.open_path(gone)
    window.files.open_path(torn)
    asker.goes_on = True
    with monkeypatch.context() as held:
        held.setattr(Hold, "take", lambda self, path: "ψ")
        window.files.open_path(gone)
    window.files.save()  # nowhere
    asker.save_file = tmp_path / "χ" / "ω.crossgrain"
    window.files.save_as()
    window.document.put("quilt.width", "50", "")
    asker.save_file = gone
    window.files.save_as()
    gone.write_text("{}")
    window.files.save()
    monkeypatch.setattr(window.files, "_untaken", lambda: ["ψ"])
    window.files.save()
    window.plan = None
    window.export()
    assert len(asker.told) == 5
    assert left([*asker.asked, *asker.told], tmp_path, "format", "project") == {}


@stood_in
def test_who_holds_a_file_is_told(tmp_path: Path) -> None:
    path = tmp_path / "ω.crossgrain"
    mine, other = Hold(), Hold()
    assert mine.take(path) == ""
    assert left([other.take(path)]) == {}
    mine.let_go()
    lock = QLockFile(str(tmp_path / ".ω.crossgrain.lock"))
    assert lock.tryLock(0)
    lock.unlock()


@stood_in
@pytest.mark.parametrize("number", [errno.ENOENT, errno.EACCES, errno.ENOSPC, errno.EISDIR])
def test_what_the_system_says_of_a_file_is_told(number: int) -> None:
    system = "Is a directory" if number == errno.EISDIR else "Said by the system"
    assert left([said_of(OSError(number, system))]) == {}


def test_a_rare_failure_is_said_as_the_system_says_it() -> None:
    assert said_of(OSError(errno.EMFILE, "Too many open files")) == "Too many open files"
    assert said_of(OSError("odd")) == "odd"


def test_what_the_program_says_of_a_folder_in_a_files_place_stays(tmp_path: Path) -> None:
    with pytest.raises(IsADirectoryError) as refused:
        write_whole(tmp_path, b"")
    assert said_of(refused.value) == "this is a folder; name a file in it"


@stood_in
def test_every_question_is_told(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    said: list[str] = []

    def shown(box: QMessageBox) -> int:
        said.extend(texts(box))
        return 0

    monkeypatch.setattr(QMessageBox, "exec", shown)
    dialogs = Dialogs(window)
    dialogs.about_changes("ψ", "")
    dialogs.about_kept("ψ", "1.1.")
    dialogs.tell("ψ", "ω")
    assert len(said) > 8
    assert left(said) == {}


@stood_in
def test_every_file_dialog_is_told(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    said: list[str] = []

    def shown(dialog: QFileDialog) -> int:
        said.extend([dialog.windowTitle(), *dialog.nameFilters()])
        return 0

    monkeypatch.setattr(QFileDialog, "exec", shown)
    window.files.asker = window.asker = Dialogs(window)
    window.files.open()
    window.files.save_as()
    window.export()
    for kind in Kind:
        window.export_files(kind)
    assert len(said) >= 9
    assert left(said, "*.crossgrain", "*.pdf") == {}


@stood_in
def test_a_fault_of_the_program_is_told(
    document: Document, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    said: list[str] = []
    monkeypatch.setattr(QMessageBox, "exec", lambda box: said.extend(texts(box)))
    kept = tmp_path / "ψ"
    monkeypatch.setattr("app.window.recovery.keep_copy", lambda document: kept)
    FaultWatch(document)._tell(RuntimeError("ω"), "")
    FaultWatch(document).took(RuntimeError, RuntimeError("ω"), None)
    assert left(said, kept, "RuntimeError") == {}


@stood_in
def test_why_a_photo_is_not_shown_is_told(tmp_path: Path) -> None:
    photos, photo = Photos(tmp_path), Photo("ψ.png", Fraction(4))
    assert left([photos.problem(photo)], photo.file) == {}
    (tmp_path / photo.file).write_bytes(b"torn")
    photos.look_again()
    assert "ψ" in photos.problem(photo)
