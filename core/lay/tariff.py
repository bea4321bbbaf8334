"""Prices for what lies in a bar: pieces by their width, segments by their length.

A segment is worth a `rate` for its length, a second rate for its length up to
`alone` (a longer one leaves no room for another beside it), and a price for each
step that it is longer than. Steps see how many segments there are, which of them
need a whole row, and which would not lie beside something else. A longer segment
is never worth less.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple, TypeAlias

Worth: TypeAlias = float  # whole numbers where the figure is a proof


class Step(NamedTuple):
    """What a segment longer than `above` is worth more."""

    above: int
    price: Worth


class Tariff(NamedTuple):
    """The price of a width for each unit that it holds a bar, and that of a segment's length."""

    of_width: Callable[[int], Worth]
    rate: Worth = 0
    shared: Worth = 0
    alone: int = 0
    steps: tuple[Step, ...] = ()

    def of_length(self, length: int) -> Worth:
        """What a bar gets for a segment that lies across it.

        >>> Tariff(lambda width: 0, rate=1, steps=(Step(17, 100), Step(24, 50))).of_length(20)
        120
        """
        worth = self.rate * length + self.shared * min(length, self.alone)
        return worth + sum(step.price for step in self.steps if length > step.above)

    def slope(self, length: int) -> Worth:
        """What another unit of length adds, up to the next step."""
        return self.rate + (self.shared if length < self.alone else 0)

    def starts(self, least: int) -> list[int]:
        """The lengths from `least` on at which the worth jumps or rises otherwise."""
        jumps = {step.above + 1 for step in self.steps if step.price} | {self.alone + 1}
        return [least, *sorted(start for start in jumps if start > least)]
