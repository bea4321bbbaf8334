"""The best prices for bars: the dual of a cutting-stock problem, by column generation.

A lay, cut into bars, covers every width for as long as its things are long, and
every measure of its segments: how long they are, how many are longer than a step.
A run is any mixture of its divisions. The fewest inches of bars that cover
everything are a linear programme; its duals are the prices that show the most.
Bars and divisions are made one at a time, each the best at the prices so far
(P. C. Gilmore and R. E. Gomory, Oper. Res. 9 (1961), doi:10.1287/opre.9.6.849).
The search is in floats, and may stop at any time: its prices, rounded to whole
numbers, hold whatever they are, since `core.lay.prices` reckons exactly what
everything is worth and what the dearest bar fetches at them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from core.lay.division import least_division
from core.lay.needs import Needs
from core.lay.prices import alone, dearest, items_in
from core.lay.simplex import Column, Row, Simplex
from core.lay.tariff import Step, Tariff, Worth

# Prices are rounded to this part of the dearest.
SCALE = 1_000_000
ENOUGH = 1e-7
# Segments are told apart at so many lengths.
MOST_STEPS = 10
# So many of the columns that are found in a round may enter.
MOST_AT_ONCE = 6
# A little of every measure is asked for: the programme would stand still on zeros.
LITTLE = 1e-3
# Divisions that are looked at for a good one; how good they are shows in the end.
DIVISIONS = 200


def best_prices(needs: Needs, width: int, along: int, rounds: int) -> Tariff:
    """Prices for a sheet `width` wide (nothing on it above `along`), after so many rounds."""
    return _Programme(needs, width, along).prices(rounds)


class _Programme:
    """The rows and columns; a sheet's number counts the boards, then the bolt.

    A row is named ("width", w), ("board", number), ("measure", number), ("run", number)
    or, for what may lie two ways, ("things", number). The first measure of a segment is
    its length, the second that up to `alone`; the others tell whether it passes a step.
    """

    def __init__(self, needs: Needs, width: int, along: int) -> None:
        self.needs = needs
        self.sheets = [*((hold.across, hold.longest) for hold in needs.boards), (width, along)]
        self.alone = alone(needs, width)
        self.steps = _steps(needs, width, along, self.alone)
        self.items = [items_in(needs, *sheet) for sheet in self.sheets]
        self.rows = {row: self._little(row) for row in self._covers()}
        self.dear: dict[Row, float] = dict.fromkeys(self.rows, 2.0)
        self.ways: list[Column] = []
        self._demand()

    def _covers(self) -> Iterator[Row]:
        for items in self.items:
            yield from (("width", across) for across, _ in items)
        if any(run.crosswise for run in self.needs.lengths):
            yield from (("measure", number) for number in range(2 + len(self.steps)))

    @staticmethod
    def _little(row: Row) -> float:
        return LITTLE * (1 + row[1]) if row[0] == "measure" else 0.0

    def _demand(self) -> None:
        """What each row must reach; things that may lie two ways get a row of their own."""
        for number, things in enumerate(self.needs.rectangles):
            ways = [(("width", w), h) for w, h in things.shapes if ("width", w) in self.rows]
            if len(ways) == 1:
                [(row, along)] = ways
                self.rows[row] += along * things.copies
            elif ways and things.copies:
                own = "things", number
                self._row(own, things.copies, 4.0 * max(along for _, along in ways))
                self.ways += [Column(0.0, {own: 1.0, row: -along}) for row, along in ways]
        for number, run in enumerate(self.needs.lengths):
            self._row(("run", number), run.copies, 4.0 * (run.segments * run.strip + run.needs))
        for number, hold in enumerate(self.needs.boards):
            self._row(("board", number), -hold.along, 2.0)

    def _row(self, row: Row, demand: float, dear: float) -> None:
        self.rows[row], self.dear[row] = float(demand), dear

    def prices(self, rounds: int) -> Tariff:
        simplex = Simplex(self.rows, self.dear)
        for _ in range(rounds):
            duals = simplex.duals()
            found = sorted(self._columns(duals), key=lambda found: found[0])
            if found[0][0] > -ENOUGH:
                break
            for _, column in found[:MOST_AT_ONCE]:
                if _reduced(column, simplex.duals()) < -ENOUGH and not simplex.enter(column):
                    return self._whole(duals)
        return self._whole(simplex.duals())

    def _columns(self, duals: Mapping[Row, float]) -> Iterator[tuple[float, Column]]:
        """What may enter, with its reduced cost: a surplus, a way to lie, a bar, a division."""
        for row, price in duals.items():
            yield price, Column(0.0, {row: -1.0})
        for column in self.ways:
            yield _reduced(column, duals), column
        tariff = self._tariff(duals)
        for number in range(len(self.sheets)):
            yield self._bar(number, tariff, duals)
        for number in range(len(self.needs.lengths)):
            yield self._division(number, tariff, duals)

    def _bar(self, number: int, tariff: Tariff, duals: Mapping[Row, float]) -> tuple[float, Column]:
        """The dearest bar of a sheet at these prices, and what it covers."""
        bar = dearest(self.needs, tariff, *self.sheets[number])
        filled: dict[Row, float] = {}
        for (across, _), count in zip(self.items[number], bar.counts, strict=False):
            if count:
                filled["width", across] = float(count)
        for segment in bar.segments:
            self._measure(filled, segment, 1.0)
        if number == len(self.needs.boards):
            return 1.0 - bar.worth, Column(1.0, filled)
        filled["board", number] = -1.0
        return duals["board", number] - bar.worth, Column(0.0, filled)

    def _division(
        self, number: int, tariff: Tariff, duals: Mapping[Row, float]
    ) -> tuple[float, Column]:
        """The division of a run that is worth the least, and what it asks of the bars."""
        run = self.needs.lengths[number]
        division = least_division(run, tariff, DIVISIONS)
        asked: dict[Row, float] = {("run", number): 1.0}
        for segment in division.segments:
            if segment.lengthwise:
                width = "width", run.strip
                asked[width] = asked.get(width, 0.0) - segment.length
            else:
                self._measure(asked, segment.length, -float(run.strip))
        worth = sum(segment.worth for segment in division.segments)
        return worth - duals["run", number], Column(0.0, asked)

    def _measure(self, filled: dict[Row, float], length: int, times: float) -> None:
        """Add the measures of a segment so long."""
        measures = [length, min(length, self.alone), *(length > above for above in self.steps)]
        for number, measure in enumerate(measures):
            if measure:
                row = "measure", number
                filled[row] = filled.get(row, 0.0) + times * measure

    def _tariff(self, duals: Mapping[Row, Worth]) -> Tariff:
        """The prices as a tariff; what has no row is worth nothing."""
        prices = [max(0, duals.get(("measure", n), 0)) for n in range(2 + len(self.steps))]
        steps = (Step(above, price) for above, price in zip(self.steps, prices[2:], strict=True))
        return Tariff(
            lambda width: duals.get(("width", width), 0),
            prices[0],
            prices[1],
            self.alone,
            tuple(step for step in steps if step.price),
        )

    def _whole(self, duals: Mapping[Row, float]) -> Tariff:
        """The prices as whole numbers."""
        priced = {row: price for row, price in duals.items() if row[0] in ("width", "measure")}
        highest = max(priced.values(), default=0.0)
        scale = SCALE / highest if highest > 0 else 0.0
        return self._tariff({row: max(0, round(price * scale)) for row, price in priced.items()})


def _reduced(column: Column, duals: Mapping[Row, float]) -> float:
    """What a column costs beyond what it covers is worth."""
    return column.cost - sum(duals[row] * by for row, by in column.rows.items())


def _steps(needs: Needs, width: int, along: int, most: int) -> list[int]:
    """Lengths that tell segments apart: places in a row, and what lies beside other things."""
    runs = [run for run in needs.lengths if run.crosswise]
    if not runs:
        return []
    shortest = max(1, min(run.shortest for run in runs))
    beside = {width - across for across, _ in items_in(needs, width, along)}
    beside |= {hold.across for hold in needs.boards} | {width // 2, most}
    places = {place * shortest - 1 for place in range(1, 1 + width // shortest)}
    found = {above for above in beside if shortest <= above < width}
    return sorted(sorted(found)[-MOST_STEPS:] + sorted(places)[:MOST_STEPS])
