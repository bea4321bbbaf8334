"""The window's speed: how soon it shows, how soon an edit is a picture, how smooth it stays.

Everything is drawn into memory, so the figures are those of a machine without a fast
graphics card. First paint and memory stand beside those of an empty PySide6 window,
measured in turn with ours. What two processes do together is timed by the clock on the
wall, and so wants a quiet machine; all else in CPU seconds.
"""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from fractions import Fraction
from itertools import count, pairwise
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter, process_time
from typing import TYPE_CHECKING

from core.drawing.marks import Area, Drawing, Label
from core.quilt import Project
from tests.bench.measure import percentile
from tests.bench.options import Options
from tests.bench.row import Row, milliseconds, spread

if TYPE_CHECKING:
    from app.window.canvas import Canvas
    from app.window.main_window import MainWindow

ROOT = Path(__file__).resolve().parents[2]
FRAME_MS = 16
PIECE = 10.0, 4.0  # inches, in the pictures of many
ACROSS, SHEETS = 10, 4


def window_rows(options: Options) -> Iterator[Row]:
    """All of the window's rows."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    edits = options.edits
    yield from _start_rows(max(3, edits // 10))
    with _open() as opened:
        yield from _edits(opened, edits)
        yield from _frames(opened, edits / 10)
        for pieces, most in ((500, 16), (5000, 33)):
            yield from _many(opened.centre.yardage, pieces, most, 2 * edits)


def _start_rows(count: int) -> Iterator[Row]:
    """Ours and an empty window in turn, so that both have the same machine."""
    starts = [(_start("empty"), _start("ours")) for _ in range(count)]
    bare, paint = (median(both[which][0] for both in starts) for which in (0, 1))
    planned = median(ours[1] for _, ours in starts)
    little, most = (median(both[which][2] for both in starts) for which in (0, 1))
    yield Row(
        f"window, CPU until the first paint: ours / an empty one's, median of {count}",
        f"{milliseconds(paint)} / {milliseconds(bare)}: {paint / bare:.2f} times",
        "1.5 times",
        paint <= 1.5 * bare,
        seconds=sum(planned for both in starts for _, planned, _ in both),
    )
    yield Row("… until all of it can be used and the demo's plan is seen", milliseconds(planned))
    yield Row(
        "… memory at its peak, the demo planned: the window / an empty one",
        f"{most:.0f} MB / {little:.0f} MB",
        "250 MB",
        most <= 250,
    )


def _start(which: str) -> tuple[float, float, float]:
    command = [sys.executable, "-m", "tests.bench.first_paint", which]
    done = subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True)
    painted, planned, megabytes = map(float, done.stdout.split())
    return painted, planned, megabytes


@contextmanager
def _open() -> Iterator[MainWindow]:
    """The program's window on the demo, with its solver."""
    from PySide6.QtCore import QSettings
    from PySide6.QtWidgets import QApplication

    from app.assets import asset
    from app.window.appearance import Appearance
    from app.window.document import Document
    from app.window.main import DEMO
    from app.window.main_window import MainWindow
    from app.window.memory import Memory
    from app.window.planner import Planner
    from core.project_file import load

    application = QApplication.instance() or QApplication([])
    assert isinstance(application, QApplication)
    document, planner = Document(load(asset(DEMO))), Planner()
    planner.start()
    with TemporaryDirectory() as folder:
        memory = Memory(QSettings(f"{folder}/none.ini", QSettings.Format.IniFormat))
        opened = MainWindow(document, planner, memory, Appearance(application))
        opened.show()
        _until(lambda: opened.plan is not None)
        yield opened
        document.undo_stack.setClean()
        opened.close()
        planner.close()


def _until(done: Callable[[], bool]) -> None:
    """Let the window work until then; it sleeps where it has nothing to do, as it would."""
    from PySide6.QtCore import QEventLoop, Qt, QTimer
    from PySide6.QtWidgets import QApplication

    tick = QTimer(interval=2, timerType=Qt.TimerType.PreciseTimer)
    tick.start()
    while not done():
        QApplication.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
    tick.stop()


def _edits(opened: MainWindow, count: int) -> Iterator[Row]:
    """From an edit of the quilt's width, each another one, to the picture of its plan."""
    from tests.bench.painted import Painted

    pictures, lists = [], []
    for number in range(count):
        width = str(Fraction(48) + Fraction(number + 1, 8))
        before = opened.plan
        viewport = opened.centre.yardage.viewport()
        picture = Painted(viewport, lambda before=before: opened.plan is not before)  # type: ignore[misc]
        start = perf_counter()
        opened.document.put("quilt.width", width, "Change width")
        _until(lambda picture=picture: picture.at is not None)  # type: ignore[misc]
        opened.repaint()
        lists.append(perf_counter() - start)
        pictures.append((picture.at or start) - start)
        _until(lambda: not opened.planner.busy)
    title = f"… from an edit to its picture, by the clock on the wall: {count}, median / p95"
    yield _row(title, pictures, 100)
    yield Row("… … and until every list is painted too", spread(lists), seconds=sum(lists))


