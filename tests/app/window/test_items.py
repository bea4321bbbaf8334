"""Every way of finishing: described in the window's fields, kept, planned, checked, printed."""

from __future__ import annotations

import re
from functools import cache, partial
from typing import Any

import pytest
from PySide6.QtWidgets import QApplication

from app.packet.packet import packet_bytes
from app.solver.talk import Answer, Unpacker, packed
from app.window.document import Document
from app.window.field import value_at
from app.window.fields import INNER, PARTS
from core import edit
from core.lengths import typeset
from core.plan import Plan, make_plan
from core.plan_json import plan_document
from core.project_file import dumps, loads
from core.quilt import Project
from tests.app.packet.pdf_reader import pages
from tests.core.sound import assert_sound
from tests.items import ITEMS, Item, plain_quilt


@pytest.fixture(params=ITEMS, scope="module")
def name(request: pytest.FixtureRequest) -> str:
    """Each item's name; of the module, so that an item's tests follow each other on one plan."""
    return str(request.param)


def describe(document: Document, item: Item) -> None:
    """Add the item's parts and write its values, as the window's panels do."""
    for part in item.adds:
        document.edit(f"Add {part}", partial(_add, part=part))
    for path, value in item.writes.items():
        document.put(path, value, f"Change {path}")


def _add(project: Project, part: str) -> Project:
    listed = part == "borders" or part.endswith("on_hand")
    return edit.add(project, part) if listed else edit.add_part(project, part)


@cache
def described(name: str) -> Project:
    document = Document(plain_quilt())
    describe(document, ITEMS[name])
    return document.project


@cache
def planned(name: str) -> Plan:
    # A draft leaves out what else would come from the cloth of the backing.
    return make_plan(described(name), draft=described(name).backing is None)


def _fields() -> set[str]:
    """Every field's path, without the numbers of parts in a list."""
    inner = {inner.key: kind.key for kind in PARTS for inner in kind.inner}
    return {
        ".".join((inner[kind.key], kind.key, field.key) if kind in INNER else (kind.key, field.key))
        for kind in (*PARTS, *INNER)
        for field in kind.fields
    }


def test_an_item_is_described_in_fields_of_the_window_and_undone(
    name: str, qapp: QApplication
) -> None:
    item, document = ITEMS[name], Document(plain_quilt())
    assert {re.sub(r"\[\d+\]", "", path) for path in item.writes} <= _fields()
    describe(document, item)
    for path, value in item.writes.items():
        assert value_at(document.form, path) == value
    described_once = document.project
    while document.undo_stack.canUndo():
        document.undo_stack.undo()
    assert document.project == plain_quilt()
    while document.undo_stack.canRedo():
        document.undo_stack.redo()
    assert document.project == described_once


def test_an_item_is_kept_in_the_file(name: str, qapp: QApplication) -> None:
    assert loads(dumps(described(name))) == described(name)


def test_an_item_plans_and_is_drawn_soundly(name: str, qapp: QApplication) -> None:
    assert_sound(planned(name))


def test_an_item_s_plan_comes_whole_out_of_the_solver(name: str, qapp: QApplication) -> None:
    [answer] = Unpacker().take(packed(Answer(1, planned(name))))
    assert answer == Answer(1, planned(name))


def test_an_item_s_numbers_are_those_worked_out_by_hand(name: str, qapp: QApplication) -> None:
    document: dict[str, Any] = plan_document(planned(name))
    for path, value in ITEMS[name].shows.items():
        assert value_at(document, path) == value, path


def test_an_item_is_told_on_its_packet(name: str, qapp: QApplication) -> None:
    words = " ".join(page.words for page in pages(packet_bytes(planned(name))))
    assert typeset(ITEMS[name].prints) in " ".join(words.split())
