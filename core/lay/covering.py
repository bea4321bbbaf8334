"""The least cloth by mixtures of sections: a linear programme, and its prices.

A lay is a set of sections, each across the whole width, and of contents of the
pieces on hand; and each run is divided. Sections must hold every piece, and the
segments of each grade, and their length, that the divisions take. Mixtures of
sections give a linear programme, whose columns are the dearest sections and the
cheapest divisions at its own prices (P. C. Gilmore and R. E. Gomory, Oper. Res.
13 (1965), doi:10.1287/opre.13.1.94).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence

from core.lay.contents import Leaf, content
from core.lay.divisions import Division, cheapest
from core.lay.scheme import Scheme
from core.lay.sections import Tariff, Worth, Worths
from core.lay.simplex import Column, Row, Simplex

ENOUGH = 1e-6
# Worths nearer than this are no reason to prefer the larger section.
TIE = 1e-6
# Dear enough that nothing is left out (steps of bolt for one of anything).
DEAR = 1e5
# So many sections are taken in from one price list.
AT_ONCE = 4


class Covering:
    """The programme for one scheme, with what rows its columns may have."""

    def __init__(self, scheme: Scheme) -> None:
        self.scheme = scheme
        demand = dict(self._demand())
        self.simplex = Simplex(demand, dict.fromkeys(demand, DEAR))
        self.waste = [Column(0.0, {row: -1.0}) for row in demand]
        self.waste += self._shortened()

    def _demand(self) -> Iterator[tuple[Row, float]]:
        task = self.scheme.task
        for number, size in enumerate(task.sizes):
            yield ("size", number), float(size.copies)
        for number, band in enumerate(self.scheme.bands):
            for grade in range(len(band.starts)):
                yield ("grade", number, grade), 0.0
            yield ("length", number), 0.0
            for run in band.runs:
                yield ("run", run), float(task.strips[run].copies)
        for number in range(len(self.scheme.sheets) - 1):
            yield ("sheet", number), -1.0

    def _shortened(self) -> Iterator[Column]:
        """A segment may be cut to a lower grade."""
        for number, band in enumerate(self.scheme.bands):
            for grade in range(1, len(band.starts)):
                rows: dict[Row, float] = {("grade", number, grade): -1.0}
                rows["grade", number, grade - 1] = 1.0
                rows["length", number] = float(band.starts[grade] - band.ends[grade])
                yield Column(0.0, rows)

    def settle(self, rounds: int) -> None:
        """Make columns until none is better, or so many times."""
        for _ in range(rounds):
            entered = False
            for column in list(self._columns(self.simplex.duals())):
                entered |= self._enter(column)
            if not entered:
                return

    def _enter(self, column: Column) -> bool:
        duals = self.simplex.duals()
        if column.cost - sum(duals[row] * by for row, by in column.rows.items()) > -ENOUGH:
            return False
        return self.simplex.enter(column)

    def _columns(self, duals: dict[Row, float]) -> Iterator[Column]:
        yield from self.waste
        tariff = tariff_of(self.scheme, {row: max(0.0, price) for row, price in duals.items()})
        for number, band in enumerate(self.scheme.bands):
            prices, rate = tariff.grades[number], tariff.rates[number]
            for run in band.runs:
                yield _divided(run, number, cheapest(self.scheme, run, band, prices, rate))
        worths = Worths(self.scheme, tariff, TIE)
        for number, (across, along) in enumerate(self.scheme.sheets[:-1]):
            leaves = content(worths, across, along)
            yield Column(0.0, {("sheet", number): -1.0, **held(self.scheme, leaves)})
        across = self.scheme.bolt.across
        for along in self._best(worths.rows[across], worths.uncut[across]):
            yield Column(float(along), held(self.scheme, content(worths, across, along)))

    def _best(self, row: Sequence[float], lengths: Sequence[int]) -> list[int]:
        """The lengths of the dearest sections for what they cost."""
        lengths = [along for along in lengths if row[along] > along + ENOUGH]
        return sorted(lengths, key=lambda along: along / row[along])[:AT_ONCE]


def held(scheme: Scheme, leaves: Iterable[Leaf]) -> dict[Row, float]:
    """How much of each row things hold."""
    rows: Counter[Row] = Counter()
    for leaf in leaves:
        if leaf.grade < 0:
            rows["size", leaf.kind] += 1
        else:
            length = leaf.along if leaf.lengthwise else leaf.across
            rows["grade", leaf.kind, leaf.grade] += 1
            rows["length", leaf.kind] += min(length, scheme.bands[leaf.kind].ends[leaf.grade])
    return {row: float(by) for row, by in rows.items()}


def _divided(run: int, band: int, division: Division) -> Column:
    rows: Counter[Row] = Counter()
    for part in division.parts:
        rows["grade", band, part.grade] -= 1
        rows["length", band] -= part.length
    return Column(0.0, {("run", run): 1.0, **{row: float(by) for row, by in rows.items()}})


def tariff_of(scheme: Scheme, prices: Mapping[Row, Worth]) -> Tariff:
    """The prices of the rows as a tariff."""
    return Tariff(
        [prices["size", number] for number in range(len(scheme.task.sizes))],
        [
            [prices["grade", number, grade] for grade in range(len(band.starts))]
            for number, band in enumerate(scheme.bands)
        ],
        [prices["length", number] for number in range(len(scheme.bands))],
    )
