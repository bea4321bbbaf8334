"""Files, folders and disks that go, or are full, while a window is open: told, and nothing lost."""

from __future__ import annotations

import errno
import os
from pathlib import Path
from shutil import rmtree

import pytest
from PySide6.QtCore import QSettings
from pytestqt.qtbot import QtBot

from app.assets import asset
from app.window.asker import Answer
from app.window.export import Kind
from app.window.hold import Hold, _one_file
from app.window.main_window import MainWindow
from app.window.memory import Memory
from core.project_file import load
from core.quilt import Project
from tests.app.window.conftest import PlannerHere, ScriptedAsker

STILL_HERE = "Your changes are still here: save them in another place."
AS_IT_WAS = (
    "The file there is as it was, and your changes are still here: save them in another place."
)


@pytest.fixture
def file(window: MainWindow, asker: ScriptedAsker, tmp_path: Path) -> Path:
    """The window's own file, in a folder of its own, with a change that is not saved."""
    asker.save_file = tmp_path / "quilts" / "quilt.crossgrain"
    asker.save_file.parent.mkdir()
    assert window.files.save()
    window.document.put("quilt.name", "Changed", "Change name")
    return asker.save_file


def assert_all_is_there(window: MainWindow, demo: Project) -> None:
    """The change is not saved, and can be undone and redone."""
    assert window.isWindowModified()
    window.document.undo_stack.undo()
    assert window.document.project == demo
    window.document.undo_stack.redo()
    assert window.document.project.quilt.name == "Changed"


def test_a_file_that_has_gone_is_written_anew_and_that_is_said(
    window: MainWindow, file: Path
) -> None:
    file.unlink()
    assert window.files.save()
    assert load(file) == window.document.project
    said = "Saved quilt.crossgrain anew: it was no longer in its place"
    assert window.statusBar().currentMessage() == said
    window.document.put("quilt.name", "Again", "Change name")
    assert window.files.save()
    assert window.statusBar().currentMessage() == "Saved quilt.crossgrain"


def test_without_its_folder_a_file_is_not_saved_until_the_folder_is_back(
    window: MainWindow, asker: ScriptedAsker, file: Path, demo: Project
) -> None:
    rmtree(file.parent)
    assert not window.files.save()
    [said] = asker.told
    assert said == (
        "quilt.crossgrain was not saved: The folder is not there; make it, or name another "
        f"({file}). {STILL_HERE}"
    )
    assert_all_is_there(window, demo)
    file.parent.mkdir()
    assert window.files.save()
    assert load(file) == window.document.project
    assert Hold().take(file)  # and other windows are told again


def test_a_folder_in_the_files_place_is_told_and_not_asked_about(
    window: MainWindow, asker: ScriptedAsker, file: Path, demo: Project
) -> None:
    file.unlink()
    file.mkdir()
    asker.asked.clear()
    assert not window.files.save()
    assert asker.asked == []
    assert asker.told == [
        f"quilt.crossgrain was not saved: This is a folder; name a file in it ({file}). "
        f"{STILL_HERE}"
    ]
    assert_all_is_there(window, demo)


def test_a_file_in_the_folders_place_is_told(
    window: MainWindow, asker: ScriptedAsker, file: Path, demo: Project
) -> None:
    rmtree(file.parent)
    file.parent.write_text("a file")
    assert not window.files.save()
    assert "The folder is not there" in asker.told[0]
    assert_all_is_there(window, demo)


def full(_: int) -> None:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


