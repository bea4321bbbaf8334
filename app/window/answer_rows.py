"""A plan in the words of the right side: rows to buy, to cut, in order, and figures.

Nothing is worked out here; what the plan holds is put into words.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.binding_wording import bias_given, layers_by_place
from app.window.read_table import Row
from app.wording import batting_from, cost, part_size, purchase, upper_first
from core.drawing.cloth import sheet_title
from core.drawing.said import notes_of
from core.fabric import Grain
from core.finish.binding_plan import BindingPlan
from core.finish.border import BorderPlan
from core.language import marked, told, told_count, told_list
from core.lay.lay import Placement
from core.lengths import Inches, Rounding, Units, show, show_size, typeset
from core.part_names import told_part
from core.plan import FabricPlan, Part, Plan
from core.quilt import Seams
from core.sewing import sewing
from core.steps import sentence

BUY_HEADERS = (marked("Cloth"), marked("Buy"), marked("Cost"), marked("Waste"))
CUT_HEADERS = ("", marked("Part"), marked("Size"), marked("Count"), marked("Cloth"))
PIECE_HEADERS = ("", marked("Part"), marked("Size"), marked("From edge"), marked("From end"))

GRAINS = {
    Grain.CROSSWISE: marked("crosswise"),
    Grain.LENGTHWISE: marked("lengthwise"),
    Grain.EITHER: marked("either"),
    Grain.BIAS: marked("bias"),
}
SEAMED = {
    Seams.LENGTHWISE: marked("{panels}, seams lengthwise"),
    Seams.CROSSWISE: marked("{panels}, seams crosswise"),
}


def _row(*cells: str, key: str = "", heading: bool = False) -> Row:
    return Row(tuple(typeset(cell) for cell in cells), key, heading)


def to_buy(plan: Plan) -> list[Row]:
    """What to buy of each cloth, and of the batting."""
    units = plan.project.units
    rows = [_buy_row(fabric_plan, units) for fabric_plan in plan.fabrics]
    if (batting := plan.batting) is not None:
        rows.append(_row(told("batting"), batting_from(batting, units), "", ""))
    return rows


def _buy_row(fabric_plan: FabricPlan, units: Units) -> Row:
    buy, name = fabric_plan.buy, fabric_plan.fabric.name
    if not fabric_plan.lay.placements:
        return _row(name, told("nothing: not used"), "", "")
    waste = f"{round(fabric_plan.waste_share * 100)} %"
    return _row(name, purchase(fabric_plan, units), cost(buy.cost), waste)


def proof(fabric_plan: FabricPlan) -> str:
    """Whether this cloth can be bought in less."""
    return told("proved least") if fabric_plan.lay.proved_least else told("not proved least")


def to_cut(plan: Plan) -> list[Row]:
    """The parts to cut, by letter."""
    return [_cut_row(part, plan.project.units) for part in plan.parts]


def _cut_row(part: Part, units: Units) -> Row:
    cells = part.letter, told_part(part.name), part_size(part, units), str(part.count), part.fabric
    return _row(*cells, key=part.letter)


def pieces(plan: Plan) -> list[Row]:
    """Every piece and segment where it lies, under the cloth it is cut from."""
    units = plan.project.units
    rows: list[Row] = []
    for fabric_plan in plan.fabrics:
        lay = fabric_plan.lay
        for sheet, cloth in lay.sheets:
            rows.append(
                _row(sheet_title(fabric_plan.fabric, sheet, cloth.along, units), heading=True)
            )
            placed = (placement for placement in lay.placements if placement.sheet == sheet)
            rows += [_piece_row(plan, fabric_plan, placement) for placement in placed]
    return rows


def _piece_row(plan: Plan, fabric_plan: FabricPlan, placement: Placement) -> Row:
    label, rect, units = plan.label(placement), placement.rect, plan.project.units
    places = (show(place, units, unit=False) for place in (rect.x, rect.y))
    size = show_size(rect.across, rect.along, units)
    name, notes = told_part(placement.name), notes_of(fabric_plan, placement)
    return _row(label, f"{name} ({notes})" if notes else name, size, *places, key=label)


def cut_order(plan: Plan) -> list[Row]:
    """Every cut in sequence, under the cloth it is made in."""
    rows: list[Row] = []
    units = plan.project.units
    for fabric_plan in plan.fabrics:
        lengths = {sheet: rect.along for sheet, rect in fabric_plan.lay.sheets}
        last = None
        for step in fabric_plan.steps:
            if step.sheet != last:
                last = step.sheet
                title = sheet_title(fabric_plan.fabric, last, lengths[last], units)
                rows.append(_row(title, heading=True))
            rows.append(_row(str(step.number), sentence(step, units, plan.project.cutting_table)))
    return rows


def sewing_order(plan: Plan) -> list[Row]:
    """How the cut pieces become parts, under each part's name."""
    rows: list[Row] = []
    for making in sewing(plan):
        rows.append(_row(making.title, heading=True))
        rows.extend(
            _row(str(number), text) for number, text in enumerate(making.sentences, start=1)
        )
    return rows


