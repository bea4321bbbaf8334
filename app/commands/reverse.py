"""`reverse`: what the cloth in hand is good for."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import Any

from app.commands.output import json_bytes, put_out
from app.commands.summary import summary
from app.comparing import (
    copies_answer,
    enough_answer,
    no_more,
    quilt_answer,
    strip_answer,
    withstands_answers,
)
from core.compare.document import answer_document, enough_document, withstands_document
from core.compare.reverse import (
    Answer,
    largest_quilt,
    most_copies,
    still_to_buy,
    which_is_enough,
    widest_strip,
)
from core.compare.withstands import over_widths, withstands
from core.language import marked, told
from core.plan import make_plan
from core.plan_json import plan_document
from core.project_file import load
from core.quilt import Project

HELP = marked("what the cloth in hand is good for, and how narrow or short it may be")
Found = tuple[dict[str, Any], list[str]]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("question", choices=tuple(_QUESTIONS), help=told("what to ask"))
    parser.add_argument("file", metavar=told("FILE"), help=told("a .crossgrain project"))
    parser.add_argument(
        "--part",
        default="binding",
        metavar=told("PART"),
        help=told("for enough: binding, borders[0] …"),
    )
    parser.add_argument(
        "--json", metavar=told("OUT"), help=told("write the answer as JSON, - for here")
    )


def run(arguments: argparse.Namespace) -> int:
    project = load(Path(arguments.file))
    document, lines = _QUESTIONS[arguments.question](project, arguments)
    outputs = [(arguments.json, json_bytes(document))] if arguments.json else []
    put_out(outputs, arguments.file, words=lambda: "\n".join(lines))
    return 0


def _answered(question: str, answer: Answer, said: str) -> Found:
    return answer_document(question, answer), [said, *filter(None, [no_more(answer)])]


def _widest_strip(project: Project, _: argparse.Namespace) -> Found:
    answer = widest_strip(project)
    return _answered("widest-strip", answer, strip_answer(project, answer))


def _largest_quilt(project: Project, _: argparse.Namespace) -> Found:
    answer = largest_quilt(project)
    return _answered("largest-quilt", answer, quilt_answer(project, answer))


def _copies(project: Project, _: argparse.Namespace) -> Found:
    answer = most_copies(project)
    return _answered("copies", answer, copies_answer(answer))


def _enough(project: Project, arguments: argparse.Namespace) -> Found:
    found = which_is_enough(project, f"{arguments.part}.fabric")
    lines = [enough_answer(one) for one in found]
    return enough_document("enough", found), lines or [told("No fabric of the project is on hand.")]


def _to_buy(project: Project, _: argparse.Namespace) -> Found:
    plan = still_to_buy(project)
    return plan_document(plan), [summary(plan)]


def _how_narrow(project: Project, _: argparse.Namespace) -> Found:
    plan = make_plan(project)
    found = withstands(plan)
    places = {fabric.fabric.name: place for place, fabric in enumerate(plan.fabrics)}
    tables = {one.fabric: over_widths(project, places[one.fabric]) for one in found}
    lines = []
    for one in found:
        lines += [f"{one.fabric}:"]
        lines += [f"  {line}" for line in withstands_answers(one, project.units)]
    return withstands_document("how-narrow", found, tables), lines or [told("Nothing is bought.")]


_QUESTIONS: dict[str, Callable[[Project, argparse.Namespace], Found]] = {
    "widest-strip": _widest_strip,
    "largest-quilt": _largest_quilt,
    "copies": _copies,
    "enough": _enough,
    "to-buy": _to_buy,
    "how-narrow": _how_narrow,
}
