"""What to mind about the outline and about where the binding's joins land, as sentences."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from core.edge.edge_map import EdgeMap
from core.fabric import Grain
from core.language import told
from core.lengths import Units, show
from core.numerals import told_decimal
from core.quilt import Fold
from core.shape import told_facing

if TYPE_CHECKING:
    from core.plan import Plan

_SHARP = 45.0  # degrees


def edge_notices(plan: Plan) -> Iterator[tuple[str, str]]:
    """(path of the field, sentence) for the edge of a plan that has a binding."""
    if plan.project.binding is None:
        return
    yield from _curves(plan)
    yield from _eased(plan)
    yield from _inside_corners(plan)
    yield from _sharp(plan)
    yield from _joins(plan)


def _curves(plan: Plan) -> Iterator[tuple[str, str]]:
    """Curves ask for bias: The New Dressmaker, 1921; American Patchwork & Quilting, 2020."""
    radius, binding = plan.sizes.outline.smallest_radius, plan.project.binding
    if radius is None or binding is None or binding.grain is Grain.BIAS:
        return
    tight = show(radius, plan.project.units)
    yield (
        "binding.grain",
        told(
            "The outline is curved, with a smallest radius of {radius}: straight-cut strips do not "
            "go round a curve well. Cut the binding on the bias.",
            radius=tight,
        ),
    )


def _eased(plan: Plan) -> Iterator[tuple[str, str]]:
    """A facing of depth f on a radius r: its inner edge is f/r too long, and is eased in."""
    radius, binding = plan.sizes.outline.smallest_radius, plan.binding
    if radius is None or binding is None or plan.project.binding is None:
        return
    if plan.project.binding.fold is not Fold.FACED:
        return
    deep, units = binding.widths.strip / 2, plan.project.units
    yield (
        "binding.strip_width",
        told(
            "Where the edge is tightest, with a radius of {radius}, the facing's inner edge is "
            "{share}% too long for its place and is eased in with steam; a narrower strip needs "
            "less.",
            radius=show(radius, units),
            share=f"{float(100 * deep / radius):.0f}",
        ),
    )


def _inside_corners(plan: Plan) -> Iterator[tuple[str, str]]:
    inside = [n for n, c in enumerate(plan.sizes.outline.corners, start=1) if c.inside]
    if len(inside) == 1:
        yield (
            "outline",
            told(
                "Corner {number} is cut into the quilt: clip the quilt's edge there to just short "
                "of the seam line, open it into a straight line as you sew, and fold no mitre.",
                number=inside[0],
            ),
        )
    elif inside:
        yield (
            "outline",
            told(
                "{count} corners are cut into the quilt: clip the quilt's edge there to just short "
                "of the seam line, open it into a straight line as you sew, and fold no mitre.",
                count=len(inside),
            ),
        )


def _sharp(plan: Plan) -> Iterator[tuple[str, str]]:
    """Our limit, no source: sharper than 45° the fold, tucked back, lies on itself many times."""
    corners = enumerate(plan.sizes.outline.corners, start=1)
    sharp = [(corner.angle, number) for number, corner in corners if corner.angle < _SHARP]
    if sharp:
        angle, number = min(sharp)
        yield (
            "outline.points",
            told(
                "Corner {number} is only {angle}° sharp: the binding's fold stands out far past "
                "it and makes a thick lump. Blunt or round the corner, or trim the fold as you "
                "sew.",
                number=number,
                angle=told_decimal(f"{angle:.3g}"),
            ),
        )


def _joins(plan: Plan) -> Iterator[tuple[str, str]]:
    sewn, binding, units = plan.sewn, plan.project.binding, plan.project.units
    if sewn is None or binding is None:
        return
    wish = binding.start_side
    by_hand = binding.start_at is not None
    if wish is not None and not by_hand and sewn.edge_map.closing.facing is not wish:
        yield (
            "binding.start_side",
            told(
                "The binding cannot be closed on the {wished} side; it is planned to close on the "
                "{planned} side.",
                wished=told_facing(wish),
                planned=told_facing(sewn.edge_map.closing.facing),
            ),
        )
    if not sewn.short or sewn.edge_map.least is None:
        return
    near = told(
        "A join or the closing comes as near as {near} to a corner, where {wished} were wished.",
        near=show(sewn.edge_map.least, units),
        wished=show(sewn.wished, units),
    )
    yield (
        "binding.start_at" if by_hand else "binding.least_to_corner",
        f"{near} {_instead(sewn.elsewhere, units)}",
    )


def _instead(elsewhere: EdgeMap | None, units: Units) -> str:
    """What could be had instead of a distance that cannot."""
    if elsewhere is None or elsewhere.least is None:
        return told("No start, order or trim of these strips does better; other strip lengths may.")
    return told(
        "Closing on the {side} side would keep all at least {least} away.",
        side=told_facing(elsewhere.closing.facing),
        least=show(elsewhere.least, units),
    )
