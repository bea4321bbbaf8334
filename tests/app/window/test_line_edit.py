"""A line of text: what of it is seen."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.window.line_edit import LineEdit

LONG = "Konstanze and the lighthouse keeper, the second of three"


def test_a_long_text_is_seen_from_its_beginning(qtbot: QtBot) -> None:
    page, line, other = QWidget(), LineEdit(), QLineEdit()
    qtbot.addWidget(page)
    column = QVBoxLayout(page)
    column.addWidget(line)
    column.addWidget(other)
    line.setText(LONG)
    assert line.cursorPosition() == 0
    page.show()
    page.activateWindow()
    line.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(line.hasFocus)
    QTest.keyClick(line, Qt.Key.Key_End)
    QTest.keyClicks(line, "!")
    assert line.cursorPosition() == len(LONG) + 1
    other.setFocus(Qt.FocusReason.TabFocusReason)
    assert line.cursorPosition() == 0
    assert line.text() == LONG + "!"
