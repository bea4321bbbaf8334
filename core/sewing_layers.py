"""How backing, sleeve and label are made, in words, and what the backing's cloth gives besides."""

from __future__ import annotations

from collections.abc import Iterator

from core.finish.backing import ACCENT, BackingPlan
from core.finish.sleeve import SleevePlan
from core.lengths import sale_text, show, show_size
from core.plan import Plan
from core.quilt import Panels, Seams, SleeveShape
from core.sewing_borders import labels


def backing_sentences(plan: Plan, backing: BackingPlan) -> Iterator[str]:
    """Sewing the panels, what lies beside them, and what the other seams would take."""
    units = plan.project.units
    seam, size = show(backing.seam, units), show_size(backing.across, backing.along, units)
    if backing.pieced_last > 1:
        short = labels(plan.part("backing short strip"))
        yield f"Sew the short strips ({short}) end to end with {seam} seams for the narrow panel."
    if backing.accent_at is not None:
        yield _accent(plan, backing, seam)
    if backing.repeat is not None:
        yield "Lay the panels side by side so that the print matches, and trim them to one length."
    if backing.panels > 1:
        way = "along" if backing.seams is Seams.LENGTHWISE else "across"
        between = " A narrow panel goes on either side of the full ones." if _halved(plan) else ""
        yield (
            f"Cut the selvages off and sew the panels together with {seam} seams, which run {way} "
            f"the quilt.{between} Press."
        )
    yield f"The backing measures {size}."
    yield from (o.sentence(plan.project) for o in plan.otherwise if o.path == "backing")
    yield from _beside(plan)


def _halved(plan: Plan) -> bool:
    spec = plan.project.backing
    return spec is not None and spec.panels is Panels.HALVES


def _accent(plan: Plan, backing: BackingPlan, seam: str) -> str:
    part, long = plan.part(ACCENT), show(backing.panel_along, plan.project.units)
    made = (
        f"Join {labels(part)} end to end and trim to {long} for the accent strip. It"
        if part.count > plan.project.quilt.cut_together
        else f"The accent strip ({labels(part)})"
    )
    return f"{made} goes between the first panel and the next, with {seam} seams."


def _beside(plan: Plan) -> Iterator[str]:
    """What else comes from the backing's cloth."""
    found, units = plan.from_backing, plan.project.units
    if found is None:
        return
    if found.names:
        named = ", ".join(f"{name} ({plan.part(name).letter})" for name in found.names)
        step = plan.project.fabric(found.fabric).sale_unit
        added = (
            f"which adds {sale_text(found.more, step)}"
            if found.more > 0
            else "from what the panels leave: no more is bought for it"
        )
        yield f"Cut from the same cloth, {found.fabric}: {named}, {added}."
    for name, rect in found.offers:
        size = show_size(rect.across, rect.along, units)
        yield f"The backing leaves an offcut of {size}, which would hold the {name} too."


def sleeve_sentences(plan: Plan, sleeve: SleevePlan) -> Iterator[str]:
    """Joining, hemming, and sewing up, by the sleeve's shape."""
    units, part = plan.project.units, plan.part("sleeve")
    deep, ease = show(sleeve.depth, units), show(sleeve.ease, units)
    if sleeve.joined:
        each = " each" if sleeve.parts > 1 else ""
        yield f"Join {labels(part)} end to end and trim to {show(sleeve.length, units)}{each}."
    match sleeve.shape:
        case SleeveShape.TUBE:
            yield (
                "Hem the short ends, fold it in half along its length right side out, and sew the "
                f"long edges into a tube that lies {deep} deep."
            )
        case SleeveShape.D:
            yield (
                "Hem the short ends and sew the long edges together, right side out. Press it so "
                f"that the back lies {deep} deep and the front is {ease} deeper: it stands out "
                "round the rod, and the quilt hangs flat."
            )
        case SleeveShape.SINGLE:
            yield (
                f"Hem all four edges and sew both long edges to the back, {deep} apart, so that "
                f"the {ease} to spare stands out round the rod."
            )
    if sleeve.parts > 1 and plan.project.sleeve is not None:
        gap = show(plan.project.sleeve.gap, units)
        yield f"Sew the two sleeves on with {gap} between them, for a bracket at the middle."


def label_sentences(plan: Plan) -> Iterator[str]:
    """The label's hems."""
    label, units = plan.project.label, plan.project.units
    if label is not None:
        yield (
            f"Write or stitch on the label first. Turn its edges under by {show(label.hem, units)} "
            f"to {show_size(label.width, label.length, units)} and sew it to the back by hand."
        )
