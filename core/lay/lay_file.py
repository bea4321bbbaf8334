"""The two JSON forms: a lay problem to be read, a lay to be written.

Bare lengths in a problem count in inches unless it says `"units"`. Lengths in a
lay are exact inches, as `str(Fraction)` writes them.
"""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path
from typing import Any, Final

from core.fabric import Grain, OnHand
from core.language import told
from core.lay.lay import ClothLay, Cut, Direction, Lay, Offcut, Placement
from core.lay.places_file import (
    MOST_FLAWS,
    MOST_PIECES,
    read_region,
    read_sheet,
    rect_document,
    sheet_document,
)
from core.lay.problem import Cloth, Flaw, LayProblem, Motif, Piece, Pin, Run
from core.lay.refuse import require_layable
from core.lengths import Units
from core.reading import Fields, json_object, text_of
from core.refusal import Refusal
from core.table import Table, default_table, hold
from core.table_file import read_table

FORMAT: Final = "crossgrain-lay"
VERSION: Final = 1
MOST_CLOTHS: Final = 20
MOST_STAGES: Final = 20
_PRICE = re.compile(r"\d{1,6}(?:[.,]\d{1,2})?", re.ASCII)
_PERCENT = re.compile(r"(\d{1,2}(?:[.,]\d+)?)\s*%", re.ASCII)


def read_problem(path: Path) -> LayProblem:
    """The lay problem in a file; raises `Refusal` naming the field, or `OSError`."""
    return problem_from_text(text_of(path))


def problem_from_text(text: str) -> LayProblem:
    """The lay problem that a JSON text holds; raises `Refusal` naming the first fault."""
    top = Fields(json_object(text, FORMAT, VERSION), "")
    top.raw("format"), top.raw("version")
    units = top.units = top.choice("units", Units, Units.INCHES.value)
    problem = LayProblem(
        top.each("cloths", lambda data, at: _cloth(Fields(data, at, units)), most=MOST_PIECES),
        top.each("pieces", lambda data, at: _piece(Fields(data, at, units)), most=MOST_PIECES),
        top.each("runs", lambda data, at: _run(Fields(data, at, units)), most=MOST_PIECES),
        top.each("pins", lambda data, at: _pin(Fields(data, at, units)), most=MOST_PIECES),
        top.each("flaws", lambda data, at: _flaw(Fields(data, at, units)), most=MOST_FLAWS),
        top.each("motifs", lambda data, at: _motif(Fields(data, at, units)), most=MOST_FLAWS),
        top.count("stages", most=MOST_STAGES) if top.has("stages") else None,
        _table(top),
    )
    top.done()
    require_layable(problem)
    return problem


def _cloth(fields: Fields) -> Cloth:
    cloth = Cloth(
        name=fields.text("name"),
        usable_width=fields.length("usable_width"),
        sale_unit=fields.length("sale_unit"),
        straightening=fields.length("straightening", "0", zero=True),
        shrinkage_along=_share(fields, "shrinkage_along"),
        on_hand=fields.each(
            "on_hand", lambda data, at: _on_hand(Fields(data, at, fields.units)), most=MOST_PIECES
        ),
        buy_more=fields.flag("buy_more", default=True),
        price=_price(fields),
    )
    fields.done()
    return cloth


def _price(fields: Fields) -> Fraction | None:
    """The price of a yard, in whatever currency; None if the key is absent or null."""
    text = fields.raw("price_per_yard", None)
    if text is None:
        return None
    if not isinstance(text, str) or _PRICE.fullmatch(text.strip()) is None:
        raise Refusal(fields.at("price_per_yard"), told('write the price as text, such as "12.50"'))
    return Fraction(text.strip().replace(",", "."))


def _share(fields: Fields, key: str) -> Fraction:
    """A share such as "3%"; none if the key is absent."""
    text = fields.raw(key, "0%")
    found = _PERCENT.fullmatch(text.strip()) if isinstance(text, str) else None
    if found is None:
        raise Refusal(fields.at(key), told('write a share of 0 % to 99 % as text, such as "3%"'))
    return Fraction(found[1].replace(",", ".")) / 100


def _on_hand(fields: Fields) -> OnHand:
    hand = OnHand(
        fields.length("across"),
        fields.length("along"),
        fields.count("count", 1, most=MOST_PIECES),
    )
    fields.done()
    return hand


