"""How the binding is made, sewn on, closed and finished, in sentences with the plan's numbers."""

from __future__ import annotations

from collections.abc import Iterator

from core.binding_choices import AccentKind, BiasMethod, Finishing
from core.fabric import Grain
from core.figures import usual
from core.finish.accent import AccentPlan
from core.finish.bias_cloth import BiasPlan
from core.finish.binding_plan import BACK_NAME, FACING, NAME, BindingPlan
from core.finish.binding_width import REACH_BY_MACHINE, REACH_BY_MACHINE_MM
from core.finish.closing import JoinedClosing, TuckedClosing
from core.finish.facing import long_name
from core.finish.scrappy import ScrappyPlan, segment_name
from core.finish.side_strips import SideStrip, SideStrips
from core.lengths import Inches, Units, show
from core.plan import Part, Plan
from core.quilt import Binding, Closing, Fold
from core.sewing_borders import labels


def binding_sentences(plan: Plan) -> Iterator[str]:
    """From cut strips to a bound edge; nothing where there is no binding."""
    spec, binding, units = plan.project.binding, plan.binding, plan.project.units
    if spec is None or binding is None:
        return
    yield from _strip(plan, spec, binding, units)
    if binding.accent is not None:
        yield from _accent(plan, binding.accent, units)
    if binding.facing is not None:
        square = plan.sizes.bound(plan.project.quilt.edge_thickness).four_sided
        yield from _facing(spec, binding.facing, binding, units, square=square)
        return
    yield from _sewn_on(spec, binding, units)
    if binding.ends is not None:
        yield from _closed(spec, binding.ends, units)
    yield from _finished(spec, binding, units)


def _strip(plan: Plan, spec: Binding, binding: BindingPlan, units: Units) -> Iterator[str]:
    """One long strip, or four, pressed as the fold asks."""
    trim = f"trim the seam to {show(binding.widths.seam, units)} and press it open"
    if binding.bias is not None:
        yield from _bias(plan, binding.bias, units, trim)
    elif binding.scrappy is not None:
        yield from _scrappy(plan, spec, binding.scrappy, trim, units)
    elif (two := binding.two_cloth) is not None:
        for name in (NAME, BACK_NAME):
            part = plan.part(name)
            yield f"Join {labels(part)} end to end with {spec.joins} joins; {trim}."
        yield (
            f"Sew the two long strips edge to edge with a {show(two.seam, units)} seam, their "
            "joins apart, and press it open: that seam will lie on the quilt's edge. "
            f"The side of {two.front_fabric} goes to the front."
        )
    elif binding.facing is None:
        yield from _joined(plan.part(NAME), spec, trim)
    if binding.facing is not None and not _cut_whole(binding):
        yield from _facing_strips(plan, spec, binding.facing, units, trim)
    yield _pressed(spec, binding.widths.seam, units)


def _joined(part: Part, spec: Binding, trim: str) -> Iterator[str]:
    if part.count > 1:
        yield f"Join {labels(part)} end to end with {spec.joins} joins; {trim}."


def _cut_whole(binding: BindingPlan) -> bool:
    """Whether every strip of a facing is laid as a piece of its own."""
    if binding.facing is None:
        return False
    laid = {demand.wanted.name for demand in binding.demands}
    return all(strip.name in laid for strip in binding.facing.strips)


def _facing_strips(
    plan: Plan, spec: Binding, facing: SideStrips, units: Units, trim: str
) -> Iterator[str]:
    """The strips that are cut from each cloth's long one."""
    for cloth, strips in facing.by_cloth.items():
        if spec.grain is not Grain.BIAS:
            yield from _joined(plan.part(long_name(facing, cloth)), spec, trim)
        each = [
            f"{len(strip.sides)} of {show(strip.length, units)} ({_where(strip)})"
            for strip in strips
        ]
        cut = " and ".join(filter(None, (", ".join(each[:-1]), each[-1])))
        which = "the long strip" if len(facing.by_cloth) == 1 else f"that of {cloth}"
        yield f"Cut from {which} {cut}."


def _where(strip: SideStrip) -> str:
    """Which sides a strip goes to.

    >>> _where(SideStrip("facing side", "plum", Inches(20), (1, 3)))
    'the sides'
    >>> _where(SideStrip("facing 2", "plum", Inches(20), (1, 3, 4)))
    'sides 1, 3 and 4'
    """
    named = {f"{FACING} side": "the sides", f"{FACING} top and bottom": "top and bottom"}
    if strip.name in named and len(strip.sides) == 2:
        return named[strip.name]
    *most, last = map(str, strip.sides)
    return f"sides {', '.join(most)} and {last}" if most else f"side {last}"


def _pressed(spec: Binding, seam: Inches, units: Units) -> str:
    if spec.fold is Fold.SINGLE:
        return f"Press {show(seam, units)} of one long edge under, to the wrong side."
    return "Fold in half along the length, wrong sides together, and press."


def _bias(plan: Plan, bias: BiasPlan, units: Units, trim: str) -> Iterator[str]:
    yield from _bias_cut(plan, bias, units)
    if len(bias.lengths) > 1:
        yield f"Join the strips end to end; {trim}."


def _bias_cut(plan: Plan, bias: BiasPlan, units: Units) -> Iterator[str]:
    wide = show(bias.width, units)
    for piece in bias.pieces:
        cloth = labels(plan.part(piece.name))
        if bias.method is BiasMethod.TUBE:
            yield (
                f"Cut {cloth} at 45° from a corner, sew the freed triangle to the other end with a "
                f"{show(bias.seam, units)} seam, mark {piece.turns} strips {wide} wide along the "
                "slanted edge, sew the long edges to a tube one strip out of step, and cut along "
                "the line."
            )
        else:
            yield (
                f"Cut {cloth} at 45° from a corner, then {len(piece.strips)} strips {wide} wide "
                "as drawn, and trim their ends to slant the same way."
            )


