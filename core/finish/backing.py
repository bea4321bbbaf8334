"""Backing: one panel or several, seamed lengthwise or crosswise.

The backing is the quilt plus the overage on each side. Every way that the
project allows is offered, and the lay says which buys least: seams either way,
the last narrow panel whole or pieced from short strips, or one panel from a piece
on hand that is wider than the bolt, turned if need be.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from core.fabric import Fabric, Grain
from core.finish.backing_panels import (
    Widths,
    in_two,
    matched_panels,
    panel_widths,
    pieced_panels,
    whole_panels,
)
from core.finish.demand import Demand, shortest_segment
from core.finish.overage import overages
from core.language import told
from core.lay.problem import Piece, Run
from core.lengths import Inches, round_up
from core.quilt import Backing, Frame, Panels, Seams
from core.refusal import Refusal

ACCENT = "backing accent strip"


@dataclass(frozen=True, slots=True)
class BackingPlan:
    """The finished backing `across` × `along`, and the panels it is sewn from.

    `seams` says which way the panel seams run (NONE for one panel). `panel_along`
    is a panel's length along the cloth; `widths` the cut widths of all that is sewn
    side by side, the accent strip among them at `accent_at`. `pieced_last` is the
    number of short strips that make the last panel (1: cut whole). With a print to
    match, `repeat` is the washed repeat and the panels match only if they start on
    the same point of it. `off_frame` marks seams that do not run along the rollers
    although that was preferred.
    """

    across: Inches
    along: Inches
    seam: Inches
    seams: Seams
    widths: Widths
    panel_along: Inches
    pieced_last: int
    repeat: Inches | None
    demands: tuple[Demand, ...]
    last_resort: bool = False
    accent_at: int | None = None
    off_frame: bool = False

    @property
    def panels(self) -> int:
        return len(self.widths) - (self.accent_at is not None)


def backing_options(
    backing: Backing,
    width: Inches,
    length: Inches,
    fabric: Fabric,
    accent: Fabric | None = None,
) -> tuple[BackingPlan, ...]:
    """Ways to make the backing of a quilt of `width` × `length` that the project allows.

    `accent` is the cloth of the accent strip, if there is one.
    """
    across, along = overages(backing).round(width, length)
    _refuse_wide_seams(backing, fabric)
    _refuse_wide_accent(backing, accent, min(across, along))
    options = tuple(_all_options(backing, across, along, fabric, accent))
    if not options:
        raise Refusal(
            "backing.seams",
            told(
                "the cloth is too narrow for a backing of {across} × {along} in one piece; "
                "allow seams or choose a wider cloth"
            ),
            across=across,
            along=along,
        )
    return tuple(replace(o, off_frame=_off_frame(backing.frame, o.seams)) for o in options)


def _off_frame(frame: Frame, seams: Seams) -> bool:
    """Whether the seams cross the rollers, which lie along the edge that is loaded."""
    against = {Frame.NONE: None, Frame.TOP: Seams.LENGTHWISE, Frame.SIDE: Seams.CROSSWISE}
    return seams is against[frame]


def _refuse_wide_seams(backing: Backing, fabric: Fabric) -> None:
    if 2 * backing.seam + backing.narrowest_panel > fabric.cutting_width:
        raise Refusal(
            "backing.seam",
            told(
                "two seams of {seam} leave too little of the cloth's usable width of {usable} for "
                "panels of {narrowest} or more; write a narrower seam"
            ),
            seam=backing.seam,
            usable=fabric.cutting_width,
            narrowest=backing.narrowest_panel,
        )


def _refuse_wide_accent(backing: Backing, accent: Fabric | None, least: Inches) -> None:
    if accent is not None and backing.accent_width + 2 * backing.narrowest_panel > least:
        raise Refusal(
            "backing.accent_width",
            told(
                "an accent strip of {accent} leaves no room for panels in a backing of {least}; "
                "write a narrower strip"
            ),
            accent=backing.accent_width,
            least=least,
        )


def _all_options(
    backing: Backing, across: Inches, along: Inches, fabric: Fabric, accent: Fabric | None
) -> Iterator[BackingPlan]:
    """Panels along the quilt first; panels across it unless the print has one way up."""
    if fabric.one_way_print and backing.seams is Seams.CROSSWISE:
        raise Refusal(
            "backing.seams",
            told("crosswise seams would lay a one-way print sideways; choose lengthwise seams"),
        )
    ways = {
        False: backing.seams is not Seams.CROSSWISE,
        True: backing.seams is not Seams.LENGTHWISE and not fabric.one_way_print,
    }
    for turned in (turned for turned, allowed in ways.items() if allowed):
        for usable in _usable_widths(fabric):
            plan = _uncut(backing, across, along, usable, turned=turned, accent=accent)
            if plan.panels > 1 and backing.seams is Seams.NONE:
                continue
            if all(_is_there(fabric, width, plan.panel_along) for width in _own(plan)):
                yield from _cut(backing, plan, fabric, accent)


def _usable_widths(fabric: Fabric) -> tuple[Inches, ...]:
    """The bolt's, then those of wider pieces on hand."""
    wider = {hand.across for hand in fabric.on_hand if hand.across > fabric.cutting_width}
    return fabric.cutting_width, *sorted(wider)


