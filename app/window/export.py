"""Exporting the plan on screen: the packet as a PDF, pictures and tables into a folder."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import Enum, auto
from os.path import exists
from pathlib import Path

from PySide6.QtCore import QLocale

from app.packet.choice import NOTHING_ASKED, Asked, PacketChoice
from app.packet.paper import Paper
from app.window.asker import Asker, packets
from app.window.document import Document
from app.window.files import file_name, reason
from core.language import marked, told
from core.plan import Plan
from core.whole_file import write_whole


def usual_paper() -> Paper:
    """Letter where lengths are in inches, else A4."""
    metric = QLocale().measurementSystem() is QLocale.MeasurementSystem.MetricSystem
    return Paper.A4 if metric else Paper.LETTER


def planned(document: Document, plan: Plan | None, asker: Asker, title: str) -> Plan | None:
    """The plan of the project as it stands; where there is none, it is said under `title`."""
    if plan is None or plan.project != document.project:
        asker.tell(
            title, told("The project as it stands has no plan: mend the marked field first.")
        )
        return None
    return plan


def export(
    document: Document,
    plan: Plan | None,
    asker: Asker,
    choice: PacketChoice,
    asked: Asked = NOTHING_ASKED,
) -> Path | None:
    """Ask where, and write the packet there; the file, or None if none was written."""
    title = told("Export a PDF")
    plan = planned(document, plan, asker, title)
    if plan is None:
        return None
    name = file_name(document.project.quilt.name, ".pdf")
    path = asker.file_to_save(title, _folder(document) / name, packets())
    if path is None:
        return None
    # Imported only now: the window opens sooner without it.
    from app.packet.packet import packet_bytes

    written = _write({path: packet_bytes(plan, choice, asked)}, asker)
    return path if written else None


class Kind(Enum):
    """Ways out into a folder, several files at a time."""

    SVG = auto()
    PNG = auto()
    CSV = auto()


# What a dialog is about, and what it asks for.
_TITLES = {
    Kind.SVG: marked("Export SVG drawings"),
    Kind.PNG: marked("Export PNG pictures"),
    Kind.CSV: marked("Export tables"),
}
_WHERE = {
    Kind.SVG: marked("Export SVG drawings: the folder"),
    Kind.PNG: marked("Export PNG pictures: the folder"),
    Kind.CSV: marked("Export tables: the folder"),
}


def export_files(
    document: Document, plan: Plan | None, asker: Asker, kind: Kind
) -> tuple[Path, ...]:
    """Ask for a folder, and write a plan's files there; those files, if all were written."""
    plan = planned(document, plan, asker, told(_TITLES[kind]))
    if plan is None or (folder := asker.folder(told(_WHERE[kind]), _folder(document))) is None:
        return ()
    files = {folder / name: data for name, data in _made(plan, kind)}
    old = [path.name for path in files if exists(path)]
    if old and not asker.go_on(
        told("Files of these names are there already"),
        told("In {folder}: {files}.", folder=folder, files=", ".join(old)),
        told("Replace them"),
    ):
        return ()
    return _write(files, asker)


def _made(plan: Plan, kind: Kind) -> Iterable[tuple[str, bytes]]:
    # Imported only now: the window opens sooner without them.
    from app.pictures import png_files, svg_files
    from app.tables import table_files

    return {Kind.SVG: svg_files, Kind.PNG: png_files, Kind.CSV: table_files}[kind](plan)


def _write(files: Mapping[Path, bytes], asker: Asker) -> tuple[Path, ...]:
    """Write each file whole, and return them; nothing if one cannot be, which is told."""
    written: list[Path] = []
    for path, data in files.items():
        try:
            write_whole(path, data)
        except OSError as error:
            said = reason(error, path)
            if written:
                done, all_ = len(written), len(files)
                said += " " + told("Written before it: {done} of {all}.", done=done, all=all_)
            asker.tell(told("{file} was not written", file=path.name), said)
            return ()
        written.append(path)
    return tuple(written)


def _folder(document: Document) -> Path:
    """Where to start: beside the document."""
    return document.path.parent if document.path else Path.home()
