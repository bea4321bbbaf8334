"""A proof that a room is too small, by prices for the whole room.

What is needed is worth more than all sheets together can hold: if prices show
that, there is no lay. Mixtures of sections (`core.lay.covering`) give the first
prices; but whole sections cannot be mixed at will, and better prices may show
more. They are sought by steps along what the needs and the dearest content of
the room differ in, each as long as would just suffice (B. T. Polyak, USSR
Comput. Math. Math. Phys. 9 (1969), doi:10.1016/0041-5553(69)90061-5). The search
is in floats; what it shows is reckoned again in whole numbers.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable

from core.lay.contents import content
from core.lay.covering import TIE, Covering, held, tariff_of
from core.lay.divisions import cheapest
from core.lay.scheme import scheme_of
from core.lay.sections import Tariff, Worth, Worths
from core.lay.simplex import Row
from core.lay.spanning import without_spanning
from core.lay.ticks import Task

# Prices are rounded to this part of the dearest.
SCALE = 1_000_000
# A step aims so much beyond what would just do.
MARGIN = 0.003
# By so much what is needed must be worth more, in floats, to be reckoned exactly.
SURE = 1e-7
# Rounds of the programme, and steps from its prices.
ROUNDS, MOST_STEPS = 25, 40
# The most work (about the rectangles to look at) for one list of prices, and for all steps.
MOST_WORK, EFFORT = 16_000, 90_000


def too_small(task: Task, room: int, stop: Callable[[], bool]) -> bool:
    """Whether prices show that the pieces on hand and `room` ticks of bolt are too little.

    False where nothing was shown, or where it would take too long to ask.
    """
    task, room = without_spanning(task, room)
    if room < 0 or not (task.sizes or task.strips):
        return room < 0
    scheme = scheme_of(task, room)
    work = len(scheme.widths) * (scheme.longest + len(scheme.widths))
    if work > MOST_WORK:
        return False
    covering = Covering(scheme)
    covering.settle(ROUNDS)
    search = _Prices(covering)
    for _ in range(min(MOST_STEPS, EFFORT // work)):
        if stop():
            return False
        most, needed, away = search.look()
        if needed > most * (1 + SURE) and search.proves():
            return True
        search.step(most * (1 + MARGIN) - needed, away)
    return False


class _Prices:
    def __init__(self, covering: Covering) -> None:
        self.scheme = covering.scheme
        duals = covering.simplex.duals()
        self.prices: dict[Row, float] = {
            row: max(0.0, price) for row, price in duals.items() if row[0] not in ("run", "sheet")
        }
        self.weights = {row: self._weight(row) ** 2 for row in self.prices}

    def _weight(self, row: Row) -> float:
        """About what one of a row is worth, in steps of bolt."""
        kind, number = row[0], int(row[1])
        across = self.scheme.bolt.across
        if kind == "size":
            size = self.scheme.task.sizes[number]
            area = size.across * size.along
            return area / self.scheme.step_across / self.scheme.step_along / across
        band = self.scheme.bands[number]
        rise = float(band.rise or band.breadth)
        return rise / across if kind == "length" else rise / 4

    def look(self) -> tuple[Worth, Worth, dict[Row, float]]:
        """What the sheets hold, what is needed, and how the needs differ from what they hold."""
        tariff = tariff_of(self.scheme, self.prices)
        worths = Worths(self.scheme, tariff, TIE)
        needed, away = self._needed(tariff)
        for sheet in self.scheme.sheets:
            for row, by in held(self.scheme, content(worths, *sheet)).items():
                away[row] -= by
        return _all_sheets(worths), needed, away

    def _needed(self, tariff: Tariff) -> tuple[Worth, dict[Row, float]]:
        task = self.scheme.task
        away: dict[Row, float] = defaultdict(float)
        worth: Worth = 0
        for number, size in enumerate(task.sizes):
            worth += tariff.sizes[number] * size.copies
            away["size", number] += size.copies
        for number, band in enumerate(self.scheme.bands):
            for run in band.runs:
                copies = task.strips[run].copies
                division = cheapest(
                    self.scheme, run, band, tariff.grades[number], tariff.rates[number]
                )
                worth += division.cost * copies
                for part in division.parts:
                    away["grade", number, part.grade] += copies
                    away["length", number] += copies * part.length
        return worth, away

    def step(self, lack: float, away: dict[Row, float]) -> None:
        steep = sum(self.weights[row] * by * by for row, by in away.items())
        if steep > 0:
            for row, by in away.items():
                more = lack / steep * self.weights[row] * by
                self.prices[row] = max(0.0, self.prices[row] + more)

    def proves(self) -> bool:
        """Whether these prices, rounded to whole numbers, show it exactly."""
        dearest = max(self.prices.values(), default=0.0)
        if dearest <= 0:
            return False
        whole = {row: round(price * SCALE / dearest) for row, price in self.prices.items()}
        tariff = tariff_of(self.scheme, whole)
        return self._needed(tariff)[0] > _all_sheets(Worths(self.scheme, tariff))


def _all_sheets(worths: Worths) -> Worth:
    """What all sheets together hold at most."""
    return sum(worths.of(*sheet) for sheet in worths.scheme.sheets)
