"""The staircase as a picture: widths to the right, what is bought upward, each step a block.

The picture has its own measure, 96 × 54; nothing on it is to scale with cloth.
Heights start a little below the lowest step, so that steps are seen; every block
says what it buys.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from core.compare.staircase import Staircase, Step
from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.language import told, told_as
from core.lengths import INCHES_PER_MM, Inches, Units, sale_text, show
from core.quilt import Project

WIDTH, HEIGHT = 96.0, 54.0
_LEFT, _RIGHT, _TOP, _FOOT = 4.0, 92.0, 7.0, 48.0  # where the blocks stand
_LOWEST = 8.0  # the height of the lowest block
_TICK, _ROOM = 1.2, 8.0


def draw_staircase(project: Project, stairs: Staircase) -> Drawing:
    """The steps as blocks; the key of a block is its place in `stairs.steps`, from 1."""
    axis = _Axis(stairs)
    marks = (
        *(
            mark
            for place, step in enumerate(stairs.steps)
            for mark in _block(project, axis, place, step)
        ),
        *_ruler(project.units, axis),
        *_now(project.units, axis),
    )
    return Drawing(
        told("What each {choice} buys", choice=told(stairs.choice.name)), WIDTH, HEIGHT, marks
    )


class _Axis:
    """Where widths and bought lengths lie on the picture."""

    def __init__(self, stairs: Staircase) -> None:
        self.stairs = stairs
        self.first, self.last = stairs.steps[0].first, stairs.steps[-1].last
        self.moving = stairs.moving
        heights = [self.bought(step) for step in stairs.steps if step.bought]
        self.low, self.high = min(heights, default=Fraction(0)), max(heights, default=Fraction(0))

    def x(self, width: Inches) -> float:
        share = (width - self.first) / (self.last - self.first)
        return _LEFT + (_RIGHT - _LEFT) * float(share)

    def y(self, bought: Inches) -> float:
        span = self.high - self.low
        share = float((bought - self.low) / span) if span else 0.5
        return _FOOT - _LOWEST - (_FOOT - _LOWEST - _TOP) * share

    def bought(self, step: Step) -> Inches:
        """What the step buys of the fabrics that are not bought alike on all steps."""
        return sum((step.bought[place] for place in self.moving), Fraction(0))


def _block(project: Project, axis: _Axis, place: int, step: Step) -> Iterator[Mark]:
    left = axis.x(step.first)
    right = axis.x(min(step.last + axis.stairs.mark, axis.last))
    top = axis.y(axis.bought(step)) if step.bought else _FOOT - _LOWEST
    corners: tuple[Point, ...] = ((left, top), (right, top), (right, _FOOT), (left, _FOOT))
    key = str(place + 1)
    present = step is axis.stairs.present_step
    role = ("step now" if present else "step") if step.bought else "offcut"
    yield Area(corners, role, key)
    room = ((right - left) * 0.94, (_FOOT - top) * 0.94)
    yield Label(
        ((left + right) / 2, (top + _FOOT) / 2), _words(project, axis, step), room, role, key
    )


def _words(project: Project, axis: _Axis, step: Step) -> tuple[str, ...]:
    if not step.bought:
        return (told("cannot be cut"), told_as("nothing cut", "none"))
    alone = len(axis.moving) == 1
    bought = [
        sale_text(step.bought[place], project.fabrics[place].sale_unit)
        if alone
        else f"{project.fabrics[place].name} "
        f"{sale_text(step.bought[place], project.fabrics[place].sale_unit)}"
        for place in axis.moving
        if step.bought[place] or alone
    ]
    reach = f"{show(step.first, project.units, unit=False)} – {show(step.last, project.units)}"
    short = "\n".join(bought)
    return (f"{short}\n{reach}", short)


def _ruler(units: Units, axis: _Axis) -> Iterator[Mark]:
    """Ticks under the blocks, at round widths; the last says in what they are."""
    yield Line(((_LEFT, _FOOT), (_RIGHT, _FOOT)), "ruler")
    step = _tick_step(units, axis.last - axis.first)
    number = -(-axis.first // step)
    room = 0.9 * (axis.x(axis.first + step) - axis.x(axis.first))
    while number * step <= axis.last:
        width = number * step
        x = axis.x(width)
        yield Line(((x, _FOOT), (x, _FOOT + _TICK)), "ruler")
        words = (show(width, units, unit=width + step > axis.last),)
        free = min(room, 2 * x, 2 * (WIDTH - x))
        yield Label((x, _FOOT + _TICK + 1.6), words, (free, 2.6), "ruler")
        number += 1


def _tick_step(units: Units, span: Inches) -> Inches:
    """The least round step that leaves the ticks room for their words."""
    inches = [Fraction(1, 4), Fraction(1, 2), Fraction(1), Fraction(2), Fraction(5), Fraction(20)]
    metric = [step * INCHES_PER_MM for step in (5, 10, 20, 50, 100, 500)]
    steps = inches if units is Units.INCHES else metric
    return next(
        (step for step in steps if span / step * Fraction(_ROOM) <= Fraction(WIDTH)), steps[-1]
    )


def _now(units: Units, axis: _Axis) -> Iterator[Mark]:
    """A line down to the block of the present width, with its words over the blocks."""
    present, step = axis.stairs.present, axis.stairs.present_step
    if not axis.first <= present <= axis.last:
        return
    x = axis.x(present)
    foot = axis.y(axis.bought(step)) if step and step.bought else _FOOT
    yield Line(((x, 4.0), (x, foot)), "cut")
    middle = min(max(x, 8.0), WIDTH - 8.0)
    yield Label(
        (middle, 2.0),
        (told("now {width}", width=show(present, units)), told("now")),
        (16.0, 3.0),
        "note",
    )
