"""A sheet of cloth to scale: the lay with its letters, sizes, selvages and ruler.

On every picture the straightened end comes first and x = 0 is the *near edge*,
marked as such: with the cloth running right it lies towards the reader, with
the cloth running down it lies at the left. The two are quarter turns of each
other, never mirror images.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from core.by_hand.sheets import rect_of
from core.cloth_names import BOLT, ON_HAND, told_sheet
from core.drawing.frame import MARGIN, Frame, Heading
from core.drawing.marks import Area, Drawing, Line, Mark
from core.drawing.real_cloth import cut_from
from core.drawing.said import flaws_on, motifs_on, notes_of, pin_at
from core.drawing.shapes import free_of
from core.fabric import Fabric
from core.language import told, told_as
from core.lay.lay import Placement, Rect, Sheet
from core.lengths import RULERS, Inches, Units, show, show_size
from core.part_names import told_part
from core.plan import FabricPlan, Part, Plan

_LONG = 80  # inches
_WORDS, _CORNER = Fraction(16), Fraction(12)  # lengths for the words by the arrow and "far edge"


def sheet_title(fabric: Fabric, sheet: Sheet, length: Inches, units: Units) -> str:
    """What a sheet is called on pictures and pages.

    >>> linen = Fabric("linen", Fraction(54), Fraction(1))
    >>> sheet_title(linen, Sheet(), Fraction(36), Units.INCHES)
    'linen, from the bolt'
    """
    if sheet == Sheet():
        return told_sheet(fabric.name, BOLT, "")
    place = int(sheet.on.removeprefix("on_hand[").removesuffix("]"))
    piece = fabric.on_hand[place]
    size = show_size(piece.across, length, units)
    return told_sheet(fabric.name, ON_HAND, size, sheet.copy, piece.count)


def frame_of(fabric_plan: FabricPlan, sheet: Sheet, heading: Heading) -> Frame:
    """Where the places of a sheet lie on its picture."""
    cloth = rect_of(fabric_plan, sheet)
    return Frame(heading, _with_edges(cloth, fabric_plan.fabric, sheet))


def draw_sheet(plan: Plan, fabric_index: int, sheet: Sheet, heading: Heading) -> Drawing:
    """The picture of one sheet of one fabric, in inches of cloth."""
    fabric_plan, units = plan.fabrics[fabric_index], plan.project.units
    fabric, lay = fabric_plan.fabric, fabric_plan.lay
    cloth, frame = rect_of(fabric_plan, sheet), frame_of(fabric_plan, sheet, heading)
    marks: list[Mark] = [*_cloth(frame, cloth)]
    for offcut in lay.offcuts:
        if offcut.sheet == sheet:
            motifs = [motif.rect for motif in fabric.motifs if motif.sheet == sheet]
            marks.extend(_offcut(frame, offcut.rect, units, motifs))
    marks.extend(flaws_on(frame, fabric, sheet, cloth))
    parts = {part.name: part for part in plan.parts}
    for placement in lay.placements:
        if placement.sheet == sheet:
            part = parts[placement.name]
            marks.extend(_piece(frame, units, part, fabric_plan, placement))
    marks.extend(motifs_on(frame, fabric_plan, sheet, cloth))
    marks = list(cut_from(marks, fabric.real, turned=heading is Heading.RIGHT))
    marks.extend(_ruler(frame, cloth, units))
    marks.extend(_arrow(frame, cloth, fabric))
    title = sheet_title(fabric, sheet, cloth.along, units)
    return Drawing(title, frame.width, frame.height, tuple(marks))


def _with_edges(cloth: Rect, fabric: Fabric, sheet: Sheet) -> Rect:
    """The cloth with its selvages and its raw end; a piece on hand has neither."""
    if sheet != Sheet():
        return cloth
    selvage, raw = fabric.selvage, fabric.straightening
    return Rect(-selvage, -raw, cloth.across + 2 * selvage, cloth.along + raw)


def _cloth(frame: Frame, cloth: Rect) -> Iterator[Mark]:
    whole = frame.size
    if whole.y < 0:
        yield frame.area(replace(whole, along=-whole.y), "straightening")
    if whole.x < 0:
        side = Rect(whole.x, cloth.y, -whole.x, cloth.along)
        yield frame.area(side, "selvage")
        yield frame.area(replace(side, x=cloth.right), "selvage")
    yield frame.area(cloth, "cloth")


def _offcut(frame: Frame, rect: Rect, units: Units, motifs: Sequence[Rect]) -> Iterator[Mark]:
    size = show_size(rect.across, rect.along, units)
    yield frame.area(rect, "offcut")
    room = free_of(rect, motifs)
    yield frame.label(
        room,
        (told("offcut\n{size}", size=size), told("offcut {size}", size=size), size, told("offcut")),
        "offcut",
    )


def _piece(
    frame: Frame, units: Units, part: Part, fabric_plan: FabricPlan, placement: Placement
) -> Iterator[Mark]:
    key = part.label(placement.copy)
    size = show_size(placement.rect.across, placement.rect.along, units)
    name = told_part(part.name)
    full = (f"{key}\n{name}\n{size}", f"{key}  {name}  {size}", f"{key}\n{size}")
    texts = (*full, f"{key}  {size}", key)
    notes = notes_of(fabric_plan, placement)
    noted = tuple(f"{text} ({notes})" for text in texts if notes)
    yield frame.area(placement.rect, part.role, key)
    yield frame.label(placement.rect, (*noted, *texts), part.role, key)
    if fabric_plan.by_hand.pin_of(placement) is not None:
        yield from pin_at(frame, placement.rect)


def _ruler(frame: Frame, cloth: Rect, units: Units) -> Iterator[Mark]:
    """Ticks along the near edge: inches with numbers at every 6, or 5 cm and 20 cm.

    On long cloth every other number of inches goes, so that the rest can be read.
    """
    metric = units is not Units.INCHES
    step = RULERS[Units.CENTIMETRES].step * 50 if metric else Fraction(1)
    every = 4 if metric else 6
    numbered = every if metric or cloth.along <= _LONG else 2 * every
    edge, start, way = frame.size.x, float(frame.size.x), float(step)
    for tick in range(int(cloth.along / step) + 1):
        big, at = tick % every == 0, tick * way
        end = start - (1 if big else 0.5)
        yield Line((frame.point_at(start, at), frame.point_at(end, at)), "ruler")
        if tick and tick % numbered == 0:
            place = tick * step
            # A gap to the next number; the last one must not stick out past the cloth.
            usual = numbered * step * Fraction(9, 10)
            spread = min(usual, 2 * (cloth.along - place))
            if spread >= usual / 2:
                room = Rect(edge - MARGIN, place - spread / 2, MARGIN - 1, spread)
                yield frame.label(room, (show(place, units, unit=False),), "ruler")


def _arrow(frame: Frame, cloth: Rect, fabric: Fabric) -> Iterator[Mark]:
    """The grain arrow beyond the far edge; one head where the print has one way up."""
    across = frame.size.right + Fraction(3, 2)
    length = min(cloth.along, Fraction(12))
    start, end = Fraction(0), length
    yield Line((frame.point(across, start), frame.point(across, end)), "grain")
    heads = [(start, 1)] if fabric.one_way_print else [(start, 1), (end, -1)]
    for tip, way in heads:
        back = tip + way * min(Fraction(1), length / 3)
        side = Fraction(1, 2)
        head = (
            frame.point(across, tip),
            frame.point(across - side, back),
            frame.point(across + side, back),
        )
        yield Area(head, "grain")
    words = (
        (told("print, this way up"), told("print up"))
        if fabric.one_way_print
        else (told_as("an arrow", "lengthwise grain"), told("grain"))
    )
    if cloth.along > length + 1 + _WORDS + _CORNER:
        room = Rect(across - 1, end + 1, Fraction(2), _WORDS)
        yield frame.label(room, words, "grain")
    if cloth.along > length + _CORNER:
        at = cloth.end - _CORNER
        room = Rect(frame.size.right + Fraction(1, 2), at, Fraction(2), _CORNER)
        yield frame.label(room, (told("far edge"),), "note")
