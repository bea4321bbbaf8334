"""The frame that is seen first is the window's own, and nothing said meanwhile is lost."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QApplication, QMenu, QTabBar, QToolBar
from pytestqt.qtbot import QtBot

from app.assets import asset
from app.window.appearance import Appearance
from app.window.document import Document
from app.window.main import DEMO, first_project
from app.window.main_window import MainWindow
from app.window.memory import Memory
from core.plan import make_plan
from core.project_file import load
from tests.app.window.conftest import PlannerHere, ScriptedAsker

pytestmark = pytest.mark.gui
ROOT = Path(__file__).resolve().parents[3]
# What the first paint may not wait for.
LATE = ("core.plan", "core.quilt", "core.lengths", "app.window.centre", "app.packet.choice")


@pytest.fixture
def frame(
    qtbot: QtBot, planner: PlannerHere, asker: ScriptedAsker, memory: Memory, qapp: QApplication
) -> MainWindow:
    made = MainWindow(None, planner, memory, Appearance(qapp), asker, PlannerHere())
    qtbot.addWidget(made)
    made.show()
    return made


def titles(window: MainWindow) -> list[str]:
    return [menu.title() for menu in window.menuBar().findChildren(QMenu) if _on_bar(window, menu)]


def _on_bar(window: MainWindow, menu: QMenu) -> bool:
    return menu.menuAction() in window.menuBar().actions()


def tools(window: MainWindow) -> list[str]:
    bars = [bar for bar in window.findChildren(QToolBar) if bar.isVisible()]
    return [words for action in bars[0].actions() if (words := action.iconText())]


def tabs(window: MainWindow) -> list[str]:
    bar = next(bar for bar in window.findChildren(QTabBar) if bar.tabText(0) == "Yardage")
    return [bar.tabText(place) for place in range(bar.count())]


def furnish(window: MainWindow) -> Document:
    document = Document(load(asset(DEMO)))
    for _ in window.furnishing(lambda: document):
        pass
    return document


def test_the_frame_has_the_words_that_the_window_has(frame: MainWindow) -> None:
    before = titles(frame), tools(frame), tabs(frame)
    furnish(frame)
    QApplication.processEvents()
    assert before == (titles(frame), [w for w in tools(frame) if w in before[1]], tabs(frame))


def test_a_plan_that_comes_early_is_shown_once_there_is_a_view(
    frame: MainWindow, planner: PlannerHere
) -> None:
    document = Document(load(asset(DEMO)))
    to_do = frame.furnishing(lambda: document)
    while not hasattr(frame, "document"):
        next(to_do)
    plan = make_plan(document.project)
    next(to_do)
    planner.planned.emit(plan)
    assert frame.plan is None
    for _ in to_do:
        pass
    assert frame.plan is plan
    assert frame.answer.cut.rows.rows


def test_a_frame_can_be_closed(frame: MainWindow) -> None:
    event = QCloseEvent()
    frame.closeEvent(event)
    assert event.isAccepted()


def test_what_is_asked_of_a_frame_waits(frame: MainWindow) -> None:
    done: list[str] = []
    frame.when_furnished(lambda: done.append("opened"))
    assert done == []
    furnish(frame)
    assert done == ["opened"]


def test_the_first_paint_waits_for_nothing_heavy() -> None:
    code = f"import sys, app.window.main; print([n for n in {LATE!r} if n in sys.modules])"
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"


def test_the_file_that_is_opened_is_planned_while_the_window_is_made(tmp_path: Path) -> None:
    runner = asset("tide-pool-runner.crossgrain")
    assert first_project(runner) == load(runner)
    assert first_project(tmp_path / "none.crossgrain").quilt.name == "New quilt"
    (tmp_path / "bad.crossgrain").write_text("{")
    assert first_project(tmp_path / "bad.crossgrain").quilt.name == "New quilt"
