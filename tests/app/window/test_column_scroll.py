"""Columns that scroll: nothing hidden at the sides, the cursor in sight."""

from __future__ import annotations

from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QLabel, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.window.column_scroll import ColumnScroll
from app.window.main_window import MainWindow


def test_the_column_is_never_narrower_than_its_words(qtbot: QtBot) -> None:
    inside = QWidget()
    label = QLabel("Width of fabric")
    QVBoxLayout(inside).addWidget(label)
    column = ColumnScroll(inside)
    qtbot.addWidget(column)
    column.show()
    label.setFont(QFont(label.font().family(), 40))
    qtbot.waitUntil(lambda: column.minimumWidth() > label.sizeHint().width())


def test_the_cursor_of_an_added_part_is_in_sight(window: MainWindow, qtbot: QtBot) -> None:
    window.resize(1100, 500)
    for part in ("fabrics", "borders"):
        window.parts.add(part)
    field = QApplication.focusWidget() or window.focusWidget()
    assert field is not None

    def in_sight() -> bool:
        place = field.mapTo(window.parts, field.rect().bottomLeft())
        return 0 <= place.y() <= window.parts.height()

    qtbot.waitUntil(in_sight)
