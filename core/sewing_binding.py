"""How the binding is made, sewn on, closed and finished, in sentences with the plan's numbers."""

from __future__ import annotations

from collections.abc import Iterator

from core.binding_choices import AccentKind, Face, Finishing
from core.figures import usual
from core.finish.accent import AccentPlan
from core.finish.bias_cloth import BiasPlan
from core.finish.binding_plan import BACK_NAME, NAME, BindingPlan
from core.finish.binding_width import REACH_BY_MACHINE, REACH_BY_MACHINE_MM
from core.finish.closing import JoinedClosing, TuckedClosing
from core.finish.scrappy import ScrappyPlan, segment_name
from core.language import told
from core.lengths import Inches, Units, show
from core.plan import Plan
from core.quilt import Binding, Closing, Fold
from core.sewing_facing import cut_whole, facing_sewn, facing_strips, turned_to_the_back
from core.sewing_strips import bias_cut, end_to_end, joined, joined_up, labels


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
        yield from facing_sewn(spec, binding.facing, binding, units, square=square)
        return
    yield from _sewn_on(spec, binding, units)
    if binding.ends is not None:
        yield from _closed(spec, binding.ends, units)
    yield from _finished(spec, binding, units)


def _strip(plan: Plan, spec: Binding, binding: BindingPlan, units: Units) -> Iterator[str]:
    """One long strip, or four, pressed as the fold asks."""
    trim = told("trim the seam to {seam} and press it open", seam=show(binding.widths.seam, units))
    if binding.bias is not None:
        yield from _bias(plan, binding.bias, units, trim)
    elif binding.scrappy is not None:
        yield from _scrappy(plan, spec, binding.scrappy, trim, units)
    elif (two := binding.two_cloth) is not None:
        for name in (NAME, BACK_NAME):
            yield end_to_end(plan.part(name), spec.joins, trim)
        yield told(
            "Sew the two long strips edge to edge with a {seam} seam, their "
            "joins apart, and press it open: that seam will lie on the quilt's edge. "
            "The side of {fabric} goes to the front.",
            seam=show(two.seam, units),
            fabric=two.front_fabric,
        )
    elif binding.facing is None:
        yield from joined_up(plan.part(NAME), spec.joins, trim)
    if binding.facing is not None and not cut_whole(binding):
        yield from facing_strips(plan, spec, binding.facing, units, trim)
    yield _pressed(spec, binding.widths.seam, units)


def _pressed(spec: Binding, seam: Inches, units: Units) -> str:
    if spec.fold is Fold.SINGLE:
        return told(
            "Press {seam} of one long edge under, to the wrong side.", seam=show(seam, units)
        )
    return told("Fold in half along the length, wrong sides together, and press.")


def _bias(plan: Plan, bias: BiasPlan, units: Units, trim: str) -> Iterator[str]:
    yield from bias_cut(plan, bias, units)
    if len(bias.lengths) > 1:
        yield told("Join the strips end to end; {trim}.", trim=trim)


def _scrappy(
    plan: Plan, spec: Binding, scrappy: ScrappyPlan, trim: str, units: Units
) -> Iterator[str]:
    named = {cloth: segment_name(cloth) for cloth in scrappy.counts}
    for cloth, cut in scrappy.bias:
        named[cloth] = cut.pieces[0].name
        yield from bias_cut(plan, cut, units)
        yield told(
            "Cut {count} segments of {length} from that.",
            count=scrappy.counts[cloth],
            length=show(scrappy.length, units),
        )
    letters = [plan.part(named[cloth]).letter for cloth in scrappy.order]
    yield told(
        "Join the segments {joined} in this order: {letters}; {trim}.",
        joined=told("on their slanted ends") if scrappy.bias else joined(spec.joins),
        letters=" ".join(letters),
        trim=trim,
    )


