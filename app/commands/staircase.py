"""`staircase`: where the length to buy steps up as a width grows."""

from __future__ import annotations

import argparse
from pathlib import Path

from app.commands.compare import add_place, option, place_of
from app.commands.on_paper import add_format, format_of
from app.commands.output import Output, json_bytes, put_out
from app.comparing import staircase_lines
from core.compare.choices import STRIP_WIDTH, USABLE_WIDTH, Choice
from core.compare.document import staircase_document
from core.compare.staircase import Staircase, staircase, usual_range
from core.language import marked, told
from core.lengths import Inches, LengthError, parse
from core.project_file import load
from core.quilt import Project
from core.refusal import Refusal

HELP = marked("where the length to buy steps up as the strip, or the cloth, gets wider")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar=told("FILE"), help=told("a .crossgrain project"))
    asked = parser.add_mutually_exclusive_group()
    for choice in (STRIP_WIDTH, USABLE_WIDTH):
        asked.add_argument(
            option(choice),
            dest="choice",
            action="store_const",
            const=choice,
            default=STRIP_WIDTH,
            help=told("the steps over the {choice}", choice=told(choice.name)),
        )
    parser.add_argument("--from", dest="first", metavar=told("WIDTH"), help=told("the narrowest"))
    parser.add_argument("--to", dest="last", metavar=told("WIDTH"), help=told("the widest"))
    add_place(parser)
    parser.add_argument(
        "--json", metavar=told("OUT"), help=told("write the steps as JSON, - for here")
    )
    parser.add_argument(
        "--pdf", metavar=told("OUT"), help=told("write the picture and the steps on a page")
    )
    add_format(parser)


def run(arguments: argparse.Namespace) -> int:
    project = load(Path(arguments.file))
    choice: Choice = arguments.choice
    low, high = usual_range(choice, project.units)
    first = _width(project, "--from", arguments.first, low)
    last = _width(project, "--to", arguments.last, high)
    stairs = staircase(project, choice, first, last, place_of(project, arguments, choice))
    outputs: list[Output] = []
    if arguments.json:
        outputs.append((arguments.json, json_bytes(staircase_document(stairs))))
    if arguments.pdf:
        outputs.append((arguments.pdf, _page(project, stairs, arguments)))
    lines = staircase_lines(project, stairs)
    put_out(outputs, arguments.file, words=lambda: "\n".join(lines))
    return 0


def _page(project: Project, stairs: Staircase, arguments: argparse.Namespace) -> bytes:
    from app.packet.staircase_page import staircase_bytes

    return staircase_bytes(project, stairs, format_of(arguments, project.units))


def _width(project: Project, option: str, text: str | None, usual: Inches) -> Inches:
    if text is None:
        return usual
    try:
        return parse(text, project.units)
    except LengthError as error:
        raise Refusal(option, str(error)) from None
