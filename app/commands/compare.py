"""`compare`: one choice of a project over several values, side by side."""

from __future__ import annotations

import argparse
from pathlib import Path

from app.commands.on_paper import add_format, format_of
from app.commands.output import Output, json_bytes, put_out
from app.comparing import comparison_lines
from core.compare.choices import CHOICES, Choice
from core.compare.columns import Comparison, compare
from core.compare.document import comparison_document
from core.language import marked, told
from core.lengths import Units
from core.project_file import load
from core.quilt import Project
from core.refusal import Refusal

HELP = marked("compare values of one choice, such as --strip-width 2 --strip-width '2 1/4'")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar=told("FILE"), help=told("a .crossgrain project"))
    for choice in CHOICES:
        parser.add_argument(
            option(choice),
            action="append",
            metavar=told("VALUE"),
            dest=choice.name,
            help=told("a {choice} to compare; give two to six", choice=told(choice.name)),
        )
    add_place(parser)
    parser.add_argument(
        "--json", metavar=told("OUT"), help=told("write the comparison as JSON, - for here")
    )
    parser.add_argument("--pdf", metavar=told("OUT"), help=told("write it on one page"))
    add_format(parser)


def option(choice: Choice) -> str:
    """ "strip width" is asked for by --strip-width."""
    return f"--{choice.name.replace(' ', '-')}"


def add_place(parser: argparse.ArgumentParser) -> None:
    """Which of several borders or fabrics a choice is about."""
    parser.add_argument("--border", type=int, metavar=told("N"), help=told("which border, from 1"))
    parser.add_argument(
        "--of", metavar=told("FABRIC"), help=told("which fabric; else the binding's")
    )


def place_of(project: Project, arguments: argparse.Namespace, choice: Choice) -> int | None:
    """The place that --border or --of names, else None. Raises `Refusal`."""
    if choice.part == "borders" and arguments.border is not None:
        return int(arguments.border) - 1
    if choice.part == "fabrics" and arguments.of is not None:
        names = [fabric.name for fabric in project.fabrics]
        if arguments.of not in names:
            raise Refusal(
                "--of",
                told("no fabric is called {name}; write one of the project's", name=arguments.of),
            )
        return names.index(arguments.of)
    return None


def run(arguments: argparse.Namespace) -> int:
    project = load(Path(arguments.file))
    comparison = _compared(project, arguments)
    outputs: list[Output] = []
    if arguments.json:
        outputs.append((arguments.json, json_bytes(comparison_document(comparison))))
    if arguments.pdf:
        outputs.append((arguments.pdf, _page(comparison, arguments)))
    lines = comparison_lines(comparison, project.units)
    put_out(outputs, arguments.file, words=lambda: "\n".join(lines))
    return 0


def _compared(project: Project, arguments: argparse.Namespace) -> Comparison:
    asked = [choice for choice in CHOICES if getattr(arguments, choice.name) is not None]
    if len(asked) != 1:
        raise Refusal(
            "compare", told("give two to six values of one choice, such as --strip-width 2 and 2.5")
        )
    values = getattr(arguments, asked[0].name)
    return compare(project, asked[0], values, place_of(project, arguments, asked[0]))


def _page(comparison: Comparison, arguments: argparse.Namespace) -> bytes:
    from app.packet.comparison_page import comparison_bytes

    units = next((plan.project.units for plan in comparison.plans), Units.INCHES)
    return comparison_bytes(comparison, format_of(arguments, units))