def _piece(fields: Fields) -> Piece:
    piece = Piece(
        name=fields.text("name"),
        cloth=fields.text("cloth"),
        across=fields.length("across"),
        along=fields.length("along"),
        count=fields.count("count", 1, most=MOST_PIECES),
        may_turn=fields.flag("may_turn", default=False),
    )
    fields.done()
    return piece


def _run(fields: Fields) -> Run:
    cloths = _names(fields, "cloths")
    run = Run(
        name=fields.text("name"),
        cloth=fields.text("cloth", cloths[0]) if cloths else fields.text("cloth"),
        strip=fields.length("strip"),
        needs=fields.length("needs"),
        join_loss=fields.length("join_loss", zero=True),
        shortest=fields.length("shortest", zero=True),
        grain=fields.choice("grain", Grain, Grain.CROSSWISE.value),
        count=fields.count("count", 1, most=MOST_PIECES),
        cloths=cloths,
    )
    fields.done()
    return run


def _names(fields: Fields, key: str) -> tuple[str, ...]:
    """A list of names; none if the key is absent."""

    def name(data: object, at: str) -> str:
        if not isinstance(data, str):
            raise Refusal(at, told('write a name in quotes, such as "plum"'))
        return data

    return fields.each(key, name, most=MOST_CLOTHS)


def _pin(fields: Fields) -> Pin:
    pin = Pin(
        name=fields.text("name"),
        x=fields.length("x", zero=True),
        y=fields.length("y", zero=True),
        sheet=read_sheet(fields),
        turned=fields.flag("turned", default=False),
        copy=fields.count("copy", most=MOST_PIECES) if fields.has("copy") else None,
        length=fields.length("length") if fields.has("length") else None,
        run_copy=fields.count("run_copy", 1, most=MOST_PIECES),
        cloth=fields.text("cloth") if fields.has("cloth") else None,
    )
    fields.done()
    return pin


def _flaw(fields: Fields) -> Flaw:
    flaw = Flaw(fields.text("cloth"), read_region(fields), read_sheet(fields))
    fields.done()
    return flaw


def _motif(fields: Fields) -> Motif:
    motif = Motif(fields.text("name"), read_region(fields), read_sheet(fields))
    fields.done()
    return motif


def _table(top: Fields) -> Table:
    if not top.has("table"):
        return default_table(top.units)
    return read_table(Fields(top.raw("table"), "table", top.units))


def lay_document(lay: Lay, table: Table) -> dict[str, Any]:
    """The lay as a JSON object, its cuts made on `table`."""
    return {
        "cloths": [cloth_document(cloth, table) for cloth in lay.cloths],
        "unplaced": [{"name": gone.name, "count": gone.count} for gone in lay.unplaced],
    }


def cloth_document(cloth: ClothLay, table: Table) -> dict[str, Any]:
    """One cloth's lay as a JSON object, its cuts made on `table`."""
    return {
        "name": cloth.name,
        "bought_along": str(cloth.bought_along),
        "used_along": str(cloth.used_along),
        "bound_along": str(cloth.bound_along),
        "proved_least": cloth.proved_least,
        "placements": [_placement(placed) for placed in cloth.placements],
        "offcuts": [_offcut(offcut) for offcut in cloth.offcuts],
        "cuts": [_cut(cut, table) for cut in cloth.cuts],
    }


def _placement(placed: Placement) -> dict[str, Any]:
    document = {"name": placed.name, "copy": placed.copy, **sheet_document(placed.sheet)}
    document |= {**rect_document(placed.rect), "turned": placed.turned}
    return document if placed.run_copy is None else {**document, "run_copy": placed.run_copy}


def _offcut(offcut: Offcut) -> dict[str, Any]:
    return {**sheet_document(offcut.sheet), **rect_document(offcut.rect)}


def _cut(cut: Cut, table: Table) -> dict[str, Any]:
    held = hold(table, cut.length, crosswise=cut.direction is Direction.CROSSWISE)
    return {
        **sheet_document(cut.sheet),
        "direction": cut.direction.value,
        "at": str(cut.at),
        "measure": str(cut.measure),
        "length": str(cut.length),
        "folds": held.folds,
        "ruler_moves": held.moves,
        "region": rect_document(cut.region),
    }
