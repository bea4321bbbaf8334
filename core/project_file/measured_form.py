"""The quilt's measures in the file: three places, squareness, take-up."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Any

from core.lengths import Inches, Units, exact_text
from core.measured import Measured, Squaring, TakeUp, Use
from core.quilt import Project
from core.reading import Fields, share

WIDTHS = ("width_top", "width_centre", "width_bottom")
LENGTHS = ("length_left", "length_centre", "length_right")
SIDES = ("top", "right", "bottom", "left", "down", "up")


def read_measured(fields: Fields) -> Measured:
    """Three widths and three lengths, and which of them to use."""
    widths, lengths = (
        (fields.length(one), fields.length(two), fields.length(three))
        for one, two, three in (WIDTHS, LENGTHS)
    )
    measured = Measured(widths, lengths, fields.choice("use", Use, Use.MEAN.value))
    fields.done()
    return measured


def read_squaring(fields: Fields) -> Squaring:
    """Four sides and two diagonals."""
    tolerance = fields.length("tolerance", zero=True) if fields.has("tolerance") else None
    squaring = Squaring(**{key: fields.length(key) for key in SIDES}, tolerance=tolerance)
    fields.done()
    return squaring


def read_take_up(fields: Fields) -> TakeUp:
    """The shares lost in quilting and in the wash."""
    take_up = TakeUp(share(fields, "quilting", "0%"), share(fields, "washing", "0%"))
    fields.done()
    return take_up


def measure_documents(project: Project) -> dict[str, Any]:
    """The parts that say what was measured, as the JSON objects of the file."""
    units, documents = project.units, dict[str, Any]()
    if (measured := project.measured) is not None:
        three = zip((*WIDTHS, *LENGTHS), (*measured.widths, *measured.lengths), strict=True)
        documents["measured"] = {**_texts(three, units), "use": measured.use.value}
    if (squaring := project.squaring) is not None:
        sides = ((key, getattr(squaring, key)) for key in SIDES)
        tolerance = squaring.tolerance
        documents["squaring"] = {
            **_texts(sides, units),
            "tolerance": None if tolerance is None else exact_text(tolerance, units),
        }
    if (take_up := project.take_up) is not None:
        shares = (("quilting", take_up.quilting), ("washing", take_up.washing))
        documents["take_up"] = {key: f"{_percent(lost)}%" for key, lost in shares}
    return documents


def _texts(pairs: Iterable[tuple[str, Inches]], units: Units) -> dict[str, str]:
    return {key: exact_text(length, units) for key, length in pairs}


def _percent(lost: Fraction) -> str:
    """A share in percent; files give at most two places."""
    return f"{float(lost * 100):.2f}".rstrip("0").rstrip(".")
