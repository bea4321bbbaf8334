"""The length field: exact, forgiving, and never changed by being looked at."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QAccessible, QKeyEvent
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from app.window.field import Field
from app.window.fields_cloth import FABRIC, QUILT
from app.window.length_editor import LengthEditor
from core.lengths import Units

FIELDS = {field.key: field for kind in (QUILT, FABRIC) for field in kind.fields}


class Heard(list[tuple[object, bool]]):
    """What an editor handed over."""

    def hear(self, value: object, stepped: bool) -> None:
        self.append((value, stepped))


def made(qtbot: QtBot, field: Field, value: str | None, units: Units) -> tuple[LengthEditor, Heard]:
    editor, heard = LengthEditor(field), Heard()
    editor.edited.connect(heard.hear)
    qtbot.addWidget(editor)
    editor.show()
    editor.show_value(value, units)
    return editor, heard


@pytest.fixture
def width(qtbot: QtBot) -> tuple[LengthEditor, Heard]:
    return made(qtbot, FIELDS["width"], "48 1/2", Units.INCHES)


def typed(qtbot: QtBot, editor: LengthEditor, text: str) -> None:
    editor.selectAll()
    QTest.keyClicks(editor, text)


def test_it_shows_the_unit_that_a_bare_number_takes(width: tuple[LengthEditor, Heard]) -> None:
    assert width[0].text() == "48 1/2 in"


@pytest.mark.parametrize(
    "text", ["50 1/2", "50½", "50.5", "50,5", "128 cm", "1 1/4 yd", "4' 2\"", "wide", "5 5"]
)
def test_whatever_is_typed_is_handed_over_as_typed(
    width: tuple[LengthEditor, Heard], qtbot: QtBot, text: str
) -> None:
    editor, heard = width
    typed(qtbot, editor, text)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert heard == [(text, False)]


def test_looking_at_a_length_does_not_hand_it_over(
    width: tuple[LengthEditor, Heard], qtbot: QtBot
) -> None:
    editor, heard = width
    editor.show_value("6400/127", Units.INCHES)
    editor.setFocus()
    QTest.keyClick(editor, Qt.Key.Key_Return)
    editor.clearFocus()
    assert heard == []
    assert editor.text() == "6400/127 in"


@pytest.mark.parametrize(
    ("units", "value", "key", "stepped_to"),
    [
        (Units.INCHES, "48 1/2", Qt.Key.Key_Up, "48 5/8"),
        (Units.INCHES, "48 1/3", Qt.Key.Key_Down, "48 5/24"),
        (Units.CENTIMETRES, "130", Qt.Key.Key_Up, "130.5"),
        (Units.MILLIMETRES, "1300", Qt.Key.Key_Down, "1295"),
    ],
)
def test_arrow_keys_step_exactly(
    qtbot: QtBot, units: Units, value: str, key: Qt.Key, stepped_to: str
) -> None:
    editor, heard = made(qtbot, FIELDS["width"], value, units)
    QTest.keyClick(editor, key)
    assert heard == [(stepped_to, True)]


def test_a_step_starts_from_what_is_typed(width: tuple[LengthEditor, Heard], qtbot: QtBot) -> None:
    editor, heard = width
    typed(qtbot, editor, "10")
    QTest.keyClick(editor, Qt.Key.Key_Up)
    assert heard == [("10 1/8", True)]


def test_a_step_from_unreadable_text_starts_from_the_last_good_value(
    width: tuple[LengthEditor, Heard], qtbot: QtBot
) -> None:
    editor, heard = width
    typed(qtbot, editor, "wide")
    QTest.keyClick(editor, Qt.Key.Key_Up)
    assert heard == [("48 5/8", True)]


def test_a_step_never_reaches_zero(qtbot: QtBot) -> None:
    editor, heard = made(qtbot, FIELDS["width"], "1/8", Units.INCHES)
    QTest.keyClick(editor, Qt.Key.Key_Down)
    assert heard == []
    assert editor.text() == "1/8 in"


def test_escape_brings_the_last_good_value_back(
    width: tuple[LengthEditor, Heard], qtbot: QtBot
) -> None:
    editor, heard = width
    typed(qtbot, editor, "wide")
    QTest.keyClick(editor, Qt.Key.Key_Escape)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert editor.text() == "48 1/2 in"
    assert heard == []


def test_an_emptied_optional_length_is_none(qtbot: QtBot) -> None:
    editor, heard = made(qtbot, FIELDS["repeat"], "12", Units.INCHES)
    editor.selectAll()
    QTest.keyClick(editor, Qt.Key.Key_Delete)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert heard == [(None, False)]


def test_what_cannot_be_read_has_a_reason(width: tuple[LengthEditor, Heard], qtbot: QtBot) -> None:
    editor, _ = width
    assert editor.problem() == ""
    typed(qtbot, editor, "1,250")
    assert "could mean" in editor.problem()


def test_undo_is_left_to_the_window_once_nothing_typed_is_left(
    width: tuple[LengthEditor, Heard], qtbot: QtBot
) -> None:
    editor, _ = width

    def claimed() -> bool:
        control = Qt.KeyboardModifier.ControlModifier
        event = QKeyEvent(QEvent.Type.ShortcutOverride, Qt.Key.Key_Z, control)
        event.ignore()
        editor.lineEdit().event(event)
        return event.isAccepted()

    assert not claimed()
    typed(qtbot, editor, "50")
    assert claimed()


@pytest.mark.parametrize(
    ("text", "units", "number"),
    [("48 1/2", Units.INCHES, 48.5), ("1 m", Units.CENTIMETRES, 100.0), ("?", Units.INCHES, 0.0)],
)
def test_a_screen_reader_is_told_the_number_in_the_projects_units(
    qtbot: QtBot, text: str, units: Units, number: float
) -> None:
    editor, _ = made(qtbot, FIELDS["width"], text, units)
    interface = QAccessible.queryAccessibleInterface(editor)
    assert interface.valueInterface().currentValue() == pytest.approx(number)
