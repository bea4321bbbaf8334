"""Hanging sleeve: a tube on the back for the rod.

* Tube, flat: the strip is cut 2 × depth + 2 seams (Hill Country Quilt Guild show
  rules, 2023: 8 1/2 for a 4 in sleeve, 1/4 seams). Others cut 9, 9 1/2 or 10.
* D-shaped: `ease` more, so that the front stands out round the rod and the quilt
  hangs flat (Contemporary Quilt group, 2019: 10 for a 4 in sleeve, 1 1/2 more).
* One layer: a strip hemmed all round and sewn on by both long edges; depth, two
  hems, and ease for the rod (our default, no source).

It is cut `shorter` than the quilt is wide (the same rules: 1, ends hemmed), and
in two with a gap for a bracket where it is longer than `split_above`. It may lie
either way on the cloth, one-way prints too, since it hangs behind the quilt.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from core.fabric import Fabric, Grain
from core.figures import figure, usual
from core.finish.demand import Demand, shortest_segment
from core.language import told
from core.lay.problem import Piece, Run
from core.lengths import Inches
from core.quilt import Sleeve, SleeveShape
from core.refusal import Refusal

NAME = "sleeve"
SEAM, SEAM_MM = Fraction(1, 4), Fraction(15, 2)
HEM, HEM_MM = Fraction(1, 2), Fraction(12)
D_EASE, D_EASE_MM = Fraction(3, 2), Fraction(40)
ONE_LAYER_EASE, ONE_LAYER_EASE_MM = Fraction(1, 2), Fraction(12)


@dataclass(frozen=True, slots=True)
class SleevePlan:
    """The sleeve's strips as cut, `parts` of `cut_width` × `length`, each joined or in one.

    `ease` is what the front is cut deeper than the back.
    """

    shape: SleeveShape
    depth: Inches
    ease: Inches
    cut_width: Inches
    length: Inches
    parts: int
    joined: bool
    demands: tuple[Demand, ...]


def plan_sleeve(sleeve: Sleeve, quilt_width: Inches, fabric: Fabric) -> SleevePlan:
    """The sleeve of a quilt of `quilt_width`; in one piece where the cloth is wide enough."""
    ease = _ease(sleeve)
    cut_width = _cut_width(sleeve) + ease
    whole = quilt_width - sleeve.shorter
    parts = 2 if whole > sleeve.split_above else 1
    length = (whole - sleeve.gap) / 2 if parts == 2 else whole
    usable = fabric.cutting_width
    if length <= 0:
        raise Refusal("sleeve", told("the quilt is too narrow for a sleeve; remove the sleeve"))
    if cut_width > usable and length > usable:
        raise Refusal(
            "sleeve.depth", told("the sleeve is wider than the cloth; write a smaller depth")
        )
    joined = length > usable
    wanted: Piece | Run = Piece(
        NAME, fabric.name, length, cut_width, parts, may_turn=cut_width <= usable
    )
    if joined:
        loss, shortest = 2 * _seam(sleeve), shortest_segment(usable, sleeve.shortest)
        wanted = Run(NAME, fabric.name, cut_width, length, loss, shortest, Grain.EITHER, parts)
    demand = Demand("sleeve", "sleeve", wanted)
    return SleevePlan(sleeve.shape, sleeve.depth, ease, cut_width, length, parts, joined, (demand,))


def _cut_width(sleeve: Sleeve) -> Inches:
    """What the strip is cut, without ease."""
    if sleeve.shape is SleeveShape.SINGLE:
        return sleeve.depth + 2 * usual(sleeve.hem, sleeve.depth, HEM, HEM_MM)
    return 2 * (sleeve.depth + _seam(sleeve))


def _seam(sleeve: Sleeve) -> Inches:
    return usual(sleeve.seam, sleeve.depth, SEAM, SEAM_MM)


def _ease(sleeve: Sleeve) -> Inches:
    if sleeve.ease is not None:
        return sleeve.ease
    match sleeve.shape:
        case SleeveShape.TUBE:
            return Fraction(0)
        case SleeveShape.D:
            return figure(sleeve.depth, D_EASE, D_EASE_MM)
        case SleeveShape.SINGLE:
            return figure(sleeve.depth, ONE_LAYER_EASE, ONE_LAYER_EASE_MM)
