"""The outline and the edge map of a plan as JSON; sides and corners count from 1."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from core.edge.edge_map import Landing
from core.edge.outline import Corner, Outline
from core.finish.sewn import Sewn
from core.lengths import Inches
from core.plan import Plan

_THOUSANDTH = Fraction(1, 1000)


def outline_document(plan: Plan) -> dict[str, Any]:
    """The outline: its way round, its sides, its corners and how each is sewn.

    Stops before corners and angles are no fractions in general; they are
    decimals to the nearest thousandth.
    """
    outline, shape = plan.sizes.outline, plan.project.outline
    seam = None if plan.binding is None else plan.binding.widths.seam
    radius = outline.smallest_radius
    return {
        "kind": "rectangle" if shape is None else shape.kind.value,
        "perimeter": str(outline.perimeter),
        "smallest_radius": None if radius is None else str(radius),
        "sides": [
            {
                "number": number,
                "length": str(side.length if side.exact else _rounded(side.length)),
                "facing": side.facing.value,
                "radius": None if side.radius is None else str(side.radius),
            }
            for number, side in enumerate(outline.sides, start=1)
        ],
        "corners": [
            _corner(number, corner, seam) for number, corner in enumerate(outline.corners, start=1)
        ],
    }


def measured_document(plan: Plan) -> dict[str, Any]:
    """What the plan goes by, how each edge is eased, how far out of square the quilt is."""
    measured, found = plan.project.measured, plan.sizes.squareness
    return {
        "top": [str(size) for size in plan.project.top],
        "ease": {edge: str(more) for edge, more in measured.ease} if measured else None,
        "layers": [str(size) for size in plan.sizes.layers],
        "washed": [str(size) for size in plan.sizes.washed],
        "out_of_square": None
        if found is None
        else {
            "diagonals": str(found.diagonals),
            "widths": str(found.widths),
            "lengths": str(found.lengths),
            "corner_angles": [_decimal(angle) for angle in found.corners],
            "trim_to": [str(found.width), str(found.length)],
        },
    }


def _rounded(length: Inches) -> Inches:
    return round(length / _THOUSANDTH) * _THOUSANDTH


def _corner(number: int, corner: Corner, seam: Inches | None) -> dict[str, Any]:
    stop = None if seam is None else corner.stop(seam)
    return {
        "number": number,
        "place": str(_rounded(corner.place)),
        "interior_angle": _decimal(corner.angle),
        "inside": corner.inside,
        "stop_before": None if stop is None else _decimal(stop),
        "mitre_angle": None if corner.mitre is None else _decimal(corner.mitre),
    }


def _decimal(number: float) -> str:
    """To three places, without zeros that say nothing.

    >>> _decimal(45.0), _decimal(0.10355)
    ('45', '0.104')
    """
    return f"{number:.3f}".rstrip("0").rstrip(".")


def edge_map_document(sewn: Sewn, outline: Outline) -> dict[str, Any]:
    """The binding as sewn: where to start, and where everything lands."""
    made = sewn.edge_map
    return {
        "start": {**_landing(made.closing, outline), "trim_first": str(made.trim)},
        "closing": _landing(made.closing, outline),
        "order": list(made.order),
        "joins": [
            {"between": list(pair), **_landing(join, outline)}
            for pair, join in zip(
                zip(made.order, made.order[1:], strict=False), made.joins, strict=True
            )
        ],
        "least_to_corner": None if made.least is None else str(made.least),
        "wished_to_corner": str(sewn.wished),
        "proved_best": made.proved,
    }


def _landing(landing: Landing, outline: Outline) -> dict[str, Any]:
    """`along_side` is from the side's start; `place` from the upper left corner, down and round."""
    near = landing.to_corner
    return {
        "side": landing.side + 1,
        "facing": landing.facing.value,
        "along_side": str(landing.place - outline.starts[landing.side]),
        "place": str(landing.place),
        "to_corner": None if near is None else str(near),
    }
