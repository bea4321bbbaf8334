"""Tab goes through the parts as they are read, whenever they were made."""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.window.main_window import MainWindow
from core import edit
from tests.app.window.conftest import editor_at


def stops(window: MainWindow) -> list[QWidget]:
    """Where Tab stops within the parts, in its order."""
    start: QWidget = window.parts.quilt.heading
    found, widget = [start], start.nextInFocusChain()
    while widget is not None and widget is not start:
        tab = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        if tab and widget.isVisibleTo(window) and widget.focusProxy() is None:
            found.append(widget)
        widget = widget.nextInFocusChain()
    return [stop for stop in found if window.parts.isAncestorOf(stop)]


def test_tab_stops_come_from_top_to_bottom_even_for_parts_opened_late(
    window: MainWindow, qtbot: QtBot
) -> None:
    for path in ("sleeve.depth", "borders[1].width", "fabrics[1].on_hand[0].across"):
        window.parts.show_field(path)
    qtbot.wait(50)
    inside = window.parts.widget()
    assert inside is not None
    heights = [stop.mapTo(inside, QPoint(0, stop.height() // 2)).y() for stop in stops(window)]
    assert len(heights) > 40
    # Widgets of one row may differ by a few pixels in the middle.
    assert all(then > first - 6 for first, then in pairwise(heights))


def test_a_part_that_goes_leaves_the_focus_near(window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitActive(window):
        window.activateWindow()
    window.parts.borders.add.click()
    assert window.focusWidget() is editor_at(window, "borders[2].fabric")
    window.document.undo_stack.undo()
    assert window.focusWidget() is window.parts.borders.add
    window.parts.show_field("sleeve.depth")
    window.document.edit("Remove hanging sleeve", lambda p: edit.remove(p, "sleeve"))
    assert window.focusWidget() is window.parts.add_part
