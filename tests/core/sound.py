"""What holds for every plan, worked out again from the project."""

from __future__ import annotations

import json
from collections import defaultdict
from fractions import Fraction
from math import ceil

from shapely.geometry import LinearRing

from core.binding_choices import Tuck
from core.by_hand.sheets import sheets_of
from core.drawing.back import draw_back
from core.drawing.bias_plan import bias_drawings
from core.drawing.cloth import draw_sheet
from core.drawing.edge_map import draw_edge_map
from core.drawing.edge_section import draw_edge_section
from core.drawing.frame import Heading
from core.drawing.marks import ROLES, Drawing, Label
from core.drawing.quilt import draw_quilt
from core.fabric import Fabric, OnHand
from core.finish.backing import BackingPlan
from core.finish.batting import BattingPlan
from core.finish.binding_plan import BindingPlan
from core.finish.border import BorderPlan
from core.lay.check import check
from core.lay.lay import Lay, Placement
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lengths import INCHES_PER_MM, Units
from core.plan import Plan
from core.plan_json import plan_document
from core.quilt import (
    Backing,
    Batting,
    Binding,
    Closing,
    Corners,
    Kits,
    Panels,
    Seams,
    Sizing,
)
from core.shape import ShapeKind
from tests.core.stranger import cloths_of, cut_out, pieces_of, whole_cloths

NEAR = 1e-6


def assert_sound(plan: Plan) -> None:
    """Fail with what is wrong, if anything is."""
    _assert_finished(plan)
    _assert_laid(plan)
    _assert_by_hand(plan)
    _assert_runs_reach(plan)
    _assert_labelled(plan)
    _assert_drawn(plan)
    _assert_cut_by_a_stranger(plan)
    json.dumps(plan_document(plan), allow_nan=False)


def _assert_finished(plan: Plan) -> None:
    """Sizes from the inside out, by the rules of the trade."""
    width, length = plan.project.top
    for border in plan.borders:
        _assert_border(border, width, length)
        width, length = border.outer_width, border.outer_length
    assert plan.sizes.bordered == (width, length)
    layers = plan.sizes.layers  # laid before quilting takes anything up
    width, length = _cut_to_shape(plan, *_quilted(plan, width, length))
    assert (plan.finished_width, plan.finished_length) == (width, length)
    if plan.project.take_up is None and plan.project.squaring is None:
        assert layers == (width, length)
    width, length = layers
    if (spec := plan.project.backing) is not None and (backing := plan.backing) is not None:
        _assert_backing(plan, spec, backing, width, length)
    if (wadding := plan.project.batting) is not None and plan.batting is not None:
        assert plan.batting.across == width + _side(wadding, "left") + _side(wadding, "right")
        assert (plan.batting.package is None) != (plan.batting.roll is None)
        assert_batting(plan.batting, plan.project.quilt.copies)
    if (bound := plan.project.binding) is not None and plan.binding is not None:
        _assert_closed(bound, plan.binding, plan.sizes.outline.perimeter)
    for name in ("backing", "batting", "binding", "sleeve"):
        assert (getattr(plan, name) is None) == (getattr(plan.project, name) is None)
    assert (plan.label_patch is None) == (plan.project.label is None)


def _side(layer: Backing | Batting, side: str) -> Fraction:
    own: Fraction | None = getattr(layer, f"overage_{side}")
    return layer.overage if own is None else own


def _assert_backing(
    plan: Plan, spec: Backing, backing: BackingPlan, width: Fraction, length: Fraction
) -> None:
    """It covers the quilt and each side's overage, and its panels cover it exactly."""
    assert backing.across == width + _side(spec, "left") + _side(spec, "right")
    assert backing.along == length + _side(spec, "top") + _side(spec, "bottom")
    sewn = sum(backing.widths) - (len(backing.widths) - 1) * 2 * spec.seam
    assert {sewn, backing.panel_along} == {backing.across, backing.along}
    if backing.seams is not Seams.NONE:
        crosswise = backing.seams is Seams.CROSSWISE
        assert sewn == (backing.along if crosswise else backing.across)
    if plan.project.fabric(spec.fabric).one_way_print:
        assert backing.panel_along == backing.along
    if spec.panels is Panels.HALVES and spec.accent_fabric is None:
        assert backing.widths == backing.widths[::-1]
        assert backing.panels % 2 == 1
    assert (backing.accent_at is None) == (spec.accent_fabric is None)


def assert_batting(batting: BattingPlan, copies: int) -> None:
    """The package covers it or is told to be too small; the roll is long enough."""
    if (package := batting.package) is not None:
        turned = sorted((package.width, package.length))
        wanted = sorted((batting.across, batting.along))
        fits = turned[0] >= wanted[0] and turned[1] >= wanted[1]
        assert batting.too_small != fits
    if (roll := batting.roll) is not None:
        over = batting.along if roll.cut == batting.across else batting.across
        assert roll.pieces * roll.width >= over
        area = batting.across * batting.along * copies
        assert roll.along * roll.width >= area


