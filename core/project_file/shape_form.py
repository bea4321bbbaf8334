"""The outline in the file: its kind, and the fields of every kind, so that none is lost."""

from __future__ import annotations

from typing import Any

from core.figures import figure
from core.language import told
from core.lengths import Inches, Units, exact_text
from core.reading import Fields
from core.refusal import Refusal
from core.shape import Facing, Shape, ShapeKind, Spot, Upright

MOST_POINTS = 60
MOST_SCALLOPS = 60
_PLAIN = Shape()


def read_shape(fields: Fields) -> Shape:
    """The outline that a file describes; what it leaves out is as `Shape` has it, metric or not."""
    metric = fields.units is not Units.INCHES

    def usual(inches: Inches, millimetres: int) -> Inches:
        return figure(Inches(1, 3) if metric else Inches(1), inches, Inches(millimetres))

    shape = Shape(
        kind=fields.choice("kind", ShapeKind),
        radius=fields.length("radius", usual(_PLAIN.radius, 100)),
        clip=fields.length("clip", usual(_PLAIN.clip, 100)),
        upright=fields.choice("upright", Upright, _PLAIN.upright.value),
        scallops_across=fields.count("scallops_across", _PLAIN.scallops_across, most=MOST_SCALLOPS),
        scallops_along=fields.count("scallops_along", _PLAIN.scallops_along, most=MOST_SCALLOPS),
        depth=fields.length("depth", usual(_PLAIN.depth, 50)),
        **{f"scallops_{side}": _count(fields, f"scallops_{side}") for side in Facing},
        **{f"depth_{side}": _length(fields, f"depth_{side}") for side in Facing},
        points=fields.each(
            "points", lambda data, path: _spot(data, path, fields.units), most=MOST_POINTS
        ),
    )
    fields.done()
    return shape


def _count(fields: Fields, key: str) -> Any:  # noqa: ANN401 - mypy cannot see the key
    return fields.count(key, most=MOST_SCALLOPS) if fields.has(key) else None


def _length(fields: Fields, key: str) -> Any:  # noqa: ANN401 - mypy cannot see the key
    return fields.length(key) if fields.has(key) else None


def _spot(data: object, path: str, units: Units) -> Spot:
    """A corner as a list of two lengths: to the right, and down."""
    if not isinstance(data, list) or len(data) != 2:
        raise Refusal(
            path, told("write a corner as two lengths, to the right and down, such as 12 × 0")
        )
    pair = Fields({"right": data[0], "down": data[1]}, path, units)
    return pair.length("right", zero=True), pair.length("down", zero=True)


def shape_document(shape: Shape, units: Units) -> dict[str, Any]:
    """The outline as the JSON object of its file."""

    def text(length: Inches | None) -> str | None:
        return None if length is None else exact_text(length, units)

    return {
        "kind": shape.kind.value,
        "radius": text(shape.radius),
        "clip": text(shape.clip),
        "upright": shape.upright.value,
        "scallops_across": shape.scallops_across,
        "scallops_along": shape.scallops_along,
        "depth": text(shape.depth),
        **{f"scallops_{side}": getattr(shape, f"scallops_{side}") for side in Facing},
        **{f"depth_{side}": text(getattr(shape, f"depth_{side}")) for side in Facing},
        "points": [[text(right), text(down)] for right, down in shape.points],
    }
