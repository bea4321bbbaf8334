"""One project, several values of one choice: a plan beside a plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from core.compare.choices import Choice, Kind, require_part, usual_place, with_value
from core.language import told
from core.lengths import bare, parse
from core.plan import Plan, make_plan
from core.quilt import Project
from core.refusal import Refusal

FEWEST, MOST = 2, 6


@dataclass(frozen=True, slots=True)
class Column:
    """One value of the choice: the project and plan it gives, or the sentence that refuses it.

    The program goes by its `text`, a person reads what is `said`. `present` marks the value
    that the project has now.
    """

    text: str
    said: str
    project: Project | None = None
    plan: Plan | None = None
    refusal: str | None = None
    present: bool = False


@dataclass(frozen=True, slots=True)
class Comparison:
    """Columns side by side; `place` says which border or fabric is varied, from 0.

    `notice` is a sentence about values that were left out, else None.
    """

    choice: Choice
    place: int
    columns: tuple[Column, ...]
    notice: str | None = None

    @property
    def plans(self) -> tuple[Plan, ...]:
        return tuple(column.plan for column in self.columns if column.plan is not None)

    @property
    def differing(self) -> int | None:
        """The place of the first fabric that not all columns lay alike; None if all do."""
        plans = self.plans
        for place in range(len(plans[0].fabrics) if plans else 0):
            if len({plan.fabrics[place].lay for plan in plans}) > 1:
                return place
        return None


def compare(
    project: Project, choice: Choice, values: Sequence[str], place: int | None = None
) -> Comparison:
    """A plan for each value, all else as in the project; values as a person writes them.

    A value that cannot be is a column with a sentence. Raises `Refusal` if the
    project lacks the part, or if there are not at least two values.
    """
    place = usual_place(project, choice) if place is None else place
    require_part(project, choice, place)
    if len(values) < FEWEST:
        raise Refusal(choice.name, told("write at least two values to compare"))
    columns = tuple(_columns(project, choice, place, values[:MOST]))
    notice = None
    if len(values) > MOST:
        notice = told(
            "{most} values fit side by side; the other {count} were left out.",
            most=MOST,
            count=len(values) - MOST,
        )
    return Comparison(choice, place, columns, notice)


def _columns(
    project: Project, choice: Choice, place: int, values: Sequence[str]
) -> Iterator[Column]:
    seen: dict[Project, str] = {}
    for value in values:
        try:
            varied = with_value(project, choice, place, value)
            text = _named(varied, choice, value)
            if varied in seen:
                again = told(
                    "the same as {value} beside it; write another value", value=seen[varied]
                )
                raise Refusal(choice.path(place), again)
            said = seen[varied] = choice.value_said(text)
            yield Column(text, said, varied, make_plan(varied), present=varied == project)
        except Refusal as refusal:
            text = value.strip()
            said = choice.value_said(text) or told("nothing")
            sentence = refusal.in_units(project.units).sentence
            yield Column(text or "nothing", said, refusal=sentence)


def _named(project: Project, choice: Choice, value: str) -> str:
    """The value as the program goes by it."""
    if choice.kind is Kind.LENGTH:
        return f"{bare(parse(value, project.units), project.units)} {project.units.value}"
    return value.strip()
