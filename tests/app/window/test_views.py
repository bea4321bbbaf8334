"""Views draw and say what a plan holds; none of them works anything out."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

WINDOW = Path(__file__).resolve().parents[3] / "app" / "window"
MODULES = sorted(WINDOW.glob("*.py"))
# Where plans are worked out: in the solver's process alone.
WORKING = (
    "app.solver.work",
    "core.finish",
    "core.lay.solve",
    "core.lay.bound",
    "core.lay.check",
    "core.plan.make_plan",
    "core.ways",
)


def imported(source: str) -> set[str]:
    """Every name imported, as "core.plan.make_plan"."""
    names: set[str] = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            names |= {f"{node.module}.{alias.name}" for alias in node.names}
    return names


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.stem)
def test_a_view_imports_nothing_that_works_plans_out(path: Path) -> None:
    names = imported(path.read_text(encoding="utf-8"))
    # A part's plan is a value to show, whichever module it is defined in.
    values = {name for name in names if name.endswith("Plan")}
    assert not [name for name in names - values if name.startswith(WORKING)]


def test_a_planted_import_is_seen() -> None:
    planted = "def late():\n    from core.finish.binding import plan_binding"
    assert any(name.startswith(WORKING) for name in imported(planted))


# Starts the program as a person does, but lets go after the first plan is painted.
START = """
import sys
from pathlib import Path
from PySide6.QtWidgets import QApplication
from PySide6.QtTest import QTest

def look(self=None):
    [window] = [w for w in QApplication.topLevelWidgets() if type(w).__name__ == "MainWindow"]
    assert window.isVisible()
    while window.plan is None:
        QTest.qWait(10)
    print(window.windowTitle(), window.plan.project.quilt.name)
    print(*sorted({name.partition(".")[0] for name in sys.modules} & {"reportlab", "shapely"}))
    if "asked" in sys.argv:
        path = str(asset("tide-pool-runner.crossgrain"))
        QApplication.sendEvent(QApplication.instance(), QFileOpenEvent(path))
        print(window.windowTitle())
    if "discard" in sys.argv:
        window.document.put("quilt.length", "61", "Change length")
        window.asker.about_changes = lambda name, left_out: Answer.DISCARD
    return 0 if window.close() else 1

QApplication.exec = look
from PySide6.QtGui import QFileOpenEvent
from app.assets import asset
from app.window.asker import Answer
from app.window.main import run
paths = [Path(word) for word in sys.argv[1:] if word not in ("discard", "asked")]
sys.exit(run([], paths[0] if paths else None))
"""


def started(tmp_path: Path, *argv: str) -> list[str]:
    done = subprocess.run(
        [sys.executable, "-X", "faulthandler", "-W", "error", "-c", START, *argv],
        cwd=WINDOW.parents[1],
        env={"PATH": "", "HOME": str(tmp_path), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    complaints = [line for line in done.stderr.splitlines() if "propagateSizeHints" not in line]
    assert complaints == []
    assert done.returncode == 0
    return done.stdout.splitlines()


def test_the_program_opens_on_the_demo_without_a_word_of_complaint(tmp_path: Path) -> None:
    title, modules = started(tmp_path)
    assert title == "Harbour Lights[*] – Crossgrain Harbour Lights"
    assert modules == "", "what only an export needs is loaded when the window opens"


def test_the_program_leaves_discarded_changes_without_a_word_of_complaint(tmp_path: Path) -> None:
    started(tmp_path, "discard")


def test_a_file_that_the_system_hands_over_is_opened(tmp_path: Path) -> None:
    assert started(tmp_path, "asked")[-1].startswith("tide-pool-runner.crossgrain[*]")


def test_the_program_opens_on_a_file(tmp_path: Path) -> None:
    file = WINDOW.parents[1] / "assets" / "tide-pool-runner.crossgrain"
    assert started(tmp_path, str(file))[0].startswith("tide-pool-runner.crossgrain[*]")
