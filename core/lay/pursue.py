"""Which length the renewal of a lay aims at: far below the best at first, then nearer.

If so much less turns out to be too much, a third of it is asked for, down to
the least step that buys or uses less; that one is pursued as long as there is time.
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
# Steps after which a lay so much shorter is given up.
PATIENCE: Final = 2000


class Pursuit:
    """A renewal with its aim."""

    def __init__(self, task: Task, rng: Random) -> None:
        self.task = task
        self.renewal = Renewal(task, rng)
        self.origin: Packing | None = None
        self.less: int | None = None
        self.tried = 0

    def follow(self, best: Packing, bound: Fraction, steps: int) -> Packing | None:
        """Try so many changes to `best`; a lay that takes less, if one is found."""
        if best is not self.origin:
            self._set_out(best, bound)
        elif self.tried >= PATIENCE and self.less and self.less > 1:
            self.less = max(1, self.less // 3)
            self._set_out(best, bound)
        self.tried += steps
        return self.renewal.packing() if self.renewal.steps(steps) else None

    def _set_out(self, best: Packing, bound: Fraction) -> None:
        least = ceil(bound)
        way = max(1, (best.used - least) // PART)
        self.less = way if self.less is None else min(self.less, way)
        buys_less = self.task.room_in(self.task.bought(best.used) - self.task.cloth.sale_unit)
        self.origin, self.tried = best, 0
        self.renewal.start_from(best)
        self.renewal.aim(max(1, least, min(buys_less, best.used - self.less)))
