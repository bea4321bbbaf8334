"""The binding's start, drawn along the edge and moved with keys: do, undo, redo."""

from __future__ import annotations

from fractions import Fraction

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from app.window.edge.edge_view import EdgeView
from app.window.main_window import MainWindow
from core import edit
from core.drawing.edge_map import start_shown
from core.edge_start import start_words
from core.lengths import Inches, Units
from core.plan import Plan
from tests.app.window.conftest import PlannerHere

LEFT = Qt.MouseButton.LeftButton
SHIFT = Qt.KeyboardModifier.ShiftModifier
PHRASE = "Move binding start"


@pytest.fixture
def view(window: MainWindow) -> EdgeView:
    window.centre.tabs.setCurrentWidget(window.centre.edge_page)
    window.centre.edge.setFocus()
    return window.centre.edge


def plan_of(window: MainWindow) -> Plan:
    assert window.plan is not None
    return window.plan


def given(window: MainWindow) -> Inches | None:
    binding = window.document.project.binding
    assert binding is not None
    return binding.start_at


def place_of(window: MainWindow) -> Inches:
    sewn = plan_of(window).sewn
    assert sewn is not None
    return sewn.edge_map.closing.place


def pixel(view: EdgeView, x: float, y: float) -> QPoint:
    return view.mapFromScene(x, y)


def start(window: MainWindow, view: EdgeView) -> QPoint:
    return pixel(view, *start_shown(plan_of(window)))


def test_drawing_the_start_along_the_edge_is_one_step_to_undo(
    window: MainWindow, view: EdgeView, planner: PlannerHere
) -> None:
    before, at = place_of(window), start(window, view)
    words = window.centre.edge_page.words.text()
    QTest.mousePress(view.viewport(), LEFT, pos=at)
    QTest.mouseMove(view.viewport(), at + QPoint(0, 20))
    QTest.mouseMove(view.viewport(), at + QPoint(0, 60))
    live = window.centre.edge_page.words.text()
    assert live != words, "the distances follow while it is moved"
    assert window.document.undo_stack.count() == 0, "nothing is changed before it is let go"
    QTest.mouseRelease(view.viewport(), LEFT, pos=at + QPoint(0, 60))
    planner.finish()
    moved = place_of(window)
    assert given(window) == moved > before
    assert window.centre.edge_page.words.text() == live
    assert window.menus.undo.text() == f"Undo {PHRASE}"
    window.menus.undo.trigger()
    planner.finish()
    assert (given(window), place_of(window)) == (None, before)
    assert window.centre.edge_page.words.text() == words
    window.menus.redo.trigger()
    planner.finish()
    assert place_of(window) == moved


def test_esc_leaves_the_start_where_it_was(window: MainWindow, view: EdgeView) -> None:
    words, at = view.words(), start(window, view)
    QTest.mousePress(view.viewport(), LEFT, pos=at)
    QTest.mouseMove(view.viewport(), at + QPoint(0, 60))
    assert view.words() != words
    QTest.keyClick(view, Qt.Key.Key_Escape)
    assert view.words() == words
    QTest.mouseRelease(view.viewport(), LEFT, pos=at + QPoint(0, 60))
    assert given(window) is None


def test_a_plan_that_comes_while_the_start_is_held_is_shown_afterwards(
    window: MainWindow, view: EdgeView, planner: PlannerHere
) -> None:
    at = start(window, view)
    QTest.mousePress(view.viewport(), LEFT, pos=at)
    QTest.mouseMove(view.viewport(), at + QPoint(0, 60))
    held = view.words()
    window.document.put("quilt.width", "30 in", "Width")
    planner.finish()
    assert view.words() == held
    QTest.keyClick(view, Qt.Key.Key_Escape)
    assert view.words() == start_words_of(window)


def start_words_of(window: MainWindow) -> str:
    plan = plan_of(window)
    assert plan.sewn is not None
    return start_words(plan.sewn, plan.sizes.outline, plan.project.units)


def test_a_click_on_the_start_changes_nothing(window: MainWindow, view: EdgeView) -> None:
    QTest.mouseClick(view.viewport(), LEFT, pos=start(window, view))
    assert window.document.undo_stack.count() == 0


