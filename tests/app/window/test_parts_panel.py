"""The forms: what is typed becomes an edit, or a sentence under its field."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QCheckBox, QComboBox
from pytestqt.qtbot import QtBot

from app.window.editors import SheetEditor
from app.window.field import Kind
from app.window.fields_cloth import ON_HAND
from app.window.main_window import MainWindow
from app.window.part_section import PartSection
from core.lay.lay import Rect
from core.lengths import Units, exact_text, parse, typeset
from core.project_file import dumps
from core.quilt import Corners
from tests.app.window.conftest import PlannerHere, all_rows, editor_at

TypeIn = Callable[[str, str], None]

# What a slip of the pen looks like, and the words its sentence has.
BAD = {
    "nothing": ("", "missing"),
    "a word": ("wide", "not one clear length"),
    "zero": ("0", "above 0"),
    "a negative length": ("-3", "negative"),
    "a huge length": ("2000", "over"),
    "two readings": ("1,250", "could mean"),
    "not a number": ("nan", "not one clear length"),
    "an unknown unit": ("3 ells", "not a unit"),
}


def problem(window: MainWindow, path: str) -> str:
    row = window.parts.row_at(path)
    assert row is not None
    return row.problem.text() if row.problem.isVisibleTo(row) else ""


def lengths(window: MainWindow) -> list[str]:
    return [path for path, row in all_rows(window).items() if row.field.kind is Kind.LENGTH]


def test_a_typed_length_is_in_the_project_and_in_the_plan(
    window: MainWindow, type_in: TypeIn
) -> None:
    type_in("quilt.width", "1 1/2 yd")
    assert window.document.project.quilt.width == 54
    assert window.plan is not None
    assert window.plan.project.quilt.width == 54
    assert editor_at(window, "quilt.width").text() == "54 in"  # type: ignore[attr-defined]


@pytest.mark.parametrize(("text", "words"), BAD.values(), ids=BAD.keys())
def test_a_bad_length_is_told_under_its_field_and_the_last_plan_stays(
    window: MainWindow, type_in: TypeIn, text: str, words: str
) -> None:
    project, plan = window.document.project, window.plan
    type_in("borders[1].width", text)
    assert words in problem(window, "borders[1].width")
    assert window.document.project is project
    assert window.plan is plan
    assert not window.document.undo_stack.canUndo()


def test_every_length_says_what_is_wrong_with_it(window: MainWindow, type_in: TypeIn) -> None:
    before = window.document.project
    paths = lengths(window)
    assert len(paths) > 25
    for path in paths:
        type_in(path, "wide")
        assert "not one clear length" in problem(window, path), path
    assert window.document.project is before


def test_a_problem_goes_once_the_length_is_good(window: MainWindow, type_in: TypeIn) -> None:
    type_in("quilt.width", "wide")
    section = window.parts.quilt
    assert section.heading.trouble
    type_in("quilt.width", "50")
    assert problem(window, "quilt.width") == ""
    assert not section.heading.trouble


def test_refused_text_stays_for_mending_while_another_field_is_edited(
    window: MainWindow, type_in: TypeIn
) -> None:
    type_in("quilt.width", "wide")
    type_in("quilt.length", "62")
    assert editor_at(window, "quilt.width").text() == "wide"  # type: ignore[attr-defined]
    assert problem(window, "quilt.width")
    assert window.document.project.quilt.length == 62


def test_a_problem_is_heard_by_a_screen_reader(window: MainWindow, type_in: TypeIn) -> None:
    type_in("quilt.width", "wide")
    assert "not one clear length" in editor_at(window, "quilt.width").accessibleDescription()
    type_in("quilt.width", "50")
    assert "raw edge" in editor_at(window, "quilt.width").accessibleDescription()


def test_while_a_length_is_typed_the_sentence_waits_for_a_pause(
    window: MainWindow, qtbot: QtBot
) -> None:
    window.parts.show_field("quilt.width")
    editor = editor_at(window, "quilt.width")
    editor.selectAll()  # type: ignore[attr-defined]
    QTest.keyClicks(editor, "50 1/")
    assert problem(window, "quilt.width") == ""
    qtbot.waitUntil(lambda: problem(window, "quilt.width") != "", timeout=3000)
    QTest.keyClicks(editor, "2")
    assert problem(window, "quilt.width") == ""


def test_a_choice_is_an_edit(window: MainWindow, qtbot: QtBot) -> None:
    window.parts.show_field("borders[0].corners")
    combo = editor_at(window, "borders[0].corners")
    assert isinstance(combo, QComboBox)
    QTest.keyClick(combo, Qt.Key.Key_Down)
    assert window.document.project.borders[0].corners is Corners.MITRED
    assert window.document.undo_stack.undoText() == "Change border 1 corners"


def test_fields_that_do_not_matter_are_not_shown(window: MainWindow) -> None:
    rows = all_rows(window)
    section = window.parts.borders.sections
    assert not rows["borders[0].corner_fabric"].isVisibleTo(section[0])
    assert not rows["borders[0].mitre_margin"].isVisibleTo(section[0])
    window.parts.show_field("borders[1].corner_fabric")
    assert rows["borders[1].corner_fabric"].isVisibleTo(section[1])


def test_a_tick_and_a_count_are_edits(window: MainWindow, type_in: TypeIn) -> None:
    window.parts.show_field("fabrics[2].buy_more")
    tick = editor_at(window, "fabrics[2].buy_more")
    assert isinstance(tick, QCheckBox)
    tick.click()
    assert not window.document.project.fabrics[2].buy_more
    type_in("quilt.copies", "2")
    assert window.document.project.quilt.copies == 2


@pytest.mark.parametrize(
    ("path", "text", "kept"),
    [
        ("fabrics[0].price_per_yard", "14", Fraction(14)),
        ("fabrics[0].price_per_yard", "", None),
        ("fabrics[0].shrinkage_along", "3", Fraction(3, 100)),
        ("fabrics[0].shrinkage_along", "2.5 %", Fraction(1, 40)),
    ],
)
def test_prices_and_shares_are_edits(
    window: MainWindow, type_in: TypeIn, path: str, text: str, kept: Fraction | None
) -> None:
    field_path = path.replace("shrinkage_", "shrinkage.")
    type_in(field_path, text)
    assert getattr(window.document.project.fabrics[0], path.rpartition(".")[2]) == kept


def test_a_bad_price_is_told_under_its_field(window: MainWindow, type_in: TypeIn) -> None:
    type_in("fabrics[0].price_per_yard", "a lot")
    assert problem(window, "fabrics[0].price_per_yard") == 'write a price such as "12.50"'


def test_a_fabrics_new_name_follows_everywhere(window: MainWindow, type_in: TypeIn) -> None:
    type_in("fabrics[0].name", "ink")
    project = window.document.project
    assert project.binding is not None
    assert project.binding.fabric == "ink"
    combo = editor_at(window, "binding.fabric")
    assert isinstance(combo, QComboBox)
    assert [combo.itemText(i) for i in range(combo.count())] == ["ink", "lamp gold", "tide stripe"]
    assert combo.currentText() == "ink"


def test_two_fabrics_of_one_name_are_refused_at_the_name(
    window: MainWindow, type_in: TypeIn
) -> None:
    type_in("fabrics[0].name", "lamp gold")
    assert "there already" in problem(window, "fabrics[0].name")


def test_parts_are_added_moved_and_removed(window: MainWindow) -> None:
    parts, document = window.parts, window.document
    first = document.project
    parts.borders.add.click()
    assert len(document.project.borders) == 3
    assert parts.borders.sections[2].heading.isChecked()
    choose(parts.borders.sections[2], "Move inwards")
    assert document.project.borders[1].width == 3
    choose(parts.borders.sections[1], "Remove")
    choose(parts.singles["sleeve"], "Remove")
    assert document.project.sleeve is None
    assert not parts.singles["sleeve"].isVisibleTo(parts)
    parts.part_actions["sleeve"].trigger()
    assert document.project.sleeve is not None
    assert [document.undo_stack.text(i) for i in range(document.undo_stack.count())] == [
        "Add border",
        "Move border 3",
        "Remove border 2",
        "Remove hanging sleeve",
        "Add hanging sleeve",
    ]
    while document.undo_stack.canUndo():
        document.undo_stack.undo()
    assert document.project is first
    assert len(parts.borders.sections) == 2


def choose(section: PartSection, words: str) -> None:
    """Choose from a section's menu."""
    next(action for action in section.menu.actions() if action.text() == words).trigger()


