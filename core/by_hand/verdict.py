"""Whether a piece may be put down where it is held, in words, while it is being moved.

The lay is made again round what is put down, so that lying over a free piece is no
fault; lying over a pinned one is. Nothing is searched for here: a verdict is there at once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from core.by_hand.holding import Holding
from core.by_hand.sheets import rect_of
from core.cloth_lay import cloth_of
from core.language import told, told_list
from core.lay.lay import BOLT, Placement, Rect
from core.lay.places import box_of, meet
from core.lay.slabs import NotGuillotine, slabs
from core.lengths import Inches, Units, sale_text, show
from core.plan import FabricPlan, Plan

# Beside so many pieces it is not asked whether all can stay: a verdict must not be waited for.
MOST_ASKED = 200


@dataclass(frozen=True, slots=True)
class Verdict:
    """Whether the piece may be put down, why not or what then, and where it is held.

    `used` is how far along the bolt the lay would reach, `buy` what that costs in sale
    units, `share` how much of what is bought ends in pieces; None and "" off the bolt.
    """

    good: bool
    words: str
    where: str
    used: Inches | None = None
    buy: str = ""
    share: Fraction | None = None

    def sentence(self, units: Units) -> str:
        """All of it on a line."""
        said = f"{self.where}: {self.words}."
        if self.used is None or self.share is None:
            return said
        reach = told(
            "{used} used, buy {buy}: {share} % of it in pieces.",
            used=show(self.used, units),
            buy=self.buy,
            share=round(self.share * 100),
        )
        return f"{said} {reach}"


def verdict(plan: Plan, held: Holding, over: int | None = None) -> Verdict:
    """What is to be said of the piece where it is held.

    `over` is the place of another fabric, where it is held over a cloth that is not its own.
    """
    fabric_plan, units = plan.fabrics[held.place], plan.project.units
    if over is not None:
        other, own = plan.fabrics[over].fabric.name, fabric_plan.fabric.name
        foreign = told("this is {other}, and it is cut from {fabric}", other=other, fabric=own)
        return Verdict(False, foreign, held.label)
    if _off(fabric_plan, held):
        return Verdict(False, told("off the cloth"), held.label)
    where = told(
        "{piece}, {across} from the near edge, {along} from the straight end",
        piece=held.label,
        across=show(held.x, units),
        along=show(held.y, units),
    )
    wrong = next(_faults(plan, fabric_plan, held), None)
    if wrong is not None:
        return Verdict(False, wrong, where)
    return Verdict(True, _what_then(plan, fabric_plan, held), where, *_reach(fabric_plan, held))


def _faults(plan: Plan, fabric_plan: FabricPlan, held: Holding) -> Iterator[str]:
    rect, fabric = held.rect, fabric_plan.fabric
    if held.turned != held.taken.turned and not held.may_turn:
        yield told("against the grain")
    for flaw in fabric.flaws:
        if meet(held.sheet, rect, flaw.sheet, flaw.rect):
            yield told("on a flaw ({flaw})", flaw=flaw.word) if flaw.word else told("on a flaw")
    pinned = [placed for _, placed in fabric_plan.by_hand.pins if placed != held.taken]
    over = [plan.label(placed) for placed in _under(held, pinned)]
    if over:
        yield told("overlaps {pieces}, pinned there", pieces=_listed(over))
    if any(not _keeps(plan, held, fabric.motifs[m].rect) for m in _motifs(fabric_plan, held)):
        yield told("leaves the motif that it must hold")
    if not _can_be_cut(fabric_plan, held, pinned):
        yield told("cannot be cut edge to edge beside what is pinned")


def _off(fabric_plan: FabricPlan, held: Holding) -> bool:
    """The bolt ends nowhere: of it more may be bought."""
    whole, rect = rect_of(fabric_plan, held.sheet), held.rect
    beside = rect.x < 0 or rect.y < 0 or rect.right > whole.across
    return beside or (held.sheet.on != BOLT and rect.end > whole.along)


def _under(held: Holding, placements: Iterable[Placement]) -> list[Placement]:
    return [p for p in placements if meet(held.sheet, held.rect, p.sheet, p.rect)]


def _motifs(fabric_plan: FabricPlan, held: Holding) -> tuple[int, ...]:
    return fabric_plan.by_hand.motifs_of(held.taken)


def _keeps(plan: Plan, held: Holding, motif: Rect) -> bool:
    """Whether a motif stays in a piece: in the held one, or in another of its kind."""
    others = plan.part(held.taken.name).count > 1
    return others or (held.sheet == held.taken.sheet and held.rect.holds(motif))


def _can_be_cut(fabric_plan: FabricPlan, held: Holding, others: Iterable[Placement]) -> bool:
    """Whether edge-to-edge cuts free the held piece and those others on its sheet."""
    on_sheet = [box_of(p.rect) for p in others if p.sheet == held.sheet]
    boxes = [box_of(held.rect), *on_sheet]
    whole = rect_of(fabric_plan, held.sheet)
    end = max(whole.along, *(y + along for _, y, _, along in boxes))
    sheet = Fraction(0), Fraction(0), whole.across, end
    try:
        slabs(sheet, [(box, True) for box in boxes], crosswise_first=held.sheet.on == BOLT)
    except NotGuillotine:
        return False
    return True


def _what_then(plan: Plan, fabric_plan: FabricPlan, held: Holding) -> str:
    others = [p for p in fabric_plan.lay.placements if p != held.taken and p.sheet == held.sheet]
    over = [plan.label(placed) for placed in _under(held, others)]
    if over:
        return told("lies well; overlaps {pieces}, laid again elsewhere", pieces=_listed(over))
    if len(others) <= MOST_ASKED and not _can_be_cut(fabric_plan, held, others):
        return told("lies well; the rest is laid again, for edge-to-edge cuts")
    return told("lies well")


def _listed(labels: list[str]) -> str:
    if len(labels) <= 4:
        return told_list(labels)
    return told_list([*labels[:3], told("{count} more", count=len(labels) - 3)])


def _reach(fabric_plan: FabricPlan, held: Holding) -> tuple[Inches | None, str, Fraction | None]:
    """How far the bolt is used, what that buys, and how much of it ends in pieces."""
    others = (placed for placed in fabric_plan.lay.placements if placed != held.taken)
    rects = [placed.rect for placed in others if placed.sheet.on == BOLT]
    if held.sheet.on == BOLT:
        rects.append(held.rect)
    if not rects:
        return None, "", None
    used, cloth = max(rect.end for rect in rects), cloth_of(fabric_plan.fabric)
    bought = cloth.bought(used)
    pieces = sum((rect.across * rect.along for rect in rects), Fraction(0))
    share = pieces / (cloth.available(bought) * cloth.usable_width)
    return used, sale_text(bought, cloth.sale_unit), share