def _frames(opened: MainWindow, seconds: float) -> Iterator[Row]:
    """Frames of the picture, moved about all the while, beside a solver that has seconds to do.

    The same beside a solver that rests tells what the machine and the clock do by themselves.
    """
    slow = _slow(opened.document.project)
    numbers = count(1)

    def ask() -> None:
        quilt = replace(slow.quilt, name=f"{next(numbers)}")
        opened.planner.ask(replace(slow, quilt=quilt))

    opened.centre.yardage.zoom_in()
    resting = _gaps(opened.centre.yardage, seconds / 2, lambda: None)
    working = _gaps(opened.centre.yardage, seconds, ask)
    opened.planner.ask(opened.document.project)
    _until(lambda: not opened.planner.busy)
    title = "… between two frames, by the clock"
    yield Row(f"{title}, the solver at rest: median / p95", spread(resting), seconds=sum(resting))
    yield _row(f"{title}, while it works: {len(working)}, median / p95", working, 25)


def _gaps(canvas: Canvas, seconds: float, each_half_second: Callable[[], None]) -> list[float]:
    from PySide6.QtCore import Qt, QTimer

    painted: list[float] = []

    def frame() -> None:
        pan(canvas, len(painted))
        painted.append(perf_counter())

    clock = QTimer(interval=FRAME_MS, timerType=Qt.TimerType.PreciseTimer)
    clock.timeout.connect(frame)
    clock.start()
    end = perf_counter() + seconds
    while perf_counter() < end:
        each_half_second()
        soon = perf_counter() + 0.5
        _until(lambda soon=soon: perf_counter() > soon)  # type: ignore[misc]
    clock.stop()
    return [after - before for before, after in pairwise(painted)]


def _slow(project: Project) -> Project:
    """A project with so many borders that its plan takes seconds."""
    borders = (replace(project.borders[0], width=Fraction(n, 8)) for n in range(9, 29))
    return replace(project, borders=tuple(borders))


def _many(canvas: Canvas, pieces: int, most: int, count: int) -> Iterator[Row]:
    """Moving and zooming a picture of many pieces, each with its words."""
    from app.window.drawing_item import DrawingItem

    items = []
    for sheet in range(SHEETS):
        item = DrawingItem(_sheet(pieces // SHEETS), f"sheet {sheet + 1}", canvas.theme)
        item.setPos(0, sheet * (item.boundingRect().height() + 2))
        items.append(item)
    canvas.show_items(items)
    canvas.fit_width()
    moves = _timed(canvas, count, lambda number: pan(canvas, number))
    yield _row(f"… {pieces} pieces moved by 8 pixels: median / p95", moves, most)

    def zoom(number: int) -> None:
        canvas.zoom_by(1.1 if number // 10 % 2 else 1 / 1.1)

    zooms = _timed(canvas, count, zoom)
    yield _row(f"… {pieces} pieces zoomed by a tenth: median / p95", zooms, most)
    start = process_time()
    _until(lambda: not canvas.busy)
    canvas.viewport().repaint()
    took = process_time() - start
    yield Row(f"… {pieces} pieces sharp again, in slices", milliseconds(took), seconds=took)


def _timed(canvas: Canvas, count: int, act: Callable[[int], None]) -> list[float]:
    from PySide6.QtWidgets import QApplication

    times = []
    canvas.viewport().repaint()
    for number in range(count):
        start = process_time()
        act(number)
        QApplication.processEvents()
        canvas.viewport().repaint()
        times.append(process_time() - start)
    return times


def pan(canvas: Canvas, number: int) -> None:
    """Move the picture by 8 pixels, up and down in turns of 20."""
    bar = canvas.verticalScrollBar()
    bar.setValue(bar.value() + (8 if number // 20 % 2 == 0 else -8))


def _sheet(pieces: int) -> Drawing:
    """A sheet full of equal pieces."""
    across, along = PIECE
    marks: list[Area | Label] = []
    for number in range(pieces):
        x, y = number // ACROSS * across, number % ACROSS * along
        corners = ((x, y), (x + across, y), (x + across, y + along), (x, y + along))
        key, role = f"A{number + 1}", ("border", "binding", "backing")[number // 50 % 3]
        words = f"{key}\nborder strip\n10 × 4 in", f"{key}  10 × 4 in", key
        middle = (x + across / 2, y + along / 2)
        marks += [Area(corners, role, key), Label(middle, words, PIECE, role, key)]
    return Drawing("sheet", -(-pieces // ACROSS) * across, ACROSS * along, tuple(marks))


def _row(title: str, times: list[float], most: int) -> Row:
    met = 1000 * percentile(times, 95) <= most
    return Row(title, spread(times), f"p95 {most} ms", met, seconds=sum(times))
