"""Where the binding starts, in words, and by how much a hand moves it."""

from __future__ import annotations

from fractions import Fraction

from core.edge.edge_map import Landing
from core.edge.outline import Outline
from core.finish.sewn import Sewn
from core.language import told
from core.lengths import INCHES_PER_MM, Inches, Units, show
from core.shape import told_facing


def start_steps(units: Units) -> tuple[Inches, Inches]:
    """A small and a large step along the edge, in marks of the person's ruler."""
    if units is Units.INCHES:
        return Fraction(1, 4), Fraction(1)
    return 5 * INCHES_PER_MM, 20 * INCHES_PER_MM


def start_words(sewn: Sewn, outline: Outline, units: Units) -> str:
    """Where the ends meet, and what comes nearest to a corner."""
    made = sewn.edge_map
    said = told(
        "The ends meet on the {side} side{past}.",
        side=told_facing(made.closing.facing),
        past=past_words(made.closing, outline, units),
    )
    return said if made.least is None else f"{said} {_nearest(sewn, made.least, units)}"


def _nearest(sewn: Sewn, least: Inches, units: Units) -> str:
    made = sewn.edge_map
    names = [(told("the closing"), made.closing)]
    names += [
        (told("join {number}", number=number), join)
        for number, join in enumerate(made.joins, start=1)
    ]
    nearest = next(name for name, landing in names if landing.to_corner == least)
    near = show(least, units)
    if not sewn.short:
        return told("Nearest to a corner is {nearest}: {near}.", nearest=nearest, near=near)
    said = told(
        "Nearest to a corner is {nearest}: {near}, where {wished} were wished.",
        nearest=nearest,
        near=near,
        wished=show(sewn.wished, units),
    )
    return f"{said} {_better(sewn, units)}"


def past_words(closing: Landing, outline: Outline, units: Units) -> str:
    """How far past the corner before it the ends meet; nothing on an outline without corners."""
    if not outline.bends:
        return ""
    past = show(min((closing.place - bend) % outline.ring for bend in outline.bends), units)
    if outline.corners:
        return told(", {past} past the corner before it", past=past)
    return told(", {past} past the middle of the rounded corner before it", past=past)


def _better(sewn: Sewn, units: Units) -> str:
    if sewn.elsewhere is None or sewn.elsewhere.least is None:
        return told("No other start does better.")
    return told("The best start keeps all {least} away.", least=show(sewn.elsewhere.least, units))
