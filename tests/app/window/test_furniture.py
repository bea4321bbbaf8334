"""Sentences under fields; rows that become columns."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFormLayout, QLabel, QPushButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.window.furniture import RowOrColumn, Sentence

LONG = "this is not one clear length; write it like 50 1/2, 2.5 or 128 cm"


@pytest.fixture
def sentence(qtbot: QtBot) -> Iterator[Sentence]:
    """In a form that is narrower than a long one."""
    outer = QWidget()
    qtbot.addWidget(outer)
    sentence = Sentence("problem")
    QFormLayout(outer).addRow("Finished width", sentence)
    outer.resize(260, 300)
    outer.show()
    yield sentence
    outer.close()


def test_a_long_sentence_is_not_cut_off(sentence: Sentence, qtbot: QtBot) -> None:
    sentence.say(LONG)
    line = sentence.fontMetrics().lineSpacing()
    qtbot.waitUntil(lambda: sentence.height() >= 3 * line - 2)
    shown = sentence.fontMetrics().boundingRect(
        0, 0, sentence.width(), 999, Qt.TextFlag.TextWordWrap, LONG
    )
    assert shown.height() <= sentence.height()


def test_a_shorter_sentence_gives_the_room_back(sentence: Sentence, qtbot: QtBot) -> None:
    sentence.say(LONG)
    qtbot.waitUntil(lambda: sentence.height() > 2 * sentence.fontMetrics().lineSpacing())
    sentence.say("too wide")
    qtbot.waitUntil(lambda: sentence.height() < 2 * sentence.fontMetrics().lineSpacing())


def test_no_sentence_takes_no_room(sentence: Sentence) -> None:
    sentence.say(LONG)
    sentence.say("")
    assert sentence.isHidden()
    assert sentence.minimumHeight() == 0


def test_larger_letters_are_not_cut_off(sentence: Sentence) -> None:
    sentence.say(LONG)
    font = sentence.font()
    font.setPointSizeF(2 * font.pointSizeF())
    sentence.setFont(font)
    assert sentence.minimumHeight() >= sentence.heightForWidth(sentence.width())


def test_a_row_that_lacks_room_is_a_column(qtbot: QtBot) -> None:
    outer, row = QWidget(), RowOrColumn(40)
    qtbot.addWidget(outer)
    QVBoxLayout(outer).addWidget(row)
    one, other = QPushButton("one" * 8), QPushButton("other" * 8)
    row.box.addWidget(one)
    row.box.addWidget(other)
    outer.resize(80 * row.fontMetrics().averageCharWidth(), 100)
    outer.show()
    assert one.y() == other.y()
    outer.resize(outer.minimumSizeHint().width(), 100)
    assert outer.width() < one.sizeHint().width() + other.sizeHint().width()
    qtbot.waitUntil(lambda: one.y() < other.y())


def test_a_number_keeps_its_fraction_on_its_line(sentence: Sentence) -> None:
    sentence.say(LONG)
    assert sentence.text() == LONG
    assert "50\N{NO-BREAK SPACE}1/2" in QLabel.text(sentence)