def test_a_press_elsewhere_picks_a_strip_as_before(window: MainWindow, view: EdgeView) -> None:
    picked: list[str] = []
    view.picked.connect(picked.append)
    QTest.mouseClick(view.viewport(), LEFT, pos=start(window, view) + QPoint(0, 80))
    assert len(picked) == 1
    assert picked[0].startswith("G")
    assert given(window) is None


def test_shift_with_the_arrow_keys_moves_it_and_undo_takes_it_back(
    window: MainWindow, view: EdgeView, planner: PlannerHere
) -> None:
    before = place_of(window)
    for _ in range(3):
        QTest.keyClick(view, Qt.Key.Key_Right, SHIFT)
    planner.finish()
    assert place_of(window) == before // 1 + 3
    QTest.keyClick(view, Qt.Key.Key_Up, SHIFT)
    planner.finish()
    assert place_of(window) == before // 1 + 3 + Fraction(1, 4)
    QTest.keyClick(view, Qt.Key.Key_Down, SHIFT)
    QTest.keyClick(view, Qt.Key.Key_Left, SHIFT)
    planner.finish()
    assert place_of(window) == before // 1 + 2
    while window.document.undo_stack.canUndo():
        window.menus.undo.trigger()
    planner.finish()
    assert place_of(window) == before


def test_keys_pressed_in_one_go_are_one_step(window: MainWindow, view: EdgeView) -> None:
    for _ in range(5):
        QTest.keyClick(view, Qt.Key.Key_Left, SHIFT)
    assert window.document.undo_stack.count() == 1


def test_back_from_the_upper_left_corner_goes_on_round_the_edge(
    window: MainWindow, view: EdgeView, planner: PlannerHere
) -> None:
    window.document.put("binding.start_at", "1/2 in", "Start")
    planner.finish()
    QTest.keyClick(view, Qt.Key.Key_Left, SHIFT)
    QTest.keyClick(view, Qt.Key.Key_Left, SHIFT)
    planner.finish()
    assert place_of(window) == plan_of(window).sizes.outline.ring - 1


@pytest.mark.parametrize("by_button", [False, True])
def test_the_best_start_is_one_key_away(
    window: MainWindow, view: EdgeView, planner: PlannerHere, by_button: bool
) -> None:
    best = place_of(window)
    QTest.keyClick(view, Qt.Key.Key_Right, SHIFT)
    planner.finish()
    assert place_of(window) != best
    if by_button:
        QTest.mouseClick(window.centre.edge_page.best, LEFT)
    else:
        QTest.keyClick(view, Qt.Key.Key_B)
    planner.finish()
    assert (given(window), place_of(window)) == (None, best)
    window.menus.undo.trigger()
    planner.finish()
    assert place_of(window) != best


def test_a_start_too_near_a_corner_is_said_in_words(
    window: MainWindow, view: EdgeView, planner: PlannerHere
) -> None:
    window.document.put("binding.start_at", "1 in", "Start")
    planner.finish()
    said = window.centre.edge_page.words.text()
    assert "Nearest to a corner is the closing: 1 in, where 2¹⁄₂ in were wished." in said
    assert any(notice.path == "binding.start_at" for notice in plan_of(window).warnings)


def test_a_metric_start_is_written_in_whole_marks(
    window: MainWindow, view: EdgeView, planner: PlannerHere
) -> None:
    window.set_units(Units.CENTIMETRES)
    planner.finish()
    QTest.keyClick(view, Qt.Key.Key_Right, SHIFT)
    assert int(window.document.form["binding"]["start_at"]) % 2 == 0


def test_without_a_binding_there_is_nothing_to_move(
    window: MainWindow, view: EdgeView, planner: PlannerHere
) -> None:
    window.document.edit("Remove", lambda project: edit.remove(project, "binding"))
    planner.finish()
    QTest.keyClick(view, Qt.Key.Key_Right, SHIFT)
    QTest.keyClick(view, Qt.Key.Key_B)
    QTest.mouseClick(view.viewport(), LEFT, pos=QPoint(40, 40))
    assert not window.centre.edge_page.best.isEnabled()
    assert window.document.undo_stack.count() == 1


def test_a_binding_that_is_gone_is_not_started_anew(window: MainWindow, view: EdgeView) -> None:
    window.document.edit("Remove binding", lambda project: edit.remove(project, "binding"))
    before = window.document.project
    QTest.keyClick(view, Qt.Key.Key_B)
    QTest.keyClick(view, Qt.Key.Key_Right, SHIFT)
    assert window.document.project == before
