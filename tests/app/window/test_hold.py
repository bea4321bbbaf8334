"""Two windows on one file are noticed, and so is a file that changed under the window."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from app.window.hold import Hold
from app.window.main_window import MainWindow
from core.project_file import load, save
from core.quilt import Project
from tests.app.window.conftest import ScriptedAsker

# A window of another process that has the file open, until its input ends or it is killed.
OTHER = """
import sys
from pathlib import Path
from app.window.hold import Hold
hold = Hold()
print(repr(hold.take(Path(sys.argv[1]))), flush=True)
sys.stdin.read()
hold.let_go()
"""


class Other:
    """That process."""

    def __init__(self, path: Path) -> None:
        self.process = subprocess.Popen(
            [sys.executable, "-c", OTHER, str(path)],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            cwd=Path(__file__).parents[3],
        )
        assert self.process.stdout is not None
        self.said = self.process.stdout.readline().decode().strip()

    def end(self, *, killed: bool) -> None:
        if killed:
            self.process.kill()
        self.process.communicate()


@pytest.fixture
def path(tmp_path: Path, demo: Project) -> Path:
    save(demo, tmp_path / "quilt.crossgrain")
    return tmp_path / "quilt.crossgrain"


@pytest.mark.parametrize("killed", [False, True], ids=["closed", "killed"])
def test_a_file_is_held_until_the_other_window_ends(path: Path, killed: bool) -> None:
    other = Other(path)
    assert other.said == "''"
    hold = Hold()
    assert f"process {other.process.pid}" in hold.take(path)
    other.end(killed=killed)
    assert hold.take(path) == ""
    assert hold.take(path) == "", "one's own hold is no other's"
    hold.let_go()
    assert [found.name for found in path.parent.iterdir()] == ["quilt.crossgrain"]


def test_holding_another_file_lets_go_of_the_first(path: Path) -> None:
    hold, late = Hold(), Hold()
    hold.take(path)
    assert late.take(path)
    hold.take(path.with_name("second.crossgrain"))
    assert late.take(path) == ""
    hold.let_go()
    late.let_go()


def test_a_folder_that_cannot_be_written_holds_nobody_up(tmp_path: Path) -> None:
    assert Hold().take(tmp_path / "no such folder" / "quilt.crossgrain") == ""


@pytest.mark.parametrize("goes_on", [True, False])
def test_opening_a_file_that_another_window_has_asks_first(
    window: MainWindow, asker: ScriptedAsker, path: Path, goes_on: bool
) -> None:
    before = window.document.project
    other = Other(path)
    asker.goes_on = goes_on
    window.files.open_path(path)
    assert "quilt.crossgrain is open in another window" in asker.asked[0]
    assert (window.document.path == path) is goes_on
    assert (window.document.project is before) is not goes_on
    other.end(killed=False)


def test_a_window_holds_its_file_and_lets_go_when_it_closes(window: MainWindow, path: Path) -> None:
    window.files.open_path(path)
    hold = Hold()
    assert hold.take(path)
    window.close()
    assert hold.take(path) == ""
    hold.let_go()


def test_a_file_that_will_not_open_leaves_the_hold_where_it_was(
    window: MainWindow, path: Path
) -> None:
    window.files.open_path(path)
    bad = path.with_name("bad.crossgrain")
    bad.write_text("{")
    window.files.open_path(bad)
    hold = Hold()
    assert hold.take(path)
    assert hold.take(bad) == ""
    hold.let_go()


@pytest.mark.parametrize("goes_on", [True, False])
def test_a_file_that_was_changed_meanwhile_is_not_replaced_unasked(
    window: MainWindow, asker: ScriptedAsker, path: Path, demo: Project, goes_on: bool
) -> None:
    window.files.open_path(path)
    window.document.put("quilt.width", "50", "Change width")
    path.write_text(path.read_text() + "\n")
    asker.goes_on = goes_on
    assert window.files.save() is goes_on
    assert "was changed by another window or program" in asker.asked[0]
    assert load(path).quilt.width == (50 if goes_on else demo.quilt.width)
    assert window.isWindowModified() is not goes_on


def test_a_file_of_ones_own_is_saved_again_and_again_unasked(
    window: MainWindow, asker: ScriptedAsker, path: Path
) -> None:
    window.files.open_path(path)
    for width in ("50", "51", "52"):
        window.document.put("quilt.width", width, "Change width")
        assert window.files.save()
    path.unlink()
    window.document.put("quilt.width", "53", "Change width")
    assert window.files.save(), "a file that has gone is written anew"
    assert asker.asked == []