def warnings(plan: Plan) -> list[Row]:
    """What the person should know before cutting; each row leads to its field."""
    return [_row(notice.text, key=notice.path) for notice in plan.warnings]


def figures(plan: Plan) -> list[Row]:
    """The finishing arithmetic, part by part."""
    units = plan.project.units
    finished = show_size(plan.finished_width, plan.finished_length, units)
    rows = [_row(told("Quilt with its borders"), finished)]
    rows.extend(
        _row(told("{cloth}: to buy", cloth=cloth.fabric.name), proof(cloth))
        for cloth in plan.fabrics
        if cloth.lay.placements
    )
    for border in plan.borders:
        rows.extend(_border(border, units))
    rows.extend(_backing(plan, units))
    if (batting := plan.batting) is not None:
        rows.append(_row(told("Batting"), show_size(batting.across, batting.along, units)))
    rows.extend(_binding(plan, units))
    if (sleeve := plan.sleeve) is not None:
        size = show_size(sleeve.cut_width, sleeve.length, units)
        if sleeve.parts > 1:
            size = told("{count} of {size}", count=sleeve.parts, size=size)
        rows.append(_row(told("Sleeve: cut size"), size))
    if (label := plan.label_patch) is not None:
        rows.append(_row(told("Label: cut size"), show_size(label.across, label.along, units)))
    return rows


def _border(border: BorderPlan, units: Units) -> Iterator[Row]:
    number, grain = border.number, told(GRAINS[border.grain])
    finished = dict.fromkeys(w for w in (border.sides_width, border.ends_width) if w)
    widths = told(
        "{finished} finished, {cut} cut",
        finished=_widths(finished, units),
        cut=_widths(border.cut_widths, units),
    )
    yield _row(told("Border {number}: width", number=number), widths)
    told_grain = told("{grain}, in one piece", grain=grain)
    if border.joined:
        told_grain = told("{grain}, joined", grain=grain)
    yield _row(told("Border {number}: grain", number=number), told_grain)


def _widths(widths: Iterable[Inches], units: Units) -> str:
    return told_list([show(width, units) for width in widths])


def _backing(plan: Plan, units: Units) -> Iterator[Row]:
    if (backing := plan.backing) is None:
        return
    yield _row(told("Backing"), show_size(backing.across, backing.along, units))
    panels = told_count("{count} panel", "{count} panels", backing.panels)
    if backing.seams is not Seams.NONE:
        panels = told(SEAMED[backing.seams], panels=panels)
    yield _row(told("Backing: sewn from"), panels)


def _binding(plan: Plan, units: Units) -> Iterator[Row]:
    if (binding := plan.binding) is None:
        return
    yield _row(told("Binding: way round the quilt"), show(binding.perimeter, units))
    yield _row(told("Binding: length needed"), show(binding.needs, units, Rounding.UP))
    yield _row(told("Binding: strips"), _strips(binding))
    yield _row(told("Binding: joined length"), show(binding.joined_length, units, Rounding.DOWN))
    yield _row(told("Binding: to spare"), show(binding.spare, units, Rounding.DOWN))
    yield _row(told("Binding: strip width"), show(binding.widths.strip, units))
    yield _row(told("Binding: first face"), show(binding.first_face_width, units))
    yield _row(told("Binding: second face"), show(binding.second_face_width, units))
    needed = show(binding.widths.needed_reach, units)
    reach = told("{reach}, wanted {needed}", reach=show(binding.reach, units), needed=needed)
    yield _row(told("Binding: reach past the seam"), reach)
    for where, layers in layers_by_place(binding):
        yield _row(told("Binding: layers {where}", where=where), layers)
    for name, given in bias_given(binding, units):
        yield _row(upper_first(told_part(name)), given)
    narrowest = show(binding.narrowest_usable_width, units, Rounding.UP)
    yield _row(told("Binding: narrowest usable width"), narrowest)


def _strips(binding: BindingPlan) -> str:
    joins = told_count("{count} join", "{count} joins", binding.joins)
    return told("{strips}, with {joins}", strips=binding.strips, joins=joins)
