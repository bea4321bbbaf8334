"""A label: a patch on the back that says who made the quilt, for whom and when."""

from __future__ import annotations

from dataclasses import dataclass

from core.fabric import Fabric
from core.finish.demand import Demand
from core.language import told
from core.lay.problem import Piece
from core.lengths import Inches
from core.quilt import Label
from core.refusal import Refusal

NAME = "label"


@dataclass(frozen=True, slots=True)
class LabelPlan:
    """The patch as cut, `across` × `along`, its hems turned under to the finished size."""

    across: Inches
    along: Inches
    demands: tuple[Demand, ...]


def plan_label(label: Label, quilt: tuple[Inches, Inches], fabric: Fabric) -> LabelPlan:
    """The label of a quilt of that width and length; its words run across the cloth."""
    across, along = label.width + 2 * label.hem, label.length + 2 * label.hem
    for key, side, most in (("width", label.width, quilt[0]), ("length", label.length, quilt[1])):
        if side > most:
            raise Refusal(
                f"label.{key}",
                told("a label of {side} is larger than the quilt; write a smaller one"),
                side=side,
            )
    if across > fabric.cutting_width:
        raise Refusal(
            "label.width",
            told(
                "the label is wider than its cloth's usable width of {usable}; write a smaller one"
            ),
            usable=fabric.cutting_width,
        )
    piece = Piece(NAME, fabric.name, across, along, 1, may_turn=not fabric.one_way_print)
    return LabelPlan(across, along, (Demand("label", "label", piece),))
