"""The staircase: what is bought as the strip, or the cloth, gets wider.

A strip is cut to a mark of a ruler, so the staircase is exact on marks: between
two of them nothing can be cut. A wider strip never buys less and a wider cloth
never buys more, so that equal ends mean an equal stretch, and each step is found
by halving, every stop of it a whole plan.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from core.compare.choices import STRIP_WIDTH, Choice, require_part, usual_place, with_value
from core.finish.binding_width import cut_of
from core.language import told
from core.lengths import INCHES_PER_MM, Inches, Units, exact_text
from core.quilt import Project
from core.refusal import Refusal
from core.ways import choose

MARK, MARK_METRIC = Fraction(1, 64), INCHES_PER_MM / 2
# The widest stretch that is looked at, in marks.
MOST_MARKS = 5000


@dataclass(frozen=True, slots=True)
class Step:
    """From mark `first` to mark `last` (both belong to it) the same is bought.

    `bought` is the length of each fabric in the project's order, `cost` None
    where a price is missing. Where nothing can be planned `bought` is empty and
    `refusal` says why at the step's mark nearest the middle.
    """

    first: Inches
    last: Inches
    bought: tuple[Inches, ...] = ()
    cost: Fraction | None = None
    refusal: str | None = None

    def holds(self, value: Inches) -> bool:
        return self.first <= value <= self.last

    @property
    def total(self) -> Inches | None:
        """All cloth together, None where nothing can be planned."""
        return sum(self.bought, Fraction(0)) if self.bought else None


@dataclass(frozen=True, slots=True)
class Staircase:
    """All steps from narrow to wide, the `mark` they are exact to, and the present value."""

    choice: Choice
    place: int
    mark: Inches
    present: Inches
    steps: tuple[Step, ...]

    @property
    def present_step(self) -> Step | None:
        """The step that the project is on, None if it lies beyond the ends or between marks."""
        return next((step for step in self.steps if step.holds(self.present)), None)

    @property
    def moving(self) -> tuple[int, ...]:
        """The places of the fabrics that not all steps buy alike; of all if none is."""
        laid = [step.bought for step in self.steps if step.bought]
        places = range(len(laid[0]) if laid else 0)
        moving = tuple(place for place in places if len({bought[place] for bought in laid}) > 1)
        return moving or tuple(places)


def usual_range(choice: Choice, units: Units) -> tuple[Inches, Inches]:
    """The widths that are looked at where none are named: those that people cut or buy."""
    metric = units is not Units.INCHES
    if choice == STRIP_WIDTH:
        return (25 * INCHES_PER_MM, 100 * INCHES_PER_MM) if metric else (Fraction(1), Fraction(4))
    return (960 * INCHES_PER_MM, 1150 * INCHES_PER_MM) if metric else (Fraction(38), Fraction(45))


def staircase(
    project: Project, choice: Choice, first: Inches, last: Inches, place: int | None = None
) -> Staircase:
    """The steps between two widths (inches). Raises `Refusal` if the part is missing."""
    place = usual_place(project, choice) if place is None else place
    require_part(project, choice, place)
    mark = MARK if project.units is Units.INCHES else MARK_METRIC
    low, high = -(-first // mark), last // mark
    if high <= low or high - low > MOST_MARKS:
        sentence = told("write a narrower width first and a wider one after it")
        raise Refusal(choice.name, sentence)
    present = _present(project, choice, place)
    landings = _Landings(project, choice, place, mark)
    stops = sorted({low, max(low, min(high, present // mark)), high})
    for start, end in pairwise(stops):
        landings.halve(start, end)
    return Staircase(choice, place, mark, present, landings.steps(low, high))


def _present(project: Project, choice: Choice, place: int) -> Inches:
    if choice == STRIP_WIDTH and project.binding is not None:
        return cut_of(project.binding, project.quilt.edge_thickness)[0]
    return project.fabrics[place].usable_width


class _Landings:
    """What is bought at the marks looked at so far."""

    def __init__(self, project: Project, choice: Choice, place: int, mark: Inches) -> None:
        self.project, self.choice, self.place, self.mark = project, choice, place, mark
        self.found: dict[int, Step] = {}

    def at(self, number: int) -> Step:
        if number not in self.found:
            self.found[number] = self._plan(number * self.mark)
        return self.found[number]

    def _plan(self, width: Inches) -> Step:
        text = exact_text(width, self.project.units)
        try:
            varied = with_value(self.project, self.choice, self.place, text)
            cloths = choose(varied).lay.cloths
        except Refusal as refusal:
            return Step(width, width, refusal=refusal.in_units(self.project.units).sentence)
        bought = tuple(cloth.bought_along for cloth in cloths)
        return Step(width, width, bought, _cost(self.project, bought))

    def halve(self, low: int, high: int) -> None:
        """Look between two marks until every change between neighbours is known."""
        if self.at(low).bought == self.at(high).bought or high - low < 2:
            return
        middle = (low + high) // 2
        self.halve(low, middle)
        self.halve(middle, high)

    def steps(self, low: int, high: int) -> tuple[Step, ...]:
        """The marks looked at, run together where they buy the same."""
        steps: list[Step] = []
        for number in sorted(n for n in self.found if low <= n <= high):
            here = self.found[number]
            if steps and steps[-1].bought == here.bought:
                before = steps.pop()
                here = Step(before.first, here.last, here.bought, here.cost, before.refusal)
            steps.append(here)
        return tuple(steps)


def _cost(project: Project, bought: tuple[Inches, ...]) -> Fraction | None:
    prices = [fabric.price_per_inch for fabric in project.fabrics]
    if any(price is None and along for price, along in zip(prices, bought, strict=True)):
        return None
    return sum(
        ((price or 0) * along for price, along in zip(prices, bought, strict=True)),
        Fraction(0),
    )