def _accent(plan: Plan, accent: AccentPlan, units: Units) -> Iterator[str]:
    parts = dict.fromkeys(plan.part(demand.wanted.name) for demand in accent.demands)
    strips = ", ".join(map(labels, parts))
    shows = show(accent.shows, units)
    if accent.bias is not None:
        yield from bias_cut(plan, accent.bias, units)
    flange = accent.kind is AccentKind.FLANGE
    if not accent.whole and (accent.bias is not None or sum(part.count for part in parts) > 1):
        yield (
            told("Join {strips} end to end for the flange.", strips=strips)
            if flange
            else told("Join {strips} end to end for the piping.", strips=strips)
        )
        strips = told("the long strip")
    if not flange:
        yield told(
            "Piping: wrap {strips} round a cord {thick} thick, sew close to it, and baste it "
            "round the quilt, raw edges even, clipping its allowance at each corner.",
            strips=strips,
            thick=shows,
        )
    elif accent.whole:
        yield told(
            "Flange: fold {strips} in half along the length, wrong sides together, and press. "
            "Baste one to each side of the quilt, raw edges even, trimmed at the corners; "
            "{shows} will show past the seam.",
            strips=strips,
            shows=shows,
        )
    else:
        yield told(
            "Flange: fold {strips} in half along the length, wrong sides together, and press. "
            "Baste a length of it to each side of the quilt, raw edges even, trimmed at the "
            "corners; {shows} will show past the seam.",
            strips=strips,
            shows=shows,
        )


def _sewn_on(spec: Binding, binding: BindingPlan, units: Units) -> Iterator[str]:
    seam = show(binding.widths.seam, units)
    yield (
        told(
            "Lay it on the front of the quilt, raw edges even, and sew {seam} from the edge.",
            seam=seam,
        )
        if spec.first_face is Face.FRONT
        else told(
            "Lay it on the back of the quilt, raw edges even, and sew {seam} from the edge.",
            seam=seam,
        )
    )


def _closed(spec: Binding, ends: JoinedClosing | TuckedClosing, units: Units) -> Iterator[str]:
    if isinstance(ends, TuckedClosing):
        yield told(
            "Closing: cut the first end at 45°, turn {fold} of it under, and "
            "start sewing {start} past that fold. At the end cut the strip so "
            "that {overlap} lies inside the fold, tuck it in, and sew across.",
            fold=show(ends.fold, units),
            start=show(ends.start, units),
            overlap=show(ends.overlap, units),
        )
        return
    yield _tails_joined(
        spec,
        tail=show(ends.tail, units),
        gap=show(ends.gap, units),
        takes=show(ends.takes, units),
    )


def _tails_joined(spec: Binding, **values: str) -> str:
    if spec.closing is Closing.DIAGONAL:
        return told(
            "Closing: leave a tail of {tail} before the first stitch, and stop {gap} before it "
            "again with as long a tail. Lay both tails along the edge, cut them to overlap by "
            "{takes}, the strip's width, and join them at right angles on the diagonal; then sew "
            "the gap.",
            **values,
        )
    return told(
        "Closing: leave a tail of {tail} before the first stitch, and stop {gap} before it again "
        "with as long a tail. Lay both tails along the edge, cut them to overlap by {takes}, two "
        "seams, and join them straight; then sew the gap.",
        **values,
    )


def _finished(spec: Binding, binding: BindingPlan, units: Units) -> Iterator[str]:
    if spec.fold is Fold.FACED:
        yield turned_to_the_back(spec, show(binding.widths.seam, units))
        return
    values = {"lands": _lands(binding.reach, units), "how": _sewn_down(spec, binding, units)}
    yield (
        told("Turn it over the edge to the back, where {lands}, and {how}.", **values)
        if spec.first_face is Face.FRONT
        else told("Turn it over the edge to the front, where {lands}, and {how}.", **values)
    )


def _lands(reach: Inches, units: Units) -> str:
    if reach > 0:
        return told("its fold lands {reach} past the seam", reach=show(reach, units))
    return told("its fold does not reach past the seam: see the notes before you cut")


def _sewn_down(spec: Binding, binding: BindingPlan, units: Units) -> str:
    if spec.finishing is Finishing.HAND:
        return told("sew it down by hand with hidden stitches")
    # Common practice, no source: machine stitching runs as far from the fold as the reach it needs.
    reach = REACH_BY_MACHINE, REACH_BY_MACHINE_MM
    from_fold = usual(spec.stitching, binding.widths.strip, *reach)
    return told("stitch {far} from the fold by machine", far=show(from_fold, units))
