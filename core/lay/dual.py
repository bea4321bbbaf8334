"""The best prices for bars: the dual of a cutting-stock problem, by column generation.

A lay, cut into bars, covers every width for as long as its things are long. The
fewest inches of bars that cover everything are a linear programme; its duals
are the prices that show the most. Patterns of bars are made one at a time, each
the dearest at the prices so far (P. C. Gilmore and R. E. Gomory, Oper. Res. 9
(1961), doi:10.1287/opre.9.6.849). The search is in floats, and may stop at any
time: its prices, rounded to whole numbers, hold whatever they are, since
`core.lay.prices` reckons exactly what the dearest bar fetches at them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple, TypeAlias

from core.lay.needs import Lengths, Needs
from core.lay.prices import Prices, Rate
from core.lay.simplex import Column, Row, Simplex

# Prices are rounded to this part of the dearest.
SCALE = 1_000_000
ENOUGH = 1e-7
_KINDS = ("whole", "net", "rows", "places")
# A bar with more different widths than this is priced no further.
MOST_TOTALS = 3000


class Entry(NamedTuple):
    """Something that lies in a bar: its row, width and how often at most."""

    row: Row
    width: int
    copies: int


def best_prices(needs: Needs, width: int, along: int, rounds: int) -> Prices:
    """Prices for a sheet `width` wide (nothing on it above `along`), after so many bars."""
    return _Programme(needs, width, along).prices(rounds)


# For each total width: the best worth, the total before the last entry, and that entry.
Totals: TypeAlias = dict[int, tuple[float, int, Entry | None]]


class _Programme:
    """The rows and columns; a sheet's number counts the boards, then the bolt.

    A row is named ("width", w), ("board", number), (one of `_KINDS`, run)
    or, for what may lie two ways, ("things", number) and ("runs", number).
    """

    def __init__(self, needs: Needs, width: int, along: int) -> None:
        self.needs = needs
        self.sheets = [*((hold.across, hold.longest) for hold in needs.boards), (width, along)]
        self.bolt = len(needs.boards)
        self.rows: dict[Row, float] = {}
        self.entries = [list(self._entries(*sheet)) for sheet in self.sheets]
        for row in self._covers():
            self.rows[row] = 0.0
        self.ways: list[Column] = []
        self._demand()

    def _covers(self) -> Iterator[Row]:
        for entries in self.entries:
            yield from (entry.row for entry in entries)
        for number, run in enumerate(self.needs.lengths):
            if run.crosswise:
                yield "whole", number
                if not run.lengthwise:
                    yield "net", number
                    yield "rows", number
                    yield "places", number

    def _entries(self, width: int, along: int) -> Iterator[Entry]:
        for things in self.needs.rectangles:
            for across, length in things.shapes:
                if across <= width and length <= along:
                    yield Entry(("width", across), across, things.copies)
        for run in self.needs.lengths:
            if run.lengthwise and run.strip <= width and run.least <= along:
                yield Entry(("width", run.strip), run.strip, width // run.strip)

    def _demand(self) -> None:
        """What each row must reach; things that may lie two ways get a row of their own."""
        for number, things in enumerate(self.needs.rectangles):
            ways = [(("width", w), float(h)) for w, h in things.shapes if ("width", w) in self.rows]
            self._either(("things", number), ways, float(things.copies))
        for number, run in enumerate(self.needs.lengths):
            ways = [(("width", run.strip), 1.0)] if run.lengthwise else []
            ways = [way for way in ways if way[0] in self.rows]
            if run.crosswise:
                ways.append((("whole", number), float(run.strip)))
            self._either(("runs", number), ways, float(run.total * run.copies))
            if ("net", number) in self.rows:
                self.rows["net", number] = float(run.demand * run.strip * run.copies)
                self.rows["rows", number] = float(run.rows * run.strip * run.copies)
                self.rows["places", number] = float(run.places * run.strip * run.copies)
        for number, hold in enumerate(self.needs.boards):
            self.rows["board", number] = -float(hold.along)

    def _either(self, own: Row, ways: list[tuple[Row, float]], copies: float) -> None:
        if len(ways) == 1:
            row, each = ways[0]
            self.rows[row] += each * copies
        elif ways:
            self.rows[own] = copies
            self.ways += [Column(0.0, {own: 1.0, row: -each}) for row, each in ways]

    def prices(self, rounds: int) -> Prices:
        dear = {row: 2.0 for row in self.rows}
        for column in self.ways:
            own, by = list(column.rows.items())
            dear[own[0]] = max(dear[own[0]], -4.0 * by[1])
        simplex = Simplex(self.rows, dear)
        for _ in range(rounds):
            duals = simplex.duals()
            best = min(self._columns(duals), key=lambda found: found[0])
            if best[0] > -ENOUGH or not simplex.enter(best[1]):
                break
        return _rounded(self.needs, simplex.duals())

    def _columns(self, duals: dict[Row, float]) -> Iterator[tuple[float, Column]]:
        """What may enter, with its reduced cost: a surplus, a way to lie, a bar of each sheet."""
        for row, price in duals.items():
            yield price, Column(0.0, {row: -1.0})
        for column in self.ways:
            yield column.cost - sum(duals[row] * by for row, by in column.rows.items()), column
        for number in range(len(self.sheets)):
            worth, filled = self._dearest(number, duals)
            cost = 1.0
            if number < self.bolt:
                cost = 0.0
                filled["board", number] = -1.0
                worth -= duals["board", number]
            yield cost - worth, Column(cost, filled)

    def _dearest(self, number: int, duals: dict[Row, float]) -> tuple[float, dict[Row, float]]:
        """The dearest bar of a sheet at these prices, and what it covers."""
        width = self.sheets[number][0]
        entries = [entry for entry in self.entries[number] if duals[entry.row] > ENOUGH]
        totals: Totals = {0: (0.0, 0, None)}
        steps: list[Totals] = []
        for entry in sorted(entries, key=lambda entry: -duals[entry.row] / entry.width):
            if len(totals) > MOST_TOTALS:
                break
            totals = _with(totals, entry, duals[entry.row], width)
            steps.append(totals)
        fill = self._filler(number, duals)
        taken = max(totals, key=lambda taken: (totals[taken][0] + fill(width - taken)[0], -taken))
        worth, filled = fill(width - taken)
        worth += totals[taken][0]
        for step in reversed(steps):
            _, before, last = step[taken]
            if last is not None:
                count = (taken - before) // last.width
                filled[last.row] = filled.get(last.row, 0.0) + count
                taken = before
        return worth, filled

    def _filler(
        self, number: int, duals: dict[Row, float]
    ) -> Callable[[int], tuple[float, dict[Row, float]]]:
        """The dearest segment for the rest of a bar."""
        along = self.sheets[number][1]
        runs = [
            (
                place,
                run,
                [duals.get((name, place), 0.0) for name in ("whole", "net", "rows")],
            )
            for place, run in enumerate(self.needs.lengths)
            if run.crosswise and run.strip <= along
        ]

        def fill(rest: int) -> tuple[float, dict[Row, float]]:
            best, filled = 0.0, {}
            for place, run, (whole, net, rows) in runs:
                length = min(rest, run.needs)
                row = run.widest if length > run.alone else length
                worth = whole * length + net * (length - run.loss) + rows * row
                if length >= run.least and worth > best:
                    best, filled = worth, {("whole", place): float(length)}
                    if ("net", place) in duals:
                        filled["net", place] = float(length - run.loss)
                        filled["rows", place] = float(row)
            return best, filled

        def with_places(rest: int) -> tuple[float, dict[Row, float]]:
            worth, filled = fill(rest)
            counted = [
                (duals["places", place] * _places(run, rest), place)
                for place, run, _ in runs
                if ("places", place) in duals
            ]
            if counted:
                most, place = max(counted)
                worth += most
                filled["places", place] = float(_places(runs_by_place[place], rest))
            return worth, filled

        runs_by_place = {place: run for place, run, _ in runs}
        return with_places


def _with(totals: Totals, entry: Entry, price: float, width: int) -> Totals:
    """The best worth for each total width with up to `copies` of the entry added."""
    grown: Totals = {taken: (worth, taken, None) for taken, (worth, _, _) in totals.items()}
    many = entry.copies >= width // entry.width
    for start, (worth, _, _) in sorted(totals.items(), key=lambda total: total[0]):
        taken = start
        for _ in range(min(entry.copies, (width - taken) // entry.width)):
            taken += entry.width
            worth += price
            if taken not in grown or grown[taken][0] < worth - ENOUGH:
                grown[taken] = (worth, start, entry)
            elif many:
                break  # from here on the other goes on as well
    return grown


def _places(run: Lengths, rest: int) -> int:
    """How many places the segments in the rest of a bar take at most."""
    return min(run.per_row, run.per_row if rest > run.alone else rest // run.shortest)


def _rounded(needs: Needs, duals: dict[Row, float]) -> Prices:
    """The prices as whole numbers; what has no row is worth nothing."""
    dearest = max((price for row, price in duals.items() if row[0] != "board"), default=0.0)
    scale = SCALE / dearest if dearest > 0 else 0.0
    whole = {row: max(0, round(price * scale)) for row, price in duals.items()}
    places = {run: place for place, run in enumerate(needs.lengths)}

    def of_run(run: Lengths) -> Rate:
        place = places.get(run, -1)
        return Rate(*(whole.get((name, place), 0) for name in _KINDS))

    return Prices(lambda width: whole.get(("width", width), 0), of_run)
