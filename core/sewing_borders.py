"""How the strips of a border are made and sewn on, in words."""

from __future__ import annotations

from collections.abc import Iterator

from core.finish.border import BorderPlan, long_strips
from core.finish.border_sides import BorderStrip
from core.language import told, told_as, told_list
from core.lengths import show
from core.plan import Part, Plan
from core.quilt import Corners, First, Piecing
from core.sewing_strips import joined, labels


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
    each = [
        told(
            "{count} of {length} ({strip})",
            count=strip.count,
            length=show(strip.length, units),
            strip=_called(strip),
        )
        for strip in strips
    ]
    lengths = told_list(each)
    if plan.project.quilt.cut_together > 1:
        lengths = told("{lengths} for each quilt", lengths=lengths)
    values = {"pieces": labels(part), "lengths": lengths, "squared": _squared(plan, border)}
    if part.count == 1:
        return told("From {pieces} cut {lengths}{squared}.", **values)
    return told(
        "Join {pieces} end to end {joined}, then cut from the long strip {lengths}{squared}.",
        joined=joined(border.border.joins),
        **values,
    )


def _squared(plan: Plan, border: BorderPlan) -> str:
    slack = border.border.squaring
    if not slack:
        return ""
    allowed = show(slack, plan.project.units)
    return told(", squaring the ends ({allowed} a strip is allowed)", allowed=allowed)


def _pieced_strip(plan: Plan, border: BorderPlan, strip: BorderStrip) -> str:
    parts = [part for part in plan.parts if part.name.startswith(f"{strip.name}, ")]
    return told(
        "Make each {strip} strip from {count} parts, {parts}, {joined}, {where}. "
        "Square it to {length}.",
        strip=_called(strip),
        count=len(strip.parts),
        parts=told_list([f"{labels(part)} ({_part_called(part)})" for part in parts]),
        joined=joined(border.border.joins),
        where=_where(border, strip),
        length=show(strip.length, plan.project.units),
    )


def _where(border: BorderPlan, strip: BorderStrip) -> str:
    if border.border.piecing is not Piecing.CENTRED:
        return told(
            "and turn every second strip end for end, so that the joins do not face each other"
        )
    if len(strip.parts) == 2:
        return told("so that the join lies in the middle")
    return told("so that the joins lie even from both ends")


def _called(strip: BorderStrip) -> str:
    """A strip's name without its border: "side", "top and bottom"."""
    return {
        "side": told_as("strip of a border", "side"),
        "top and bottom": told_as("strip of a border", "top and bottom"),
        "left": told_as("strip of a border", "left"),
        "top": told_as("strip of a border", "top"),
        "right": told_as("strip of a border", "right"),
        "bottom": told_as("strip of a border", "bottom"),
    }[strip.name.split(" ", 2)[2]]


def _part_called(part: Part) -> str:
    """A part's name without its strip: "half"."""
    return {
        "half": told_as("part of a strip", "half"),
        "part": told_as("part of a strip", "part"),
        "long part": told_as("part of a strip", "long part"),
        "middle part": told_as("part of a strip", "middle part"),
        "short part": told_as("part of a strip", "short part"),
    }[part.name.rpartition(", ")[2]]


def _sewn_on(plan: Plan, border: BorderPlan) -> Iterator[str]:
    ends_first = border.border.first is First.ENDS
    if not (border.sides_width and border.ends_width):
        yield told("Sew the two strips on; the other two edges get none.")
        return
    match border.border.corners:
        case Corners.BUTTED:
            yield (
                told("Sew the top and bottom on first, then the two sides across their ends.")
                if ends_first
                else told("Sew the two sides on first, then the top and bottom across their ends.")
            )
        case Corners.SQUARES:
            corner = labels(plan.part(f"border {border.number} corner"))
            yield from _with_squares(corner, ends_first=ends_first)
        case Corners.PINWHEEL:
            yield told(
                "Sew the left strip on from its lower end, which is even with the quilt's, and "
                "stop halfway: a partial seam."
            )
            yield told(
                "Sew on the bottom, the right and the top strip, each across the end of the one "
                "before. Then finish the left seam, over the end of the top strip."
            )
        case Corners.ROUND:
            yield (
                told(
                    "Sew on the top strip, then right, bottom and left, each "
                    "across the end of the one before."
                )
                if ends_first
                else told(
                    "Sew on the left strip, then top, right and bottom, each "
                    "across the end of the one before."
                )
            )
        case Corners.MITRED:
            seam = show(border.border.seam, plan.project.units)
            yield told(
                "Centre a strip on each edge, so that its ends hang over equally, and sew from "
                "{seam} inside one corner to {seam} inside the other.",
                seam=seam,
            )
            yield told(
                "Fold each corner at 45°, sew the mitre from the inside out, and trim the rest."
            )


def _with_squares(corner: str, *, ends_first: bool) -> Iterator[str]:
    """Two strips as they are, then two with a corner square at each end."""
    if ends_first:
        yield told("Sew the top and bottom on.")
        yield told(
            "Sew a corner square ({corner}) to each end of the side strips, then sew those on.",
            corner=corner,
        )
        return
    yield told("Sew the two sides on.")
    yield told(
        "Sew a corner square ({corner}) to each end of the top and bottom strips, "
        "then sew those on.",
        corner=corner,
    )
