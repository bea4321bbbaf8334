"""Qt's own words: heard where they are expected, and handed on wherever they are not."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QMessageLogContext, QtMsgType, qInstallMessageHandler, qWarning
from PySide6.QtWidgets import QApplication

from app.qt_said import heard


@pytest.fixture
def handed_on(qapp: QApplication) -> Iterator[list[str]]:
    """What reaches whoever listened before."""
    said: list[str] = []

    def hear(kind: QtMsgType, context: QMessageLogContext, message: str) -> None:
        said.append(message)

    before = qInstallMessageHandler(hear)
    yield said
    qInstallMessageHandler(before)


def test_only_what_is_expected_is_kept_from_others(handed_on: list[str]) -> None:
    with heard("expected", "also") as words:
        qWarning("something else")
        qWarning("expected this")
        qWarning("also that")
    qWarning("expected, but afterwards")
    assert words == ["expected this", "also that"]
    assert handed_on == ["something else", "expected, but afterwards"]


def test_others_listen_again_after_a_failure(handed_on: list[str]) -> None:
    with pytest.raises(ZeroDivisionError), heard("expected"):
        raise ZeroDivisionError
    qWarning("expected")
    assert handed_on == ["expected"]
