"""Unsaved work is kept within two seconds, offered after a crash, and gone once it is saved."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QLockFile
from pytestqt.qtbot import QtBot
from shiboken6 import delete

from app.window.asker import Answer, KeptAnswer
from app.window.autosave import PAUSE_MS, Autosave, Kept, left_behind, recovery_folder
from app.window.document import Document
from app.window.main_window import MainWindow
from core.project_file import load, save
from core.quilt import Project
from tests.app.window.conftest import ScriptedAsker

TypeIn = Callable[[str, str], None]


@pytest.fixture
def autosave(document: Document, tmp_path: Path) -> Autosave:
    return Autosave(document, tmp_path / "recovery")


def kept_files(tmp_path: Path) -> list[Path]:
    return list((tmp_path / "recovery").glob("*.kept"))


def crash(tmp_path: Path, document: Document) -> Path:
    """What a program that died while it held `document` leaves in the folder of this one."""
    grave = tmp_path / "grave"
    autosave = Autosave(document, grave)
    autosave.keep()
    [kept] = grave.glob("*.kept")
    recovery_folder().mkdir(parents=True, exist_ok=True)
    return Path(shutil.copy(kept, recovery_folder()))


def test_a_change_is_kept_within_two_seconds(
    document: Document, autosave: Autosave, tmp_path: Path, qtbot: QtBot
) -> None:
    document.put("quilt.width", "50", "Change width")
    qtbot.wait(PAUSE_MS // 2)
    document.put("quilt.width", "51", "Change width")
    qtbot.waitUntil(lambda: bool(kept_files(tmp_path)), timeout=PAUSE_MS // 2 + 500)
    qtbot.wait(50)
    forms = [path.read_text(encoding="utf-8") for path in kept_files(tmp_path)]
    assert '"width": "51"' in forms[0]


def test_what_a_living_program_keeps_is_not_offered(
    document: Document, autosave: Autosave, tmp_path: Path
) -> None:
    document.put("quilt.width", "50", "Change width")
    autosave.keep()
    autosave.keep()
    assert len(kept_files(tmp_path)) == 1
    assert left_behind(tmp_path / "recovery") == []


def test_what_a_dead_program_kept_is_offered_once_at_a_time(
    document: Document, tmp_path: Path
) -> None:
    document.put("quilt.width", "50", "Change width")
    crash(tmp_path, document)
    [kept] = left_behind()
    assert kept.project == document.project
    assert kept.name == "Harbour Lights"
    assert left_behind() == [], "another window must not be asked about it meanwhile"
    kept.leave()
    [again] = left_behind()
    again.remove()
    assert left_behind() == []
    assert list(recovery_folder().iterdir()) == []


@pytest.mark.parametrize("undo", [True, False], ids=["undone", "saved"])
def test_nothing_is_kept_of_what_is_saved_or_undone(
    document: Document, autosave: Autosave, tmp_path: Path, undo: bool
) -> None:
    document.put("quilt.width", "50", "Change width")
    autosave.keep()
    assert kept_files(tmp_path)
    if undo:
        document.undo_stack.undo()
    else:
        document.save(tmp_path / "a.crossgrain")
    assert list((tmp_path / "recovery").iterdir()) == []


def test_what_was_kept_stays_when_the_document_goes(
    document: Document, autosave: Autosave, tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    document.put("quilt.width", "50", "Change width")
    autosave.keep()
    delete(document)  # its undo stack clears itself, and says that all is as it was
    assert len(kept_files(tmp_path)) == 1
    assert capfd.readouterr().err == ""


def test_a_full_disk_is_told_once_and_again_after_it_was_well(
    document: Document, autosave: Autosave, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(handle: int) -> None:
        raise OSError(28, "No space left on device")

    told: list[str] = []
    autosave.failed.connect(told.append)
    document.put("quilt.width", "50", "Change width")
    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", full)
        autosave.keep()
        autosave.keep()
    assert len(told) == 1
    assert "No space left" in told[0]
    autosave.keep()
    monkeypatch.setattr(os, "fsync", full)
    autosave.keep()
    assert len(told) == 2


@pytest.mark.parametrize(
    "text",
    ["", "{", '{"format": "crossgrain-kept", "version": 9}', '{"format": "crossgrain-kept"}'],
)
def test_a_kept_file_that_cannot_be_read_is_left_alone(tmp_path: Path, text: str) -> None:
    (tmp_path / "odd.kept").write_text(text)
    assert left_behind(tmp_path) == []
    assert (tmp_path / "odd.kept").read_text() == text


def test_work_left_by_a_crash_opens_as_unsaved_changes_of_its_file(
    window: MainWindow, asker: ScriptedAsker, demo: Project, tmp_path: Path
) -> None:
    path = tmp_path / "quilt.crossgrain"
    save(demo, path)
    lost = Document(demo, path)
    lost.put("quilt.width", "50", "Change width")
    kept = crash(tmp_path, lost)
    asker.kept = KeptAnswer.OPEN
    window.files.offer_kept()
    assert asker.asked == ["kept: quilt.crossgrain"]
    assert window.document.project == lost.project
    assert window.isWindowModified()
    assert load(path) == demo, "nothing is saved without being asked for"
    assert not kept.exists()
    [anew] = recovery_folder().glob("*.kept")
    assert window.files.save()
    assert load(path) == lost.project
    assert not anew.exists()


def test_work_left_by_a_crash_can_wait_or_go(
    window: MainWindow, asker: ScriptedAsker, document: Document, tmp_path: Path
) -> None:
    lost = Document(document.project)
    lost.put("quilt.width", "50", "Change width")
    kept = crash(tmp_path, lost)
    window.files.offer_kept()
    assert kept.exists()
    asker.kept = KeptAnswer.REMOVE
    window.files.offer_kept()
    assert not kept.exists()
    assert window.document.project is document.project


def test_discarding_changes_lets_go_of_what_was_kept(
    window: MainWindow, asker: ScriptedAsker, type_in: TypeIn
) -> None:
    type_in("quilt.width", "50")
    window.autosave.keep()
    assert left_behind() == []
    assert list(recovery_folder().glob("*.kept"))
    asker.answer = Answer.DISCARD
    assert window.close()
    assert list(recovery_folder().iterdir()) == []


def test_the_newest_is_offered_first(document: Document, tmp_path: Path) -> None:
    kept = crash(tmp_path, document)
    older = kept.read_text(encoding="utf-8")
    year = older.index('"kept": "') + len('"kept": "')
    (recovery_folder() / "older.kept").write_text(older[:year] + "1999" + older[year + 4 :])
    found = left_behind()
    assert [one.moment.year > 1999 for one in found] == [True, False]
    for one in found:
        assert isinstance(one, Kept)
        assert isinstance(one.lock, QLockFile)
        one.remove()


@pytest.mark.parametrize(
    ("key", "value", "found"),
    [
        ("kept", "2026-01-01T00:00:00+00:00", 2),
        ("kept", "9999-12-31T23:59:59-23:00", 1),
        ("path", "a\0b", 1),
    ],
)
def test_odd_values_in_one_kept_file_keep_no_other_from_being_offered(
    document: Document, autosave: Autosave, tmp_path: Path, key: str, value: str, found: int
) -> None:
    autosave.keep()
    [kept] = kept_files(tmp_path)
    grave = tmp_path / "grave"
    grave.mkdir()
    shutil.copy(kept, grave)
    odd = json.loads(kept.read_text("utf-8")) | {key: value}
    (grave / "odd.kept").write_text(json.dumps(odd), "utf-8")
    offered = left_behind(grave)
    assert len(offered) == found
    for one in offered:
        one.remove()


def test_a_kept_file_that_cannot_be_removed_is_told(
    document: Document, autosave: Autosave, tmp_path: Path
) -> None:
    told: list[str] = []
    autosave.failed.connect(told.append)
    autosave.keep()
    [kept] = kept_files(tmp_path)
    kept.unlink()
    kept.mkdir()
    autosave.let_go()
    assert len(told) == 1
