"""Starting from a common size, and changing the list of them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from PySide6.QtWidgets import QDialogButtonBox
from pytestqt.qtbot import QtBot

from app.window.main_window import MainWindow
from app.window.memory import Memory
from app.window.sizes import KEY, SizesDialog, remembered_sizes, usual_sizes
from core.lengths import Units
from core.sizes import QuiltSizes


@pytest.fixture
def taken() -> list[QuiltSizes]:
    return []


@pytest.fixture
def dialog(window: MainWindow, taken: list[QuiltSizes], qtbot: QtBot) -> SizesDialog:
    dialog = SizesDialog(usual_sizes(), Units.INCHES, taken.append, window)
    qtbot.addWidget(dialog)
    dialog.open()
    return dialog


def write(dialog: SizesDialog, row: int, *cells: str) -> None:
    for column, text in enumerate(cells):
        item = dialog.rows.item(row, column)
        assert item is not None
        item.setText(text)


def words(window: MainWindow) -> list[str]:
    return [action.text() for action in window.menus.sizes.actions() if action.text()]


def test_a_new_quilt_starts_at_a_common_size(window: MainWindow) -> None:
    assert "Lap, 50 × 60 in" in words(window)
    [queen] = [a for a in window.menus.sizes.actions() if a.text().startswith("Queen bed")]
    assert queen.toolTip()
    queen.trigger()
    quilt = window.document.project.quilt
    assert (str(quilt.width), str(quilt.length)) == ("86", "100")
    assert window.document.undo_stack.isClean()


def test_the_sizes_follow_the_units(window: MainWindow) -> None:
    window.menus.units[Units.CENTIMETRES].trigger()
    assert "Lap, 130 × 150 cm" in words(window)
    window.document.undo_stack.undo()
    assert "Lap, 50 × 60 in" in words(window)


def test_a_size_of_ones_own_is_remembered_and_listed(
    window: MainWindow, memory: Memory, qtbot: QtBot
) -> None:
    change = window.menus._change_sizes(Units.INCHES)
    change.open()
    change.add()
    row = change.rows.rowCount() - 1
    write(change, row, "Aunt Jo's wall", "41 1/4", "3 ft")
    change.accept()
    assert "Aunt Jo's wall, 41 1/4 × 36 in" in words(window)
    own = remembered_sizes(memory).inches[-1]
    assert (own.width, own.length, own.source) == (Fraction(165, 4), Fraction(36), "")
    assert remembered_sizes(memory).inches[:-1] == usual_sizes().inches, "sources are kept"


def test_a_row_that_cannot_be_read_is_pointed_at_and_nothing_is_taken(
    dialog: SizesDialog, taken: list[QuiltSizes]
) -> None:
    write(dialog, 2, "Baby", "wide", "45")
    buttons = dialog.findChild(QDialogButtonBox)
    assert buttons is not None
    buttons.button(QDialogButtonBox.StandardButton.Ok).click()
    assert taken == []
    assert dialog.isVisible()
    assert dialog.problem.text().startswith("Row 3, width:")
    assert (dialog.rows.currentRow(), dialog.rows.currentColumn()) == (2, 1)
    write(dialog, 2, "Baby", "36", "45")
    dialog.accept()
    assert len(taken) == 1


def test_rows_are_removed_and_the_usual_ones_come_back(
    dialog: SizesDialog, taken: list[QuiltSizes]
) -> None:
    dialog.rows.selectRow(0)
    dialog.remove()
    assert dialog.rows.rowCount() == len(usual_sizes().inches) - 1
    dialog.back()
    dialog.accept()
    assert taken == [usual_sizes()]


@pytest.mark.parametrize("text", ["{", "[]", '{"format": "crossgrain-sizes", "version": 2}'])
def test_a_remembered_table_that_cannot_be_read_counts_for_nothing(
    memory: Memory, text: str
) -> None:
    memory.keep(KEY, text)
    assert remembered_sizes(memory) == usual_sizes()
