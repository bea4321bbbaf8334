"""Killed at any moment while editing and saving, the program loses two seconds at most.

`--kills=200` makes so many; a few are made in each run.
"""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random
from time import monotonic, sleep

import pytest

from app.window.autosave import left_behind
from core.project_file import load
from core.quilt import Project

AT_ONCE = 8
FIRST, LAST = 0.3, 4.0  # seconds after the first edit, between which a program is killed
MOST_LOST = 2.0  # seconds
BUSY = 0.5  # seconds more for a machine that has other things to do

# Edits and saves as fast as it may, telling each one after it was done. Edit n makes the
# quilt n inches wide.
PROGRAM = """
import random, sys, time
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from app.assets import asset
from app.window.autosave import Autosave
from app.window.document import Document
from core.project_file import load

folder, rng = Path(sys.argv[1]), random.Random(sys.argv[2])
application = QApplication([])
document = Document(load(asset("harbour-lights.crossgrain")))
autosave = Autosave(document, folder)
saving = rng.choice((0, 0.005, 0.1))
number = 1

def act():
    global number
    if rng.random() < saving:
        document.save(folder / "quilt.crossgrain")
        print("saved", number, time.monotonic(), flush=True)
    else:
        number += 1
        document.put("quilt.width", str(number), "Change width")
        print("edited", number, time.monotonic(), flush=True)
    timer.start(rng.randrange(30))

timer = QTimer(singleShot=True)
timer.timeout.connect(act)
document.put("quilt.width", str(number), "Change width")
document.save(folder / "quilt.crossgrain")
print("ready", number, time.monotonic(), flush=True)
act()
application.exec()
"""


@dataclass(frozen=True, slots=True)
class Death:
    """What a killed program had said, when it was killed, and what it left."""

    lines: list[tuple[str, int, float]]
    moment: float
    saved: Project
    kept: Project | None

    def last(self, word: str, before: float) -> int:
        """The number of the last edit that was done, or saved, before a moment."""
        said = (number for what, number, time in self.lines if what == word and time <= before)
        return max(said, default=1)


class Run:
    """A program on its way to being killed."""

    def __init__(self, folder: Path, seed: int) -> None:
        folder.mkdir()
        self.folder = folder
        self.after = Random(seed).uniform(FIRST, LAST)
        self.log = folder / "said.txt"
        with self.log.open("wb") as log:
            command = [sys.executable, "-c", PROGRAM, str(folder), str(seed)]
            root = Path(__file__).parents[3]
            self.process = subprocess.Popen(command, stdout=log, cwd=root)

    def kill(self) -> Death:
        while b"ready" not in self.log.read_bytes():
            assert self.process.poll() is None, "it could not start"
            sleep(0.02)
        ready = float(self.log.read_text().split()[2])
        sleep(max(0.0, ready + self.after - monotonic()))
        moment = monotonic()
        self.process.kill()
        self.process.wait()
        said = [line.split() for line in self.log.read_text().splitlines(keepends=True)]
        lines = [(line[0], int(line[1]), float(line[2])) for line in said if len(line) == 3]
        kept = left_behind(self.folder)
        found = kept[0].project if kept else None
        for one in kept:
            one.remove()
        return Death(lines, moment, load(self.folder / "quilt.crossgrain"), found)


def deaths(count: int, folder: Path) -> Iterator[Death]:
    """So many programs killed, a few of them running at once."""
    for first in range(0, count, AT_ONCE):
        wave = range(first, min(first + AT_ONCE, count))
        runs = [Run(folder / str(seed), seed) for seed in wave]
        for run in sorted(runs, key=lambda run: run.after):
            yield run.kill()


def test_a_killed_program_loses_two_seconds_at_most_and_harms_no_saved_file(
    tmp_path: Path, request: pytest.FixtureRequest, qapp: object
) -> None:
    count = request.config.getoption("--kills")
    kept = 0
    for death in deaths(count, tmp_path):
        edited = death.last("edited", death.moment)
        assert edited > 1
        # One save more may have been done than was told.
        assert death.last("saved", death.moment) <= death.saved.quilt.width <= edited + 1
        best = death.kept or death.saved
        assert best.quilt.width >= death.last("edited", death.moment - MOST_LOST - BUSY)
        kept += death.kept is not None
    assert kept > 0, "some must have died with changes that were not saved"
