"""What the window writes and prints: the packet, drawings, pictures and tables."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QMainWindow

from app.window.memory import Memory
from app.window.planner import Planner
from core.language import told, told_count

# All else is imported where it is used: the window is seen sooner without it.
if TYPE_CHECKING:
    from app.packet.choice import Asked, PacketChoice
    from app.packet.paper import Paper
    from app.window.asker import Asker
    from app.window.document import Document
    from app.window.export import Kind
    from app.window.files import Files
    from app.window.menus import Menus
    from app.window.parts_panel import PartsPanel
    from core.plan import Plan


class PaperWork(QMainWindow):
    """A window that can put its plan on paper and into files."""

    document: Document
    asker: Asker
    parts: PartsPanel
    files: Files
    menus: Menus
    memory: Memory
    planner: Planner
    plan: Plan | None

    def tell(self, sentence: str) -> None:
        """Say something in passing."""
        raise NotImplementedError

    def paper(self) -> Paper:
        """The paper to export for."""
        from app.packet.paper import Paper
        from app.window.export import usual_paper

        return Paper(self.memory.text("paper", usual_paper().value))

    def set_paper(self, paper: Paper) -> None:
        """Export for another paper from now on."""
        self.memory.keep("paper", paper.value)

    def export(self) -> None:
        """Write the packet as a PDF, once the plan of what was typed last is there."""
        self.parts.commit()
        self.planner.when_settled(self._export)

    def print_packet(self) -> None:
        """Show the packet's pages, to choose, print and save."""
        self.parts.commit()
        self.planner.when_settled(self._print_packet)

    def _print_packet(self) -> None:
        from app.window.export import planned

        plan = planned(self.document, self.plan, self.asker, told("Print the packet"))
        if plan is None:
            return
        from PySide6.QtCore import Qt

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

    def _export(self, choice: PacketChoice | None = None, asked: Asked | None = None) -> None:
        from app.packet.choice import NOTHING_ASKED, PacketChoice
        from app.packet.paper import Format
        from app.window.export import export

        wanted = choice or PacketChoice(form=Format(self.paper()))
        path = export(self.document, self.plan, self.asker, wanted, asked or NOTHING_ASKED)
        if path is not None:
            self._exported(path.name)

    def export_files(self, kind: Kind) -> None:
        """Write pictures or tables into a folder, once the plan of what was typed last is there."""
        self.parts.commit()
        self.planner.when_settled(lambda: self._export_files(kind))

    def _export_files(self, kind: Kind) -> None:
        from app.window.export import export_files

        written = export_files(self.document, self.plan, self.asker, kind)
        if written:
            count = len(written)
            into = written[0].parent.name
            files = told_count(
                "{count} file into {folder}", "{count} files into {folder}", count, folder=into
            )
            self._exported(files)

    def _exported(self, what: str) -> None:
        if left_out := self.files.left_out():
            said = told("{files} was written, but not with all you typed", files=what)
            self.asker.tell(said, left_out)
        self.tell(told("Exported {files}", files=what))
