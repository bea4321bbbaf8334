"""Making what the window holds, a step at a time.

Each step is one turn of the event loop, so that the frame is painted before the first of
them and stays alive between them. What a step needs it imports itself: this module is
read before the frame is seen.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from importlib import import_module
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QTimer

from app.window.planner import Planner

if TYPE_CHECKING:
    from app.window.asker import Asker
    from app.window.document import Document
    from app.window.main_window import MainWindow

# Imported in turn, what others need first, so that no step takes long.
PROJECT = ("core.quilt", "core.finish.binding_plan", "core.project_file", "core.edit")
PLAN = ("core.lay.improve", "core.lay.around", "core.lay.solve", "core.cloth_lay", "core.plan")
PARTS = ("app.window.fields_layers", "app.window.part_form", "app.window.parts_panel")
PICTURES = ("core.compare.columns", "app.window.canvas", "app.window.yardage", "app.window.centre")
REST = (
    "app.window.answer_panel",
    "app.packet.choice",
    "app.window.export",
    "app.window.files",
    "app.window.autosave",
    "app.window.by_hand.hand",
    "app.window.menus",
)


def steps(
    window: MainWindow,
    opened: Callable[[], Document],
    asker: Asker | None,
    comparer: Planner | None,
) -> Iterator[None]:
    """Fill the window with the document; its plan is asked for as soon as it can be."""
    window.comparer = comparer or Planner()
    yield from _imports(PROJECT, ("app.window.document",))
    window.document = opened()
    window.listen_to_planner()
    window.planner.ask(window.document.project)
    yield from _imports(PLAN, PARTS)
    yield from _parts(window)
    yield from _imports(PICTURES)
    yield from _pictures(window)
    yield from _imports(REST)
    yield from _rest(window, asker)


def _imports(*groups: tuple[str, ...]) -> Iterator[None]:
    for group in groups:
        for name in group:
            import_module(name)
            yield


def _parts(window: MainWindow) -> Iterator[None]:
    from app.photos_qt import Photos
    from app.window.parts_panel import PartsPanel

    window.photos = Photos()
    window.parts = PartsPanel(window.document)
    yield


def _pictures(window: MainWindow) -> Iterator[None]:
    from app.window.centre import Centre

    window.centre = Centre(window.comparer)
    yield


def _rest(window: MainWindow, asker: Asker | None) -> Iterator[None]:
    from app.window.answer_panel import AnswerPanel
    from app.window.asker import Dialogs
    from app.window.autosave import Autosave
    from app.window.by_hand.hand import Hand
    from app.window.column_scroll import ColumnScroll
    from app.window.columns import Columns
    from app.window.files import Files
    from app.window.menus import Menus

    window.answer = AnswerPanel()
    yield
    window.asker = asker or Dialogs(window)
    parts = window.parts
    window.files = Files(window.document, window.asker, window.memory, parts.commit, parts.untaken)
    window.autosave = Autosave(window.document)
    window.mender = Planner
    window.leave_frame()
    window.splitter = Columns(window.parts, window.centre, ColumnScroll(window.answer))
    window.setCentralWidget(window.splitter)
    window.statusBar().addPermanentWidget(window.planning)
    window.statusBar().addPermanentWidget(window.finished)
    window.hand = Hand(window)
    window.menus = Menus(window)
    window.furnished()


class AfterPaint(QObject):
    """Takes steps one by one, once `window` was painted for the first time."""

    LONGEST_MS = 500  # for a window that starts hidden

    def __init__(self, window: MainWindow, to_do: Iterator[None]) -> None:
        super().__init__(window)
        self._to_do = to_do
        self._turns = QTimer(self, interval=0)
        self._turns.timeout.connect(self._step)
        self._start = QTimer(self, singleShot=True, interval=self.LONGEST_MS)
        self._start.timeout.connect(self._turns.start)
        self._start.start()
        window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if event.type() == QEvent.Type.Paint:
            watched.removeEventFilter(self)
            self._start.start(0)
        return False

    def _step(self) -> None:
        if next(self._to_do, self) is self:
            self._turns.stop()
