"""Pens and colours of Qt, by name; making one takes longer than painting with it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPen

from app.colour import mixed
from app.style import Style


@cache
def hatch_colour(style: Style) -> str:
    """Between outline and fill. Mixed here: lines that let through are four times as slow."""
    return mixed(style.outline, style.fill, style.strength)


@cache
def colour(name: str) -> QColor:
    """A colour by its name; reading one takes longer than painting with it."""
    return QColor(name)


def pen(name: str, width: float, dash: Sequence[float] = ()) -> QPen:
    """A pen of a width on screen, whatever the zoom; Qt fades lines that are under a pixel."""
    made = QPen(colour(name), max(width, 1.0))
    made.setCosmetic(True)
    made.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if dash:
        made.setDashPattern(list(dash))
    return made
