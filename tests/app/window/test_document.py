"""The document: every kind of edit can be undone and redone, exactly."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from app.window.document import Document
from core import edit
from core.lengths import Units
from core.project_file import load
from core.quilt import Project
from core.refusal import Refusal

Change = Callable[[Project], Project]

EDITS: dict[str, Change] = {
    "a length": lambda p: edit.put(p, "quilt.width", "50"),
    "a name": lambda p: edit.put(p, "quilt.name", "Low Tide"),
    "a choice": lambda p: edit.put(p, "borders[0].corners", "mitred"),
    "a tick": lambda p: edit.put(p, "fabrics[0].buy_more", False),
    "a count": lambda p: edit.put(p, "quilt.copies", 2),
    "a price": lambda p: edit.put(p, "fabrics[0].price_per_yard", None),
    "a share": lambda p: edit.put(p, "fabrics[0].shrinkage.along", "3%"),
    "a piece on hand": lambda p: edit.put(p, "fabrics[1].on_hand[0].across", "20"),
    "a fabric's name": lambda p: edit.put(p, "fabrics[0].name", "ink"),
    "another fabric": lambda p: edit.add(p, "fabrics"),
    "another border": lambda p: edit.add(p, "borders"),
    "another piece on hand": lambda p: edit.add(p, "fabrics[0].on_hand"),
    "no border": lambda p: edit.remove(p, "borders[0]"),
    "no piece on hand": lambda p: edit.remove(p, "fabrics[1].on_hand[0]"),
    "a border outwards": lambda p: edit.move(p, "borders[0]", 1),
    "a fabric up": lambda p: edit.move(p, "fabrics[2]", -1),
    "no backing": lambda p: edit.remove(p, "backing"),
    "no batting": lambda p: edit.remove(p, "batting"),
    "no binding": lambda p: edit.remove(p, "binding"),
    "no sleeve": lambda p: edit.remove(p, "sleeve"),
    "other units": lambda p: edit.set_units(p, Units.MILLIMETRES),
}


@pytest.mark.parametrize("change", EDITS.values(), ids=EDITS.keys())
def test_undo_and_redo_restore_the_very_same_project(document: Document, change: Change) -> None:
    before = document.project
    document.edit("Change something", change)
    after = document.project
    assert after != before
    document.undo_stack.undo()
    assert document.project is before
    document.undo_stack.redo()
    assert document.project is after


def test_all_edits_together_undo_to_the_first_project(document: Document) -> None:
    first = document.project
    for name, change in EDITS.items():
        if name not in ("no border", "a border outwards"):
            document.edit(name, change)
    while document.undo_stack.canUndo():
        document.undo_stack.undo()
    assert document.project is first


def test_an_edit_that_changes_nothing_is_no_step(document: Document) -> None:
    document.put("quilt.width", "48.5", "Change quilt width")
    assert not document.undo_stack.canUndo()
    assert document.undo_stack.isClean()


def test_a_refused_edit_changes_nothing_and_names_its_field(document: Document) -> None:
    before = document.project
    with pytest.raises(Refusal) as refused:
        document.put("borders[1].width", "wide", "Change border 2 finished width")
    assert refused.value.path == "borders[1].width"
    assert document.project is before
    assert not document.undo_stack.canUndo()


def test_a_typed_edit_is_a_step_of_its_own(document: Document) -> None:
    for width in ("49", "50", "51"):
        document.put("quilt.width", width, "Change quilt width")
    assert document.undo_stack.count() == 3


def test_quick_arrow_steps_in_one_field_are_one_step(document: Document) -> None:
    before = document.project
    for width in ("48 5/8", "48 3/4", "48 7/8"):
        document.put("quilt.width", width, "Change quilt width", gesture=1)
    document.put("quilt.length", "61", "Change quilt length", gesture=2)
    assert document.undo_stack.count() == 2
    document.undo_stack.undo()
    document.undo_stack.undo()
    assert document.project is before


def test_arrow_steps_up_and_down_again_are_no_step(document: Document) -> None:
    document.put("quilt.width", "48 5/8", "Change quilt width", gesture=1)
    document.put("quilt.width", "48 1/2", "Change quilt width", gesture=1)
    assert not document.undo_stack.canUndo()


def test_slow_arrow_steps_are_steps_of_their_own(
    document: Document, monkeypatch: pytest.MonkeyPatch
) -> None:
    clock = iter([0.0, 5.0])
    monkeypatch.setattr("app.window.document.monotonic", lambda: next(clock))
    document.put("quilt.width", "48 5/8", "Change quilt width", gesture=1)
    document.put("quilt.width", "48 3/4", "Change quilt width", gesture=1)
    assert document.undo_stack.count() == 2


def test_saving_makes_the_document_clean_and_undoing_unclean(
    document: Document, tmp_path: Path
) -> None:
    document.put("quilt.width", "50", "Change quilt width")
    document.save(tmp_path / "a.crossgrain")
    assert document.undo_stack.isClean()
    document.undo_stack.undo()
    assert not document.undo_stack.isClean()


def test_what_is_saved_reads_back_equal(document: Document, tmp_path: Path) -> None:
    document.edit("Change units", lambda p: edit.set_units(p, Units.CENTIMETRES))
    document.put("quilt.width", "1/3 in", "Change quilt width")
    document.save(tmp_path / "a.crossgrain")
    assert load(tmp_path / "a.crossgrain") == document.project


def test_opening_a_bad_file_leaves_the_document_as_it_was(
    document: Document, tmp_path: Path
) -> None:
    bad = tmp_path / "bad.crossgrain"
    bad.write_text("{", encoding="utf-8")
    document.put("quilt.width", "50", "Change quilt width")
    before = document.project
    with pytest.raises(Refusal):
        document.open(bad)
    assert document.project is before
    assert document.path is None
    assert document.undo_stack.canUndo()
