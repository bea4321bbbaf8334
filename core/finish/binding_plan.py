"""The binding as planned: what every view shows of it, and how the lay completes it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from core.edge.joins import chain_length, narrowest_strip_length
from core.finish.accent import AccentPlan
from core.finish.bias_cloth import BiasPlan
from core.finish.binding_width import Widths
from core.finish.closing import JoinedClosing, TuckedClosing
from core.finish.demand import Demand
from core.finish.edge_layers import Layers
from core.finish.scrappy import ScrappyPlan
from core.finish.side_strips import SideStrips
from core.finish.two_cloth import TwoCloth
from core.lay.lay import Placement
from core.lengths import Inches

# What its pieces are called in a lay.
NAME, BACK_NAME, FACING = "binding", "binding, back cloth", "facing"


@dataclass(frozen=True, slots=True)
class BindingPlan:
    """The binding of one quilt, in inches. `strips` and what follows are as laid.

    `closing` is what closing takes and `ends` how it is done. `layers` are those
    along the edge, at a join and at the sharpest corner, None where there is none.
    """

    widths: Widths
    perimeter: Inches
    closing: Inches
    needs: Inches
    join_loss: Inches
    strips: int
    strip_length: Inches
    joined_length: Inches
    joins: int
    narrowest_usable_width: Inches
    layers: tuple[Layers, Layers, Layers | None]
    demands: tuple[Demand, ...]
    ends: JoinedClosing | TuckedClosing | None = None
    bias: BiasPlan | None = None
    scrappy: ScrappyPlan | None = None
    two_cloth: TwoCloth | None = None
    accent: AccentPlan | None = None
    facing: SideStrips | None = None

    @property
    def spare(self) -> Inches:
        return self.joined_length - self.needs

    @property
    def first_face_width(self) -> Inches:
        return self.widths.first_face

    @property
    def second_face_width(self) -> Inches:
        return self.widths.second_face

    @property
    def widest_face(self) -> Inches:
        """How far into the quilt the binding covers, on the face where it is wider."""
        return max(self.widths.first_face, self.widths.second_face)

    @property
    def bias_cloths(self) -> tuple[BiasPlan, ...]:
        """All that is cut on the bias: for the binding itself, its scraps, its accent."""
        scraps = [cut for _, cut in self.scrappy.bias] if self.scrappy else []
        accent = self.accent.bias if self.accent else None
        return tuple(cut for cut in (self.bias, *scraps, accent) if cut is not None)

    @property
    def reach(self) -> Inches:
        return self.widths.reach


def segment_length(segment: Placement) -> Inches:
    """How long a laid segment is; a turned one lies along the cloth."""
    return segment.rect.along if segment.turned else segment.rect.across


def as_laid(
    plan: BindingPlan, segments: tuple[Placement, ...], usable_width: Inches
) -> BindingPlan:
    """The plan with the segments that the lay found (offcuts may have been used).

    The narrowest usable width is how far the full-width strips could shrink with
    the other segments as they are; with none at full width, what the strips
    take of the cloth as they lie.
    """
    lengths = tuple(map(segment_length, segments))
    full = lengths.count(usable_width)
    others = tuple(length for length in lengths if length != usable_width)
    narrowest = max(segment.rect.right for segment in segments)
    if full:
        narrowest = narrowest_strip_length(
            plan.needs, plan.join_loss, full, sum(others, Fraction(0)), len(others)
        )
    return replace(
        plan,
        strips=len(lengths),
        strip_length=max(lengths),
        joined_length=chain_length(lengths, plan.join_loss),
        joins=len(lengths) - 1,
        narrowest_usable_width=narrowest,
    )