def _scrappy(
    plan: Plan, spec: Binding, scrappy: ScrappyPlan, trim: str, units: Units
) -> Iterator[str]:
    named = {cloth: segment_name(cloth) for cloth in scrappy.counts}
    for cloth, cut in scrappy.bias:
        named[cloth] = cut.pieces[0].name
        yield from _bias_cut(plan, cut, units)
        yield f"Cut {scrappy.counts[cloth]} segments of {show(scrappy.length, units)} from that."
    letters = [plan.part(named[cloth]).letter for cloth in scrappy.order]
    how = "on their slanted ends" if scrappy.bias else f"with {spec.joins} joins"
    yield f"Join the segments {how} in this order: {' '.join(letters)}; {trim}."


def _accent(plan: Plan, accent: AccentPlan, units: Units) -> Iterator[str]:
    parts = dict.fromkeys(plan.part(demand.wanted.name) for demand in accent.demands)
    strips = ", ".join(map(labels, parts))
    shows = show(accent.shows, units)
    if accent.bias is not None:
        yield from _bias_cut(plan, accent.bias, units)
    if not accent.whole and (accent.bias is not None or sum(part.count for part in parts) > 1):
        yield f"Join {strips} end to end for the {accent.kind}."
        strips = "the long strip"
    if accent.kind is AccentKind.FLANGE:
        yield (
            f"Flange: fold {strips} in half along the length, wrong sides together, and press. "
            f"Baste {'one' if accent.whole else 'a length of it'} to each side of the quilt, raw "
            "edges even, trimmed at the corners; "
            f"{shows} will show past the seam."
        )
    else:
        yield (
            f"Piping: wrap {strips} round a cord {shows} thick, sew close to it, and baste it "
            "round the quilt, raw edges even, clipping its allowance at each corner."
        )


def _sewn_on(spec: Binding, binding: BindingPlan, units: Units) -> Iterator[str]:
    seam = show(binding.widths.seam, units)
    yield (
        f"Lay it on the {spec.first_face} of the quilt, raw edges even, and sew {seam} from the "
        "edge."
    )


def _closed(spec: Binding, ends: JoinedClosing | TuckedClosing, units: Units) -> Iterator[str]:
    if isinstance(ends, TuckedClosing):
        yield (
            f"Closing: cut the first end at 45°, turn {show(ends.fold, units)} of it under, and "
            f"start sewing {show(ends.start, units)} past that fold. At the end cut the strip so "
            f"that {show(ends.overlap, units)} lies inside the fold, tuck it in, and sew across."
        )
        return
    tail, gap, takes = (show(length, units) for length in (ends.tail, ends.gap, ends.takes))
    how = (
        f"cut them to overlap by {takes}, the strip's width, and join them at right angles on the "
        "diagonal"
        if spec.closing is Closing.DIAGONAL
        else f"cut them to overlap by {takes}, two seams, and join them straight"
    )
    yield (
        f"Closing: leave a tail of {tail} before the first stitch, and stop {gap} before it again "
        f"with as long a tail. Lay both tails along the edge, {how}; then sew "
        "the gap."
    )


def _finished(spec: Binding, binding: BindingPlan, units: Units) -> Iterator[str]:
    other = "back" if spec.first_face == "front" else "front"
    if spec.fold is Fold.FACED:
        seam = show(binding.widths.seam, units)
        how = "by hand" if spec.finishing is Finishing.HAND else "by machine"
        yield (
            "Press it away, turn it wholly to the back so that the seam becomes the quilt's edge, "
            f"ease its folded edge in with steam, and sew it down {how}. The quilt finishes {seam} "
            "smaller all round."
        )
        return
    reach = show(binding.reach, units)
    if binding.reach > 0:
        lands = f"its fold lands {reach} past the seam"
    else:
        lands = "its fold does not reach past the seam: see the notes before you cut"
    # Common practice, no source: machine stitching runs as far from the fold as the reach it needs.
    from_fold = show(
        usual(spec.stitching, binding.widths.strip, REACH_BY_MACHINE, REACH_BY_MACHINE_MM), units
    )
    how = (
        "sew it down by hand with hidden stitches"
        if spec.finishing is Finishing.HAND
        else f"stitch {from_fold} from the fold by machine"
    )
    yield f"Turn it over the edge to the {other}, where {lands}, and {how}."


def _facing(
    spec: Binding, facing: SideStrips, binding: BindingPlan, units: Units, *, square: bool
) -> Iterator[str]:
    seam = show(binding.widths.seam, units)
    how = "by hand" if spec.finishing is Finishing.HAND else "by machine"
    smaller = f"The quilt finishes {seam} smaller on each side."
    if not square:
        lengths = "; ".join(
            f"{show(strip.length, units)} for {_where(strip)}" for strip in facing.strips
        )
        which = f": {lengths}" if _cut_whole(binding) else ""
        yield (
            f"A strip goes to each side, counted from the left side down and round{which}. Sew "
            f"each to the front, raw edges even, {seam} from the edge, from seam line to seam line."
        )
        yield (
            "Clip inside corners and trim outside ones, turn the strips wholly to the back, fold "
            "each end under along the line that halves its corner, so that neighbours meet there, "
            f"and sew all down {how}. {smaller}"
        )
        return
    yield (
        f"Sew the side strips to the front, raw edges even, {seam} from the edge. Press them away "
        "and turn them wholly to the back; the seam becomes the quilt's edge."
    )
    yield (
        "Sew on top and bottom with their ends turned in over the sides, turn them to the back, "
        f"and sew all four down {how}. {smaller}"
    )
