"""`plan`: plan a project file and write the plan as words, JSON, PDF or SVG."""

from __future__ import annotations

import argparse
import re
from pathlib import Path

from app.commands.on_paper import add_format, add_packet, packet_choice_of
from app.commands.output import STANDARD_OUTPUT, json_bytes, print_lines, put_out
from app.commands.summary import summary
from core.plan import Plan, make_plan
from core.plan_json import plan_document
from core.project_file import load
from core.whole_file import write_whole

HELP = "plan a project: what to buy, what to cut, from where"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a .crossgrain project")
    parser.add_argument("--json", metavar="OUT", help="write the plan as JSON, - for here")
    parser.add_argument("--pdf", metavar="OUT", help="write the cutting packet")
    parser.add_argument("--svg", metavar="DIR", help="write a drawing a sheet of cloth")
    add_packet(parser)
    add_format(parser)


def run(arguments: argparse.Namespace) -> int:
    plan = make_plan(load(Path(arguments.file)))
    # All is made before anything is written, so that a refusal leaves no half.
    outputs: list[tuple[str, bytes]] = []
    if arguments.json:
        outputs.append((arguments.json, json_bytes(plan_document(plan))))
    if arguments.pdf:
        outputs.append((arguments.pdf, _packet(plan, arguments)))
    drawings = _drawings(plan) if arguments.svg else []
    for where, data in outputs:
        put_out(data, where)
    if arguments.svg:
        folder = Path(arguments.svg)
        folder.mkdir(parents=True, exist_ok=True)
        for name, data in drawings:
            write_whole(folder / name, data)
    if arguments.json != STANDARD_OUTPUT:
        print_lines(summary(plan))
    return 0


def _packet(plan: Plan, arguments: argparse.Namespace) -> bytes:
    from app.packet.packet import packet_bytes

    return packet_bytes(plan, packet_choice_of(arguments, plan.project.units))


def _drawings(plan: Plan) -> list[tuple[str, bytes]]:
    """A file name and an SVG for the quilt and for each sheet in use."""
    from app.paint_svg import paint_svg
    from app.style import PAPER_COLOUR
    from core.drawing.back import draw_back
    from core.drawing.cloth import Heading, draw_sheet, sheets_of
    from core.drawing.edge_map import draw_edge_map
    from core.drawing.quilt import draw_quilt

    drawings = [("quilt", draw_quilt(plan))]
    if (edge := draw_edge_map(plan)) is not None:
        drawings.append(("edge", edge))
    if (back := draw_back(plan)) is not None:
        drawings.append(("quilt from the back", back))
    for index, fabric in enumerate(plan.fabrics):
        for sheet in sheets_of(fabric):
            drawing = draw_sheet(plan, index, sheet, Heading.RIGHT)
            drawings.append((f"{index + 1} {drawing.title}", drawing))
    return [
        (f"{_file_name(name)}.svg", paint_svg(drawing, PAPER_COLOUR).encode("utf-8"))
        for name, drawing in drawings
    ]


def _file_name(title: str) -> str:
    """A title as a file name that every system takes."""
    return re.sub(r"[^\w]+", "-", title).strip("-").lower()[:80] or "cloth"
