"""From what I have: the reverse questions, each answered by planning.

An answer is the last mark at which a whole plan could be made from the cloth on
hand alone, and the sentence that refuses the mark after it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from core.edit import put
from core.finish.binding_width import cut_of
from core.language import told
from core.lengths import INCHES_PER_MM, Inches, Units, exact_text
from core.plan import Plan, make_plan
from core.project_file.read import fabric_names
from core.quilt import Project
from core.refusal import Refusal

STEP, STEP_METRIC = Fraction(1, 8), 2 * INCHES_PER_MM
WIDEST_STRIP, LONGEST_SIDE = Fraction(20), Fraction(1000)
MOST_COPIES = 999


@dataclass(frozen=True, slots=True)
class Answer:
    """The greatest `value` that can be planned, its plan, and why the next cannot.

    `value` is None where even the least cannot be planned; `step` is how finely
    was looked; `refusal` is None where the widest looked at can still be planned.
    """

    value: Fraction | None
    step: Fraction
    plan: Plan | None
    refusal: str | None


@dataclass(frozen=True, slots=True)
class Enough:
    """Whether the pieces on hand of one fabric suffice for a part, with the plan or the reason."""

    fabric: str
    plan: Plan | None
    refusal: str | None


def widest_strip(project: Project) -> Answer:
    """The widest binding strip that the cloth on hand gives, all else being cut as well."""
    _require_binding(project)
    step = _step(project)

    def varied(number: int) -> Project:
        text = exact_text(number * step, project.units)
        return put(only_on_hand(project), "binding.strip_width", text)

    thickness = project.quilt.edge_thickness
    present = int(cut_of(project.binding, thickness)[0] // step) if project.binding else 1
    return _greatest(varied, step, present, int(WIDEST_STRIP / step))


def largest_quilt(project: Project) -> Answer:
    """The longest quilt of this width that the binding's cloth on hand goes round."""
    _require_binding(project)
    step = _step(project)
    bound = replace(only_on_hand(project), borders=(), backing=None, batting=None, sleeve=None)

    def varied(number: int) -> Project:
        return put(bound, "quilt.length", exact_text(number * step, project.units))

    present = int(project.quilt.length // step)
    return _greatest(varied, step, max(1, present), int(LONGEST_SIDE / step))


def most_copies(project: Project) -> Answer:
    """How many such quilts the cloth on hand gives; fabrics with none on hand are bought.

    Raises `Refusal` where nothing that the quilt is cut from is on hand.
    """
    used = {name for _, name in fabric_names(project)}
    if not any(fabric.on_hand for fabric in project.fabrics if fabric.name in used):
        raise Refusal(
            "fabrics", told("none of this quilt's cloth is on hand; add the pieces you have")
        )

    def varied(number: int) -> Project:
        return put(only_on_hand(project), "quilt.copies", number)

    return _greatest(varied, Fraction(1), 1, MOST_COPIES)


def still_to_buy(project: Project) -> Plan:
    """The plan that uses the cloth on hand first and buys the rest. Raises `Refusal`."""
    return make_plan(_buying(project, buy_more=True))


def which_is_enough(project: Project, path: str) -> tuple[Enough, ...]:
    """For the part whose cloth is named at `path` ("binding.fabric"): which fabric on hand will do.

    Raises `Refusal` where no such part is there.
    """
    if path not in [known for known, _ in fabric_names(project)]:
        raise Refusal(path, told("the project has no such part; add it first"))
    return tuple(_enough(project, path))


def _enough(project: Project, path: str) -> Iterator[Enough]:
    for fabric in project.fabrics:
        if not fabric.on_hand:
            continue
        try:
            plan = make_plan(only_on_hand(put(project, path, fabric.name), fabric.name))
        except Refusal as refusal:
            yield Enough(fabric.name, None, refusal.in_units(project.units).sentence)
        else:
            yield Enough(fabric.name, plan, None)


def only_on_hand(project: Project, name: str | None = None) -> Project:
    """The project with nothing more to be bought (of that fabric alone, if one is named)."""
    return _buying(project, buy_more=False, name=name)


def _buying(project: Project, *, buy_more: bool, name: str | None = None) -> Project:
    """Fabrics without a piece on hand stay as they are: nothing is asked of them."""
    fabrics = tuple(
        replace(fabric, buy_more=buy_more)
        if fabric.on_hand and name in (None, fabric.name)
        else fabric
        for fabric in project.fabrics
    )
    return replace(project, fabrics=fabrics)


def _require_binding(project: Project) -> None:
    if project.binding is None:
        raise Refusal("binding", told("the project has no binding; add one first"))
    if not project.fabric(project.binding.fabric).on_hand:
        raise Refusal(
            "binding.fabric",
            told(
                "there is no {fabric} on hand; add the pieces you have first",
                fabric=project.binding.fabric,
            ),
        )


def _step(project: Project) -> Inches:
    return STEP if project.units is Units.INCHES else STEP_METRIC


def _greatest(varied: Callable[[int], Project], step: Fraction, start: int, most: int) -> Answer:
    """The greatest whole number that can be planned, by doubling and halving from `start`."""
    plans: dict[int, Plan] = {}
    said: dict[int, str] = {}

    def possible(number: int) -> bool:
        if number not in plans and number not in said:
            try:
                plans[number] = make_plan(varied(number))
            except Refusal as refusal:
                said[number] = refusal.sentence
        return number in plans

    low, high = _bracket(possible, start, most)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if possible(middle) else (low, middle)
    value = low * step if low in plans else None
    return Answer(value, step, plans.get(low), said.get(high))


def _bracket(possible: Callable[[int], bool], start: int, most: int) -> tuple[int, int]:
    """A number that can be planned (0: none is known) and a greater one that cannot."""
    low, high = 0, min(start, most)
    while possible(high):
        if high == most:
            return most, most + 1
        low, high = high, min(2 * high, most)
    return low, high
