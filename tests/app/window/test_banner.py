"""The banner: a sentence above the pictures, which are to be seen as well."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.window.banner import MOST_LINES, Banner

SHORT, LONG = (
    "Write a length.",
    "The last plan that worked is shown until this one is mended. " * 12,
)


@pytest.fixture
def page(qtbot: QtBot) -> QWidget:
    made = QWidget()
    qtbot.addWidget(made)
    QVBoxLayout(made).addStretch(1)
    made.resize(400, 600)
    return made


@pytest.fixture
def banner(page: QWidget) -> Banner:
    made = Banner()
    column = page.layout()
    assert isinstance(column, QVBoxLayout)
    column.insertWidget(0, made)
    page.show()
    return made


def test_a_short_sentence_is_seen_whole_and_is_no_stop_for_the_keys(banner: Banner) -> None:
    banner.tell(SHORT)
    assert banner.page.height() >= banner.text.heightForWidth(banner.text.width())
    assert banner.page.focusPolicy() is Qt.FocusPolicy.NoFocus


def test_a_long_one_is_scrolled_and_leaves_the_pictures_room(banner: Banner, qtbot: QtBot) -> None:
    banner.tell(LONG)
    bar = banner.page.verticalScrollBar()
    qtbot.waitUntil(lambda: bar.maximum() > 0)
    assert banner.page.height() <= MOST_LINES * banner.fontMetrics().lineSpacing()
    reached = bar.maximum() + banner.page.viewport().height()
    assert reached >= banner.text.heightForWidth(banner.text.width())
    assert banner.page.focusPolicy() is Qt.FocusPolicy.StrongFocus
    assert banner.text.width() <= banner.page.viewport().width()
