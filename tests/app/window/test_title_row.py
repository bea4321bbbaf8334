"""A group's title and its button, beside or below each other."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QToolButton, QWidget
from pytestqt.qtbot import QtBot

from app.window.title_row import SPACE, TitleRow


@pytest.fixture
def made(qtbot: QtBot) -> Iterator[TitleRow]:
    button = QToolButton()
    button.setText("+ Piece on hand")
    row = TitleRow("Pieces on hand", button)
    with qtbot.waitExposed(page := QWidget()):
        row.setParent(page)
        page.show()
    yield row
    page.close()


def test_the_button_stands_below_only_where_both_have_no_room(made: TitleRow) -> None:
    both = made.title.minimumSizeHint().width() + SPACE + made.button.sizeHint().width()
    for width, beside in ((both + 50, True), (both - 10, False), (both + 50, True)):
        made.resize(width, 100)
        layout = made.layout()
        assert layout is not None
        layout.activate()
        assert (made.button.x() > made.title.x()) is beside
        assert made.button.geometry().right() <= width
        assert not made.button.geometry().intersects(made.title.geometry())


def test_it_needs_no_more_room_than_the_wider_of_both(made: TitleRow) -> None:
    assert made.minimumSizeHint().width() == made.button.minimumSizeHint().width()
