"""Text that the project refused: never lost, and never taken for saved."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from app.window.asker import Answer
from app.window.main_window import MainWindow
from core import edit
from core.project_file import load
from tests.app.window.conftest import PlannerHere, ScriptedAsker

TypeIn = Callable[[str, str], None]
WIDTH = "borders[1].width"


@pytest.fixture
def refused(window: MainWindow, type_in: TypeIn) -> MainWindow:
    """A window in which border 2 has a width that cannot be read."""
    type_in(WIDTH, "abc")
    return window


def test_refused_text_is_named_when_saving(
    refused: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    asker.save_file = tmp_path / "quilt.crossgrain"
    assert refused.files.save()
    assert any("not all of it: Border 2, finished width" in said for said in asker.told)
    assert load(asker.save_file) == refused.document.project


def test_text_refused_only_at_the_save_is_named_too(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path, type_in: TypeIn
) -> None:
    type_in("fabrics[0].name", window.document.project.fabrics[1].name)
    asker.save_file = tmp_path / "quilt.crossgrain"
    window.files.save()
    assert any("Fabric night sky, name" in said for said in asker.told)


def test_saving_what_was_all_taken_says_nothing_of_it(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path, type_in: TypeIn
) -> None:
    type_in(WIDTH, "3")
    asker.save_file = tmp_path / "quilt.crossgrain"
    window.files.save()
    assert asker.told == []


def test_leaving_asks_although_every_edit_is_saved(
    refused: MainWindow, asker: ScriptedAsker
) -> None:
    assert refused.document.undo_stack.isClean()
    assert not refused.files.may_leave()
    assert "Border 2, finished width" in asker.asked[-1]
    asker.answer = Answer.DISCARD
    assert refused.files.may_leave()


def test_saving_on_the_way_out_stays_with_what_was_left_out(
    refused: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    asker.answer, asker.save_file = Answer.SAVE, tmp_path / "quilt.crossgrain"
    assert not refused.files.may_leave()
    assert asker.save_file.exists()


def test_an_export_names_what_it_was_made_without(
    refused: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    asker.save_file = tmp_path / "quilt.pdf"
    refused.export()
    assert any("not with all you typed: Border 2, finished width" in said for said in asker.told)


def test_mending_the_field_ends_it(refused: MainWindow, type_in: TypeIn) -> None:
    assert refused.parts.untaken() == ["Border 2, finished width"]
    type_in(WIDTH, "3 1/2")
    assert refused.parts.untaken() == []


def test_a_plan_that_works_does_not_hide_refused_text(
    window: MainWindow, planner: PlannerHere, type_in: TypeIn
) -> None:
    type_in(WIDTH, "300")  # no cloth gives it: the plan is refused, not the text
    assert window.parts.untaken() == []
    type_in(WIDTH, "abc")
    window.document.edit("Change", lambda project: edit.put(project, WIDTH, "3"))
    planner.finish()
    assert window.parts.untaken() == []
    type_in(WIDTH, "abc")
    window.document.put("quilt.length", "61", "Change")
    planner.finish()
    assert window.parts.untaken() == ["Border 2, finished width"]


@pytest.mark.parametrize("text", ["0", "-1", "abc", "5000", ""])
def test_a_count_that_is_none_is_refused_in_a_sentence(
    window: MainWindow, type_in: TypeIn, text: str
) -> None:
    type_in("quilt.copies", text)
    row = window.parts.row_at("quilt.copies")
    assert row is not None
    assert "whole number" in row.problem.text()
    assert row.untaken
    assert window.document.project.quilt.copies == 1
