"""Headings that fold: every word whole, whatever the room."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.window.fold_heading import FoldHeading

TITLE, SUMMARY = "midnight indigo wax print", "43 in wide"


@pytest.fixture
def heading(qtbot: QtBot) -> FoldHeading:
    made = FoldHeading()
    qtbot.addWidget(made)
    made.say(TITLE, SUMMARY, trouble=False)
    return made


def test_where_there_is_room_the_summary_stands_beside_the_title(heading: FoldHeading) -> None:
    title, summary = heading.boxes(600)
    assert title == summary
    assert heading.heightForWidth(600) < 2 * heading.fontMetrics().height() + 14


@pytest.mark.parametrize("width", [160, 200, 240])
def test_else_it_stands_below_and_both_are_whole(heading: FoldHeading, width: int) -> None:
    title, summary = heading.boxes(width)
    assert summary.top() > title.bottom()
    assert heading.heightForWidth(width) >= summary.bottom()
    metrics, wrapped = QFontMetrics(heading.font()), Qt.TextFlag.TextWordWrap
    for box, text in ((title, TITLE), (summary, SUMMARY)):
        needed = metrics.boundingRect(box, wrapped, text)
        assert box.contains(needed)
        assert box.right() <= width


def test_a_name_of_thousands_of_letters_ends_in_dots(heading: FoldHeading) -> None:
    heading.say("cloth " * 1000, SUMMARY, trouble=False)
    assert heading.heightForWidth(200) < 8 * heading.fontMetrics().height()


def test_an_open_heading_has_no_summary_to_make_room_for(heading: FoldHeading) -> None:
    folded = heading.heightForWidth(160)
    heading.setChecked(True)
    assert heading.heightForWidth(160) < folded


def test_a_column_gives_it_its_height(qtbot: QtBot) -> None:
    column, heading = QWidget(), FoldHeading()
    qtbot.addWidget(column)
    heading.say(TITLE, SUMMARY, trouble=False)
    below = QVBoxLayout(column)
    below.setContentsMargins(0, 0, 0, 0)
    below.addWidget(heading)
    below.addStretch(1)
    column.resize(180, 400)
    column.show()
    assert heading.height() == heading.heightForWidth(180)
