"""How views put comparisons, staircases and answers into words; nothing is worked out here."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from fractions import Fraction

from core.compare.columns import Comparison
from core.compare.reverse import Answer, Enough
from core.compare.rows import Cell, Measured, Row, Value, rows
from core.compare.staircase import Staircase, Step
from core.compare.withstands import Withstands
from core.language import told, told_as, told_count
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
            return told("yes") if value else told("no")
        case Measured.COUNT:
            return str(value)


def cell_note(row: Row, cell: Cell, units: Units) -> str:
    """What is said under a value: that it is the best of its row, or how far it is from it."""
    if cell.best:
        return told("best")
    if cell.loses is None:
        return ""
    by = value_text(row, cell.loses, units)
    return told("{by} more", by=by) if row.less_is_better else told("{by} less", by=by)


def comparison_lines(comparison: Comparison, units: Units) -> Iterator[str]:
    """The comparison as lines of a table for the terminal."""
    table = [["", *(column.said for column in comparison.columns)]]
    for row in rows(comparison):
        cells = [
            f"{value_text(row, cell.value, units)}{' *' if cell.best else ''}" for cell in row.cells
        ]
        table.append([row.said, *cells])
    widths = [max(len(line[place]) for line in table) for place in range(len(table[0]))]
    for line in table:
        first, *others = (text.ljust(width) for text, width in zip(line, widths, strict=True))
        yield "  ".join((first, *others)).rstrip()
    yield told("* the best of its row")
    for column in comparison.columns:
        if column.refusal is not None:
            yield f"{column.said}: {column.refusal}"
    if comparison.notice is not None:
        yield comparison.notice


def step_range(step: Step, units: Units) -> str:
    """From where to where a step goes."""
    if step.first == step.last:
        return show(step.first, units)
    first, last = show(step.first, units, unit=False), show(step.last, units)
    return told("{first} to {last}", first=first, last=last)


def step_text(project: Project, step: Step, places: Collection[int] | None = None) -> str:
    """What a step buys, in the words of the shop; or why nothing can be planned there.

    With `places`, of the fabrics at these alone.
    """
    if step.refusal is not None:
        return step.refusal
    bought = ", ".join(_bought(project, step, places))
    price = "" if step.cost is None else f" ({money(step.cost)})"
    return (bought or told("nothing to buy")) + price


def alike_text(project: Project, stairs: Staircase) -> str:
    """What every step buys alike; empty where nothing is, or where nothing else is bought."""
    step = next((step for step in stairs.steps if step.bought), None)
    others = [place for place in range(len(project.fabrics)) if place not in stairs.moving]
    bought = ", ".join(_bought(project, step, others)) if step else ""
    if not bought or step is None:
        return ""
    if step.cost is None:
        return told("All buy {bought} as well.", bought=bought)
    return told("All buy {bought} as well; the costs are those of all cloth.", bought=bought)


def _bought(project: Project, step: Step, places: Collection[int] | None) -> Iterator[str]:
    for place, (fabric, along) in enumerate(zip(project.fabrics, step.bought, strict=True)):
        if along and (places is None or place in places):
            yield f"{fabric.name} {sale_text(along, fabric.sale_unit)}"


def staircase_lines(project: Project, stairs: Staircase) -> Iterator[str]:
    """The staircase as lines for the terminal, and how far the next step is."""
    for step in stairs.steps:
        here = "  <- " + told("now") if step is stairs.present_step else ""
        yield f"{step_range(step, project.units)}: {step_text(project, step)}{here}"
    yield room_text(stairs, project.units)


def room_text(stairs: Staircase, units: Units) -> str:
    """How far the present choice is from the steps on both sides of it."""
    step = stairs.present_step
    now = {"choice": stairs.choice.said, "present": show(stairs.present, units)}
    if step is None:
        return told("The {choice} now is {present}, which lies outside these steps.", **now)
    if step.refusal is not None:
        return told("With the {choice} of {present} nothing can be planned.", **now)
    return told(
        "The {choice} now is {present}; anything from {range} buys the same.",
        range=step_range(step, units),
        **now,
    )


def strip_answer(project: Project, answer: Answer) -> str:
    return told("Widest binding strip: {width}", width=_length(answer.value, project.units))


def quilt_answer(project: Project, answer: Answer) -> str:
    return told(
        "Longest quilt {width} wide that the binding goes round: {length}",
        width=show(project.quilt.width, project.units),
        length=_length(answer.value, project.units),
    )


def copies_answer(answer: Answer) -> str:
    count = int(answer.value or 0)
    quilts = (
        told_count("{count} quilt", "{count} quilts", count)
        if count
        else told_as("no answer", "none")
    )
    return told("From the cloth on hand alone: {quilts}", quilts=quilts)


def no_more(answer: Answer) -> str:
    """Why not more than that; empty where the widest looked at still goes."""
    if answer.refusal is None:
        return ""
    return told("No more than that: {why}", why=answer.refusal)


def enough_answer(one: Enough) -> str:
    said = one.refusal or told("enough")
    return f"{one.fabric}: {said}"


def withstands_answers(one: Withstands, units: Units) -> tuple[str, ...]:
    """How narrow and how short one cloth may be."""
    return (
        told(
            "narrowest usable width: {width}; below it {why}",
            width=show(one.narrowest, units),
            why=one.narrower,
        ),
        told("as it is drawn: {width}", width=show(one.as_cut, units)),
        told(
            "shortest, straightened: {length}; below it {why}",
            length=show(one.shortest, units),
            why=one.shorter,
        ),
    )


def _length(value: Inches | None, units: Units) -> str:
    return told_as("no answer", "none") if value is None else show(value, units)
