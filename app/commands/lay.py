"""`lay`: lay rectangles and runs on cloth, from a lay problem in JSON."""

from __future__ import annotations

import argparse
from pathlib import Path

from app.commands.output import json_bytes, put_out, say_aside
from core.language import marked, told
from core.lay.check import check
from core.lay.lay_file import lay_document, read_problem
from core.lay.solve import Stop, solve
from core.part_names import told_part

HELP = marked("lay pieces and runs on cloth with the least bought")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar=told("PROBLEM"), help=told("a lay problem as JSON"))
    parser.add_argument(
        "--seconds",
        metavar=told("SECONDS"),
        type=_seconds,
        help=told("stop searching after so long"),
    )
    parser.add_argument(
        "--json", metavar=told("OUT"), default="-", help=told("a file to write, - for here")
    )


def run(arguments: argparse.Namespace) -> int:
    problem = read_problem(Path(arguments.file))
    stop = Stop() if arguments.seconds is None else Stop.after(arguments.seconds)
    lay = solve(problem, stop=stop)
    faults = check(problem, lay)
    if faults:
        raise RuntimeError("; ".join(fault.sentence for fault in faults))
    for left in lay.unplaced:
        said = told(
            "{name}: no room was found on the cloth on hand for {count}",
            name=told_part(left.name),
            count=left.count,
        )
        say_aside(said)
    document = lay_document(lay, problem.table)
    put_out([(arguments.json, json_bytes(document))], arguments.file)
    return 0


def _seconds(text: str) -> float:
    """A number of seconds from 0 to 3600."""
    try:
        seconds = float(text)
    except ValueError:
        seconds = -1.0
    if not 0 <= seconds <= 3600:
        raise argparse.ArgumentTypeError(
            told("write seconds from 0 to 3600, not {text}", text=repr(text))
        )
    return seconds
