"""Sewing the binding on, in words: the order of its strips, the start, each kind of corner."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import groupby

from core.edge.outline import Corner, Outline
from core.edge_start import past_words
from core.finish.sewn import Sewn
from core.language import told, told_list
from core.lengths import Inches, Units, show
from core.numerals import told_decimal
from core.plan import Plan
from core.shape import told_facing

_SQUARE = 90
_DRAWN = Fraction(1, 1000)  # stops before corners are irrational; a thousandth tells enough


def sewing_on(plan: Plan) -> Iterator[str]:
    """How to sew the binding round the edge; lengths in the plan's units."""
    sewn, binding, units = plan.sewn, plan.binding, plan.project.units
    if sewn is None or binding is None:
        return
    outline = plan.sizes.outline
    yield from _strips(sewn, units)
    yield _start(sewn, outline, units)
    yield from _corners(outline, binding.widths.seam, units)
    yield from _landings(sewn, units)
    if sewn.edge_map.least is not None:
        yield _least(sewn, show(sewn.edge_map.least, units), outline)


def _least(sewn: Sewn, least: str, outline: Outline) -> str:
    found = "" if sewn.edge_map.proved else told(" (the best that was found)")
    if outline.corners:
        return told(
            "So started, every join and the closing lies at least {least} from any corner{found}.",
            least=least,
            found=found,
        )
    return told(
        "So started, every join and the closing lies at least {least} from any rounded corner's "
        "middle{found}.",
        least=least,
        found=found,
    )


def _strips(sewn: Sewn, units: Units) -> Iterator[str]:
    made = sewn.edge_map
    if len(made.order) > 1:
        yield told("Join the strips in this order: {strips}.", strips=", ".join(made.order))
    if made.trim:
        yield told(
            "Trim {trim} off the free end of {strip}.",
            trim=show(made.trim, units),
            strip=made.order[0],
        )


def _start(sewn: Sewn, outline: Outline, units: Units) -> str:
    """The ends meet at the closing, told by the way from the corner before it."""
    closing = sewn.edge_map.closing
    return told(
        "The two ends meet on the {side} side{past}. Lay the end of {strip} there and sew with "
        "the quilt to your left: down the left side, along the bottom, up the right side.",
        side=told_facing(closing.facing),
        past=past_words(closing, outline, units),
        strip=sewn.edge_map.order[0],
    )


def _landings(sewn: Sewn, units: Units) -> Iterator[str]:
    """Where each join lands, a side at a time, by its way to the nearest corner."""
    joins = sewn.edge_map.joins
    if not joins or joins[0].to_corner is None:
        return
    sides = []
    for facing, landed in groupby(enumerate(joins, start=1), lambda join: join[1].facing):
        each = (
            told("join {number} {far}", number=n, far=show(join.to_corner or Inches(0), units))
            for n, join in landed
        )
        sides.append(f"{', '.join(each)} ({told_facing(facing)})")
    yield told("From the nearest corner the joins then lie: {joins}.", joins="; ".join(sides))


def _corners(outline: Outline, seam: Inches, units: Units) -> Iterator[str]:
    """Equal corners are told together."""
    kinds: dict[float, list[int]] = {}
    corners = dict(enumerate(outline.corners, start=1))
    for number, corner in corners.items():
        kinds.setdefault(round(corner.angle, 3), []).append(number)
    if any(not corner.inside for corner in outline.corners):
        yield told(
            "At an outside corner stop as said below and fold the strip away, its raw edge in line "
            "with the next edge; fold it back over a crease at the corner, square to that edge, "
            "and start anew from there."
        )
    for angle, numbers in kinds.items():
        corner = corners[numbers[0]]
        yield told(
            "{corners} ({angle}°): {how}",
            corners=_which(numbers, len(corners)),
            angle=told_decimal(f"{angle:.4g}"),
            how=_how(corner, seam, units),
        )


def _which(numbers: list[int], count: int) -> str:
    if len(numbers) == count:
        return told("Every corner") if count > 1 else told("The corner")
    if len(numbers) == 1:
        return told("Corner {number}", number=numbers[0])
    return told("Corners {numbers}", numbers=told_list([str(number) for number in numbers]))


def _how(corner: Corner, seam: Inches, units: Units) -> str:
    stop = corner.stop(seam)
    if stop is None or corner.mitre is None:
        return told(
            "cut in; clip it to just short of the seam line and sew round it without a mitre."
        )
    square = round(corner.angle, 6) == _SQUARE  # then the stop is the seam itself, exactly
    before = show(seam if square else round(Fraction(stop) / _DRAWN) * _DRAWN, units)
    mitre = told_decimal(f"{corner.mitre:.4g}")
    if corner.angle < _SQUARE and not square:
        return told(
            "stop sewing {before} before it; the mitre lies at {mitre}° to both edges; its fold "
            "stands out past the edge: tuck it under, or trim it once it is sewn.",
            before=before,
            mitre=mitre,
        )
    return told(
        "stop sewing {before} before it; the mitre lies at {mitre}° to both edges.",
        before=before,
        mitre=mitre,
    )
