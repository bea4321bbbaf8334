"""What holds for every test: no screen, no dialog that waits, no settings of the person's own."""

from __future__ import annotations

import os
from collections.abc import Iterator
from gettext import NullTranslations
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

from core.language import speak
from tests.stand_in import StandIn

# Qt draws into memory, on a desktop too: the same pixels everywhere, and no windows that pop up.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# English, whatever the language of the desk.
os.environ.pop("LC_ALL", None)
os.environ["LC_MESSAGES"] = "C"
os.environ.pop("LANGUAGE", None)

# `--hypothesis-profile=deep` looks further, and elsewhere each time.
settings.register_profile("ci", deadline=None, derandomize=True, print_blob=True)
settings.register_profile("deep", deadline=None, max_examples=2000)
settings.load_profile("ci")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--kills", type=int, default=8, help="how often tests kill a program")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark as `gui` each test that uses a Qt application: `-m "not gui"` is the quick half."""
    for item in items:
        if "qapp" in getattr(item, "fixturenames", ()):
            item.add_marker("gui")


@pytest.fixture(autouse=True)
def a_desk_of_its_own(
    request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> Iterator[None]:
    """Give a GUI test its own home, and fail it for a dialog that would wait for a person."""
    if "gui" not in request.keywords:
        yield
        return
    from PySide6.QtCore import QSettings, QStandardPaths

    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    QStandardPaths.setTestModeEnabled(True)
    for kind in (QSettings.Format.NativeFormat, QSettings.Format.IniFormat):
        QSettings.setPath(kind, QSettings.Scope.UserScope, str(tmp_path / "settings"))
    _refuse_to_wait(monkeypatch)
    yield
    _leave_nothing_open()


@pytest.fixture
def stand_in() -> Iterator[None]:
    """Tell every text in the stand-in language, and English again afterwards."""
    speak(StandIn())
    yield
    speak(NullTranslations())


def _refuse_to_wait(monkeypatch: pytest.MonkeyPatch) -> None:
    """Make every dialog of Qt that waits for an answer fail the test instead.

    A test that wants an answer given replaces the one method it means. (QMenu.exec is not
    among them, since PySide keeps it from being replaced: menus are shown with popup.)
    """
    from PySide6.QtWidgets import (
        QColorDialog,
        QDialog,
        QFileDialog,
        QFontDialog,
        QInputDialog,
        QMessageBox,
    )

    files = ("getOpenFileName", "getOpenFileNames", "getSaveFileName", "getExistingDirectory")
    waiting: dict[type, tuple[str, ...]] = {
        QDialog: ("exec",),  # and so every dialog's
        QMessageBox: ("about", "aboutQt", "critical", "information", "question", "warning"),
        QFileDialog: files,
        QInputDialog: ("getText", "getInt", "getDouble", "getItem", "getMultiLineText"),
        QColorDialog: ("getColor",),
        QFontDialog: ("getFont",),
    }
    for kind, names in waiting.items():
        for name in names:
            monkeypatch.setattr(kind, name, _waiter(f"{kind.__name__}.{name}"))


def _waiter(name: str) -> Any:  # noqa: ANN401 - stands in for methods of many shapes
    def wait(*arguments: object, **named: object) -> None:
        words = [repr(word) for word in (*arguments, *named.values()) if isinstance(word, str)]
        pytest.fail(f"{name} would wait for a person: {', '.join(words) or 'no text'}")

    return wait


def _leave_nothing_open() -> None:
    """Fail for a modal dialog that is still open, and delete what was to be deleted later."""
    from PySide6.QtCore import QCoreApplication, QEvent
    from PySide6.QtWidgets import QApplication

    open_ones = []
    while (dialog := QApplication.activeModalWidget()) is not None:
        open_ones.append(dialog.windowTitle() or type(dialog).__name__)
        dialog.hide()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    if open_ones:
        pytest.fail(f"the test left modal dialogs open: {', '.join(open_ones)}")
