"""What if the cloth is not what the bolt says: how much narrower or shorter it may be.

The cloth that the plan buys is taken as a piece in hand, made narrower or shorter
mark by mark, and all is planned again with nothing more to be bought.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from core.fabric import Fabric, OnHand
from core.language import told
from core.lengths import INCHES_PER_MM, Inches, Units
from core.not_enough import NotEnough
from core.part_names import told_part
from core.plan import FabricPlan, Plan, make_plan
from core.quilt import Project
from core.refusal import Refusal

MARK, MARK_METRIC = Fraction(1, 16), INCHES_PER_MM
# The table's usable widths: what cloth sold as 44 in wide measures; common practice, no source.
WIDTHS, WIDTHS_METRIC = (Fraction(38), Fraction(45), Fraction(1, 2)), (960, 1150, 10)


@dataclass(frozen=True, slots=True)
class Withstands:
    """What one bought fabric may come to before the plan fails, washed and straightened.

    `narrowest` and `shortest` are the last that still give every piece, laid
    anew; `as_cut` is the narrowest for the lay as it is drawn. `narrower` and
    `shorter` say what fails first just below them.
    """

    fabric: str
    narrowest: Inches
    as_cut: Inches
    shortest: Inches
    narrower: str
    shorter: str


@dataclass(frozen=True, slots=True)
class AtWidth:
    """What to buy of the fabric if its usable width is `width`; None with the reason why not."""

    width: Inches
    bought: Inches | None
    refusal: str | None = None


def withstands(plan: Plan) -> tuple[Withstands, ...]:
    """One line for each fabric that is bought."""
    return tuple(_of(plan, place) for place, f in enumerate(plan.fabrics) if f.buy.along)


def _of(plan: Plan, place: int) -> Withstands:
    found = plan.fabrics[place]
    mark = MARK if plan.project.units is Units.INCHES else MARK_METRIC
    width = found.fabric.cutting_width
    length = _available(found)
    narrowest, narrower = _least(plan.project, place, width, length, mark, across=True)
    shortest, shorter = _least(plan.project, place, width, length, mark, across=False)
    on_bolt = [p.rect.right for p in found.lay.placements if p.sheet.on == "bolt"]
    return Withstands(found.fabric.name, narrowest, max(on_bolt), shortest, narrower, shorter)


def _available(found: FabricPlan) -> Inches:
    """What can be cut from of the bought length, washed and straightened."""
    fabric = found.fabric
    return (found.buy.along - fabric.straightening) * (1 - fabric.shrinkage_along)


def _least(
    project: Project, place: int, width: Inches, length: Inches, mark: Inches, *, across: bool
) -> tuple[Inches, str]:
    """The least side, in marks, of a piece in hand that still gives all, and why not less."""
    side = width if across else length

    def refused(number: int) -> str | None:
        less = number * mark
        size = (less, length) if across else (width, less)
        try:
            make_plan(_in_hand(project, place, *size))
        except Refusal as refusal:
            if isinstance(refusal, NotEnough):
                return told("the {part} finds no room", part=told_part(refusal.name))
            return refusal.sentence
        return None

    fails, holds, said = 0, int(side // mark), told("nothing is left")
    while holds - fails > 1:
        middle = (fails + holds) // 2
        sentence = refused(middle)
        if sentence is None:
            holds = middle
        else:
            fails, said = middle, sentence
    return holds * mark, said


def _in_hand(project: Project, place: int, across: Inches, along: Inches) -> Project:
    """The project with the bought cloth of one fabric in hand in that size, and no more."""
    fabric = project.fabrics[place]
    bought = OnHand(across, along)
    narrow = replace(_as_wide(fabric, across), on_hand=(*fabric.on_hand, bought), buy_more=False)
    fabrics = (*project.fabrics[:place], narrow, *project.fabrics[place + 1 :])
    return replace(project, fabrics=fabrics)


def _as_wide(fabric: Fabric, usable: Inches) -> Fabric:
    """The fabric with another usable width."""
    width = (usable + 2 * fabric.selvage) / (1 - fabric.shrinkage_across)
    return replace(fabric, width=width)


def over_widths(project: Project, place: int) -> tuple[AtWidth, ...]:
    """What would be bought of a fabric at each usable width of the table."""
    return tuple(_at_widths(project, place))


def _at_widths(project: Project, place: int) -> Iterator[AtWidth]:
    for width in _table(project.units):
        fabric = _as_wide(project.fabrics[place], width)
        fabrics = (*project.fabrics[:place], fabric, *project.fabrics[place + 1 :])
        try:
            plan = make_plan(replace(project, fabrics=fabrics))
        except Refusal as refusal:
            yield AtWidth(width, None, refusal.sentence)
        else:
            yield AtWidth(width, plan.fabrics[place].buy.along)


def _table(units: Units) -> Iterator[Inches]:
    if units is Units.INCHES:
        first, last, step = WIDTHS
        yield from (first + number * step for number in range(int((last - first) / step) + 1))
    else:
        start, end, gap = WIDTHS_METRIC
        yield from (number * INCHES_PER_MM for number in range(start, end + 1, gap))
