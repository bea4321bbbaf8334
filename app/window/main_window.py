"""The window: parts at the left, pictures in the middle, the answer at the right."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QLabel, QMainWindow

from app.packet.choice import NOTHING_ASKED, Asked, PacketChoice
from app.packet.paper import Format, Paper
from app.photos_qt import Photos
from app.window.answer_panel import AnswerPanel
from app.window.appearance import Appearance
from app.window.asker import Asker, Dialogs
from app.window.autosave import Autosave
from app.window.by_hand.hand import Hand
from app.window.centre import Centre
from app.window.column_scroll import ColumnScroll
from app.window.columns import Columns
from app.window.cutting.open_table import open_table
from app.window.document import Document, folder_of
from app.window.edge.starting import start_binding
from app.window.export import Kind, export, export_files, planned, usual_paper
from app.window.fields import part_name
from app.window.files import Files
from app.window.memory import Memory
from app.window.menus import Menus
from app.window.parts_panel import PartsPanel
from app.window.planner import Planner
from core import edit
from core.lengths import Units, show, typeset
from core.plan import Plan
from core.project_file import SUFFIX
from core.quilt import Project
from core.refusal import Refusal
from core.sizes import QuiltSize

TOLD_MS = 6000
RESTARTED = (
    "The solver stopped and was started again; the last plan stays in sight until it is done."
)
LAST_PLAN = " The pictures show the last plan that worked."


class MainWindow(QMainWindow):
    """Joins the document, the planner and the views; holds the last good plan."""

    def __init__(
        self,
        document: Document,
        planner: Planner,
        memory: Memory,
        appearance: Appearance,
        asker: Asker | None = None,
        comparer: Planner | None = None,
    ) -> None:
        super().__init__()
        self.document = document
        self.memory = memory
        self.appearance = appearance
        self.asker = asker or Dialogs(self)
        self.plan: Plan | None = None
        self.photos = Photos()
        self.planner = planner
        self.parts = PartsPanel(document)
        self.files = Files(document, self.asker, memory, self.parts.commit, self.parts.untaken)
        self.autosave = Autosave(document)
        self.comparer = comparer or Planner()
        self.mender: Callable[[], Planner] = Planner
        self.centre = Centre(self.comparer)
        self.answer = AnswerPanel()
        self.planning = QLabel("Planning…")
        self.finished = QLabel()
        self._lay_out()
        self.hand = Hand(self)
        self.menus = Menus(self)
        self._connect()
        self._changed()

    def _lay_out(self) -> None:
        self.splitter = Columns(self.parts, self.centre, ColumnScroll(self.answer))
        self.setCentralWidget(self.splitter)
        self.planning.hide()
        self.statusBar().addPermanentWidget(self.planning)
        self.statusBar().addPermanentWidget(self.finished)
        self.setAcceptDrops(True)
        self.resize(1280, 780)
        self._repaint()

    def _connect(self) -> None:
        document = self.document
        document.changed.connect(self._changed)
        document.renamed.connect(self._retitle)
        document.renamed.connect(self._show_photos)
        document.undo_stack.cleanChanged.connect(self._retitle)
        self.planner.planned.connect(self._planned)
        self.planner.refused.connect(self._refused)
        self.planner.failed.connect(self._failed)
        self.planner.restarted.connect(lambda: self.tell(RESTARTED))
        self.planner.slow.connect(self.planning.setVisible)
        self.files.told.connect(self.tell)
        self.files.recovered.connect(self.autosave.keep)
        self.autosave.failed.connect(self.tell)
        self.answer.chosen.connect(self.centre.choose)
        self.answer.asked.connect(self.parts.show_field)
        self.centre.picked.connect(self.answer.choose)
        self.centre.taken.connect(self._take)
        self.centre.edge.started.connect(partial(start_binding, document))
        self.centre.banner.go.clicked.connect(self._go_to_problem)
        self.parts.said.connect(self.tell)
        self.appearance.changed.connect(self._repaint)
        self._problem = ""

    def tell(self, sentence: str) -> None:
        """Say something in passing, at the foot of the window."""
        self.statusBar().showMessage(sentence, TOLD_MS)

    def _changed(self) -> None:
        project = self.document.project
        self.planner.ask(project, self.hand.previous(project))
        self._show_photos()
        self.centre.show_project(project)
        self._retitle()

    def _show_photos(self) -> None:
        """Look for photos of cloth beside the project's file."""
        folder = folder_of(self.document.path)
        if folder != self.photos.folder:
            self.photos = Photos(folder)
            self.centre.show_photos(self.photos)
        self.photos.look_again()
        self.parts.show_photos(self.photos)

    def _retitle(self) -> None:
        self.setWindowTitle(f"{self.document.name}[*] – Crossgrain")
        self.setWindowModified(not self.document.undo_stack.isClean())
        self.setWindowFilePath(str(self.document.path or ""))
        self.menus.show_units(self.document.project.units)

    def _planned(self, plan: Plan) -> None:
        """A new plan: every view shows it."""
        self.plan = plan
        self.hand.keep(plan)
        self.centre.banner.tell("")
        self.parts.clear_refusal()
        self.parts.show_plan(plan)
        self.centre.show_plan(plan)
        self.answer.show_plan(plan)
        units = plan.project.units
        width = show(plan.finished_width, units, unit=False)
        length = show(plan.finished_length, units)
        self.finished.setText(typeset(f"Quilt with its borders {width} × {length}"))

    def _refused(self, refusal: Refusal) -> None:
        """No plan to be had: say why, keep the last good one in sight."""
        self._problem = refusal.path
        self.parts.show_plan(None)
        self.parts.show_refusal(refusal)
        part = refusal.path.partition(".")[0]
        name = f"{part_name(self.document.form, part)}: " if part else ""
        self.centre.banner.tell(f"{name}{refusal.sentence}.{self._kept()}")

    def _failed(self, sentence: str) -> None:
        """The program could not plan, which is no fault of the project's."""
        self.parts.show_plan(None)
        self.centre.banner.tell(f"{sentence}{self._kept()}", leads=False)

    def _kept(self) -> str:
        return LAST_PLAN if self.plan else ""

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
        self.document.edit("Change units", lambda project: edit.set_units(project, units))

    def paper(self) -> Paper:
        """The paper to export for."""
        return Paper(self.memory.text("paper", usual_paper().value))

    def set_paper(self, paper: Paper) -> None:
        """Export for another paper from now on."""
        self.memory.keep("paper", paper.value)

    def export(self) -> None:
        """Write the packet as a PDF, once the plan of what was typed last is there."""
        self.parts.commit()
        self.planner.when_settled(self._export)

    def cut_at_table(self) -> None:
        """Lead through the cuts, over the whole screen."""
        self.parts.commit()
        self.planner.when_settled(lambda: open_table(self, self.mender))

    def print_packet(self) -> None:
        """Show the packet's pages, to choose, print and save."""
        self.parts.commit()
        self.planner.when_settled(self._print_packet)

    def _print_packet(self) -> None:
        plan = planned(self.document, self.plan, self.asker, "Print the packet")
        if plan is None:
            return
        # Imported only now: the window opens sooner without it.
        from app.window.packet_dialog import PacketDialog
        from app.window.packet_memory import remembered

        dialog = PacketDialog(plan, remembered(self.memory, self.paper()), self._export, self)
        dialog.finished.connect(lambda _: self._chosen(dialog.choice))
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.open()

    def _chosen(self, choice: PacketChoice) -> None:
        """What was chosen of the packet is where the next one starts."""
        from app.window.packet_memory import remember

        remember(self.memory, choice)
        self.menus.show_paper(choice.form.paper)

    def _export(self, choice: PacketChoice | None = None, asked: Asked = NOTHING_ASKED) -> None:
        wanted = choice or PacketChoice(form=Format(self.paper()))
        path = export(self.document, self.plan, self.asker, wanted, asked)
        if path is not None:
            self._exported(path.name)

    def export_files(self, kind: Kind) -> None:
        """Write pictures or tables into a folder, once the plan of what was typed last is there."""
        self.parts.commit()
        self.planner.when_settled(lambda: self._export_files(kind))

    def _export_files(self, kind: Kind) -> None:
        written = export_files(self.document, self.plan, self.asker, kind)
        if written:
            self._exported(f"{len(written)} files into {written[0].parent.name}")

    def _exported(self, what: str) -> None:
        if left_out := self.files.left_out():
            self.asker.tell(f"{what} was written, but not with all you typed", left_out)
        self.tell(f"Exported {what}")

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
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
        self.splitter.restoreState(self.memory.shape("splitter"))

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and hasattr(self, "centre"):
            self.appearance.follow()

    def _repaint(self) -> None:
        theme = self.appearance.theme()
        self.centre.set_theme(theme)
        self.splitter.make_room(theme.words)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:  # noqa: N802 - Qt's name
        if _dropped(event) is not None:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: N802 - Qt's name
        if (path := _dropped(event)) is not None:
            event.acceptProposedAction()
            self.files.open_path(path)


def _dropped(event: QDropEvent) -> Path | None:
    """The project file that is being dropped, if it is one."""
    paths = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
    return paths[0] if len(paths) == 1 and paths[0].suffix == SUFFIX else None
