"""The refusal when the cloth on hand gives not everything and no more may be bought."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from core.finish.demand import Demand, Wanted
from core.language import told
from core.lay.problem import Run
from core.lengths import Units
from core.part_names import told_part
from core.quilt import Project
from core.refusal import Refusal


class NotEnough(Refusal):
    """The cloth on hand gives not everything; `name` is what found no room."""

    def __init__(self, path: str, template: str, name: str) -> None:
        super().__init__(path, template)
        self.name = name

    def in_units(self, units: Units) -> NotEnough:
        return self  # it speaks of no length


def not_enough(project: Project, demands: Sequence[Demand], name: str) -> NotEnough:
    """Why not all could be laid: too little cloth where the areas say so, else no lay found."""
    demand = next(demand for demand in demands if demand.wanted.name == name)
    cloth = demand.wanted.cloth
    place = [fabric.name for fabric in project.fabrics].index(cloth)
    wanted = (_area(d.wanted) for d in demands if d.wanted.cloth == cloth)
    on_hand = (piece.across * piece.along * piece.count for piece in project.fabrics[place].on_hand)
    too_little = sum(wanted, Fraction(0)) > sum(on_hand, Fraction(0))
    values = {"fabric": cloth, "part": told_part(name)}
    said = (
        told(
            "the {fabric} on hand is not enough for the {part}, and no more may be bought; "
            "add cloth on hand or allow buying more",
            **values,
        )
        if too_little
        else told(
            "no way was found to cut the {part} and all else from the {fabric} on hand, and no "
            "more may be bought; add cloth on hand or allow buying more",
            **values,
        )
    )
    return NotEnough(f"fabrics[{place}].on_hand", said, name)


def _area(wanted: Wanted) -> Fraction:
    """Square inches of cloth that a piece or run takes at the least, all copies."""
    if isinstance(wanted, Run):
        return wanted.strip * wanted.needs * wanted.count
    return wanted.across * wanted.along * wanted.count
