"""Every word of the fields, and of the sizes to start from, is told in the language spoken."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtWidgets import QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from app.photos_qt import Photos
from app.window.document import Document
from app.window.editors import PieceEditor
from app.window.fields import SINGLE_PARTS
from app.window.offers import Laid
from app.window.parts_panel import PartsPanel
from app.window.sizes import SizesDialog, usual_sizes
from core import edit
from core.batting_packages import COMMON
from core.language import speak
from core.lengths import Units
from core.part_names import told_part
from core.plan import make_plan
from core.project_file import load
from core.quilt import Project
from core.refusal import Refusal
from core.sizes import QuiltSizes
from tests.app.window.test_fields import DATA
from tests.app.window.told import texts
from tests.nameless import nameless
from tests.stand_in import WithComma, untold

# What brings every choice of fields into use that "by-hand" leaves out.
CHOSEN = {
    "fabrics[0].flaws[0].word": "?",
    "borders[0].corners": "squares",
    "outline.kind": "scalloped",
}


DECIMALS = {
    "quilt.width": "123.5",
    "fabrics[0].width": "110.125",  # with a comma it could be thousands
    "fabrics[0].price_per_yard": "12.50",
    "outline.points": [["0", "0"], ["100.5", "0"], ["50.5", "80.5"]],
    "take_up.quilting": "2.5%",
}


@pytest.fixture
def project(stand_in: None) -> Project:
    """Every part a project can have, named in no words of ours."""
    made = load(DATA / "by-hand.crossgrain")
    for kind in SINGLE_PARTS:
        if getattr(made, kind.key) is None:
            made = edit.add_part(made, kind.key)
    for path, value in CHOSEN.items():
        made = edit.put(made, path, value)
    return nameless(made)


@pytest.fixture
def panel(qtbot: QtBot, project: Project) -> PartsPanel:
    panel = PartsPanel(Document(project))
    qtbot.addWidget(panel)
    return panel


def all_untold(widget: QWidget) -> dict[str, list[str]]:
    return {text: untold(text) for text in texts(widget) if untold(text)}


def unfold(panel: PartsPanel) -> None:
    for outer in panel.sections():
        for section in outer.within():
            section.heading.setChecked(True)
            section.body.show_more(True)


def test_every_word_of_the_parts_panel_is_told(panel: PartsPanel, project: Project) -> None:
    unfold(panel)
    panel.show_plan(make_plan(project, draft=True))
    panel.show_photos(Photos())
    assert len(list(texts(panel))) > 1000
    assert all_untold(panel) == {}


def test_what_is_done_in_the_panel_is_told_where_it_can_be_undone(panel: PartsPanel) -> None:
    stack = panel.document.undo_stack
    for asked in ("fabrics", "borders", "fabrics[0].flaws", "batting.packages"):
        panel.add(asked)
        assert untold(stack.undoText()) == [], asked
    assert all_untold(panel) == {}, "the new part's own name is told too"
    section = panel.section_at("borders[0]")
    assert section is not None
    for action in section.menu.actions():
        action.trigger()
        assert untold(stack.undoText()) == []
    section.edited.emit("borders[0]", section.kind.fields[0], "?", False)
    assert untold(stack.undoText()) == []


def test_what_a_new_part_is_named_is_told_once_and_its_own_then(project: Project) -> None:
    bare = replace(project, batting=None)
    made = edit.add_part(bare, "batting").batting
    assert made is not None
    assert [untold(package.name) for package in made.packages] == [[]] * len(COMMON)
    assert [(p.width, p.length) for p in made.packages] == [(p.width, p.length) for p in COMMON]


def test_decimals_are_shown_as_the_language_writes_them_and_read_back(
    qtbot: QtBot, stand_in: None, demo: Project
) -> None:
    speak(WithComma())
    made = edit.add_part(edit.add_part(demo, "outline"), "take_up")
    made = edit.set_units(made, Units.CENTIMETRES)
    for path, value in DECIMALS.items():
        made = edit.put(made, path, value)
    panel = PartsPanel(Document(made))
    qtbot.addWidget(panel)
    for path in DECIMALS:
        row = panel.row_at(path)
        assert row is not None
        line = row.findChild(QLineEdit)
        assert isinstance(line, QLineEdit)
        assert ("," in line.text()) is (path != "fabrics[0].width"), line.text()
        line.setModified(True)
        line.textEdited.emit(line.text())
        row.editor.commit()
        assert not row.problem.text()
    assert panel.document.project == made
    assert "123,5 cm" in panel.quilt.heading.summary
    sizes = SizesDialog(usual_sizes(), Units.CENTIMETRES, lambda table: None, panel)
    sizes.accept()
    assert not sizes.problem.text()


def test_a_field_that_is_to_be_mended_is_called_by_words_that_are_told(panel: PartsPanel) -> None:
    panel.show_refusal(Refusal("quilt.width", "?"))
    row = panel.row_at("quilt.width")
    assert row is not None
    row.refuse("?")
    panel.quilt.mark()
    assert untold(panel.quilt.heading.accessibleDescription()) == []
    [name] = panel.untaken()
    assert name
    assert untold(name) == []


def test_a_piece_is_called_as_the_lists_call_it(panel: PartsPanel) -> None:
    row = panel.row_at("fabrics[2].motifs[0].name")
    assert row is not None
    assert isinstance(row.editor, PieceEditor)
    row.editor.offer_laid((Laid("C", "border 2 side", False),))
    words = [row.editor.itemText(place) for place in range(row.editor.count())]
    assert f"C  {told_part('border 2 side')}" in words
    assert untold(" ".join(words)) == []


def test_an_edit_that_cannot_be_done_is_refused_in_words_that_are_told(project: Project) -> None:
    with pytest.raises(Refusal) as refused:
        edit.remove(project, "fabrics[0]")
    assert set(untold(refused.value.sentence)) <= {"borders", "fabric", "backing", "binding"}
    with pytest.raises(Refusal) as refused:
        edit.add(replace(project, fabrics=(), borders=()), "borders")
    assert untold(refused.value.sentence) == []


@pytest.mark.parametrize("units", Units)
def test_every_word_of_the_sizes_to_start_from_is_told(
    qtbot: QtBot, stand_in: None, units: Units
) -> None:
    parent = QWidget()
    qtbot.addWidget(parent)
    dialog = SizesDialog(usual_sizes(), units, lambda table: None, parent)
    dialog.add()
    dialog.accept()  # the new row has no name
    assert dialog.problem.text()
    assert all_untold(dialog) == {}
    assert [untold(size.words(units)) for size in usual_sizes().of(units)] == [[]] * len(
        usual_sizes().of(units)
    )


def test_a_usual_size_keeps_its_english_name_in_the_table(qtbot: QtBot, stand_in: None) -> None:
    parent = QWidget()
    taken: list[QuiltSizes] = []
    qtbot.addWidget(parent)
    dialog = SizesDialog(usual_sizes(), Units.INCHES, taken.append, parent)
    dialog.accept()
    assert taken == [usual_sizes()]