def _is_there(fabric: Fabric, across: Inches, along: Inches) -> bool:
    """Whether the bolt, or a piece on hand, is wide enough for such a panel."""
    return across <= fabric.cutting_width or any(
        across <= hand.across and along <= hand.along for hand in fabric.on_hand
    )


def _own(plan: BackingPlan) -> Widths:
    """The panels' widths, without the accent strip's."""
    return tuple(width for place, width in enumerate(plan.widths) if place != plan.accent_at)


def _uncut(
    backing: Backing,
    across: Inches,
    along: Inches,
    usable: Inches,
    *,
    turned: bool,
    accent: Fabric | None,
) -> BackingPlan:
    """Panels that run along the quilt, or (turned) across it, and the accent between them."""
    cover, panel_along = (along, across) if turned else (across, along)
    if accent is not None:
        cover -= backing.accent_width
    widths = panel_widths(backing.panels, cover, backing.seam, usable, backing.narrowest_panel)
    if accent is not None:
        two = in_two(cover, backing.seam)
        equal = backing.panels is Panels.HALVES and two[0] <= usable
        first, *others = two if len(widths) == 1 or equal else widths
        widths = (first, backing.accent_width + 2 * backing.seam, *others)
    seams = Seams.NONE if len(widths) == 1 else Seams.CROSSWISE if turned else Seams.LENGTHWISE
    return BackingPlan(
        across,
        along,
        backing.seam,
        seams,
        widths,
        panel_along,
        1,
        None,
        (),
        accent_at=1 if accent is not None else None,
    )


def _cut(
    backing: Backing, plan: BackingPlan, fabric: Fabric, accent: Fabric | None
) -> Iterator[BackingPlan]:
    """The ways to cut the panels: whole, the last one pieced, or matched to a print."""
    own, along = _own(plan), plan.panel_along
    extra = () if accent is None else (_accent_strip(backing, along, accent),)
    if fabric.repeat is None or plan.panels == 1 or extra:
        yield replace(plan, demands=(*whole_panels(fabric, own, along), *extra))
        if backing.panels is Panels.LEAST:
            most = backing.most_short_strips
            for pieced, demands in pieced_panels(fabric, own, along, plan.seam, most):
                yield replace(plan, demands=(*demands, *extra), pieced_last=pieced)
        return
    repeat = fabric.repeat * (1 - fabric.shrinkage_along)
    matched = matched_panels(fabric, own, along, round_up(along, repeat))
    yield replace(plan, demands=matched, repeat=repeat)
    # Wherever it starts, a panel with a whole repeat to spare can be trimmed to match.
    spare = matched_panels(fabric, own, along, along + repeat)
    yield replace(plan, demands=spare, repeat=repeat, last_resort=True)


def _accent_strip(backing: Backing, along: Inches, fabric: Fabric) -> Demand:
    """In one piece where the cloth is wide enough, else joined with the panels' seam."""
    width, usable = backing.accent_width + 2 * backing.seam, fabric.cutting_width
    if along <= usable:
        may_turn = width <= usable and not fabric.one_way_print
        return Demand("backing", "backing", Piece(ACCENT, fabric.name, along, width, 1, may_turn))
    if width > usable:
        raise Refusal(
            "backing.accent_width",
            told(
                "the accent strip is wider than its cloth's usable width of {usable}; "
                "write a narrower strip"
            ),
            usable=usable,
        )
    shortest = shortest_segment(usable)
    run = Run(ACCENT, fabric.name, width, along, 2 * backing.seam, shortest, Grain.EITHER)
    return Demand("backing", "backing", run)
