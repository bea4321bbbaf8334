"""How views put comparisons, staircases and answers into words; nothing is worked out here."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from fractions import Fraction

from app.wording import times
from core.compare.columns import Comparison
from core.compare.reverse import Answer, Enough
from core.compare.rows import Cell, Measured, Row, Value, rows
from core.compare.staircase import Staircase, Step
from core.compare.withstands import Withstands
from core.lengths import Inches, Units, sale_text, show
from core.money import money
from core.quilt import Project

NOTHING = "–"


def value_text(row: Row, value: Value | None, units: Units) -> str:
    """One value of a row in the person's units; a dash where there is none.

    >>> value_text(Row("joins", Measured.COUNT, ()), 4, Units.INCHES)
    '4'
    """
    if value is None:
        return NOTHING
    match row.measured:
        case Measured.SALE:
            return sale_text(Fraction(value), row.sale_unit or Fraction(1))
        case Measured.LENGTH:
            return show(Fraction(value), units)
        case Measured.MONEY:
            return money(Fraction(value))
        case Measured.SHARE:
            return f"{round(float(value) * 100)} %"
        case Measured.YES:
            return "yes" if value else "no"
        case Measured.COUNT:
            return str(value)


def cell_note(row: Row, cell: Cell, units: Units) -> str:
    """What is said under a value: that it is the best of its row, or how far it is from it."""
    if cell.best:
        return "best"
    if cell.loses is None:
        return ""
    by = value_text(row, cell.loses, units)
    return f"{by} more" if row.less_is_better else f"{by} less"


def comparison_lines(comparison: Comparison, units: Units) -> Iterator[str]:
    """The comparison as lines of a table for the terminal."""
    table = [["", *(column.text for column in comparison.columns)]]
    for row in rows(comparison):
        cells = [
            f"{value_text(row, cell.value, units)}{' *' if cell.best else ''}" for cell in row.cells
        ]
        table.append([row.name, *cells])
    widths = [max(len(line[place]) for line in table) for place in range(len(table[0]))]
    for line in table:
        first, *others = (text.ljust(width) for text, width in zip(line, widths, strict=True))
        yield "  ".join((first, *others)).rstrip()
    yield "* the best of its row"
    for column in comparison.columns:
        if column.refusal is not None:
            yield f"{column.text}: {column.refusal}"
    if comparison.notice is not None:
        yield comparison.notice


def step_range(step: Step, units: Units) -> str:
    """From where to where a step goes."""
    if step.first == step.last:
        return show(step.first, units)
    return f"{show(step.first, units, unit=False)} to {show(step.last, units)}"


def step_text(project: Project, step: Step, places: Collection[int] | None = None) -> str:
    """What a step buys, in the words of the shop; or why nothing can be planned there.

    With `places`, of the fabrics at these alone.
    """
    if step.refusal is not None:
        return step.refusal
    bought = ", ".join(_bought(project, step, places))
    price = "" if step.cost is None else f" ({money(step.cost)})"
    return f"{bought or 'nothing to buy'}{price}"


def alike_text(project: Project, stairs: Staircase) -> str:
    """What every step buys alike; empty where nothing is, or where nothing else is bought."""
    step = next((step for step in stairs.steps if step.bought), None)
    others = [place for place in range(len(project.fabrics)) if place not in stairs.moving]
    bought = ", ".join(_bought(project, step, others)) if step else ""
    costs = "; the costs are those of all cloth" if step and step.cost is not None else ""
    return bought and f"All buy {bought} as well{costs}."


def _bought(project: Project, step: Step, places: Collection[int] | None) -> Iterator[str]:
    for place, (fabric, along) in enumerate(zip(project.fabrics, step.bought, strict=True)):
        if along and (places is None or place in places):
            yield f"{fabric.name} {sale_text(along, fabric.sale_unit)}"


def staircase_lines(project: Project, stairs: Staircase) -> Iterator[str]:
    """The staircase as lines for the terminal, and how far the next step is."""
    for step in stairs.steps:
        here = "  <- now" if step is stairs.present_step else ""
        yield f"{step_range(step, project.units)}: {step_text(project, step)}{here}"
    yield room_text(stairs, project.units)


def room_text(stairs: Staircase, units: Units) -> str:
    """How far the present choice is from the steps on both sides of it."""
    step, name = stairs.present_step, stairs.choice.name
    present = show(stairs.present, units)
    if step is None:
        return f"The {name} now is {present}, which lies outside these steps."
    if step.refusal is not None:
        return f"With the {name} of {present} nothing can be planned."
    return f"The {name} now is {present}; anything from {step_range(step, units)} buys the same."


def strip_answer(project: Project, answer: Answer) -> str:
    return f"Widest binding strip: {_length(answer.value, project.units)}"


def quilt_answer(project: Project, answer: Answer) -> str:
    width = show(project.quilt.width, project.units)
    return f"Longest quilt {width} wide that the binding goes round: " + _length(
        answer.value, project.units
    )


def copies_answer(answer: Answer) -> str:
    count = times(int(answer.value), "quilt") if answer.value else "none"
    return f"From the cloth on hand alone: {count}"


def no_more(answer: Answer) -> str:
    """Why not more than that; empty where the widest looked at still goes."""
    return "" if answer.refusal is None else f"No more than that: {answer.refusal}"


def enough_answer(one: Enough) -> str:
    return f"{one.fabric}: {one.refusal or 'enough'}"


def withstands_answers(one: Withstands, units: Units) -> tuple[str, ...]:
    """How narrow and how short one cloth may be."""
    return (
        f"narrowest usable width: {show(one.narrowest, units)}; below it {one.narrower}",
        f"as it is drawn: {show(one.as_cut, units)}",
        f"shortest, straightened: {show(one.shortest, units)}; below it {one.shorter}",
    )


def _length(value: Inches | None, units: Units) -> str:
    return "none" if value is None else show(value, units)
