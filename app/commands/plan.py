"""`plan`: plan a project file and write the plan as words, JSON, PDF, pictures or tables."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import TypeAlias

from app.commands.on_paper import add_format, add_packet, packet_choice_of
from app.commands.output import Output, json_bytes, put_out
from app.commands.summary import summary
from app.tables import table_files
from core.language import marked, told
from core.plan import Plan, make_plan
from core.plan_json import plan_document
from core.project_file import load

FilesOf: TypeAlias = Callable[[Plan], Iterable[tuple[str, bytes]]]
HELP = marked("plan a project: what to buy, what to cut, from where")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar=told("FILE"), help=told("a .crossgrain project"))
    parser.add_argument(
        "--json", metavar=told("OUT"), help=told("write the plan as JSON, - for here")
    )
    parser.add_argument("--pdf", metavar=told("OUT"), help=told("write the cutting packet"))
    parser.add_argument("--svg", metavar=told("DIR"), help=told("write a drawing a sheet of cloth"))
    parser.add_argument("--png", metavar=told("DIR"), help=told("write the same drawings as PNG"))
    parser.add_argument(
        "--csv", metavar=told("DIR"), help=told("write tables of pieces and purchases")
    )
    add_packet(parser)
    add_format(parser)


def run(arguments: argparse.Namespace) -> int:
    plan = make_plan(load(Path(arguments.file)))
    # All is made before anything is written, so that a refusal leaves no half.
    outputs = list(_outputs(plan, arguments))
    folders = (arguments.svg, arguments.png, arguments.csv)
    put_out(outputs, arguments.file, folders=folders, words=lambda: summary(plan))
    return 0


def _outputs(plan: Plan, arguments: argparse.Namespace) -> Iterator[Output]:
    """Where to write, and what."""
    if arguments.json:
        yield arguments.json, json_bytes(plan_document(plan))
    if arguments.pdf is not None:
        yield arguments.pdf, _packet(plan, arguments)
    if arguments.svg or arguments.png:
        from app.pictures import png_files, svg_files

        yield from _in_folder(arguments.svg, svg_files, plan)
        yield from _in_folder(arguments.png, png_files, plan)
    yield from _in_folder(arguments.csv, table_files, plan)


def _in_folder(folder: str | None, files: FilesOf, plan: Plan) -> Iterator[Output]:
    """The files of a plan, where a folder is named for them."""
    if folder:
        for name, data in files(plan):
            yield str(Path(folder) / name), data


def _packet(plan: Plan, arguments: argparse.Namespace) -> bytes:
    from app.packet.choice import asked_of
    from app.packet.packet import packet_bytes

    choice = packet_choice_of(arguments, plan.project.units)
    return packet_bytes(plan, choice, asked_of(plan.project, choice.pages))
