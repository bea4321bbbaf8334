"""One key leads from column to column, and back to where one was."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from app.window.main_window import MainWindow
from tests.app.window.conftest import editor_at


def focus(window: MainWindow) -> QWidget:
    found = window.focusWidget()
    assert found is not None
    return found


def test_f6_goes_round_the_columns_and_back_to_where_one_was(window: MainWindow) -> None:
    window.activateWindow()
    length = editor_at(window, "quilt.length")
    length.setFocus()
    QTest.keyClick(window, Qt.Key.Key_F6)
    assert focus(window) is window.centre.yardage
    QTest.keyClick(window, Qt.Key.Key_F6)
    assert window.answer.isAncestorOf(focus(window))
    QTest.keyClick(window, Qt.Key.Key_F6)
    assert focus(window) is length
    QTest.keyClick(window, Qt.Key.Key_F6, Qt.KeyboardModifier.ShiftModifier)
    assert window.answer.isAncestorOf(focus(window))


@pytest.mark.parametrize("place", range(7))
def test_a_page_that_is_asked_for_by_its_key_is_ready_for_the_keys(
    window: MainWindow, place: int
) -> None:
    editor_at(window, "quilt.length").setFocus()
    window.centre.show_page(place)
    page = window.centre.tabs.currentWidget()
    assert page is window.centre.tabs.widget(place)
    assert focus(window) is page or page.isAncestorOf(focus(window))


def test_from_the_tabs_one_goes_on_to_the_answer(window: MainWindow) -> None:
    window.centre.tabs.tabBar().setFocus()
    window.go_to_column(1)
    assert window.answer.isAncestorOf(focus(window))
