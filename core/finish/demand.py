"""What a part of the quilt asks of the cloths, in the lay's own terms."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TypeAlias

from core.figures import usual
from core.lay.problem import Piece, Run
from core.lengths import Inches

# Our default, no source: the short side of a fat quarter, so that one can be used;
# shorter segments make more joins than they save cloth.
SHORTEST_SEGMENT, SHORTEST_SEGMENT_MM = Fraction(18), Fraction(450)

Wanted: TypeAlias = Piece | Run


@dataclass(frozen=True, slots=True)
class Demand:
    """One piece or run to cut: for which part (its `path` in the project), drawn in which role."""

    path: str
    role: str
    wanted: Wanted


def for_copies(demands: Iterable[Demand], copies: int) -> tuple[Demand, ...]:
    """The demands of several equal quilts cut together."""
    return tuple(
        replace(demand, wanted=replace(demand.wanted, count=demand.wanted.count * copies))
        for demand in demands
    )


def shortest_segment(usable_width: Inches, said: Inches | None = None) -> Inches:
    """The least length of a run's segment on a cloth of this width, as `said` or as usual."""
    least = usual(said, usable_width, SHORTEST_SEGMENT, SHORTEST_SEGMENT_MM)
    return min(least, usable_width)
