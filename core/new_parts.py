"""What a new part starts as: the usual choices, in round figures of the project's units."""

from __future__ import annotations

from typing import Any, Final

from core.batting_packages import COMMON
from core.language import told
from core.lengths import Units, exact_text


def _round(metric: str, inches: str, units: Units) -> str:
    """The figure of the two that is round in `units`."""
    return inches if units is Units.INCHES else metric


def new_fabric(name: str, units: Units) -> dict[str, Any]:
    """A quilting cotton from the bolt, in the form of a file."""
    return {
        "name": name,
        "width": _round("110 cm", "43 in", units),
        "selvage": _round("1 cm", "1/2 in", units),
        "sale_unit": _round("10 cm", "1/8 yd", units),
        "price_per_yard": None,
        "price_per_metre": None,
        "one_way_print": False,
        "repeat": None,
        "shrinkage": {"across": "0%", "along": "0%"},
        "straightening": _round("3 cm", "1 in", units),
        "on_hand": [],
        "buy_more": True,
        "colour": None,
        "photo": None,
    }


def new_on_hand(units: Units) -> dict[str, Any]:
    """A fat quarter: 18 × 21 in, or 50 × 55 cm."""
    return {
        "across": _round("50 cm", "18 in", units),
        "along": _round("55 cm", "21 in", units),
        "count": 1,
    }


def new_flaw(units: Units) -> dict[str, Any]:
    """A small rectangle at the beginning of the bolt, to be written over."""
    side = _round("5 cm", "2 in", units)
    return {"word": told("flaw"), "on": "bolt", "x": "0", "y": "0", "across": side, "along": side}


def new_motif(units: Units) -> dict[str, Any]:
    """The same for a motif, for no piece as yet."""
    side = _round("10 cm", "4 in", units)
    return {"name": None, "on": "bolt", "x": "0", "y": "0", "across": side, "along": side}


def new_package(name: str, units: Units) -> dict[str, Any]:
    """A size that batting is packed in."""
    size = {"width": ("115 cm", "45 in"), "length": ("150 cm", "60 in")}
    return {"name": name, **{key: _round(*both, units) for key, both in size.items()}}


# Parts that are not cut from a fabric of the project.
CLOTHLESS: Final = ("batting", "outline", "measured", "squaring", "take_up", "table")


def new_part(part: str, fabric: str, units: Units) -> dict[str, Any]:
    """A border, backing, batting, binding, sleeve or label as most quilts have it."""
    lengths = {key: _round(metric, inches, units) for key, (metric, inches) in _LENGTHS[part]}
    cloth = {} if part in CLOTHLESS else {"fabric": fabric}
    packed = {"packages": _usual_packages(units)} if part == "batting" else {}
    return {**cloth, **lengths, **_CHOICES[part], **packed}


def _usual_packages(units: Units) -> list[dict[str, str]]:
    """The common sizes of batting, in the form of a file."""
    return [
        {
            "name": told(package.name),
            "width": exact_text(package.width, units),
            "length": exact_text(package.length, units),
        }
        for package in COMMON
    ]


# Metric first, then inches.
_LENGTHS: Final[dict[str, tuple[tuple[str, tuple[str, str]], ...]]] = {
    "borders": (
        ("width", ("8 cm", "3 in")),
        ("seam", ("7.5 mm", "1/4 in")),
        ("mitre_margin", ("10 cm", "4 in")),
        ("squaring", ("1 cm", "1/2 in")),
    ),
    "backing": (("overage", ("10 cm", "4 in")), ("seam", ("1.5 cm", "1/2 in"))),
    "batting": (("overage", ("10 cm", "4 in")),),
    "binding": (
        ("strip_width", ("6 cm", "2 1/2 in")),
        ("allowance", ("25 cm", "10 in")),
        ("seam", ("6 mm", "1/4 in")),
    ),
    "sleeve": (("depth", ("10 cm", "4 in")),),
    "label": (("width", ("15 cm", "6 in")), ("length", ("10 cm", "4 in"))),
    "outline": (
        ("radius", ("10 cm", "4 in")),
        ("clip", ("10 cm", "4 in")),
        ("depth", ("5 cm", "2 in")),
    ),
    "table": (("ruler", ("60 cm", "24 in")),),
}
_CHOICES: Final[dict[str, dict[str, Any]]] = {
    "borders": {
        "corners": "butted",
        "corner_fabric": None,
        "first": "sides",
        "grain": "crosswise",
        "joins": "diagonal",
        "piecing": "end_to_end",
        "sizing": "width",
    },
    "backing": {"seams": "auto"},
    "batting": {},
    "binding": {
        "fold": "double",
        "grain": "crosswise",
        "joins": "diagonal",
        "closing": "diagonal",
    },
    "sleeve": {},
    "label": {},
    "outline": {"kind": "rounded"},
    "table": {"folds": 1},
}
