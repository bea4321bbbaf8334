"""Nonsense in every field that is typed in: a sentence at the field, or a value with a plan.

Whatever is typed, nothing is lost: what was refused stays to be mended, and the project is as
it was; what was taken can be undone, and means the same when it is typed as it is shown.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import cast

import pytest
from PySide6.QtWidgets import QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from app.languages import speak_language
from app.window.document import Document
from app.window.field import Kind, PartKind
from app.window.fields import INNER, PARTS, SINGLE_PARTS
from app.window.fields_binding import BINDING
from app.window.fields_border import BORDER
from app.window.fields_cloth import FABRIC
from app.window.files import new_project
from app.window.part_form import FieldRow
from app.window.part_section import PartSection
from app.window.parts_panel import PartsPanel
from core import edit
from core.lengths import Units
from core.plan import make_plan
from core.quilt import Project
from core.refusal import Refusal

TYPED = {Kind.TEXT, Kind.PIECE, Kind.LENGTH, Kind.MONEY, Kind.SHARE, Kind.COUNT, Kind.POINTS,
         Kind.COLOUR, Kind.PHOTO}  # fmt: skip
BY_HAND = {
    "pins": {"name": "label", "x": "1 in", "y": "2 in"},
    "flaws": {"x": "20 in", "y": "3 in", "across": "2 in", "along": "1 in", "word": "stain"},
    "motifs": {"x": "30 in", "y": "3 in", "across": "2 in", "along": "1 in", "name": None},
}
NONSENSE = (
    "", "   ", "abc", "-3", "0", "1e999", "1/0", "9999999", "½½", "3,5,7", "🧵🪡",
    "x" * 10_000, "9" * 5_000, "קצה לשמיכה", "a\nb\u2028c", "a\0b", "<b>fat</b>", "{x} %s",
)  # fmt: skip
DECIMALS = ("3,5", "3.5", "1.250,5", "12,5 %", "2½", "1/3")
LONGEST_SENTENCE = 250


@pytest.fixture
def language(request: pytest.FixtureRequest) -> Iterator[str]:
    """Speak it: English, or a language that writes decimals with a comma."""
    speak_language(request.param)
    yield request.param
    speak_language("en")


def project_with(kind: PartKind, units: Units = Units.INCHES) -> Project:
    """A project that has the part, with one of each thing in it; no larger than need be."""
    project = new_project(units)
    if kind is FABRIC:
        project = edit.add_part(project, "label")
        for key, value in BY_HAND.items():
            project = edit.put(project, f"fabrics[0].{key}", [value])
        return edit.add(project, "fabrics[0].on_hand")
    if kind is BORDER:
        return edit.add(project, kind.key)
    if kind in SINGLE_PARTS:
        project = edit.add_part(project, kind.key)
    for inner in kind.inner:
        project = edit.add(project, f"{kind.key}.{inner.key}")
    return project


class Walk:
    """The typed fields of one part of a project, in a panel of their own."""

    def __init__(self, kind: PartKind, qtbot: QtBot, units: Units = Units.INCHES) -> None:
        self.document = Document(project_with(kind, units))
        self.panel = PartsPanel(self.document)
        qtbot.addWidget(self.panel)
        self.kind = kind
        for section in self._sections():
            assert section.body is not None

    def _sections(self) -> Iterator[PartSection]:
        for outer in self.panel.sections():
            if outer.kind is self.kind:
                outer.reveal()
                yield from outer.within()

    def fields(self) -> dict[tuple[str, str], FieldRow]:
        """Each typed field, by its part and its key there; of like parts the last."""
        return {
            (section.kind.key, key): row
            for section in self._sections()
            for key, row in section.body.rows.items()
            if row.field.kind in TYPED
        }

    def type(self, row: FieldRow, line: QLineEdit, text: str) -> str:
        """Type over what is there and leave the field; what the line took of it."""
        line.selectAll()
        if text:
            line.insert(text)
        else:
            line.del_()
        typed = line.text()
        row.editor.commit()
        return typed

    def again(self, row: FieldRow) -> None:
        """Show the project's own value."""
        row.show_value(row.value, self.document.project.units, anew=True)


def lines_of(row: FieldRow) -> list[QLineEdit]:
    widget = cast(QWidget, row.editor)
    return [widget] if isinstance(widget, QLineEdit) else widget.findChildren(QLineEdit)


def assert_a_sentence(said: str) -> None:
    assert 10 < len(said) < LONGEST_SENTENCE
    assert said.isprintable()


def assert_planned_or_refused(walk: Walk) -> None:
    """What was taken has a plan, or the reason why not is said at a field or at a part."""
    try:
        make_plan(walk.document.project, draft=True)
    except Refusal as refusal:
        assert_a_sentence(refusal.sentence)
        walk.panel.show_refusal(refusal)
        place = walk.panel._place_of(refusal.path)
        assert place is not None
        walk.panel.clear_refusal()


def is_shown_what_it_means(walk: Walk, row: FieldRow, line: QLineEdit) -> bool:
    """Whether what is shown, typed once more, is the same value."""
    before = walk.document.project
    walk.type(row, line, line.text())
    return walk.document.project == before and row.problem.text() == ""


def try_all(walk: Walk, row: FieldRow, line: QLineEdit, texts: tuple[str, ...]) -> None:
    document, taken = walk.document, 0
    for text in texts:
        before = document.project
        typed = walk.type(row, line, text)
        said = row.problem.text()
        if said:
            assert document.project is before, text[:40]
            assert_a_sentence(said)
            assert line.text() == typed
            assert row.untaken
            name = row.field.called.casefold()
            assert any(name in untaken.casefold() for untaken in walk.panel.untaken())
        elif document.project != before:
            assert is_shown_what_it_means(walk, row, line), text[:40]
            taken += 1
            if taken == 1:
                assert_planned_or_refused(walk)
            while document.undo_stack.canUndo():
                document.undo_stack.undo()
            assert document.project == before
            document.undo_stack.clear()
        walk.again(row)


@pytest.mark.parametrize("kind", PARTS, ids=[kind.key for kind in PARTS])
def test_nonsense_in_a_field_is_refused_there_or_can_be_planned(
    kind: PartKind, qtbot: QtBot
) -> None:
    walk = Walk(kind, qtbot)
    for row in walk.fields().values():
        for line in lines_of(row):
            try_all(walk, row, line, NONSENSE)


# Every part where decimals have a comma; where they have a point, those with most kinds of field.
SPOKEN = [("de", kind) for kind in PARTS] + [("en", kind) for kind in (FABRIC, BINDING)]


@pytest.mark.parametrize(
    ("language", "kind"),
    SPOKEN,
    indirect=["language"],
    ids=[f"{language}-{kind.key}" for language, kind in SPOKEN],
)
def test_a_decimal_means_the_same_with_either_mark_and_is_shown_as_it_is_read(
    language: str, kind: PartKind, qtbot: QtBot
) -> None:
    walk = Walk(kind, qtbot, Units.CENTIMETRES)
    for row in walk.fields().values():
        for line in lines_of(row):
            try_all(walk, row, line, DECIMALS)


def test_the_walk_comes_to_every_field_that_is_typed_in(qtbot: QtBot) -> None:
    walked = {name for kind in PARTS for name in Walk(kind, qtbot).fields()}
    parts = (*PARTS, *INNER)
    there = {
        (kind.key, field.key) for kind in parts for field in kind.fields if field.kind in TYPED
    }
    assert len(walked) > 100
    assert walked == there