def test_a_piece_on_hand_is_added_within_its_fabric(window: MainWindow) -> None:
    window.parts.show_field("fabrics[0].name")
    on_hand = window.parts.fabrics.sections[0].inner[0]
    on_hand.add.click()
    [piece] = window.document.project.fabrics[0].on_hand
    assert (piece.across, piece.along) == (Fraction(18), Fraction(21))
    assert on_hand.sections[0].kind is ON_HAND
    assert on_hand.sections[0].heading.text() == "Piece on hand 1"
    assert "fabrics[0].on_hand[0].across" in all_rows(window)


def test_the_table_of_packages_is_changed_and_undone(window: MainWindow) -> None:
    window.parts.show_field("batting.packages[0].width")
    [table] = window.parts.singles["batting"].inner
    before = window.document.project.batting
    assert before is not None
    assert len(table.sections) == len(before.packages)
    table.add.click()
    assert window.document.project.batting is not None
    assert window.document.project.batting.packages[-1].name == "package"
    choose(table.sections[0], "Remove")
    assert window.document.project.batting.packages[0] == before.packages[1]
    window.document.undo_stack.undo()
    window.document.undo_stack.undo()
    assert window.document.project.batting == before


def test_what_a_border_would_take_the_other_way_is_said_under_its_grain(
    window: MainWindow, qtbot: QtBot
) -> None:
    row = window.parts.row_at("borders[0].grain")
    assert row is not None
    qtbot.waitUntil(lambda: window.plan is not None)
    assert row.note.text().startswith("Cut lengthwise in one piece, with no joins, it would take")


