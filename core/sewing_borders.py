"""How the strips of a border are made and sewn on, in words."""

from __future__ import annotations

from collections.abc import Iterator

from core.finish.border import BorderPlan, long_strips
from core.finish.border_sides import BorderStrip
from core.lengths import show
from core.plan import Part, Plan
from core.quilt import Corners, First, Piecing


def border_sentences(plan: Plan, border: BorderPlan) -> Iterator[str]:
    """Joining, cutting to length, the order of sewing, and what the other grain would buy."""
    if any(strip.parts for strip in border.strips):
        yield from (_pieced_strip(plan, border, strip) for strip in border.strips if strip.parts)
    elif border.joined:
        for name, strips in long_strips(border).items():
            yield _long_strip(plan, border, name, strips)
    yield from _sewn_on(plan, border)
    for other in plan.otherwise:
        if other.path == border.path:
            yield other.sentence(plan.project)


def _long_strip(plan: Plan, border: BorderPlan, name: str, strips: tuple[BorderStrip, ...]) -> str:
    units, part = plan.project.units, plan.part(name)
    lengths = " and ".join(
        f"{strip.count} of {show(strip.length, units)} ({_called(strip)})" for strip in strips
    )
    if plan.project.quilt.cut_together > 1:
        lengths += " for each quilt"
    slack = border.border.squaring
    squared = f", squaring the ends ({show(slack, units)} a strip is allowed)" if slack else ""
    if part.count == 1:
        return f"From {labels(part)} cut {lengths}{squared}."
    return (
        f"Join {labels(part)} end to end with {border.border.joins.value} joins, then cut from "
        f"the long strip {lengths}{squared}."
    )


def _pieced_strip(plan: Plan, border: BorderPlan, strip: BorderStrip) -> str:
    parts = [part for part in plan.parts if part.name.startswith(f"{strip.name}, ")]
    named = " and ".join(f"{labels(part)} ({part.name.rpartition(', ')[2]})" for part in parts)
    where = (
        "so that the joins lie even from both ends"
        if border.border.piecing is Piecing.CENTRED
        else "and turn every second strip end for end, so that the joins do not face each other"
    )
    if border.border.piecing is Piecing.CENTRED and len(strip.parts) == 2:
        where = "so that the join lies in the middle"
    return (
        f"Make each {_called(strip)} strip from {len(strip.parts)} parts, {named}, with "
        f"{border.border.joins.value} joins, {where}. Square it to "
        f"{show(strip.length, plan.project.units)}."
    )


def _called(strip: BorderStrip) -> str:
    """A strip's name without its border: "side", "top and bottom"."""
    return strip.name.split(" ", 2)[2]


def _sewn_on(plan: Plan, border: BorderPlan) -> Iterator[str]:
    ends_first = border.border.first is First.ENDS
    if not (border.sides_width and border.ends_width):
        yield "Sew the two strips on; the other two edges get none."
        return
    match border.border.corners:
        case Corners.BUTTED:
            yield (
                "Sew the top and bottom on first, then the two sides across their ends."
                if ends_first
                else "Sew the two sides on first, then the top and bottom across their ends."
            )
        case Corners.SQUARES:
            corner = labels(plan.part(f"border {border.number} corner"))
            first, then = (
                ("top and bottom", "side strips")
                if ends_first
                else ("two sides", "top and bottom strips")
            )
            yield f"Sew the {first} on."
            yield f"Sew a corner square ({corner}) to each end of the {then}, then sew those on."
        case Corners.PINWHEEL:
            yield (
                "Sew the left strip on from its lower end, which is even with the quilt's, and "
                "stop halfway: a partial seam."
            )
            yield (
                "Sew on the bottom, the right and the top strip, each across the end of the one "
                "before. Then finish the left seam, over the end of the top strip."
            )
        case Corners.ROUND:
            order = (
                ("top", "right", "bottom", "left")
                if ends_first
                else ("left", "top", "right", "bottom")
            )
            yield (
                f"Sew on the {order[0]} strip, then {order[1]}, {order[2]} and {order[3]}, each "
                "across the end of the one before."
            )
        case Corners.MITRED:
            seam = show(border.border.seam, plan.project.units)
            yield (
                f"Centre a strip on each edge, so that its ends hang over equally, and sew from "
                f"{seam} inside one corner to {seam} inside the other."
            )
            yield "Fold each corner at 45°, sew the mitre from the inside out, and trim the rest."


def labels(part: Part) -> str:
    """All of a part's pieces: "B", or "B1 to B4"."""
    first, last = part.label(1), part.label(part.count)
    return first if first == last else f"{first} to {last}"
