"""The planner and its solver: never in the way, only the newest, and back after a death."""

from __future__ import annotations

import os
import signal
import sys
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from time import monotonic

import pytest
from PySide6.QtCore import QProcess, QTimer
from pytestqt.qtbot import QtBot

from app.window.appearance import Appearance
from app.window.document import Document
from app.window.files import new_project
from app.window.main_window import RESTARTED, MainWindow
from app.window.memory import Memory
from app.window.planner import MOST_DEATHS, Planner
from core import edit
from core.lengths import Units
from core.plan import Plan, make_plan
from core.quilt import Project
from core.refusal import Refusal
from tests.app.window.conftest import PlannerHere, ScriptedAsker

PATIENCE = 20_000  # milliseconds, on a busy machine


@pytest.fixture
def live(qapp: object) -> Iterator[Planner]:
    """A planner with its solver running, ended with the test."""
    planner = Planner()
    planner.start()
    yield planner
    planner.close()


@pytest.fixture
def results(live: Planner) -> list[object]:
    """Whatever the planner has emitted."""
    found: list[object] = []
    for signal_ in (live.planned, live.refused, live.failed):
        signal_.connect(found.append)
    return found


@pytest.fixture
def slow(demo: Project) -> Project:
    """A project that takes seconds to plan: many borders, each of which may go either way."""
    border = replace(demo.borders[0], width=Fraction(5, 4))
    widths = [Fraction(number, 8) for number in range(9, 21)]
    return replace(demo, borders=tuple(replace(border, width=width) for width in widths))


def wait(qtbot: QtBot, planner: Planner) -> None:
    qtbot.waitUntil(lambda: not planner.busy, timeout=PATIENCE)


def test_a_plan_from_the_solver_is_the_plan(
    live: Planner, results: list[object], demo: Project, qtbot: QtBot
) -> None:
    live.ask(demo)
    assert live.busy
    wait(qtbot, live)
    assert results == [make_plan(demo, draft=True), make_plan(demo)]


def test_a_refusal_comes_over_with_its_lengths(
    live: Planner, results: list[object], demo: Project, qtbot: QtBot
) -> None:
    wide = edit.put(demo, "borders[0].width", "60")
    with pytest.raises(Refusal) as expected:
        make_plan(wide)
    live.ask(wide)
    wait(qtbot, live)
    [refusal] = results
    assert isinstance(refusal, Refusal)
    assert (refusal.path, refusal.sentence) == (expected.value.path, expected.value.sentence)
    assert refusal.lengths == expected.value.lengths


def test_a_draft_that_is_the_plan_is_shown_once(
    live: Planner, results: list[object], qtbot: QtBot
) -> None:
    bare = new_project(Units.INCHES)
    assert make_plan(bare, draft=True) == make_plan(bare)
    live.ask(bare)
    wait(qtbot, live)
    assert results == [make_plan(bare)]


def test_a_plan_that_is_known_comes_at_once_and_makes_older_asks_void(
    live: Planner, results: list[object], slow: Project, demo: Project, qtbot: QtBot
) -> None:
    plan, settled = make_plan(demo, draft=True), []
    live.ask(slow)
    live.know(plan)
    assert live.busy
    live.when_settled(lambda: settled.append(list(results)))
    wait(qtbot, live)
    assert results == [plan]
    assert settled == [[plan]]


def test_an_ask_makes_a_known_plan_void(
    live: Planner, results: list[object], demo: Project, qtbot: QtBot
) -> None:
    bare = new_project(Units.INCHES)
    live.know(make_plan(demo, draft=True))
    live.ask(bare)
    wait(qtbot, live)
    assert results == [make_plan(bare)]


