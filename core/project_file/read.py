"""Reading: the JSON of a project file to a `Project`, each value checked once."""

from __future__ import annotations

import re
from collections import Counter
from fractions import Fraction
from typing import Any

from core.fabric import Fabric, OnHand
from core.language import told
from core.lengths import Units
from core.project_file.binding import named_fabrics, read_binding
from core.project_file.borders import border_fabrics, read_border
from core.project_file.hand_form import read_by_hand
from core.project_file.layers import (
    backing_fabrics,
    hung_fabrics,
    read_backing,
    read_batting,
    read_label,
    read_sleeve,
)
from core.project_file.measured_form import read_measured, read_squaring, read_take_up
from core.project_file.real_cloth import read_real
from core.project_file.shape_form import read_shape
from core.quilt import (
    Kits,
    Project,
    Quilt,
)
from core.reading import Fields, share
from core.refusal import Refusal
from core.table_file import read_table

MOST_COPIES = 100
MOST_ITEMS = 50

# A comma before three digits could be a thousand: refused, as in lengths.
_PRICE = re.compile(r"\d{1,6}(?:\.\d{1,4}|,\d{1,2})?", re.ASCII)


def from_document(document: dict[str, Any]) -> Project:
    """The project that a JSON object holds; raises `Refusal` naming the first fault."""
    top = Fields(document, "")
    top.raw("format"), top.raw("version")
    units = top.units = top.choice("units", Units)

    def part(key: str) -> Fields | None:
        return Fields(top.raw(key), key, units) if top.has(key) else None

    project = Project(
        quilt=_quilt(Fields(top.raw("quilt"), "quilt", units)),
        fabrics=top.each("fabrics", lambda d, p: _fabric(Fields(d, p, units)), most=MOST_ITEMS),
        borders=top.each("borders", lambda d, p: read_border(Fields(d, p, units)), most=MOST_ITEMS),
        backing=read_backing(fields) if (fields := part("backing")) else None,
        batting=read_batting(fields) if (fields := part("batting")) else None,
        binding=read_binding(fields) if (fields := part("binding")) else None,
        sleeve=read_sleeve(fields) if (fields := part("sleeve")) else None,
        label=read_label(fields) if (fields := part("label")) else None,
        units=units,
        table=read_table(fields) if (fields := part("table")) else None,
        outline=read_shape(fields) if (fields := part("outline")) else None,
        measured=read_measured(fields) if (fields := part("measured")) else None,
        squaring=read_squaring(fields) if (fields := part("squaring")) else None,
        take_up=read_take_up(fields) if (fields := part("take_up")) else None,
    )
    top.done()
    _refuse_unknown_fabrics(project)
    return project


def _quilt(fields: Fields) -> Quilt:
    quilt = Quilt(
        name=fields.text("name", "", empty=True),
        width=fields.length("width"),
        length=fields.length("length"),
        edge_thickness=fields.length("edge_thickness", zero=True),
        copies=fields.count("copies", 1, most=MOST_COPIES),
        kits=fields.choice("kits", Kits, "together"),
    )
    fields.done()
    return quilt


def _fabric(fields: Fields) -> Fabric:
    across, along = _shrinkage(fields)
    fabric = Fabric(
        name=fields.text("name"),
        width=fields.length("width"),
        selvage=fields.length("selvage", zero=True),
        sale_unit=fields.length("sale_unit"),
        price_per_yard=_price(fields, "price_per_yard"),
        price_per_metre=_price(fields, "price_per_metre"),
        one_way_print=fields.flag("one_way_print", default=False),
        repeat=fields.length("repeat") if fields.has("repeat") else None,
        shrinkage_across=across,
        shrinkage_along=along,
        straightening=fields.length("straightening", zero=True),
        on_hand=fields.each(
            "on_hand", lambda d, p: _on_hand(Fields(d, p, fields.units)), most=MOST_ITEMS
        ),
        buy_more=fields.flag("buy_more", default=True),
        **read_by_hand(fields),
        real=read_real(fields),
    )
    fields.done()
    if fabric.price_per_yard is not None and fabric.price_per_metre is not None:
        raise Refusal(
            fields.at("price_per_metre"),
            told("this fabric has a price per yard too; keep one of the two and clear the other"),
        )
    if fabric.cutting_width <= 0:
        raise Refusal(
            fields.at("selvage"),
            told("the selvages and shrinkage use up the width; write smaller ones"),
        )
    return fabric


def _shrinkage(fields: Fields) -> tuple[Fraction, Fraction]:
    if not fields.has("shrinkage"):
        return Fraction(0), Fraction(0)
    inner = Fields(fields.raw("shrinkage"), fields.at("shrinkage"))
    shares = share(inner, "across"), share(inner, "along")
    inner.done()
    return shares


def _price(fields: Fields, key: str) -> Fraction | None:
    if not fields.has(key):
        return None
    text = fields.raw(key)
    if not isinstance(text, str):
        raise Refusal(fields.at(key), told('write the price as text, such as "12.50", or null'))
    if not _PRICE.fullmatch(text.strip()):
        raise Refusal(fields.at(key), told('write a price such as "12.50"'))
    return Fraction(text.strip().replace(",", "."))


def _on_hand(fields: Fields) -> OnHand:
    piece = OnHand(
        fields.length("across"), fields.length("along"), fields.count("count", 1, most=MOST_COPIES)
    )
    fields.done()
    return piece


def fabric_names(project: Project) -> tuple[tuple[str, str], ...]:
    """Where the project names a fabric: (path, name), in the file's order."""
    named: list[tuple[str, str]] = []
    for i, border in enumerate(project.borders):
        named += border_fabrics(f"borders[{i}]", border)
    named += backing_fabrics(project)
    if project.binding is not None:
        named += [(path, name) for path, name in named_fabrics(project.binding) if name is not None]
    named += hung_fabrics(project)
    return tuple(named)


def _refuse_unknown_fabrics(project: Project) -> None:
    names = [fabric.name for fabric in project.fabrics]
    for name, uses in Counter(names).items():
        if uses > 1:
            again = len(names) - 1 - names[::-1].index(name)
            raise Refusal(
                f"fabrics[{again}].name",
                told('"{name}" is there already; write another name', name=name),
            )
    for path, name in fabric_names(project):
        if name not in names:
            raise Refusal(
                path,
                told('no fabric is called "{name}"; add it or write one of the fabrics', name=name),
            )
