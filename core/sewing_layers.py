"""How backing, sleeve and label are made, in words, and what the backing's cloth gives besides."""

from __future__ import annotations

from collections.abc import Iterator

from core.finish.backing import ACCENT, BackingPlan
from core.finish.sleeve import SleevePlan
from core.from_backing import FromBacking
from core.language import told
from core.lengths import sale_text, show, show_size
from core.part_names import told_part
from core.plan import Plan
from core.quilt import Panels, Seams, SleeveShape
from core.sewing_strips import labels


def backing_sentences(plan: Plan, backing: BackingPlan) -> Iterator[str]:
    """Sewing the panels, what lies beside them, and what the other seams would take."""
    units = plan.project.units
    seam, size = show(backing.seam, units), show_size(backing.across, backing.along, units)
    if backing.pieced_last > 1:
        short = labels(plan.part("backing short strip"))
        yield told(
            "Sew the short strips ({pieces}) end to end with {seam} seams for the narrow panel.",
            pieces=short,
            seam=seam,
        )
    if backing.accent_at is not None:
        yield _accent(plan, backing, seam)
    if backing.repeat is not None:
        yield told(
            "Lay the panels side by side so that the print matches, and trim them to one length."
        )
    if backing.panels > 1:
        yield _sewn_together(plan, backing, seam)
    yield told("The backing measures {size}.", size=size)
    yield from (o.sentence(plan.project) for o in plan.otherwise if o.path == "backing")
    yield from _beside(plan)


def _sewn_together(plan: Plan, backing: BackingPlan, seam: str) -> str:
    if backing.seams is Seams.LENGTHWISE:
        sewn = told(
            "Cut the selvages off and sew the panels together with {seam} seams, which run along "
            "the quilt.",
            seam=seam,
        )
    else:
        sewn = told(
            "Cut the selvages off and sew the panels together with {seam} seams, which run across "
            "the quilt.",
            seam=seam,
        )
    between = [told("A narrow panel goes on either side of the full ones.")]
    return " ".join((sewn, *(between if _halved(plan) else ()), told("Press.")))


def _halved(plan: Plan) -> bool:
    spec = plan.project.backing
    return spec is not None and spec.panels is Panels.HALVES


def _accent(plan: Plan, backing: BackingPlan, seam: str) -> str:
    part, long = plan.part(ACCENT), show(backing.panel_along, plan.project.units)
    if part.count > plan.project.quilt.cut_together:
        return told(
            "Join {pieces} end to end and trim to {length} for the accent strip. It goes between "
            "the first panel and the next, with {seam} seams.",
            pieces=labels(part),
            length=long,
            seam=seam,
        )
    return told(
        "The accent strip ({pieces}) goes between the first panel and the next, with {seam} seams.",
        pieces=labels(part),
        seam=seam,
    )


def _beside(plan: Plan) -> Iterator[str]:
    """What else comes from the backing's cloth."""
    found, units = plan.from_backing, plan.project.units
    if found is None:
        return
    if found.names:
        yield _cut_beside(plan, found)
    for name, rect in found.offers:
        yield told(
            "The backing leaves an offcut of {size}, which would hold the {part} too.",
            size=show_size(rect.across, rect.along, units),
            part=told_part(name),
        )


def _cut_beside(plan: Plan, found: FromBacking) -> str:
    parts = ", ".join(f"{told_part(name)} ({plan.part(name).letter})" for name in found.names)
    if found.more > 0:
        return told(
            "Cut from the same cloth, {fabric}: {parts}, which adds {more}.",
            fabric=found.fabric,
            parts=parts,
            more=sale_text(found.more, plan.project.fabric(found.fabric).sale_unit),
        )
    return told(
        "Cut from the same cloth, {fabric}: {parts}, from what the panels leave: no more is "
        "bought for it.",
        fabric=found.fabric,
        parts=parts,
    )


def sleeve_sentences(plan: Plan, sleeve: SleevePlan) -> Iterator[str]:
    """Joining, hemming, and sewing up, by the sleeve's shape."""
    units, part = plan.project.units, plan.part("sleeve")
    deep, ease = show(sleeve.depth, units), show(sleeve.ease, units)
    if sleeve.joined:
        values = {"pieces": labels(part), "length": show(sleeve.length, units)}
        yield (
            told("Join {pieces} end to end and trim to {length} each.", **values)
            if sleeve.parts > 1
            else told("Join {pieces} end to end and trim to {length}.", **values)
        )
    match sleeve.shape:
        case SleeveShape.TUBE:
            yield told(
                "Hem the short ends, fold it in half along its length right side out, and sew the "
                "long edges into a tube that lies {deep} deep.",
                deep=deep,
            )
        case SleeveShape.D:
            yield told(
                "Hem the short ends and sew the long edges together, right side out. Press it so "
                "that the back lies {deep} deep and the front is {ease} deeper: it stands out "
                "round the rod, and the quilt hangs flat.",
                deep=deep,
                ease=ease,
            )
        case SleeveShape.SINGLE:
            yield told(
                "Hem all four edges and sew both long edges to the back, {deep} apart, so that "
                "the {ease} to spare stands out round the rod.",
                deep=deep,
                ease=ease,
            )
    if sleeve.parts > 1 and plan.project.sleeve is not None:
        gap = show(plan.project.sleeve.gap, units)
        yield told(
            "Sew the two sleeves on with {gap} between them, for a bracket at the middle.", gap=gap
        )


def label_sentences(plan: Plan) -> Iterator[str]:
    """The label's hems."""
    label, units = plan.project.label, plan.project.units
    if label is not None:
        yield told(
            "Write or stitch on the label first. Turn its edges under by {hem} "
            "to {size} and sew it to the back by hand.",
            hem=show(label.hem, units),
            size=show_size(label.width, label.length, units),
        )
