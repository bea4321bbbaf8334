"""How the cut pieces become parts: joining, cutting to length, the order of sewing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from core.finish.border import BorderPlan
from core.lengths import show, show_size
from core.plan import Part, Plan
from core.quilt import Corners, Seams


@dataclass(frozen=True, slots=True)
class Making:
    """What to do for one part of the quilt, a sentence a step."""

    title: str
    sentences: tuple[str, ...]


def sewing(plan: Plan) -> tuple[Making, ...]:
    """The borders from the inside out, the backing and the sleeve; lengths in the plan's units."""
    makings = [
        Making(f"Border {border.number}", tuple(_border(plan, border))) for border in plan.borders
    ]
    if plan.backing is not None:
        makings.append(Making("Backing", tuple(_backing(plan))))
    if plan.sleeve is not None:
        makings.append(Making("Hanging sleeve", tuple(_sleeve(plan))))
    return tuple(makings)


def _border(plan: Plan, border: BorderPlan) -> Iterator[str]:
    if border.joined:
        yield _joined_strips(plan, border)
    match border.border.corners:
        case Corners.BUTTED:
            yield "Sew the two sides on first, then the top and bottom across their ends."
        case Corners.SQUARES:
            corner = _labels(plan.part(f"border {border.number} corner"))
            yield "Sew the two sides on."
            yield (
                f"Sew a corner square ({corner}) to each end of the top and bottom strips, "
                "then sew those on."
            )
        case Corners.MITRED:
            seam = show(border.border.seam, plan.project.units)
            yield (
                f"Centre a strip on each edge, so that its ends hang over equally, and sew from "
                f"{seam} inside one corner to {seam} inside the other."
            )
            yield "Fold each corner at 45°, sew the mitre from the inside out, and trim the rest."


def _joined_strips(plan: Plan, border: BorderPlan) -> str:
    units = plan.project.units
    part = plan.part(f"border {border.number} strip")
    lengths = " and ".join(
        f"{strip.count} of {show(strip.length, units)} ({strip.name.split(' ', 2)[2]})"
        for strip in border.strips
    )
    if plan.project.quilt.cut_together > 1:
        lengths += " for each quilt"
    if part.count == 1:
        return f"From {_labels(part)} cut {lengths}."
    return (
        f"Join {_labels(part)} end to end with {border.border.joins.value} joins, then cut from "
        f"the long strip {lengths}."
    )


def _backing(plan: Plan) -> Iterator[str]:
    backing, units = plan.backing, plan.project.units
    if backing is None:
        return
    seam, size = show(backing.seam, units), show_size(backing.across, backing.along, units)
    if backing.pieced_last > 1:
        short = _labels(plan.part("backing short strip"))
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
        yield f"Join {_labels(part)} end to end and trim to {show(sleeve.length, units)}."
    yield (
        f"Hem the short ends, fold it in half along its length right side out, and sew the long "
        f"edges into a tube that lies {show(sleeve.depth, units)} deep."
    )


def _labels(part: Part) -> str:
    """All of a part's pieces: "B", or "B1 to B4"."""
    first, last = part.label(1), part.label(part.count)
    return first if first == last else f"{first} to {last}"