def test_a_fabric_in_use_is_not_removed_and_its_part_says_why(window: MainWindow) -> None:
    section = window.parts.fabrics.sections[0]
    choose(section, "Remove")
    assert len(window.document.project.fabrics) == 3
    assert "is used by" in section.body.problem.text()
    assert section.heading.trouble


def test_a_plan_that_cannot_be_made_is_told_at_its_part_and_the_last_one_stays(
    window: MainWindow, planner: PlannerHere, type_in: TypeIn
) -> None:
    plan = window.plan
    type_in("binding.strip_width", "1/2")
    assert window.document.project.binding is not None
    assert window.document.project.binding.strip_width == Fraction(1, 2)
    assert problem(window, "binding.strip_width")
    assert window.centre.banner.isVisibleTo(window)
    assert "Binding" in window.centre.banner.text.text()
    assert window.plan is plan
    window.document.undo_stack.undo()
    planner.finish()
    assert not window.centre.banner.isVisibleTo(window)
    assert problem(window, "binding.strip_width") == ""


def test_the_banners_button_leads_to_the_field(
    window: MainWindow, type_in: TypeIn, qtbot: QtBot
) -> None:
    type_in("binding.strip_width", "1/2")
    window.parts.singles["binding"].heading.setChecked(False)
    with qtbot.waitActive(window):
        window.activateWindow()
    window.centre.banner.go.click()
    assert window.parts.singles["binding"].heading.isChecked()
    assert window.focusWidget() is editor_at(window, "binding.strip_width")


def test_other_units_show_the_same_lengths_and_round_nothing(
    window: MainWindow, type_in: TypeIn
) -> None:
    type_in("quilt.width", "50 1/3")
    width = window.document.project.quilt.width
    window.set_units(Units.CENTIMETRES)
    assert window.document.project.quilt.width == width
    assert editor_at(window, "quilt.length").text() == "153.67 cm"  # type: ignore[attr-defined]
    type_in("quilt.length", "150")
    assert window.document.project.quilt.length == Fraction(1500, 254) * 10
    window.set_units(Units.INCHES)
    assert window.document.project.quilt.width == width


def test_leaving_a_field_untouched_is_no_edit(window: MainWindow, qtbot: QtBot) -> None:
    for path in lengths(window):
        window.parts.show_field(path)
        QTest.keyClick(editor_at(window, path), Qt.Key.Key_Return)
        QTest.keyClick(editor_at(window, path), Qt.Key.Key_Tab)
    assert not window.document.undo_stack.canUndo()


def note(window: MainWindow, path: str) -> str:
    """What is said about a field's value, if anything is."""
    row = window.parts.row_at(path)
    assert row is not None
    return row.note.text() if row.note.isVisibleTo(row) else ""


