"""The nets of conftest.py catch what they are there for."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, QStandardPaths
from PySide6.QtWidgets import QApplication, QDialog, QMessageBox, QWidget
from pytestqt.qtbot import QtBot


@pytest.mark.parametrize(
    "wait",
    [
        lambda: QMessageBox.question(QWidget(), "Save?", "Save the changes?"),
        lambda: QMessageBox(QMessageBox.Icon.Warning, "Oh", "Well").exec(),
        lambda: QDialog().exec(),
    ],
    ids=["a question", "a message box", "a dialog"],
)
def test_what_would_wait_for_a_person_fails_at_once(qtbot: QtBot, wait: object) -> None:
    assert callable(wait)
    with pytest.raises(pytest.fail.Exception, match="would wait for a person"):
        wait()


def test_a_test_with_the_application_is_marked_gui(
    request: pytest.FixtureRequest, qapp: QApplication
) -> None:
    assert "gui" in request.keywords


def test_a_test_without_the_application_is_not(request: pytest.FixtureRequest) -> None:
    assert "gui" not in request.keywords


def test_settings_and_folders_are_the_tests_own(qtbot: QtBot, tmp_path: Path) -> None:
    here = str(tmp_path)
    assert QSettings("Crossgrain", "Crossgrain").fileName().startswith(here)
    data = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppLocalDataLocation)
    assert data.startswith(here)


def test_qt_draws_into_memory_unless_told_otherwise(qapp: QApplication) -> None:
    assert qapp.platformName() == os.environ["QT_QPA_PLATFORM"].partition(":")[0]
