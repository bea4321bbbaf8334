"""Tables to read: shown, chosen, copied."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from app.window.read_table import ReadTable, Row
from app.window.table_widths import NO_BREAK

ROWS = [
    Row(("A", "border"), "A"),
    Row(("night sky",), heading=True),
    Row(("B", "a binding that takes many more words than one line holds"), "B"),
]


@pytest.fixture
def table(qtbot: QtBot) -> ReadTable:
    made = ReadTable("What to cut", ("", "Part"), 1, whole=True)
    qtbot.addWidget(made)
    made.resize(240, 300)
    made.show()
    made.show_rows(ROWS)
    return made


def test_chosen_rows_are_told_by_key(table: ReadTable) -> None:
    table.choose("B")
    assert table.chosen() == {"B"}
    table.choose("nothing of that name")
    assert table.chosen() == frozenset()
    table.selectRow(1)
    assert table.chosen() == frozenset()


def test_one_row_is_chosen_alone_though_a_key_is_held_down(table: ReadTable) -> None:
    table.choose("A")
    QTest.keyPress(table, Qt.Key.Key_F9, Qt.KeyboardModifier.ShiftModifier)
    table.choose("B")
    QTest.keyRelease(table, Qt.Key.Key_F9)
    assert table.chosen() == {"B"}


def test_chosen_rows_are_copied_as_text(table: ReadTable, qtbot: QtBot) -> None:
    table.selectAll()
    QTest.keyClick(table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    copied = QGuiApplication.clipboard().text()
    assert copied.splitlines() == ["A\tborder", "night sky", "\t".join(ROWS[2].cells)]


def test_long_words_wrap_and_a_whole_table_grows_with_them(table: ReadTable, qtbot: QtBot) -> None:
    assert table.rowHeight(2) > table.rowHeight(0)
    rows = sum(table.rowHeight(i) for i in range(3))
    assert table.height() >= rows + table.horizontalHeader().height()
    wide = table.height()
    table.resize(900, table.height())
    qtbot.waitUntil(lambda: table.height() < wide, timeout=1000)


def test_a_heading_runs_over_the_whole_width(table: ReadTable) -> None:
    assert table.columnSpan(1, 0) == 2
    table.show_rows(ROWS[:1])
    assert table.columnSpan(0, 0) == 1


def test_a_long_word_leaves_room_for_the_other_columns(qtbot: QtBot) -> None:
    made = ReadTable("What to buy", ("Cloth", "Buy", "Cost"), 1, whole=True)
    qtbot.addWidget(made)
    made.resize(400, 300)
    made.show()
    made.show_rows([Row(("W" * 80, "2 1/4 yd", "23.44"))])
    last = made.columnViewportPosition(2) + made.columnWidth(2)
    assert last <= made.viewport().width()
    assert made.columnWidth(1) > made.fontMetrics().horizontalAdvance("2 1/4 yd")


def test_long_names_wrap_before_their_values_are_out_of_sight(qtbot: QtBot) -> None:
    made = ReadTable("Figures", ("", ""), 1, whole=False, letters=36)
    qtbot.addWidget(made)
    made.resize(260, 300)
    made.show()
    made.show_rows([Row(("Binding: the narrowest usable width", "nachweislich klein"))])
    qtbot.waitUntil(lambda: made.horizontalHeader().length() <= made.viewport().width())
    assert made.columnWidth(1) >= made.fontMetrics().horizontalAdvance("nachweislich")


def test_a_cell_teaches_the_words_of_the_trade_that_are_in_it(table: ReadTable) -> None:
    table.show_rows([Row(("Binding: reach", "3/8 in"))])
    tips = [table.rows.index(0, i).data(Qt.ItemDataRole.ToolTipRole) for i in range(2)]
    assert tips[0].startswith("<p>reach: ")
    assert tips[1] is None


def test_a_number_keeps_its_unit_on_its_line_and_is_copied_as_it_is(table: ReadTable) -> None:
    table.show_rows([Row(("A", "1½ in wide"), "A")])
    shown = table.itemDelegate().displayText("1½ in wide", table.locale())  # type: ignore[attr-defined]
    assert shown == f"1½{NO_BREAK}in wide"
    table.selectAll()
    table.copy()
    assert QGuiApplication.clipboard().text() == "A\t1½ in wide"
