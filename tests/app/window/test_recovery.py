"""A fault of the program: a copy is kept, and the person is told once."""

from __future__ import annotations

import sys

import pytest
from PySide6.QtWidgets import QMessageBox

from app.window.autosave import recovery_folder
from app.window.document import Document
from app.window.recovery import FaultWatch
from core.project_file import load


@pytest.fixture
def told(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    said: list[str] = []

    def shown(box: QMessageBox) -> int:
        said.append(box.informativeText())
        return 0

    monkeypatch.setattr(QMessageBox, "exec", shown)
    return said


def raise_into(watch: FaultWatch, error: BaseException) -> None:
    try:
        raise error
    except BaseException:
        kind, caught, trace = sys.exc_info()
        assert kind is not None
        assert caught is not None
        watch.took(kind, caught, trace)


def test_a_copy_is_kept_and_told(
    document: Document, told: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    document.put("quilt.width", "50", "Change quilt width")
    raise_into(FaultWatch(document), RuntimeError("a slip"))
    [copy] = recovery_folder().glob("*.crossgrain")
    assert load(copy) == document.project
    assert str(copy) in told[0]
    assert "a slip" in told[0]
    assert "Traceback" in capsys.readouterr().err
    copy.unlink()


def test_where_no_copy_can_be_kept_that_is_told(
    document: Document, told: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(document: Document) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("app.window.recovery.keep_copy", full)
    raise_into(FaultWatch(document), RuntimeError("a slip"))
    assert "No space left" in told[0]


def test_stopping_the_program_is_no_fault(document: Document, told: list[str]) -> None:
    raise_into(FaultWatch(document), KeyboardInterrupt())
    assert told == []


def test_a_fault_while_one_is_told_opens_no_second_dialog(
    document: Document, monkeypatch: pytest.MonkeyPatch
) -> None:
    watch = FaultWatch(document)
    said: list[str] = []

    def again(box: QMessageBox) -> int:
        said.append(box.informativeText())
        raise_into(watch, RuntimeError("another slip"))
        return 0

    monkeypatch.setattr(QMessageBox, "exec", again)
    raise_into(watch, RuntimeError("a slip"))
    assert len(said) == 1
    for copy in recovery_folder().glob("*.crossgrain"):
        copy.unlink()