def _assert_border(border: BorderPlan, width: Fraction, length: Fraction) -> None:
    """Its strips, as sewn, fill the ring round the centre once, and reach what they should."""
    spec, sides, ends = border.border, border.sides_width, border.ends_width
    assert (border.outer_width, border.outer_length) == (width + 2 * sides, length + 2 * ends)
    if spec.sizing is Sizing.WIDTH:
        assert sides == ends == spec.width
    if spec.sizing is Sizing.BLOCKS:
        assert spec.block is not None
        assert min(sides, ends) >= spec.width
        for outer in (border.outer_width, border.outer_length):
            assert ((outer - 2 * spec.seam) / spec.block).denominator == 1
    if spec.sizing is Sizing.SIZE:
        assert border.outer_width == (spec.to_width or width)
        assert border.outer_length == (spec.to_length or length)
    sewn = Fraction(0)
    for strip in border.strips:
        margin = spec.mitre_margin if spec.corners is Corners.MITRED else 0
        sewn += (
            (strip.length - margin - 2 * spec.seam)
            * (strip.cut_width - 2 * spec.seam)
            * strip.count
        )
        if strip.parts:
            joined = sum(strip.parts) - (len(strip.parts) - 1) * border.loss(strip)
            assert joined >= strip.length + spec.squaring
    inner = width - 2 * spec.seam, length - 2 * spec.seam
    ring = (inner[0] + 2 * sides) * (inner[1] + 2 * ends) - inner[0] * inner[1]
    twice = {Corners.SQUARES: -1, Corners.MITRED: 1}.get(spec.corners, 0)
    assert sewn == ring + twice * 4 * sides * ends
    for side, places in border.joins_at:
        strip = next(strip for strip in border.strips if side in strip.sides)
        assert all(0 < at < strip.length for at in places)


def _assert_closed(spec: Binding, binding: BindingPlan, perimeter: Fraction) -> None:
    """What closing takes, by its kind; a strip a side has no closing."""
    if (facing := binding.facing) is not None:
        turned = 2 * (spec.turn_in or Fraction(1, 2)) + binding.widths.strip
        slack = facing.count * turned + len(facing.by_cloth) * spec.allowance
        assert perimeter <= binding.needs <= perimeter + slack
        sides = sorted(side for strip in facing.strips for side in strip.sides)
        assert sides == list(range(1, facing.count + 1))
        return
    strip, seam = binding.widths.strip, binding.widths.seam
    assert spec.strip_width in (None, strip)
    closing = binding.closing
    assert 0 <= binding.needs - perimeter - closing - spec.allowance <= Fraction(1, 16)
    if spec.closing is Closing.DIAGONAL:
        assert closing == strip
    elif spec.closing is Closing.STRAIGHT:
        assert closing == 2 * seam
    elif spec.tuck == Tuck():
        assert strip + 2 <= closing <= strip + 3


def _quilted(plan: Plan, width: Fraction, length: Fraction) -> tuple[Fraction, Fraction]:
    """What quilting leaves of a size, up to a mark; or what was squared up."""
    if (squareness := plan.sizes.squareness) is not None:
        return squareness.width, squareness.length
    if plan.project.take_up is None:
        return width, length
    mark = Fraction(1, 16) if plan.project.units is Units.INCHES else INCHES_PER_MM
    left = 1 - plan.project.take_up.quilting
    return ceil(width * left / mark) * mark, ceil(length * left / mark) * mark


def _cut_to_shape(plan: Plan, width: Fraction, length: Fraction) -> tuple[Fraction, Fraction]:
    """The box round the outline, whose own way round an independent geometry measures."""
    outline = plan.sizes.outline
    if plan.project.outline is None or plan.project.outline.kind is ShapeKind.RECTANGLE:
        assert outline.perimeter == 2 * (width + length)
        return width, length
    drawn = LinearRing(outline.points)
    assert drawn.is_simple
    # Curves are drawn in short chords, which fall short of them by less than a thousandth.
    assert drawn.length - 1e-3 <= outline.perimeter <= drawn.length * 1.001 + 1e-2
    box = plan.sizes.finished
    for size, true, whole in zip(
        box, (outline.width, outline.length), (width, length), strict=True
    ):
        assert true <= size <= min(true + Fraction(1, 16), whole)
    return box


def usable(fabric: Fabric) -> Fraction:
    """WOF after washing, without the selvages."""
    return fabric.width * (1 - fabric.shrinkage_across) - 2 * fabric.selvage


