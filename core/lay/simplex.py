"""A small linear programme in floats, whose columns are made as they are wanted.

Minimise Σ cost × x so that every row reaches its demand: the revised simplex
method, with the inverse of the basis kept whole, since the rows are few. It
begins with one dear column for each row and so needs no phase of its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple, TypeAlias

Row: TypeAlias = tuple[str, int]
TINY = 1e-9


class Column(NamedTuple):
    """What one unit of an activity costs, and what it adds to each row."""

    cost: float
    rows: Mapping[Row, float]


class Simplex:
    """The basis so far. `dear` is a cost for each row above any that it can be worth."""

    def __init__(self, demand: Mapping[Row, float], dear: Mapping[Row, float]) -> None:
        self.place = {row: place for place, row in enumerate(demand)}
        count = len(self.place)
        signs = [1.0 if wanted >= 0 else -1.0 for wanted in demand.values()]
        self.amounts = [abs(wanted) for wanted in demand.values()]
        self.costs = [
            dear[row] if sign > 0 else 0.0 for row, sign in zip(demand, signs, strict=True)
        ]
        self.inverse = [[signs[i] if i == j else 0.0 for j in range(count)] for i in range(count)]

    def duals(self) -> dict[Row, float]:
        """The price of each row."""
        prices = [0.0] * len(self.place)
        for cost, line in zip(self.costs, self.inverse, strict=True):
            if cost:
                for place, value in enumerate(line):
                    prices[place] += cost * value
        return {row: prices[place] for row, place in self.place.items()}

    def enter(self, column: Column) -> bool:
        """Take a column into the basis; False if nothing would limit it."""
        entries = [(self.place[row], value) for row, value in column.rows.items()]
        way = [sum(line[place] * value for place, value in entries) for line in self.inverse]
        limits = [
            (amount / slope, -slope, index)
            for index, (amount, slope) in enumerate(zip(self.amounts, way, strict=True))
            if slope > TINY
        ]
        if not limits:
            return False
        step, _, out = min(limits)
        self._pivot(out, way, max(0.0, step), column.cost)
        return True

    def _pivot(self, out: int, way: list[float], step: float, cost: float) -> None:
        pivot = way[out]
        line = self.inverse[out] = [value / pivot for value in self.inverse[out]]
        for index, slope in enumerate(way):
            if index != out and slope:
                other = self.inverse[index]
                self.inverse[index] = [a - slope * b for a, b in zip(other, line, strict=True)]
                self.amounts[index] = max(0.0, self.amounts[index] - slope * step)
        self.amounts[out], self.costs[out] = step, cost
