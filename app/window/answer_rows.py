"""A plan in the words of the right side: rows to buy, to cut, in order, and figures.

Nothing is worked out here; what the plan holds is put into words.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.binding_wording import bias_given, layers_by_place
from app.window.read_table import Row
from app.wording import batting_from, cost, part_size, purchase, times
from core.drawing.cloth import sheet_title
from core.lay.lay import Placement
from core.lengths import Rounding, Units, show, show_size, typeset
from core.plan import FabricPlan, Part, Plan
from core.quilt import Seams
from core.sewing import sewing
from core.steps import sentence

BUY_HEADERS = ("Cloth", "Buy", "Cost", "Waste")
CUT_HEADERS = ("", "Part", "Size", "Count", "Cloth")
PIECE_HEADERS = ("", "Part", "Size", "From edge", "From end")


def _row(*cells: str, key: str = "", heading: bool = False) -> Row:
    return Row(tuple(typeset(cell) for cell in cells), key, heading)


def to_buy(plan: Plan) -> list[Row]:
    """What to buy of each cloth, and of the batting."""
    units = plan.project.units
    rows = [_buy_row(fabric_plan, units) for fabric_plan in plan.fabrics]
    if (batting := plan.batting) is not None:
        rows.append(_row("batting", batting_from(batting, units), "", ""))
    return rows


def _buy_row(fabric_plan: FabricPlan, units: Units) -> Row:
    buy, name = fabric_plan.buy, fabric_plan.fabric.name
    if not fabric_plan.lay.placements:
        return _row(name, "nothing: not used", "", "")
    waste = f"{round(fabric_plan.waste_share * 100)} %"
    return _row(name, purchase(fabric_plan, units), cost(buy.cost), waste)


def proof(fabric_plan: FabricPlan) -> str:
    """Whether this cloth can be bought in less."""
    return "proved least" if fabric_plan.lay.proved_least else "not proved least"


def to_cut(plan: Plan) -> list[Row]:
    """The parts to cut, by letter."""
    return [_cut_row(part, plan.project.units) for part in plan.parts]


def _cut_row(part: Part, units: Units) -> Row:
    cells = part.letter, part.name, part_size(part, units), str(part.count), part.fabric
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
            rows += [_piece_row(plan, placement) for placement in placed]
    return rows


def _piece_row(plan: Plan, placement: Placement) -> Row:
    label, rect, units = plan.label(placement), placement.rect, plan.project.units
    places = (show(place, units, unit=False) for place in (rect.x, rect.y))
    size = show_size(rect.across, rect.along, units)
    return _row(label, plan.part(placement.name).name, size, *places, key=label)


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
    rows = [_row("Quilt with its borders", finished)]
    rows.extend(
        _row(f"{cloth.fabric.name}: to buy", proof(cloth))
        for cloth in plan.fabrics
        if cloth.lay.placements
    )
    for border in plan.borders:
        grain = f"{border.grain.value}, {'joined' if border.joined else 'in one piece'}"
        shown = dict.fromkeys(w for w in (border.sides_width, border.ends_width) if w)
        widths = (
            f"{' and '.join(show(width, units) for width in shown)} finished, "
            f"{' and '.join(show(width, units) for width in border.cut_widths)} cut"
        )
        rows.append(_row(f"Border {border.number}: width", widths))
        rows.append(_row(f"Border {border.number}: grain", grain))
    rows.extend(_backing(plan, units))
    if (batting := plan.batting) is not None:
        rows.append(_row("Batting", show_size(batting.across, batting.along, units)))
    rows.extend(_binding(plan, units))
    if (sleeve := plan.sleeve) is not None:
        each = f"{sleeve.parts} of " if sleeve.parts > 1 else ""
        size = show_size(sleeve.cut_width, sleeve.length, units)
        rows.append(_row("Sleeve: cut size", f"{each}{size}"))
    if (label := plan.label_patch) is not None:
        rows.append(_row("Label: cut size", show_size(label.across, label.along, units)))
    return rows


def _backing(plan: Plan, units: Units) -> Iterator[Row]:
    if (backing := plan.backing) is None:
        return
    yield _row("Backing", show_size(backing.across, backing.along, units))
    panels = times(backing.panels, "panel")
    seams = "" if backing.seams is Seams.NONE else f", seams {backing.seams.value}"
    yield _row("Backing: sewn from", f"{panels}{seams}")


def _binding(plan: Plan, units: Units) -> Iterator[Row]:
    if (binding := plan.binding) is None:
        return
    yield _row("Binding: way round the quilt", show(binding.perimeter, units))
    yield _row("Binding: length needed", show(binding.needs, units, Rounding.UP))
    yield _row("Binding: strips", f"{binding.strips}, with {times(binding.joins, 'join')}")
    yield _row("Binding: joined length", show(binding.joined_length, units, Rounding.DOWN))
    yield _row("Binding: to spare", show(binding.spare, units, Rounding.DOWN))
    yield _row("Binding: strip width", show(binding.widths.strip, units))
    yield _row("Binding: first face", show(binding.first_face_width, units))
    yield _row("Binding: second face", show(binding.second_face_width, units))
    needed = show(binding.widths.needed_reach, units)
    yield _row("Binding: reach past the seam", f"{show(binding.reach, units)}, wanted {needed}")
    for where, layers in layers_by_place(binding):
        yield _row(f"Binding: layers {where}", layers)
    for name, given in bias_given(binding, units):
        yield _row(name.capitalize(), given)
    narrowest = show(binding.narrowest_usable_width, units, Rounding.UP)
    yield _row("Binding: narrowest usable width", narrowest)
