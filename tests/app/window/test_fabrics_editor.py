"""Several fabrics to tick: all names are seen, whatever the room."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.window.fabrics_editor import FabricsEditor

NAMES = ["moss", "midnight indigo wax print", "dots on a pale ground", "night sky"]


@pytest.mark.parametrize("many", [4, 8, 9, 30])
def test_its_height_settles_at_any_width(qtbot: QtBot, many: int) -> None:
    page, editor = QWidget(), FabricsEditor()
    qtbot.addWidget(page)
    column = QVBoxLayout(page)
    column.addWidget(editor)
    column.addStretch(1)
    editor.offer_fabrics([f"{n + 1} {NAMES[n % 4]}" for n in range(many)])
    page.show()
    for width in [*range(150, 300, 3), *range(300, 150, -7)]:
        page.resize(width, 500)
        QApplication.processEvents()
        row = editor.visualItemRect(editor.item(min(many, 8) - 1))
        assert row.bottom() <= editor.viewport().height()
        assert row.right() <= editor.viewport().width()
