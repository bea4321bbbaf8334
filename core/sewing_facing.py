"""How a facing is cut from its long strips, sewn on and turned to the back, in words."""

from __future__ import annotations

from collections.abc import Iterator

from core.binding_choices import Finishing
from core.fabric import Grain
from core.finish.binding_plan import FACING, BindingPlan
from core.finish.facing import long_name
from core.finish.side_strips import SideStrip, SideStrips
from core.language import told, told_count, told_list
from core.lengths import Units, show
from core.plan import Plan
from core.quilt import Binding
from core.sewing_strips import joined_up


def cut_whole(binding: BindingPlan) -> bool:
    """Whether every strip of a facing is laid as a piece of its own."""
    if binding.facing is None:
        return False
    laid = {demand.wanted.name for demand in binding.demands}
    return all(strip.name in laid for strip in binding.facing.strips)


def facing_strips(
    plan: Plan, spec: Binding, facing: SideStrips, units: Units, trim: str
) -> Iterator[str]:
    """The strips that are cut from each cloth's long one."""
    for cloth, strips in facing.by_cloth.items():
        if spec.grain is not Grain.BIAS:
            yield from joined_up(plan.part(long_name(facing, cloth)), spec.joins, trim)
        each = told_list(
            [
                told(
                    "{count} of {length} ({sides})",
                    count=len(strip.sides),
                    length=show(strip.length, units),
                    sides=_where(strip),
                )
                for strip in strips
            ]
        )
        yield (
            told("Cut from the long strip {strips}.", strips=each)
            if len(facing.by_cloth) == 1
            else told("Cut from that of {fabric} {strips}.", fabric=cloth, strips=each)
        )


def _where(strip: SideStrip) -> str:
    """Which sides a strip goes to.

    >>> from core.lengths import Inches
    >>> _where(SideStrip("facing side", "plum", Inches(20), (1, 3)))
    'the sides'
    >>> _where(SideStrip("facing 2", "plum", Inches(20), (1, 3, 4)))
    'sides 1, 3 and 4'
    """
    named = {
        f"{FACING} side": told("the sides"),
        f"{FACING} top and bottom": told("top and bottom"),
    }
    if strip.name in named and len(strip.sides) == 2:
        return named[strip.name]
    numbers = told_list([str(side) for side in strip.sides])
    return told_count("side {numbers}", "sides {numbers}", len(strip.sides), numbers=numbers)


def facing_sewn(
    spec: Binding, facing: SideStrips, binding: BindingPlan, units: Units, *, square: bool
) -> Iterator[str]:
    """Sewing the strips on and turning them to the back; `square`: with four square corners."""
    seam, how = show(binding.widths.seam, units), _by_hand_or_machine(spec)
    if not square:
        yield told(
            "A strip goes to each side, counted from the left side down and round{lengths}. Sew "
            "each to the front, raw edges even, {seam} from the edge, from seam line to seam line.",
            lengths=f": {_lengths(facing, units)}" if cut_whole(binding) else "",
            seam=seam,
        )
        yield told(
            "Clip inside corners and trim outside ones, turn the strips wholly to the back, fold "
            "each end under along the line that halves its corner, so that neighbours meet there, "
            "and sew all down {how}. The quilt finishes {seam} smaller on each side.",
            how=how,
            seam=seam,
        )
        return
    yield told(
        "Sew the side strips to the front, raw edges even, {seam} from the edge. Press them away "
        "and turn them wholly to the back; the seam becomes the quilt's edge.",
        seam=seam,
    )
    yield told(
        "Sew on top and bottom with their ends turned in over the sides, turn them to the back, "
        "and sew all four down {how}. The quilt finishes {seam} smaller on each side.",
        how=how,
        seam=seam,
    )


def _lengths(facing: SideStrips, units: Units) -> str:
    return "; ".join(
        told("{length} for {sides}", length=show(strip.length, units), sides=_where(strip))
        for strip in facing.strips
    )


def turned_to_the_back(spec: Binding, seam: str) -> str:
    """Turning the ring that faces a curved edge."""
    return told(
        "Press it away, turn it wholly to the back so that the seam becomes the quilt's edge, "
        "ease its folded edge in with steam, and sew it down {how}. The quilt finishes {seam} "
        "smaller all round.",
        how=_by_hand_or_machine(spec),
        seam=seam,
    )


def _by_hand_or_machine(spec: Binding) -> str:
    return told("by hand") if spec.finishing is Finishing.HAND else told("by machine")
