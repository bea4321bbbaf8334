"""Plans that were shown are remembered, the last ones and the whole ones first."""

from __future__ import annotations

from dataclasses import replace

from pytestqt.qtbot import QtBot

from app.window.by_hand.plan_memory import MOST, PlanMemory
from app.window.main_window import MainWindow
from core.plan import make_plan
from core.quilt import Project
from tests.app.window.conftest import PlannerHere


def test_a_draft_gives_way_to_the_whole_plan(demo: Project) -> None:
    memory, draft = PlanMemory(), make_plan(demo, draft=True)
    memory.keep(draft, whole=False)
    assert memory.of(demo) is draft
    assert memory.of(demo, whole=True) is None
    plan = replace(draft)
    memory.keep(plan, whole=True)
    assert memory.of(demo) is memory.of(demo, whole=True) is plan


def test_the_oldest_are_forgotten(demo: Project) -> None:
    memory, plan = PlanMemory(), make_plan(demo, draft=True)
    projects = [
        replace(demo, quilt=replace(demo.quilt, name=f"{number}")) for number in range(MOST + 1)
    ]
    for project in projects:
        memory.keep(replace(plan, project=project), whole=True)
    assert [memory.of(project) is None for project in projects] == [True] + [False] * MOST


def test_undo_and_redo_show_the_very_plans_that_were_there(
    window: MainWindow, planner: PlannerHere, qtbot: QtBot
) -> None:
    first, stack = window.plan, window.document.undo_stack
    window.document.put("quilt.width", "50", "Change width")
    planner.finish()
    second = window.plan
    assert second is not first
    for turn, plan in ((stack.undo, first), (stack.redo, second)):
        turn()
        qtbot.waitUntil(lambda: not planner.busy)
        assert window.plan is plan
        assert window.centre.yardage.plan is plan
