"""Files: what is saved reads back equal, and nothing unsaved is lost without asking."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtTest import QTest

from app.assets import asset
from app.window.asker import Answer
from app.window.files import new_project
from app.window.main_window import MainWindow
from core.lengths import Units
from core.plan import make_plan
from core.project_file import load
from tests.app.window.conftest import ScriptedAsker, editor_at

TypeIn = Callable[[str, str], None]
Leave = Callable[[MainWindow], object]

LEAVING: dict[str, Leave] = {
    "close": lambda window: window.close(),
    "new": lambda window: window.files.new(),
    "open": lambda window: window.files.open(),
    "open recent": lambda window: window.files.open_path(asset("tide-pool-runner.crossgrain")),
}
leaving = pytest.mark.parametrize("leave", LEAVING.values(), ids=LEAVING.keys())


@leaving
def test_with_unsaved_changes_leaving_asks_and_cancel_keeps_everything(
    window: MainWindow, asker: ScriptedAsker, type_in: TypeIn, leave: Leave
) -> None:
    type_in("quilt.width", "50")
    project = window.document.project
    asker.open_file = asset("tide-pool-runner.crossgrain")
    leave(window)
    assert asker.asked == ["Harbour Lights"]
    assert window.document.project is project
    assert window.isVisible()
    assert window.isWindowModified()


@leaving
def test_with_unsaved_changes_save_saves_before_leaving(
    window: MainWindow, asker: ScriptedAsker, type_in: TypeIn, leave: Leave, tmp_path: Path
) -> None:
    type_in("quilt.width", "50")
    project = window.document.project
    asker.answer, asker.save_file = Answer.SAVE, tmp_path / "kept.crossgrain"
    leave(window)
    assert load(tmp_path / "kept.crossgrain") == project


@leaving
def test_a_save_that_is_called_off_or_fails_stops_the_leaving(
    window: MainWindow, asker: ScriptedAsker, type_in: TypeIn, leave: Leave, tmp_path: Path
) -> None:
    type_in("quilt.width", "50")
    project = window.document.project
    asker.answer = Answer.SAVE
    for target in (None, tmp_path / "no such folder" / "kept.crossgrain"):
        asker.save_file = target
        leave(window)
        assert window.document.project is project
        assert window.isVisible()
    assert len(asker.told) == 1
    assert "was not saved" in asker.told[0]


@leaving
def test_without_changes_leaving_asks_nothing(
    window: MainWindow, asker: ScriptedAsker, leave: Leave
) -> None:
    asker.open_file = asset("tide-pool-runner.crossgrain")
    leave(window)
    assert asker.asked == []


def test_discarding_lets_go(window: MainWindow, asker: ScriptedAsker, type_in: TypeIn) -> None:
    type_in("quilt.width", "50")
    asker.answer = Answer.DISCARD
    assert window.close()


def test_what_is_still_being_typed_is_saved_too(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    window.parts.show_field("quilt.width")
    editor = editor_at(window, "quilt.width")
    editor.selectAll()  # type: ignore[attr-defined]
    QTest.keyClicks(editor, "51")
    asker.save_file = tmp_path / "a.crossgrain"
    window.menus.save.trigger()
    assert load(tmp_path / "a.crossgrain").quilt.width == 51


def test_saved_closed_and_reopened_the_project_is_equal(
    window: MainWindow, asker: ScriptedAsker, type_in: TypeIn, tmp_path: Path
) -> None:
    type_in("quilt.name", "Low Tide")
    type_in("borders[0].width", "1 1/3")
    window.parts.borders.add.click()
    project = window.document.project
    asker.save_file = tmp_path / "low tide.crossgrain"
    window.menus.save.trigger()
    assert window.windowTitle() == "low tide.crossgrain[*] – Crossgrain"
    assert not window.isWindowModified()
    window.menus.new.trigger()
    assert window.document.project != project
    asker.open_file = asker.save_file
    window.menus.open.trigger()
    assert window.document.project == project


def test_save_goes_to_the_file_it_came_from_and_save_as_asks(
    window: MainWindow, asker: ScriptedAsker, type_in: TypeIn, tmp_path: Path
) -> None:
    asker.save_file = tmp_path / "a.crossgrain"
    window.menus.save.trigger()
    type_in("quilt.width", "50")
    asker.save_file = None
    window.menus.save.trigger()
    assert load(tmp_path / "a.crossgrain").quilt.width == 50
    asker.save_file = tmp_path / "b.crossgrain"
    window.menus.save_as.trigger()
    assert window.document.path == tmp_path / "b.crossgrain"


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "empty"),
        (b"{", "not JSON"),
        (b"\xff\xfe\x00", "not text"),
        (b'{"format": "recipe", "version": 1}', "another kind"),
        (b'{"format": "crossgrain-project", "version": 2}', "newer"),
    ],
)
def test_a_file_that_is_no_project_is_told_and_changes_nothing(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path, content: bytes, words: str
) -> None:
    project = window.document.project
    bad = tmp_path / "bad.crossgrain"
    bad.write_bytes(content)
    window.files.open_path(bad)
    assert words in asker.told[0]
    assert window.document.project is project
    assert window.memory.recent() == []


def test_a_recent_file_that_has_gone_is_told_and_forgotten(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    gone = tmp_path / "gone.crossgrain"
    window.memory.opened(gone)
    window.files.open_path(gone)
    assert "was not opened" in asker.told[0]
    assert gone.resolve() not in window.memory.recent()


@pytest.mark.parametrize("units", Units)
def test_a_new_project_can_be_planned_at_once(units: Units) -> None:
    project = new_project(units)
    assert project.units is units
    assert make_plan(project).project is project


def test_a_failed_save_leaves_the_old_file_whole(
    window: MainWindow,
    asker: ScriptedAsker,
    type_in: TypeIn,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    asker.save_file = tmp_path / "a.crossgrain"
    window.menus.save.trigger()
    old = asker.save_file.read_bytes()

    def full(handle: int) -> None:
        raise OSError(28, "No space left on device")

    type_in("quilt.width", "50")
    monkeypatch.setattr(os, "fsync", full)
    window.menus.save.trigger()
    assert "No space left" in asker.told[0]
    assert asker.save_file.read_bytes() == old
    assert window.isWindowModified()
