"""The window: parts at the left, pictures in the middle, the answer at the right."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QEvent
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QLabel

from app.window.appearance import Appearance
from app.window.frame import Frame
from app.window.furnishing import steps
from app.window.memory import Memory
from app.window.paper_work import PaperWork
from app.window.planner import Planner
from core.language import marked, told

# All else is imported where it is used: the window is seen sooner without it.
if TYPE_CHECKING:
    from app.photos_qt import Photos
    from app.window.answer_panel import AnswerPanel
    from app.window.asker import Asker
    from app.window.autosave import Autosave
    from app.window.by_hand.hand import Hand
    from app.window.centre import Centre
    from app.window.columns import Columns
    from app.window.document import Document
    from core.lengths import Units
    from core.plan import Plan
    from core.quilt import Project
    from core.refusal import Refusal
    from core.sizes import QuiltSize

TOLD_MS = 6000
RESTARTED = marked(
    "The solver stopped and was started again; the last plan stays in sight until it is done."
)
LAST_PLAN = marked("The pictures show the last plan that worked.")


class MainWindow(PaperWork):
    """Joins the document, the planner and the views; holds the last good plan.

    Without a document it is a frame, which `furnishing` fills in steps.
    """

    photos: Photos
    autosave: Autosave
    comparer: Planner
    mender: Callable[[], Planner]
    centre: Centre
    answer: AnswerPanel
    splitter: Columns
    hand: Hand

    def __init__(
        self,
        document: Document | None,
        planner: Planner,
        memory: Memory,
        appearance: Appearance,
        asker: Asker | None = None,
        comparer: Planner | None = None,
    ) -> None:
        super().__init__()
        self.memory = memory
        self.appearance = appearance
        self.planner = planner
        self.plan: Plan | None = None
        self.planning = QLabel(told("Planning…"))
        self.planning.hide()
        self.finished = QLabel()
        self._given = asker, comparer
        self._problem = ""
        self._waiting: list[Callable[[], None]] | None = []
        self._frame: Frame | None = None
        self._shape = QByteArray()
        self.statusBar()
        self.resize(1280, 780)
        if document is None:
            theme = appearance.theme()
            self._frame = Frame(self, theme.table, theme.ink)
        else:
            for _ in self.furnishing(lambda: document):
                pass

    def furnishing(self, opened: Callable[[], Document]) -> Iterator[None]:
        """The steps that fill the window with a document."""
        return steps(self, opened, *self._given)

    def when_furnished(self, act: Callable[[], None]) -> None:
        """Call `act` once everything is there, perhaps at once."""
        if self._waiting is None:
            act()
        else:
            self._waiting.append(act)

    def furnished(self) -> None:
        """Everything is there: take it into use."""
        self._connect()
        from app.window.dropping import Dropping

        self.dropping = Dropping(self)
        self.splitter.restoreState(self._shape)
        self._repaint()
        self._show_project()
        waiting, self._waiting = self._waiting or [], None
        for act in waiting:
            act()

    def leave_frame(self) -> None:
        """What the frame shows in place of something gives way to it."""
        if self._frame is not None:
            self._frame.leave()
        self._frame = None

    def listen_to_planner(self) -> None:
        """Take what the planner says; it may say it before there is a view to show it."""
        planner = self.planner
        planner.planned.connect(lambda plan: self.when_furnished(partial(self._planned, plan)))
        planner.refused.connect(lambda why: self.when_furnished(partial(self._refused, why)))
        planner.failed.connect(lambda why: self.when_furnished(partial(self._failed, why)))
        planner.restarted.connect(lambda: self.tell(told(RESTARTED)))
        planner.slow.connect(self.planning.setVisible)

    def _connect(self) -> None:
        from app.window.edge.starting import start_binding

        document = self.document
        document.changed.connect(self._changed)
        document.renamed.connect(self._retitle)
        document.renamed.connect(self._show_photos)
        document.undo_stack.cleanChanged.connect(self._retitle)
        self.files.told.connect(self.tell)
        self.files.recovered.connect(self.autosave.keep)
        self.autosave.failed.connect(self.tell)
        self.memory.failed.connect(self.tell)
        self.answer.chosen.connect(self.centre.choose)
        self.answer.asked.connect(self.parts.show_field)
        self.centre.picked.connect(self.answer.choose)
        self.centre.taken.connect(self._take)
        self.centre.edge.started.connect(partial(start_binding, document))
        self.centre.banner.go.clicked.connect(self._go_to_problem)
        self.centre.banner.again.clicked.connect(self._plan)
        self.parts.said.connect(self.tell)
        self.appearance.changed.connect(self._repaint)

    def tell(self, sentence: str) -> None:
        """Say something in passing, at the foot of the window."""
        self.statusBar().showMessage(sentence, TOLD_MS)

    def _changed(self) -> None:
        self._plan()
        self._show_project()

    def _plan(self) -> None:
        project = self.document.project
        previous, known = self.hand.previous(project), self.hand.known(project)
        if known is not None:
            self.planner.know(known)
        else:
            self.planner.ask(project, previous)

    def _show_project(self) -> None:
        self._show_photos()
        self.centre.show_project(self.document.project)
        self._retitle()

    def _show_photos(self) -> bool:
        """Look for photos of cloth beside the project's file; whether any is seen otherwise."""
        from app.photos_qt import Photos
        from app.window.document import folder_of

        folder = folder_of(self.document.path)
        if folder != self.photos.folder:
            self.photos = Photos(folder)
            self.centre.show_photos(self.photos)
        otherwise = self.photos.look_again()
        self.parts.show_photos(self.photos)
        return otherwise

    def _come_back(self) -> None:
        """Another program may have changed, moved or mended a photo meanwhile."""
        if self._show_photos() and self.plan is not None:
            self.centre.show_plan(self.plan)

    def _retitle(self) -> None:
        self.setWindowTitle(f"{self.document.name}[*] – Crossgrain")
        self.setWindowModified(not self.document.undo_stack.isClean())
        self.setWindowFilePath(str(self.document.path or ""))
        self.menus.show_units(self.document.project.units)

    def _planned(self, plan: Plan) -> None:
        """A new plan: every view shows it, the picture first."""
        from core.lengths import show, typeset

        self.plan = plan
        self.hand.keep(plan, whole=not self.planner.busy)
        self.centre.banner.tell("")
        self.parts.clear_refusal()
        self.centre.show_plan(plan)
        self.centre.canvas.viewport().repaint()
        self.parts.show_plan(plan)
        self.answer.show_plan(plan)
        units = plan.project.units
        width = show(plan.finished_width, units, unit=False)
        length = show(plan.finished_length, units)
        words = told("Quilt with its borders {width} × {length}", width=width, length=length)
        self.finished.setText(typeset(words))

    def _refused(self, refusal: Refusal) -> None:
        """No plan to be had: say why, keep the last good one in sight."""
        from app.window.fields import part_name

        self._problem = refusal.path
        self.parts.show_plan(None)
        self.parts.show_refusal(refusal)
        part = refusal.path.partition(".")[0]
        name = f"{part_name(self.document.form, part)}: " if part else ""
        self.centre.banner.tell(f"{name}{refusal.sentence}. {self._kept()}".strip())

    def _failed(self, sentence: str) -> None:
        """The program could not plan, which is no fault of the project's."""
        self.parts.show_plan(None)
        self.tell("")
        self.centre.banner.tell(f"{sentence} {self._kept()}".strip(), leads=False)

    def _kept(self) -> str:
        return told(LAST_PLAN) if self.plan else ""

    def _go_to_problem(self) -> None:
        self.parts.show_field(self._problem)

    def _take(self, project: Project, phrase: str) -> None:
        """A compared value becomes the project's, as one step to undo."""
        self.document.edit(phrase, lambda _: project)

    def new(self, size: QuiltSize | None = None) -> None:
        """Start a new quilt, the cursor in its name."""
        if self.files.new(size):
            self.parts.show_field("quilt.name")

    def set_units(self, units: Units) -> None:
        """Show and write lengths in other units; nothing is rounded."""
        from core import edit

        self.document.edit(told("Change units"), lambda project: edit.set_units(project, units))

    def go_to_column(self, step: int) -> None:
        """Go on with the keys in another column: the parts, the picture in front, the answer."""
        from app.window.stops import enter, next_of

        column = next_of((self.parts, self.centre, self.answer), step)
        enter(self.centre.tabs.currentWidget() if column is self.centre else column)

    def cut_at_table(self) -> None:
        """Lead through the cuts, over the whole screen."""
        from app.window.cutting.open_table import open_table

        self.parts.commit()
        self.planner.when_settled(lambda: open_table(self, self.mender))

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        if self._waiting is not None:  # nothing can have been changed yet
            event.accept()
            return
        if not self.files.may_leave():
            event.ignore()
            return
        self.memory.keep_shape("window", self.saveGeometry())
        self.memory.keep_shape("splitter", self.splitter.saveState())
        self.autosave.let_go()
        self.files.let_go()
        self.comparer.close()
        event.accept()

    def restore_shape(self) -> None:
        """Take the size and place of last time, if there was one."""
        self.restoreGeometry(self.memory.shape("window"))
        self._shape = self.memory.shape("splitter")
        if self._waiting is None:
            self.splitter.restoreState(self._shape)

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and hasattr(self, "centre"):
            self.appearance.follow()
        came = event.type() == QEvent.Type.ActivationChange and self.isActiveWindow()
        if came and self._waiting is None:
            self._come_back()

    def _repaint(self) -> None:
        theme = self.appearance.theme()
        self.centre.set_theme(theme)
        self.splitter.make_room(theme.words)
