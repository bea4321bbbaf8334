"""What the cloth in hand is good for, in words."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import groupby

from PySide6.QtWidgets import QVBoxLayout

from app.comparing import (
    copies_answer,
    enough_answer,
    no_more,
    quilt_answer,
    strip_answer,
    withstands_answers,
)
from app.solver.talk import Question
from app.window.comparing.asking_view import AskingView
from app.window.planner import Planner
from app.window.read_table import ReadTable, Row
from app.wording import upper_first
from core.compare.questions import FromWhatIHave, InHand
from core.compare.reverse import Answer
from core.language import marked, told
from core.lengths import typeset
from core.quilt import Project
from core.refusal import Refusal

_WHICH = {
    "backing": marked("Which cloth on hand is enough: backing"),
    "binding": marked("Which cloth on hand is enough: binding"),
    "sleeve": marked("Which cloth on hand is enough: hanging sleeve"),
    "label": marked("Which cloth on hand is enough: label"),
}


class InHandView(AskingView):
    """Three groups: what can be made, which cloth is enough, how narrow or short it may be."""

    def __init__(self, solver: Planner) -> None:
        super().__init__(solver)
        self.list = ReadTable(told("What I have"), ("",), 0, whole=False)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.addWidget(self.said)
        column.addWidget(self.list, 1)

    def question(self, project: Project) -> Question:
        return FromWhatIHave(project)

    def show_found(self, found: object) -> None:
        if isinstance(found, InHand) and self.project is not None:
            # One reason for two answers is read once.
            self.list.show_rows([row for row, _ in groupby(_rows(self.project, found))])


def _rows(project: Project, found: InHand) -> Iterator[Row]:
    yield _heading(told("From the cloth on hand"))
    yield from _answer(found.strip, lambda answer: strip_answer(project, answer))
    yield from _answer(found.quilt, lambda answer: quilt_answer(project, answer))
    yield from _answer(found.copies, copies_answer)
    for fabrics, parts in groupby(found.enough, lambda part: part[1]):
        if fabrics:  # what holds for several parts is said once, under all of them
            yield from (_heading(_which_is_enough(path)) for path, _ in parts)
            yield from (_words(enough_answer(one)) for one in fabrics)
    if isinstance(found.withstands, Refusal):
        return
    for one in found.withstands:
        said = told("If the {fabric} is not what the bolt says", fabric=one.fabric)
        yield _heading(said)
        yield from (_words(upper_first(line)) for line in withstands_answers(one, project.units))


def _which_is_enough(path: str) -> str:
    """The question about the part whose fabric stands at a path of the file."""
    key, _, place = path.removesuffix(".fabric").partition("[")
    if place:
        number = int(place.removesuffix("]")) + 1
        return told("Which cloth on hand is enough: border {number}", number=number)
    return told(_WHICH[key])


def _answer(found: Answer | Refusal, said: Callable[[Answer], str]) -> Iterator[Row]:
    if isinstance(found, Refusal):
        yield _words(upper_first(f"{found.sentence}."))
        return
    yield _words(said(found))
    if why := no_more(found):
        yield _words(why)


def _heading(text: str) -> Row:
    return Row((typeset(text),), heading=True)


def _words(text: str) -> Row:
    return Row((typeset(text),))
