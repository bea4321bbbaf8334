"""The pieces and the purchases as tables for a shop: CSV that spreadsheet programs open.

UTF-8 with a mark at its start, without which some programs take it for something
else. A text that a spreadsheet would take for a formula gets an apostrophe before it.
"""

from __future__ import annotations

import csv
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from io import StringIO

from core.language import told
from core.lay.lay import BOLT
from core.lengths import RULERS, Units, bare, show_size
from core.money import bare_money
from core.part_names import told_part
from core.plan import FabricPlan, Plan

_FORMULAS = ("=", "+", "-", "@", "\t", "\r")
_MARK = "\ufeff"


def table_files(plan: Plan) -> Iterator[tuple[str, bytes]]:
    """Both tables, with their file names."""
    yield "pieces.csv", pieces_table(plan)
    yield "purchases.csv", purchases_table(plan)


def pieces_table(plan: Plan) -> bytes:
    """A row for each letter and size: what it is, of which fabric, how large, how many.

    Segments of a run are counted by their lengths.
    """
    units = plan.project.units
    unit = RULERS[units].unit
    head = (
        told("letter"),
        told("part"),
        told("fabric"),
        told("across ({unit})", unit=unit),
        told("along ({unit})", unit=unit),
        told("count"),
    )
    return _csv([head, *_pieces(plan, units)])


def _pieces(plan: Plan, units: Units) -> Iterator[Sequence[str]]:
    sizes: Counter[tuple[str, str, str]] = Counter()
    for fabric in plan.fabrics:
        for placed in fabric.lay.placements:
            across, along = (bare(side, units) for side in (placed.rect.across, placed.rect.along))
            sizes[placed.name, across, along] += 1
    for part in plan.parts:
        for (name, across, along), count in sizes.items():
            if name == part.name:
                yield part.letter, told_part(part.name), part.fabric, across, along, str(count)


def purchases_table(plan: Plan) -> bytes:
    """A row for each fabric: what to buy of it, for how much, and what is used from the shelf."""
    units = plan.project.units
    head = (
        told("fabric"),
        told("buy"),
        told("length ({unit})", unit=RULERS[units].unit),
        told("cost"),
        told("from the shelf"),
    )
    return _csv([head, *(_purchase(fabric, units) for fabric in plan.fabrics)])


def _purchase(fabric: FabricPlan, units: Units) -> Sequence[str]:
    buy = fabric.buy
    return (
        fabric.fabric.name,
        buy.sale_text if buy.along else told("nothing"),
        bare(buy.along, units) if buy.along else "0",
        bare_money(buy.cost) if buy.along and buy.cost is not None else "",
        "; ".join(
            show_size(rect.across, rect.along, units)
            for sheet, rect in fabric.lay.sheets
            if sheet.on != BOLT
        ),
    )


def _csv(rows: Iterable[Sequence[str]]) -> bytes:
    out = StringIO(newline="")
    out.write(_MARK)
    csv.writer(out).writerows([_harmless(cell) for cell in row] for row in rows)
    return out.getvalue().encode("utf-8")


def _harmless(cell: str) -> str:
    """
    >>> _harmless("=SUM(A1)"), _harmless("plum")
    ("'=SUM(A1)", 'plum')
    """
    return f"'{cell}" if cell.startswith(_FORMULAS) else cell