def test_a_border_shows_what_its_strips_are_cut(window: MainWindow, type_in: TypeIn) -> None:
    assert note(window, "borders[1].width") == typeset("Strips are cut 4 1/2 in wide.")
    type_in("borders[1].width", "3")
    assert note(window, "borders[1].width") == typeset("Strips are cut 3 1/2 in wide.")


def test_without_a_plan_no_cut_width_is_shown(window: MainWindow, type_in: TypeIn) -> None:
    type_in("borders[1].width", "abc")
    assert note(window, "borders[1].width") == ""
    type_in("borders[1].width", "300")
    assert note(window, "borders[0].width") == ""


def test_other_units_and_back_leave_the_document_as_it_was(window: MainWindow) -> None:
    before = dumps(window.document.project)
    widths = {
        Units.CENTIMETRES: "123.19 cm",
        Units.MILLIMETRES: "1231.9 mm",
        Units.INCHES: "48 1/2 in",
    }
    for units, shown in widths.items():
        window.menus.units[units].trigger()
        assert editor_at(window, "quilt.width").text() == shown  # type: ignore[attr-defined]
    assert dumps(window.document.project) == before
    for _ in range(3):
        window.document.undo_stack.undo()
    assert dumps(window.document.project) == before


def test_every_length_field_takes_the_other_unit(window: MainWindow, type_in: TypeIn) -> None:
    project = window.document.project
    for path in ("quilt.width", "fabrics[0].selvage", "binding.strip_width", "sleeve.depth"):
        text = editor_at(window, path).text()  # type: ignore[attr-defined]
        type_in(path, exact_text(parse(text), Units.CENTIMETRES) + " cm")
        assert window.document.project == project
        assert editor_at(window, path).text() == text  # type: ignore[attr-defined]


def test_a_flaw_is_marked_by_numbers_alone(
    window: MainWindow, type_in: Callable[[str, str], None]
) -> None:
    window.parts.show_field("fabrics[0].name")
    flaws = next(one for one in window.parts.fabrics.sections[0].inner if one.kind.key == "flaws")
    flaws.add.click()
    assert window.document.undo_stack.undoText() == "Add flaw"
    for key, text in (("word", "hole"), ("x", "36"), ("y", "10"), ("along", "3")):
        type_in(f"fabrics[0].flaws[0].{key}", text)
    [flaw] = window.document.project.fabrics[0].flaws
    assert flaw.word == "hole"
    assert flaw.rect == Rect(*(Fraction(side) for side in (36, 10, 2, 3)))
    flawed = window.document.project
    choose(flaws.sections[0], "Remove")
    assert not window.document.project.fabrics[0].flaws
    window.document.undo_stack.undo()
    assert window.document.project == flawed


def test_a_motif_is_given_to_a_piece_and_taken_from_it_with_keys(window: MainWindow) -> None:
    window.parts.show_field("fabrics[2].name")
    motifs = next(one for one in window.parts.fabrics.sections[2].inner if one.kind.key == "motifs")
    motifs.add.click()
    editor = editor_at(window, "fabrics[2].motifs[0].name")
    QTest.keyClicks(editor, "J")
    assert window.document.project.fabrics[2].motifs[0].name == "label"
    QTest.keyClick(editor, Qt.Key.Key_Home)
    assert window.document.project.fabrics[2].motifs[0].name is None


def test_pins_are_listed_once_there_are_some_and_cloths_are_the_fabrics_own(
    window: MainWindow,
) -> None:
    window.parts.show_field("fabrics[1].name")
    pins = next(one for one in window.parts.fabrics.sections[1].inner if one.kind.key == "pins")
    assert not pins.isVisible()
    pin = {"name": "border 2 corner", "copy": 1, "on": "on_hand[0]", "x": "0", "y": "0"}
    window.document.put("fabrics[1].pins", [pin], "Pin D1")
    assert pins.isVisible()
    assert not pins.add.isVisible()
    row = window.parts.row_at("fabrics[1].pins[0].on")
    assert row is not None
    assert isinstance(row.editor, SheetEditor)
    assert row.editor.currentText() == "On hand 42 1/2 × 9 in"
    assert row.editor.itemText(0) == "The bolt"
