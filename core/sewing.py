"""How the cut pieces become parts: joining, cutting to length, the order of sewing."""

from __future__ import annotations

from dataclasses import dataclass

from core.language import told
from core.plan import Plan
from core.sewing_binding import binding_sentences
from core.sewing_borders import border_sentences
from core.sewing_edge import sewing_on
from core.sewing_layers import backing_sentences, label_sentences, sleeve_sentences


@dataclass(frozen=True, slots=True)
class Making:
    """What to do for one part of the quilt, a sentence a step."""

    title: str
    sentences: tuple[str, ...]


def sewing(plan: Plan) -> tuple[Making, ...]:
    """Borders from the inside out, backing, sleeve, label, binding; lengths in the plan's units."""
    makings = [
        Making(told("Border {number}", number=border.number), tuple(border_sentences(plan, border)))
        for border in plan.borders
    ]
    if plan.backing is not None:
        makings.append(Making(told("Backing"), tuple(backing_sentences(plan, plan.backing))))
    if plan.sleeve is not None:
        makings.append(Making(told("Hanging sleeve"), tuple(sleeve_sentences(plan, plan.sleeve))))
    if plan.label_patch is not None:
        makings.append(Making(told("Label"), tuple(label_sentences(plan))))
    if plan.binding is not None:
        makings.append(Making(told("Binding"), tuple(binding_sentences(plan))))
    if plan.sewn is not None:
        makings.append(Making(told("Sewing the binding on"), tuple(sewing_on(plan))))
    return tuple(makings)
