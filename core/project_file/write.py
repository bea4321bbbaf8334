"""Writing: a `Project` to the JSON of its file, lengths as exact text."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from core.fabric import Fabric
from core.lengths import Inches, Units, exact_text
from core.project_file.binding import write_binding
from core.project_file.borders import border_document
from core.project_file.hand_form import by_hand_documents
from core.project_file.layers import layer_documents
from core.project_file.measured_form import measure_documents
from core.project_file.real_cloth import write_real
from core.project_file.sale_units import sale_unit_text
from core.project_file.shape_form import shape_document
from core.quilt import Project

FORMAT = "crossgrain-project"
VERSION = 1
MEASURES = ("measured", "squaring", "take_up")
PARTS = ("backing", "batting", "binding", "sleeve", "label", "table", "outline", *MEASURES)


def to_document(project: Project) -> dict[str, Any]:
    """The project as the JSON object of its file, lengths as exact text."""

    def text(length: Inches) -> str:
        return exact_text(length, project.units)

    quilt = project.quilt
    document: dict[str, Any] = {
        "format": FORMAT,
        "version": VERSION,
        "units": project.units.value,
        "quilt": {
            "name": quilt.name,
            "width": text(quilt.width),
            "length": text(quilt.length),
            "edge_thickness": text(quilt.edge_thickness),
            "copies": quilt.copies,
            "kits": quilt.kits.value,
        },
        "fabrics": [_fabric_document(fabric, project.units) for fabric in project.fabrics],
        "borders": [border_document(border, project.units) for border in project.borders],
    }
    parts = layer_documents(project)
    if (binding := project.binding) is not None:
        parts["binding"] = write_binding(binding, project.units)
    if (table := project.table) is not None:
        parts["table"] = {"ruler": text(table.ruler), "folds": table.folds}
    parts |= measure_documents(project)
    if project.outline is not None:
        parts["outline"] = shape_document(project.outline, project.units)
    return document | {key: parts[key] for key in PARTS if key in parts}


def _fabric_document(fabric: Fabric, units: Units) -> dict[str, Any]:
    return {
        "name": fabric.name,
        "width": exact_text(fabric.width, units),
        "selvage": exact_text(fabric.selvage, units),
        "sale_unit": sale_unit_text(fabric.sale_unit, units),
        "price_per_yard": _price(fabric.price_per_yard),
        "price_per_metre": _price(fabric.price_per_metre),
        "one_way_print": fabric.one_way_print,
        "repeat": None if fabric.repeat is None else exact_text(fabric.repeat, units),
        "shrinkage": {
            "across": f"{_decimal(fabric.shrinkage_across * 100, places=0)}%",
            "along": f"{_decimal(fabric.shrinkage_along * 100, places=0)}%",
        },
        "straightening": exact_text(fabric.straightening, units),
        "on_hand": [
            {
                "across": exact_text(piece.across, units),
                "along": exact_text(piece.along, units),
                "count": piece.count,
            }
            for piece in fabric.on_hand
        ],
        "buy_more": fabric.buy_more,
        **by_hand_documents(fabric, units),
        **write_real(fabric.real, units),
    }


def _price(price: Fraction | None) -> str | None:
    return None if price is None else _decimal(price)


def _decimal(number: Fraction, places: int = 2) -> str:
    """A decimal that reads back exactly, with at least `places` after the point."""
    digits = next(d for d in range(places, 12) if (number * 10**d).denominator == 1)
    return f"{number.numerator * 10**digits // number.denominator / 10**digits:.{digits}f}"
