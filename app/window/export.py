"""Exporting the packet: a PDF of the plan on screen."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QLocale

from app.packet.choice import PacketChoice
from app.packet.paper import Paper
from app.window.asker import PACKETS, Asker
from app.window.document import Document
from app.window.files import file_name, reason
from core.plan import Plan


def usual_paper() -> Paper:
    """Letter where lengths are in inches, else A4."""
    metric = QLocale().measurementSystem() is QLocale.MeasurementSystem.MetricSystem
    return Paper.A4 if metric else Paper.LETTER


def planned(document: Document, plan: Plan | None, asker: Asker, title: str) -> Plan | None:
    """The plan of the project as it stands; where there is none, it is said under `title`."""
    if plan is None or plan.project != document.project:
        asker.tell(title, "The project as it stands has no plan: mend the marked field first.")
        return None
    return plan


def export(
    document: Document, plan: Plan | None, asker: Asker, choice: PacketChoice
) -> Path | None:
    """Ask where, and write the packet there; the file, or None if none was written."""
    title = "Export a PDF"
    plan = planned(document, plan, asker, title)
    if plan is None:
        return None
    name = file_name(document.project.quilt.name, ".pdf")
    folder = document.path.parent if document.path else Path.home()
    path = asker.file_to_save(title, folder / name, PACKETS)
    if path is None:
        return None
    # Imported only now: the window opens sooner without it.
    from app.packet.packet import write_packet

    try:
        write_packet(plan, path, choice)
    except OSError as error:
        asker.tell(f"{path.name} was not written", reason(error, path))
        return None
    return path
