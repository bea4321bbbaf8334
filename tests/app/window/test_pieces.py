"""Pieces by list and by arrow key: one choice, wherever it is made, is seen everywhere."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QItemSelectionModel, QPointF, QRectF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QTabWidget

from app.window.canvas import Canvas
from app.window.main_window import MainWindow
from app.window.piece_walk import walked
from core import edit
from tests.app.window.conftest import PlannerHere

LEFT, RIGHT, UP, DOWN = Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down


@pytest.fixture
def listed(window: MainWindow) -> MainWindow:
    """With the list of pieces in front."""
    tabs: QTabWidget = window.answer.tabs
    [pieces] = [i for i in range(tabs.count()) if tabs.tabText(i) == "Pieces"]
    tabs.setCurrentIndex(pieces)
    return window


def ringed(canvas: Canvas) -> frozenset[str]:
    return canvas._items[0].chosen


def labels(window: MainWindow) -> list[str]:
    assert window.plan is not None
    plan = window.plan
    return [plan.label(p) for cloth in plan.fabrics for p in cloth.lay.placements]


def test_every_piece_and_segment_is_in_the_list(listed: MainWindow) -> None:
    rows = listed.answer.pieces.rows.rows
    assert sorted(row.key for row in rows if not row.heading) == sorted(labels(listed))
    assert [row.cells[0] for row in rows if row.heading][:2] == [
        "night sky, from the bolt",
        "lamp gold, on hand 42¹⁄₂ × 9 in",
    ]
    assert all(len(row.cells) == 5 and all(row.cells) for row in rows if not row.heading)


def test_a_piece_chosen_in_the_list_is_ringed_and_its_part_marked(listed: MainWindow) -> None:
    table = listed.answer.pieces
    label = next(row.key for row in table.rows.rows if row.key[-1:].isdigit())
    table.choose(label)
    letter = label.rstrip("0123456789")
    assert ringed(listed.centre.yardage) == {label, letter}
    assert listed.answer.cut.chosen() == {letter}


def test_a_part_chosen_marks_all_its_pieces_in_the_list(listed: MainWindow) -> None:
    assert listed.plan is not None
    letter = next(part.letter for part in listed.plan.parts if part.count > 1)
    listed.answer.cut.choose(letter)
    chosen = listed.answer.pieces.chosen()
    assert chosen == {label for label in labels(listed) if label.rstrip("0123456789") == letter}
    assert len(chosen) > 1
    assert chosen <= ringed(listed.centre.yardage)


def test_several_pieces_can_be_chosen_at_once(listed: MainWindow) -> None:
    table = listed.answer.pieces
    table.selectRow(1)
    flags = QItemSelectionModel.SelectionFlag
    table.selectionModel().select(table.rows.index(3, 0), flags.Select | flags.Rows)
    keys = {table.rows.rows[row].key for row in (1, 3)}
    assert table.chosen() == keys
    assert keys <= ringed(listed.centre.yardage)


def test_the_choice_outlasts_a_new_plan_as_far_as_its_pieces_do(
    listed: MainWindow, planner: PlannerHere
) -> None:
    listed.answer.cut.choose("E")
    listed.document.put("quilt.width", "50", "Change width")
    planner.finish()
    assert listed.answer.pieces.chosen()
    assert listed.answer.cut.chosen() == {"E"}
    listed.document.edit("Remove binding", lambda project: edit.remove(project, "binding"))
    listed.document.edit("Remove backing", lambda project: edit.remove(project, "backing"))
    listed.document.edit("Remove sleeve", lambda project: edit.remove(project, "sleeve"))
    planner.finish()
    assert listed.answer.pieces.chosen() <= set(labels(listed))


def test_arrow_keys_walk_from_piece_to_piece(listed: MainWindow) -> None:
    canvas = listed.centre.yardage
    QTest.keyClick(canvas, Qt.Key.Key_Home)
    first = listed.answer.pieces.chosen()
    assert len(first) == 1
    QTest.keyClick(canvas, DOWN)
    second = listed.answer.pieces.chosen()
    assert len(second) == 1
    assert second != first
    assert second < ringed(canvas)
    QTest.keyClick(canvas, Qt.Key.Key_Escape)
    assert listed.answer.pieces.chosen() == frozenset()
    assert ringed(canvas) == frozenset()


def test_the_piece_that_is_walked_to_comes_into_sight(window: MainWindow) -> None:
    canvas = window.centre.yardage
    for _ in range(6):
        canvas.zoom_in()
    for key in (Qt.Key.Key_End, Qt.Key.Key_Home, Qt.Key.Key_End):
        QTest.keyClick(canvas, key)
        place = canvas._places()[canvas._here]
        seen = canvas.mapToScene(canvas.viewport().rect()).boundingRect()
        assert seen.intersects(place)


PLACES = {
    "A": QRectF(0, 0, 10, 10),
    "B": QRectF(12, 0, 10, 10),
    "C": QRectF(12, 12, 10, 10),
    "D": QRectF(60, 1, 10, 10),
    "W": QRectF(0, 30, 200, 10),
}


@pytest.mark.parametrize(
    ("here", "key", "there"),
    [
        ("A", RIGHT, "B"),
        ("B", RIGHT, "D"),
        ("B", DOWN, "C"),
        ("C", UP, "B"),
        ("W", UP, "C"),
        ("C", DOWN, "W"),
        ("D", LEFT, "B"),
        ("A", LEFT, "A"),
        ("", UP, "A"),
        ("gone", UP, "A"),
        ("C", Qt.Key.Key_Home, "A"),
        ("A", Qt.Key.Key_End, "W"),
        ("A", Qt.Key.Key_Q, None),
    ],
)
def test_a_key_leads_to_the_nearest_piece_that_way(here: str, key: int, there: str | None) -> None:
    assert walked(PLACES, here, key) == there


@pytest.mark.parametrize("key", [LEFT, Qt.Key.Key_Home, Qt.Key.Key_End])
def test_without_pieces_a_key_leads_nowhere(key: int) -> None:
    assert walked({}, "", key) == ""


def test_a_piece_clicked_is_the_one_that_arrows_go_on_from(listed: MainWindow) -> None:
    canvas = listed.centre.yardage
    key, place = next(iter(canvas._places().items()))
    canvas.centerOn(place.center())
    at = canvas.mapFromScene(QPointF(place.center()))
    QTest.mouseClick(canvas.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert listed.answer.pieces.chosen() == {key}
    QTest.keyClick(canvas, RIGHT)
    assert canvas._here in labels(listed)
