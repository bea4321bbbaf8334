"""The views that compare: asked only in sight, and a value taken is one step to undo."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.window.main_window import MainWindow
from core import edit
from core.compare.columns import Comparison
from core.lengths import typeset
from tests.app.window.conftest import PlannerHere

SIDE, STAIRS, HAND = "Side by side", "Staircase", "In hand"


def show(window: MainWindow, tab: str) -> None:
    tabs = window.centre.tabs
    tabs.setCurrentIndex([tabs.tabText(place) for place in range(tabs.count())].index(tab))
    finish(window)


def finish(window: MainWindow) -> None:
    assert isinstance(window.comparer, PlannerHere)
    window.comparer.finish()


def ask_for(window: MainWindow, values: str) -> None:
    line = window.centre.side_by_side.bar.values_line
    line.setText(values)
    QTest.keyClick(line, Qt.Key.Key_Return)
    finish(window)


def comparison(window: MainWindow) -> Comparison:
    found = window.centre.side_by_side.values.comparison
    assert found is not None
    return found


def headers(window: MainWindow) -> list[str]:
    model = window.centre.side_by_side.values
    return [str(model.headerData(n, Qt.Orientation.Horizontal)) for n in range(model.columnCount())]


def test_nothing_is_asked_until_the_view_is_seen(window: MainWindow) -> None:
    assert not window.comparer.busy
    assert window.centre.side_by_side.values.comparison is None
    show(window, SIDE)
    assert len(comparison(window).columns) == 3


def test_values_typed_become_columns_and_the_present_one_is_marked(window: MainWindow) -> None:
    show(window, SIDE)
    ask_for(window, "2; 2 1/2; 9, x")
    assert headers(window) == ["2 in", typeset("2 1/2 in\n(now)"), "9 in", "x\n(cannot be)"]
    assert "not one clear length" in window.centre.side_by_side.notice.text()


def test_enter_takes_a_column_as_one_step_to_undo(window: MainWindow) -> None:
    before = window.document.project
    show(window, SIDE)
    view = window.centre.side_by_side
    view.table.setCurrentIndex(view.values.index(0, 0))
    assert view.take.isEnabled()
    QTest.keyClick(view.table, Qt.Key.Key_Return)
    after = edit.put(before, "binding.strip_width", "2")
    assert window.document.project == after
    assert window.document.undo_stack.undoText() == "Take strip width 2 in"
    window.document.undo_stack.undo()
    assert window.document.project == before
    window.document.undo_stack.redo()
    assert window.document.project == after


def test_the_present_column_and_one_that_cannot_be_are_not_to_take(window: MainWindow) -> None:
    show(window, SIDE)
    ask_for(window, "2 1/2; x; 2")
    view = window.centre.side_by_side
    enabled = []
    for place in range(3):
        view.table.setCurrentIndex(view.values.index(0, place))
        enabled.append(view.take.isEnabled())
    assert enabled == [False, False, True]


def test_the_bound_edges_are_shown_where_they_differ(window: MainWindow) -> None:
    show(window, SIDE)
    assert window.centre.side_by_side.edges.isVisible()
    box = window.centre.side_by_side.bar.choice_box
    box.setCurrentText("copies")
    box.activated.emit(box.currentIndex())
    finish(window)
    assert not window.centre.side_by_side.edges.isVisible()


def test_an_edit_elsewhere_is_followed(window: MainWindow) -> None:
    show(window, SIDE)
    window.document.put("binding.strip_width", "2 1/4", "Edit strip width")
    finish(window)
    assert [column.present for column in comparison(window).columns] == [False, True, False]


def test_one_value_alone_is_refused_in_words(window: MainWindow) -> None:
    show(window, SIDE)
    ask_for(window, "2")
    assert "at least two values" in window.centre.side_by_side.said.text()
    ask_for(window, "2; 3")
    assert window.centre.side_by_side.said.text() == ""


@pytest.mark.parametrize("name", ["border width", "usable width", "closing", "copies"])
def test_every_kind_of_choice_has_usual_values(window: MainWindow, name: str) -> None:
    show(window, SIDE)
    box = window.centre.side_by_side.bar.choice_box
    box.setCurrentText(name)
    box.activated.emit(box.currentIndex())
    finish(window)
    assert len(comparison(window).plans) >= 2


def test_a_step_is_chosen_in_list_and_picture_alike_and_taken(window: MainWindow) -> None:
    before = window.document.project
    show(window, STAIRS)
    view = window.centre.staircase
    assert view.stairs is not None
    view.canvas.picked.emit(str(len(view.stairs.steps)))
    assert view.list.chosen() == {str(len(view.stairs.steps))}
    QTest.keyClick(view.list, Qt.Key.Key_Return)
    assert window.document.project == edit.put(before, "binding.strip_width", "4")
    window.document.undo_stack.undo()
    assert window.document.project == before


def test_a_step_of_cloth_widths_is_read_but_not_taken(window: MainWindow) -> None:
    show(window, STAIRS)
    view = window.centre.staircase
    view.bar.choice_box.setCurrentText("usable width")
    view.bar.choice_box.activated.emit(1)
    finish(window)
    assert view.stairs is not None
    assert view.stairs.steps[-1].last == Fraction(45)
    view.list.choose("1")
    assert not view.take.isEnabled()


def test_what_is_in_hand_is_said_in_words(window: MainWindow) -> None:
    show(window, HAND)
    said = "\n".join(row.cells[0] for row in window.centre.in_hand.list.rows.rows)
    assert "no night sky on hand" in said
    assert "If the night sky is not what the bolt says" in said


def test_without_a_binding_the_view_says_what_to_do(window: MainWindow) -> None:
    window.document.edit("Remove binding", lambda project: edit.remove(project, "binding"))
    show(window, STAIRS)
    assert "add it first" in window.centre.staircase.said.text()


def test_a_reason_for_two_answers_is_read_once(window: MainWindow) -> None:
    show(window, HAND)
    model = window.centre.in_hand.list.model()
    said = [str(model.index(row, 0).data()) for row in range(model.rowCount())]
    assert all(one != other for one, other in pairwise(said))
    assert said[1].startswith("There is no night sky")
    assert said[1].endswith(".")


def test_a_long_name_of_cloth_leaves_the_values_their_room(
    window: MainWindow, planner: PlannerHere
) -> None:
    window.document.put("fabrics[0].name", "indigo from the market in the old town", "Rename")
    planner.finish()
    show(window, SIDE)
    model = window.centre.side_by_side.values
    names = [str(model.headerData(n, Qt.Orientation.Vertical)) for n in range(model.rowCount())]
    assert names[0].split("\n") == ["buy indigo from the", "market in the old town"]
