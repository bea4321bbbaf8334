"""The binding's fields: a chosen way shows its own, and the two widths give way to each other."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox

from app.window.fabrics_editor import FabricsEditor
from app.window.field import Field
from app.window.fields_binding import BINDING
from app.window.main_window import MainWindow
from core.binding_choices import Order
from tests.app.window.conftest import editor_at

TypeIn = Callable[[str, str], None]
FIELDS = {field.key: field for field in BINDING.fields}


def pick(window: MainWindow, path: str, value: str | None) -> None:
    editor = editor_at(window, path)
    assert isinstance(editor, QComboBox)
    place = editor.findData(value)
    editor.setCurrentIndex(place)
    editor.activated.emit(place)


def hidden(window: MainWindow, key: str) -> bool:
    row = window.parts.row_at(f"binding.{key}")
    assert row is not None
    return row.isHidden()


@pytest.mark.parametrize(
    "field", [field for field in BINDING.fields if field.only_if], ids=lambda field: field.key
)
def test_a_field_is_there_when_the_choice_that_it_belongs_to_is_made(
    window: MainWindow, field: Field
) -> None:
    key, *values = field.only_if
    for value, _ in FIELDS[key].choices:
        if key == "scrappy.order" and value != "none":
            for place in (0, 1):
                tick(window, place)
        pick(window, f"binding.{key}", value)
        assert hidden(window, field.key) == (value not in values), value


def test_writing_one_width_clears_the_other_and_undo_brings_it_back(
    window: MainWindow, type_in: TypeIn
) -> None:
    before = window.document.project
    type_in("binding.finished_width", "3/8")
    assert before.binding is not None
    binding = window.document.project.binding
    assert binding is not None
    assert binding.strip_width is None
    type_in("binding.strip_width", "2 1/4")
    binding = window.document.project.binding
    assert binding is not None
    assert binding.finished_width is None
    window.document.undo_stack.undo()
    window.document.undo_stack.undo()
    assert window.document.project == before


def tick(window: MainWindow, place: int) -> None:
    editor = editor_at(window, "binding.scrappy.cloths")
    assert isinstance(editor, FabricsEditor)
    editor.item(place).setCheckState(Qt.CheckState.Checked)


def test_fabrics_are_taken_in_the_order_in_which_they_are_ticked(window: MainWindow) -> None:
    names = [fabric.name for fabric in window.document.project.fabrics]
    tick(window, 2)
    tick(window, 0)
    binding = window.document.project.binding
    assert binding is not None
    assert binding.scrappy.cloths == (names[2], names[0])
    editor = editor_at(window, "binding.scrappy.cloths")
    assert isinstance(editor, FabricsEditor)
    assert [editor.item(i).text() for i in (0, 2)] == [f"2. {names[0]}", f"1. {names[2]}"]
    pick(window, "binding.scrappy.order", "repeating")
    binding = window.document.project.binding
    assert binding is not None
    assert binding.scrappy.order is Order.REPEATING


def test_a_scrappy_binding_without_fabrics_is_told_at_its_list(window: MainWindow) -> None:
    before = window.document.project
    pick(window, "binding.scrappy.order", "random")
    assert window.document.project == before