def test_on_a_full_disk_the_old_file_stays_whole_and_that_is_said(
    window: MainWindow,
    asker: ScriptedAsker,
    file: Path,
    demo: Project,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    old = file.read_bytes()
    monkeypatch.setattr(os, "fsync", full)
    assert not window.files.save()
    [said] = asker.told
    assert said.endswith(AS_IT_WAS)
    assert file.read_bytes() == old
    assert [path.name for path in file.parent.iterdir() if path.suffix == ".part"] == []
    assert_all_is_there(window, demo)


@pytest.mark.parametrize("kind", Kind)
def test_an_export_onto_a_disk_that_gets_full_says_how_far_it_came(
    window: MainWindow,
    planner: PlannerHere,
    asker: ScriptedAsker,
    tmp_path: Path,
    kind: Kind,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    synced: list[int] = []

    def one_only(handle: int) -> None:
        synced.append(handle)
        if len(synced) > 2:  # a file, its folder
            full(handle)

    monkeypatch.setattr(os, "fsync", one_only)
    asker.save_folder = tmp_path / "out"
    asker.save_folder.mkdir()
    window.export_files(kind)
    planner.finish()
    [said] = asker.told
    assert "Nothing" not in said
    assert "Written before it: 1 of " in said
    assert len(list(asker.save_folder.iterdir())) == 1
    assert "Exported" not in window.statusBar().currentMessage()


def test_what_will_not_open_leaves_the_open_file_alone(
    window: MainWindow, asker: ScriptedAsker, file: Path
) -> None:
    bad = file.with_name("bad.crossgrain")
    bad.write_text("{")
    asker.answer = Answer.DISCARD
    for other in (bad, file.with_name("none.crossgrain"), file.parent):
        window.files.open_path(other)
    assert len(asker.told) == 3
    asker.asked.clear()
    assert window.files.save()
    assert asker.asked == []


def test_recent_files_on_a_disk_that_is_not_connected_stay(
    window: MainWindow, file: Path, asker: ScriptedAsker
) -> None:
    assert window.files.save()
    window.files.new()
    away = file.parent.with_name("elsewhere")
    file.parent.rename(away)
    window.files.open_path(file)
    assert window.memory.recent() == [file]
    away.rename(file.parent)
    file.unlink()
    window.files.open_path(file)
    assert window.memory.recent() == []
    assert len(asker.told) == 2


def test_one_file_by_two_names_is_one(tmp_path: Path) -> None:
    one, other = tmp_path / "quilt.crossgrain", tmp_path / "QUILT.crossgrain"
    one.write_text("")
    assert _one_file(one, one)
    assert not _one_file(one, tmp_path / "other.crossgrain")
    assert _one_file(one, other) == other.exists()  # as the disk has it
    assert not _one_file(tmp_path / "gone", tmp_path / "GONE")


@pytest.mark.skipif(os.name == "nt", reason="links need a right of their own there")
def test_a_file_opened_by_a_link_is_held_by_its_own_name(
    window: MainWindow, file: Path, demo: Project
) -> None:
    link = file.with_name("link.crossgrain")
    link.symlink_to(file)
    roundabout = file.parent / ".." / file.parent.name / link.name
    assert window.files.save()
    window.files.open_path(roundabout)
    hold = Hold()
    assert hold.take(file)
    window.document.put("quilt.name", "By the link", "Change name")
    assert window.files.save()
    assert link.is_symlink()
    assert load(file).quilt.name == "By the link"


def unwritable(tmp_path: Path) -> Memory:
    """Settings in a folder that cannot be made, since a file has its name."""
    (tmp_path / "no folder").write_text("a file")
    path = tmp_path / "no folder" / "settings.ini"
    return Memory(QSettings(str(path), QSettings.Format.IniFormat))


def test_settings_that_cannot_be_written_hold_meanwhile_and_that_is_said_once(
    tmp_path: Path, qtbot: QtBot
) -> None:
    memory = unwritable(tmp_path)
    said: list[str] = []
    memory.failed.connect(said.append)
    assert not memory.keep("look", "dark")
    memory.opened(asset("harbour-lights.crossgrain"))
    assert memory.text("look", "light") == "dark"
    assert len(memory.recent()) == 1
    assert len(said) == 1
    assert "what you choose holds until Crossgrain ends" in said[0]


def test_a_language_that_cannot_be_remembered_is_not_promised(
    window: MainWindow, tmp_path: Path
) -> None:
    window.memory = unwritable(tmp_path)
    for _ in range(2):  # each time that it is chosen
        window.statusBar().clearMessage()
        window.menus.languages["de"].trigger()
        assert window.statusBar().currentMessage() == window.memory.unwritable()