def _share_of_hand(fabric: Fabric, lays: int) -> tuple[OnHand, ...]:
    """What each of so many kits may use of the pieces on hand."""
    shares = ((piece, piece.count // lays) for piece in fabric.on_hand)
    return tuple(OnHand(piece.across, piece.along, n) for piece, n in shares if n)


def lay_problem(plan: Plan, fabric: Fabric) -> LayProblem:
    """What one fabric must give for all the copies, as a lay problem of its own."""
    quilt = plan.project.quilt
    cloth = Cloth(
        fabric.name,
        fabric.cutting_width,
        fabric.sale_unit,
        fabric.straightening,
        fabric.shrinkage_along,
        _share_of_hand(fabric, quilt.lays),
        fabric.buy_more,
    )
    copies = quilt.copies if quilt.kits is Kits.TOGETHER else 1
    parts = (*plan.borders, plan.backing, plan.binding, plan.sleeve, plan.label_patch)
    wanted = [
        demand.wanted
        for part in parts
        if part is not None
        for demand in part.demands
        if demand.wanted.cloth == fabric.name
    ]
    pieces = tuple(
        Piece(w.name, w.cloth, w.across, w.along, w.count * copies, w.may_turn)
        for w in wanted
        if isinstance(w, Piece)
    )
    runs = tuple(
        Run(w.name, w.cloth, w.strip, w.needs, w.join_loss, w.shortest, w.grain, w.count * copies)
        for w in wanted
        if isinstance(w, Run)
    )
    return LayProblem((cloth,), pieces, runs)


def _assert_laid(plan: Plan) -> None:
    for fabric, owned in zip(plan.fabrics, plan.project.fabrics, strict=True):
        width = usable(owned)
        assert width - Fraction(1, 16) < fabric.fabric.cutting_width <= width
        faults = check(lay_problem(plan, owned), Lay((fabric.lay,)))
        assert faults == (), [fault.sentence for fault in faults]
        assert 0 <= fabric.waste_share < 1
        assert (fabric.buy.along == 0) == (fabric.lay.used_along == 0)
        assert fabric.buy.along == fabric.lay.bought_along * plan.project.quilt.lays


def _assert_by_hand(plan: Plan) -> None:
    """Nothing lies on a flaw, what is pinned lies there, and motifs are whole in their pieces."""
    for fabric in plan.fabrics:
        said, by_hand = fabric.fabric, fabric.by_hand
        for flaw in said.flaws:
            for placed in fabric.lay.placements:
                assert placed.sheet != flaw.sheet or placed.rect.within(flaw.rect) is None
        for place, placed in by_hand.pins:
            pin = said.pins[place]
            assert (placed.name, placed.sheet, placed.turned) == (pin.name, pin.sheet, pin.turned)
            assert (placed.rect.x, placed.rect.y) == (pin.x, pin.y)
        for place, placed in by_hand.motifs:
            assert placed.rect.within(said.motifs[place].rect) == said.motifs[place].rect
        aside = {one.path.partition("[")[0] for one in by_hand.aside}
        assert len(by_hand.pins) == len(said.pins) or "pins" in aside


def _assert_runs_reach(plan: Plan) -> None:
    if plan.binding is None:
        return
    assert plan.binding.spare >= 0
    if not any(demand.wanted.name == "binding" for demand in plan.binding.demands):
        return
    segments: dict[int | None, list[Placement]] = defaultdict(list)
    for fabric in plan.fabrics:
        for placed in fabric.lay.placements:
            if placed.name == "binding":
                segments[placed.run_copy].append(placed)
    assert len(segments) * plan.project.quilt.lays == plan.project.quilt.copies
    for strips in segments.values():
        total = sum((p.rect.along if p.turned else p.rect.across) for p in strips)
        assert total - (len(strips) - 1) * plan.binding.join_loss >= plan.binding.needs
    assert plan.binding.strips == max(map(len, segments.values()))
    assert plan.binding.joined_length >= plan.binding.needs


def _assert_labelled(plan: Plan) -> None:
    letters = [part.letter for part in plan.parts]
    assert len(letters) == len(set(letters))
    labels = [plan.label(p) for fabric in plan.fabrics for p in fabric.lay.placements]
    assert len(labels) == len(set(labels)) == sum(part.count for part in plan.parts)


def _assert_drawn(plan: Plan) -> None:
    assert_drawing(draw_quilt(plan))
    edge = draw_edge_map(plan)
    faced = plan.binding is not None and plan.binding.facing is not None
    assert (edge is not None) == (plan.sewn is not None or faced)
    if edge is not None:
        assert_drawing(edge)
    if (back := draw_back(plan)) is not None:
        assert_drawing(back)
    section = draw_edge_section(plan)
    assert (section is None) == (plan.binding is None)
    for drawing in (section, *bias_drawings(plan)):
        if drawing is not None:
            assert_drawing(drawing)
    for place, fabric in enumerate(plan.fabrics):
        for sheet in sheets_of(fabric):
            for heading in Heading:
                assert_drawing(draw_sheet(plan, place, sheet, heading))


def assert_drawing(drawing: Drawing) -> None:
    """A picture has a size, known roles, and nothing outside its frame."""
    assert drawing.width > 0
    assert drawing.height > 0
    for mark in drawing.marks:
        assert mark.role in ROLES
        points = (mark.centre,) if isinstance(mark, Label) else mark.points
        for x, y in points:
            assert -NEAR <= x <= drawing.width + NEAR, mark
            assert -NEAR <= y <= drawing.height + NEAR, mark
        if isinstance(mark, Label):
            assert all(mark.texts), mark
            assert min(mark.room) > 0, mark


def _assert_cut_by_a_stranger(plan: Plan) -> None:
    for fabric in plan.fabrics:
        cut = cut_out(cloths_of(fabric), fabric.steps) | whole_cloths(plan, fabric)
        assert cut == pieces_of(plan, fabric)
