"""Where the binding starts, in words, and by how much a hand moves it."""

from __future__ import annotations

from fractions import Fraction

from core.edge.edge_map import Landing
from core.edge.outline import Outline
from core.finish.sewn import Sewn
from core.lengths import INCHES_PER_MM, Inches, Units, show


def start_steps(units: Units) -> tuple[Inches, Inches]:
    """A small and a large step along the edge, in marks of the person's ruler."""
    if units is Units.INCHES:
        return Fraction(1, 4), Fraction(1)
    return 5 * INCHES_PER_MM, 20 * INCHES_PER_MM


def start_words(sewn: Sewn, outline: Outline, units: Units) -> str:
    """Where the ends meet, and what comes nearest to a corner."""
    made = sewn.edge_map
    past = past_words(made.closing, outline, units)
    said = f"The ends meet on the {made.closing.facing} side{past}."
    if made.least is None:
        return said
    names = [("the closing", made.closing)]
    names += [(f"join {number}", join) for number, join in enumerate(made.joins, start=1)]
    nearest = next(name for name, landing in names if landing.to_corner == made.least)
    said += f" Nearest to a corner is {nearest}: {show(made.least, units)}"
    if sewn.short:
        return f"{said}, where {show(sewn.wished, units)} were wished.{_better(sewn, units)}"
    return f"{said}."


def past_words(closing: Landing, outline: Outline, units: Units) -> str:
    """How far past the corner before it the ends meet; nothing on an outline without corners."""
    if not outline.bends:
        return ""
    past = min((closing.place - bend) % outline.ring for bend in outline.bends)
    before = "corner" if outline.corners else "middle of the rounded corner"
    return f", {show(past, units)} past the {before} before it"


def _better(sewn: Sewn, units: Units) -> str:
    if sewn.elsewhere is None or sewn.elsewhere.least is None:
        return " No other start does better."
    return f" The best start keeps all {show(sewn.elsewhere.least, units)} away."
