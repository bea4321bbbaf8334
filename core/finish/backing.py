"""Backing: one panel or several, seamed lengthwise or crosswise.

The backing is the quilt plus the overage on each side. n panels of usable width
U, sewn with seam s, cover n·U − (n − 1)·2s. All panels but the last are as wide
as the cloth; the last is as narrow as may be, or is itself pieced from short
strips that lie side by side on the cloth, where that buys less.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from core.fabric import Fabric
from core.figures import figure
from core.finish.demand import Demand
from core.lay.problem import Piece
from core.lengths import Inches, round_up
from core.quilt import Backing, Seams
from core.refusal import Refusal

# Our default, no source: a sliver at the edge pulls out of true.
NARROWEST_PANEL = Fraction(6)
NARROWEST_PANEL_MM = Fraction(150)
MOST_SHORT_STRIPS = 4


@dataclass(frozen=True, slots=True)
class BackingPlan:
    """The finished backing `across` × `along`, and the panels it is sewn from.

    `seams` says which way the panel seams run (NONE for one panel). `panel_along`
    is a panel's length along the cloth, `widths` the panels' sizes across it.
    `pieced_last` is the number of short strips that make the last panel (1: cut
    whole). With a print to match, `repeat` is the washed repeat and the panels
    match only if they start on the same point of it.
    """

    across: Inches
    along: Inches
    seam: Inches
    seams: Seams
    widths: tuple[Inches, ...]
    panel_along: Inches
    pieced_last: int
    repeat: Inches | None
    demands: tuple[Demand, ...]
    last_resort: bool = False

    @property
    def panels(self) -> int:
        return len(self.widths)


def backing_options(
    backing: Backing, width: Inches, length: Inches, fabric: Fabric
) -> tuple[BackingPlan, ...]:
    """Ways to make the backing of a quilt of `width` × `length` that the project allows."""
    across, along = width + 2 * backing.overage, length + 2 * backing.overage
    _refuse_wide_seams(backing, fabric)
    options = tuple(_all_options(backing, across, along, fabric))
    if not options:
        raise Refusal(
            "backing.seams",
            "the cloth is too narrow for a backing of {across} × {along} in one piece; "
            "allow seams or choose a wider cloth",
            across=across,
            along=along,
        )
    return options


def _refuse_wide_seams(backing: Backing, fabric: Fabric) -> None:
    if 2 * backing.seam + NARROWEST_PANEL > fabric.cutting_width:
        raise Refusal(
            "backing.seam",
            "two seams of {seam} leave too little of the cloth's usable width of {usable}; "
            "write a narrower seam",
            seam=backing.seam,
            usable=fabric.cutting_width,
        )


def _all_options(
    backing: Backing, across: Inches, along: Inches, fabric: Fabric
) -> Iterator[BackingPlan]:
    """Panels along the quilt first; panels across it unless the print has one way up."""
    if fabric.one_way_print and backing.seams is Seams.CROSSWISE:
        raise Refusal(
            "backing.seams",
            "crosswise seams would lay a one-way print sideways; choose lengthwise seams",
        )
    ways = {
        False: backing.seams is not Seams.CROSSWISE,
        True: backing.seams is not Seams.LENGTHWISE and not fabric.one_way_print,
    }
    for turned in (turned for turned, allowed in ways.items() if allowed):
        for option in _panels(backing, across, along, fabric, turned=turned):
            if option.panels == 1 or backing.seams is not Seams.NONE:
                yield option


def _panels(
    backing: Backing, across: Inches, along: Inches, fabric: Fabric, *, turned: bool
) -> Iterator[BackingPlan]:
    """Panels that run along the quilt, or (turned) across it."""
    cover, panel_along = (along, across) if turned else (across, along)
    widths = _panel_widths(cover, backing.seam, fabric.cutting_width)
    seams = Seams.NONE if len(widths) == 1 else Seams.CROSSWISE if turned else Seams.LENGTHWISE

    def option(
        demands: tuple[Demand, ...],
        pieced: int = 1,
        repeat: Inches | None = None,
        *,
        last_resort: bool = False,
    ) -> BackingPlan:
        return BackingPlan(
            across, along, backing.seam, seams, widths, panel_along, pieced, repeat, demands,
            last_resort,
        )  # fmt: skip

    if len(widths) == 1 or fabric.repeat is None:
        yield option(_whole_panels(fabric, widths, panel_along))
        for pieced in _pieced_counts(widths, fabric):
            yield option(_pieced_panels(fabric, widths, panel_along, backing.seam, pieced), pieced)
        return
    repeat = fabric.repeat * (1 - fabric.shrinkage_along)
    matched = round_up(panel_along, repeat)
    yield option(_matched_panels(fabric, widths, panel_along, matched), repeat=repeat)
    # Wherever it starts, a panel with a whole repeat to spare can be trimmed to match.
    spare = panel_along + repeat
    yield option(_matched_panels(fabric, widths, panel_along, spare), last_resort=True)


def _panel_widths(cover: Inches, seam: Inches, usable: Inches) -> tuple[Inches, ...]:
    """Cut widths of the fewest panels that cover `cover`, widest first.

    >>> _panel_widths(Fraction(56), Fraction(1, 2), Fraction(42))
    (Fraction(42, 1), Fraction(15, 1))
    >>> _panel_widths(Fraction(84), Fraction(1, 2), Fraction(42))
    (Fraction(42, 1), Fraction(38, 1), Fraction(6, 1))
    """
    count = max(1, ceil((cover - 2 * seam) / (usable - 2 * seam)))
    if count == 1:
        return (cover,)
    last = cover - (count - 1) * (usable - 2 * seam)
    narrowest = figure(cover, NARROWEST_PANEL, NARROWEST_PANEL_MM)
    short = max(narrowest - last, Fraction(0))
    return (*(usable,) * (count - 2), usable - short, last + short)


def _whole_panels(
    fabric: Fabric, widths: tuple[Inches, ...], panel_along: Inches
) -> tuple[Demand, ...]:
    counts: dict[Inches, int] = {}
    for width in widths:
        counts[width] = counts.get(width, 0) + 1
    return tuple(
        _panel(_panel_name(place, len(counts)), fabric, width, panel_along, count)
        for place, (width, count) in enumerate(counts.items())
    )


def _panel_name(place: int, kinds: int) -> str:
    if place == 0:
        return "backing panel"
    return "narrow backing panel" if place == kinds - 1 else "second backing panel"


def _panel(name: str, fabric: Fabric, across: Inches, along: Inches, count: int) -> Demand:
    return Demand("backing", "backing", Piece(name, fabric.name, across, along, count))


def _pieced_counts(widths: tuple[Inches, ...], fabric: Fabric) -> range:
    """Numbers of short strips that the last panel may be pieced from, side by side."""
    if len(widths) == 1:
        return range(0)
    return range(2, min(int(fabric.cutting_width // widths[-1]), MOST_SHORT_STRIPS) + 1)


def _pieced_panels(
    fabric: Fabric, widths: tuple[Inches, ...], panel_along: Inches, seam: Inches, pieced: int
) -> tuple[Demand, ...]:
    step = figure(panel_along, Fraction(1, 8), Fraction(1))
    each = round_up((panel_along + (pieced - 1) * 2 * seam) / pieced, step)
    strips = _panel("backing short strip", fabric, widths[-1], each, pieced)
    return (*_whole_panels(fabric, widths[:-1], panel_along), strips)


def _matched_panels(
    fabric: Fabric, widths: tuple[Inches, ...], first: Inches, others: Inches
) -> tuple[Demand, ...]:
    """The first panel as long as needed, the others cut `others` to match its print."""
    return (
        _panel("first backing panel", fabric, widths[0], first, 1),
        *_whole_panels(fabric, widths[1:], others),
    )
