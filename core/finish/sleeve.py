"""Hanging sleeve: a tube on the back for the rod.

The strip is cut 2 × depth + 1/2 (Hill Country Quilt Guild show rules, 2023:
8 1/2 for a 4 in sleeve, 1/4 seams) and 1 in shorter than the quilt is wide
(same rules: quilt width − 1, ends hemmed). Others cut 9, 9 1/2 or 10. It may lie
either way on the cloth, one-way prints too, since it hangs behind the quilt.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from core.fabric import Fabric, Grain
from core.figures import figure
from core.finish.demand import Demand, shortest_segment
from core.lay.problem import Piece, Run
from core.lengths import Inches
from core.quilt import Sleeve
from core.refusal import Refusal

NAME = "sleeve"
SEAM, SEAM_MM = Fraction(1, 4), Fraction(15, 2)
SHORTER_THAN_QUILT, SHORTER_MM = Fraction(1), Fraction(25)
# Hill Country Quilt Guild show rules, 2023: split the sleeve of a wider quilt.
SPLIT_ABOVE = Fraction(90)


@dataclass(frozen=True, slots=True)
class SleevePlan:
    """The sleeve's strip as cut, `cut_width` × `length`; `joined` if it has a seam."""

    depth: Inches
    cut_width: Inches
    length: Inches
    joined: bool
    demands: tuple[Demand, ...]


def plan_sleeve(sleeve: Sleeve, quilt_width: Inches, fabric: Fabric) -> SleevePlan:
    """The sleeve of a quilt of `quilt_width`; in one piece where the cloth is wide enough."""
    seam = figure(sleeve.depth, SEAM, SEAM_MM)
    cut_width = 2 * (sleeve.depth + seam)
    length = quilt_width - figure(quilt_width, SHORTER_THAN_QUILT, SHORTER_MM)
    usable = fabric.cutting_width
    if length <= 0:
        raise Refusal("sleeve", "the quilt is too narrow for a sleeve; remove the sleeve")
    if cut_width > usable and length > usable:
        raise Refusal("sleeve.depth", "the sleeve is wider than the cloth; write a smaller depth")
    if length <= usable:
        piece = Piece(NAME, fabric.name, length, cut_width, 1, may_turn=cut_width <= usable)
        return SleevePlan(
            sleeve.depth, cut_width, length, False, (Demand("sleeve", "sleeve", piece),)
        )
    shortest = shortest_segment(usable)
    run = Run(NAME, fabric.name, cut_width, length, 2 * seam, shortest, Grain.EITHER)
    return SleevePlan(sleeve.depth, cut_width, length, True, (Demand("sleeve", "sleeve", run),))
