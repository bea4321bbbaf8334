"""Which length the renewal of a lay aims at: far below the best at first, then nearer.

If so much less turns out to be too much, a third of it is asked for, down to
the least step that buys or uses less, which is pursued as long as there is
time; after a success twice as much is asked for.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from random import Random
from typing import Final

from core.lay.renew import Renewal
from core.lay.start import Packing
from core.lay.ticks import Task

# The first aim lies this part of the way from the best to the bound.
PART: Final = 4
# Steps after which a lay so much shorter is given up: the most of this number
# and a share of all that were made.
PATIENCE, SHARE = 600, 8


class Pursuit:
    """A renewal with its aim."""

    def __init__(self, task: Task, rng: Random) -> None:
        self.task = task
        self.renewal = Renewal(task, rng)
        self.origin: Packing | None = None
        self.less = task.plenty
        self.tried = self.total = 0
        on_hand = sum(board.across * board.along for board in task.boards)
        pieces = sum(size.across * size.along * size.copies for size in task.sizes)
        self.by_area = -((on_hand - pieces) // task.width)

    def follow(self, best: Packing, used: int, bound: Fraction, steps: int) -> Packing | None:
        """Try so many changes to `best`; a lay that takes less than `used`, if one is found."""
        if best is not self.origin:
            self.less *= 2
            self._set_out(best, used, bound)
        elif self.less > 1 and self.tried >= max(PATIENCE, self.total // SHARE):
            self.less //= 3
            self._set_out(best, used, bound)
        self.tried += steps
        self.total += steps
        return self.renewal.packing() if self.renewal.steps(steps) else None

    def _set_out(self, best: Packing, used: int, bound: Fraction) -> None:
        least = max(ceil(bound), self.by_area, 1)
        self.less = max(1, min(self.less, (used - least) // PART))
        buys_less = self.task.room_in(self.task.bought(used) - self.task.cloth.sale_unit)
        self.origin, self.tried = best, 0
        self.renewal.start_from(best)
        self.renewal.aim(max(least, min(buys_less, used - self.less)))
