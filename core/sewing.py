"""How the cut pieces become parts: joining, cutting to length, the order of sewing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from core.lengths import show, show_size
from core.plan import Plan
from core.quilt import Seams
from core.sewing_borders import border_sentences, labels


@dataclass(frozen=True, slots=True)
class Making:
    """What to do for one part of the quilt, a sentence a step."""

    title: str
    sentences: tuple[str, ...]


def sewing(plan: Plan) -> tuple[Making, ...]:
    """The borders from the inside out, the backing and the sleeve; lengths in the plan's units."""
    makings = [
        Making(f"Border {border.number}", tuple(border_sentences(plan, border)))
        for border in plan.borders
    ]
    if plan.backing is not None:
        makings.append(Making("Backing", tuple(_backing(plan))))
    if plan.sleeve is not None:
        makings.append(Making("Hanging sleeve", tuple(_sleeve(plan))))
    return tuple(makings)


def _backing(plan: Plan) -> Iterator[str]:
    backing, units = plan.backing, plan.project.units
    if backing is None:
        return
    seam, size = show(backing.seam, units), show_size(backing.across, backing.along, units)
    if backing.pieced_last > 1:
        short = labels(plan.part("backing short strip"))
        yield f"Sew the short strips ({short}) end to end with {seam} seams for the narrow panel."
    if backing.repeat is not None:
        yield "Lay the panels side by side so that the print matches, and trim them to one length."
    if backing.panels > 1:
        way = "along" if backing.seams is Seams.LENGTHWISE else "across"
        yield f"Sew the panels together with {seam} seams, which run {way} the quilt. Press."
    yield f"The backing measures {size}."


def _sleeve(plan: Plan) -> Iterator[str]:
    sleeve, units = plan.sleeve, plan.project.units
    if sleeve is None:
        return
    part = plan.part("sleeve")
    if part.count > plan.project.quilt.cut_together:
        yield f"Join {labels(part)} end to end and trim to {show(sleeve.length, units)}."
    yield (
        f"Hem the short ends, fold it in half along its length right side out, and sew the long "
        f"edges into a tube that lies {show(sleeve.depth, units)} deep."
    )