def test_frames_keep_coming_while_a_plan_is_made(
    live: Planner, results: list[object], slow: Project, demo: Project, qtbot: QtBot
) -> None:
    live.ask(demo)
    wait(qtbot, live)
    ticks: list[float] = []
    clock = QTimer(interval=10)
    clock.timeout.connect(lambda: ticks.append(monotonic()))
    live.ask(slow)
    clock.start()
    qtbot.wait(500)
    clock.stop()
    assert live.busy, "the slow project must not be planned by now"
    gaps = sorted(after - before for before, after in pairwise(ticks))
    assert gaps[len(gaps) // 2] < 0.05, "half of what the window would notice, on a busy machine"


def test_a_newer_project_makes_the_older_void_at_once(
    live: Planner, results: list[object], slow: Project, demo: Project, qtbot: QtBot
) -> None:
    live.ask(demo)
    wait(qtbot, live)
    results.clear()
    live.ask(slow)
    qtbot.wait(100)
    assert live.busy
    results.clear()  # a draft of the slow one may have come
    asked = monotonic()
    live.ask(replace(demo, quilt=replace(demo.quilt, name="Later")))
    wait(qtbot, live)
    took = monotonic() - asked
    assert {plan.project.quilt.name for plan in results if isinstance(plan, Plan)} == {"Later"}
    assert took < 2, "it did not wait for the older one"


def test_of_many_asks_in_a_row_only_the_last_is_answered(
    live: Planner, results: list[object], demo: Project, qtbot: QtBot
) -> None:
    for number in range(30):
        live.ask(replace(demo, quilt=replace(demo.quilt, name=f"Quilt {number}")))
        qtbot.wait(number % 4)
    qtbot.waitUntil(lambda: not live.busy, timeout=PATIENCE)
    last = results[-1]
    assert isinstance(last, Plan)
    assert last.project.quilt.name == "Quilt 29"
    qtbot.wait(100)
    assert results[-1] is last


def test_a_killed_solver_is_started_again_and_asked_again(
    live: Planner, results: list[object], slow: Project, demo: Project, qtbot: QtBot
) -> None:
    restarts: list[int] = []
    live.restarted.connect(lambda: restarts.append(1))
    live.ask(demo)
    wait(qtbot, live)
    results.clear()
    live.ask(slow)
    kill(live)
    live.ask(demo)
    wait(qtbot, live)
    assert results[-1] == make_plan(demo)
    assert restarts == [1]


def test_a_solver_that_dies_each_time_is_given_up_with_words(
    live: Planner, results: list[object], slow: Project, demo: Project, qtbot: QtBot
) -> None:
    live.ask(slow)
    dead = {0}
    for _ in range(MOST_DEATHS):
        qtbot.waitUntil(lambda: pid(live) not in dead, timeout=PATIENCE)
        dead.add(pid(live))
        kill(live)
    wait(qtbot, live)
    assert "stops each time" in str(results[-1])
    assert not live.busy
    results.clear()
    live.ask(demo)
    wait(qtbot, live)
    assert isinstance(results[0], Plan), "the next edit tries again"


def test_a_solver_that_does_not_start_is_told(demo: Project, qtbot: QtBot, qapp: object) -> None:
    lame = Planner()
    lame._solver.setProgram("/no/such/python")
    told: list[str] = []
    lame.failed.connect(told.append)
    lame.ask(demo)
    qtbot.waitUntil(lambda: bool(told), timeout=PATIENCE)
    assert "does not start" in told[0]
    lame.close()


def test_what_waits_for_the_plan_is_done_when_it_is_there(
    live: Planner, results: list[object], demo: Project, qtbot: QtBot
) -> None:
    seen: list[int] = []
    live.ask(demo)
    live.when_settled(lambda: seen.append(len(results)))
    assert seen == []
    wait(qtbot, live)
    assert seen == [2], "after the draft and the plan"
    live.when_settled(lambda: seen.append(len(results)))
    assert seen == [2, 2]


def test_closing_ends_the_solver_in_the_middle_of_a_plan(
    live: Planner, slow: Project, qtbot: QtBot
) -> None:
    live.ask(slow)
    qtbot.waitUntil(lambda: pid(live) > 0, timeout=PATIENCE)
    solver = pid(live)
    live.close()
    assert live._solver.state() is QProcess.ProcessState.NotRunning
    if sys.platform != "win32":
        with pytest.raises(ProcessLookupError):
            os.kill(solver, 0)


def test_a_window_says_that_the_solver_died_and_keeps_its_plan(
    live: Planner, demo: Project, slow: Project, memory: Memory, qtbot: QtBot, qapp: object
) -> None:
    document = Document(demo)
    window = MainWindow(document, live, memory, Appearance(qapp), ScriptedAsker())  # type: ignore[arg-type]
    qtbot.addWidget(window, before_close_func=lambda _: document.undo_stack.setClean())
    window.show()
    wait(qtbot, live)
    plan = window.plan
    assert plan is not None
    at_death: list[Plan | None] = []
    live.restarted.connect(lambda: at_death.append(window.plan))
    document.edit("Add borders", lambda project: slow)
    kill(live)
    qtbot.waitUntil(lambda: window.statusBar().currentMessage() == RESTARTED, timeout=PATIENCE)
    assert at_death == [plan]
    qtbot.waitUntil(window.planning.isVisible, timeout=PATIENCE)
    document.undo_stack.undo()
    qtbot.waitUntil(lambda: not live.busy, timeout=PATIENCE)
    assert window.plan == plan
    assert not window.planning.isVisible()


def test_where_the_program_failed_the_window_plans_again_when_it_is_told_to(
    window: MainWindow, planner: PlannerHere
) -> None:
    banner, plan = window.centre.banner, window.plan
    planner.restarted.emit()
    planner.failed.emit("The solver stops each time it is started.")
    assert window.statusBar().currentMessage() == "", "what was said before is over"
    assert not banner.go.isVisible()
    assert banner.again.isVisible()
    assert window.plan is plan
    banner.again.click()
    planner.finish()
    assert not banner.isVisible()
    assert window.plan == plan


def pid(planner: Planner) -> int:
    return planner._solver.processId()


def kill(planner: Planner) -> None:
    """As the system would for want of memory."""
    os.kill(pid(planner), getattr(signal, "SIGKILL", signal.SIGTERM))
