"""The right side: warnings that are seen, and words that are explained where they are read."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtWidgets import QTabWidget

from app.window.main_window import MainWindow


def test_warnings_stand_in_a_frame_that_goes_with_them(window: MainWindow) -> None:
    assert window.plan is not None
    assert window.plan.warnings
    warned = window.answer.warned
    assert warned.isVisible()
    assert warned.isAncestorOf(window.answer.notes)
    window.answer.show_plan(replace(window.plan, warnings=()))
    assert not warned.isVisible()


def test_the_near_edge_is_explained_above_the_cut_order(window: MainWindow) -> None:
    tabs: QTabWidget = window.answer.tabs
    [order] = [i for i in range(tabs.count()) if tabs.tabText(i) == "Cut order"]
    tabs.setCurrentIndex(order)
    note = window.answer.near_edge
    assert "near edge" in note.text()
    assert note.isVisible()
    assert note.geometry().bottom() <= window.answer.order.geometry().top()
