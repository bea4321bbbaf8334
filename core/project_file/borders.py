"""A border in the project file: its keys, read and written."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any, Final

from core.fabric import Grain
from core.figures import figure
from core.language import told
from core.lengths import Inches, Units, exact_text
from core.quilt import Border, Corners, First, Joins, Piecing, Sizing
from core.reading import Fields
from core.refusal import Refusal

DEFAULT_MITRE_MARGIN: Final = Fraction(4)  # published margins run from 0 to 6
# Our default, no source: a joined strip's ends are rarely square.
SQUARING: Final = Fraction(1, 2)
SQUARING_MM: Final = Fraction(10)
FABRIC_KEYS: Final = (
    "corner_fabric", "left_fabric", "top_fabric", "right_fabric", "bottom_fabric",
)  # fmt: skip
LENGTHS_OR_NONE: Final = ("to_width", "to_length", "block", "off_middle", "shortest")


def read_border(fields: Fields) -> Border:
    """One border; raises `Refusal` naming the first fault."""
    width = fields.length("width")
    border = Border(
        fabric=fields.text("fabric"),
        width=width,
        corners=fields.choice("corners", Corners),
        grain=_straight_grain(fields),
        joins=fields.choice("joins", Joins),
        seam=fields.length("seam"),
        mitre_margin=fields.length("mitre_margin", DEFAULT_MITRE_MARGIN, zero=True),
        first=fields.choice("first", First, "sides"),
        piecing=fields.choice("piecing", Piecing, "end_to_end"),
        squaring=fields.length("squaring", figure(width, SQUARING, SQUARING_MM), zero=True),
        sizing=fields.choice("sizing", Sizing, "width"),
        **{key: _length_or_none(fields, key) for key in LENGTHS_OR_NONE},
        **{key: _text_or_none(fields, key) for key in FABRIC_KEYS},
    )
    fields.done()
    return border


def _length_or_none(fields: Fields, key: str) -> Any:  # noqa: ANN401 - mypy cannot see the key
    return fields.length(key) if fields.has(key) else None


def _text_or_none(fields: Fields, key: str) -> Any:  # noqa: ANN401 - mypy cannot see the key
    return fields.text(key) if fields.has(key) else None


def _straight_grain(fields: Fields) -> Grain:
    grain = fields.choice("grain", Grain)
    if grain is Grain.BIAS:
        raise Refusal(
            fields.at("grain"),
            told("a border is not cut on the bias; write crosswise, lengthwise or either"),
        )
    return grain


def border_fabrics(path: str, border: Border) -> Iterator[tuple[str, str]]:
    """Where a border names a fabric: (path, name)."""
    yield f"{path}.fabric", border.fabric
    for key in FABRIC_KEYS:
        if (name := getattr(border, key)) is not None:
            yield f"{path}.{key}", name


def border_document(border: Border, units: Units) -> dict[str, Any]:
    """A border as the file has it."""

    def maybe(length: Inches | None) -> str | None:
        return None if length is None else exact_text(length, units)

    return {
        "fabric": border.fabric,
        "width": exact_text(border.width, units),
        "corners": border.corners.value,
        "corner_fabric": border.corner_fabric,
        "first": border.first.value,
        "grain": border.grain.value,
        "joins": border.joins.value,
        "piecing": border.piecing.value,
        "seam": exact_text(border.seam, units),
        "mitre_margin": exact_text(border.mitre_margin, units),
        "squaring": exact_text(border.squaring, units),
        "sizing": border.sizing.value,
        **{key: maybe(getattr(border, key)) for key in LENGTHS_OR_NONE},
        "left_fabric": border.left_fabric,
        "top_fabric": border.top_fabric,
        "right_fabric": border.right_fabric,
        "bottom_fabric": border.bottom_fabric,
    }
