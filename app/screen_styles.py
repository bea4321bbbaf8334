"""Looks for the screen that some eyes need: colours that stay apart for every eye, high contrast.

Both keep the directions of the usual hatches, so that a part is known again, and
draw them stronger and more apart: the hatch tells a part even where no colour does.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from app.style import SCREEN_DARK, SCREEN_LIGHT, Style, Theme

STRONG = 0.75  # of the outline's colour in a hatch that has to tell a part by itself
HEAVY = 2.0  # times: the lines of high contrast

HATCHES: Mapping[str, str] = MappingProxyType(
    {
        "border": "wide rising",
        "binding": "close falling",
        "accent": "close upright",
    }
)

# Searched for by small steps at random, so that any two fills stand apart for usual sight and
# for each of three kinds of colour-blindness; the test has the measure and its source.
_SAFE_LIGHT = {
    "border": ("#f7c172", "#7a4a00"),
    "border corner": ("#e1bbd2", "#6b1f4c"),
    "backing": ("#94c9f3", "#0a4a80"),
    "batting": ("#d093c7", "#4a1048"),
    "binding": ("#86ecc0", "#00503a"),
    "accent": ("#f0a090", "#6e1408"),
    "sleeve": ("#f4ec6f", "#5e5600"),
    "label": ("#c0a2ff", "#3a0a80"),
}
_SAFE_DARK = {
    "border": ("#5a441a", "#ffc25e"),
    "border corner": ("#3a1b3f", "#f3a6dc"),
    "backing": ("#28455e", "#9ed0ff"),
    "batting": ("#4c4740", "#d8d0c2"),
    "binding": ("#1a266a", "#a9bbff"),
    "accent": ("#5a2d22", "#ffab92"),
    "sleeve": ("#495d06", "#e2f07a"),
    "label": ("#2d154c", "#cdb0ff"),
}


def _styled(usual: Theme, ink: str, colours: Mapping[str, tuple[str, str]]) -> dict[str, Style]:
    """The styles of `usual` with these (fill, outline), hatches that tell the parts, and an ink."""
    return {
        role: replace(
            style,
            fill=colours.get(role, (style.fill, ""))[0],
            outline=colours.get(role, ("", style.outline))[1],
            hatch=HATCHES.get(role, style.hatch),
            ink=ink,
            strength=STRONG,
        )
        for role, style in usual.styles.items()
    }


def _safe(usual: Theme, ink: str, colours: Mapping[str, tuple[str, str]]) -> Theme:
    return replace(usual, styles=MappingProxyType(_styled(usual, ink, colours)))


def _contrast(ground: str, ink: str, accent: str) -> Theme:
    """Ink on ground and one accent, every line heavy."""
    colours = {role: (ground, accent if role in _ACCENTED else ink) for role in SCREEN_LIGHT.styles}
    styles = {
        role: replace(style, width=style.width * HEAVY)
        for role, style in _styled(SCREEN_LIGHT, ink, colours).items()
    }
    return Theme(table=ground, ink=ink, chosen=accent, styles=MappingProxyType(styles))


_ACCENTED = ("join", "start", "cut", "next cut", "step now", "flaw", "motif", "pin")

SAFE_LIGHT = _safe(SCREEN_LIGHT, "#000000", _SAFE_LIGHT)
SAFE_DARK = _safe(SCREEN_DARK, "#ffffff", _SAFE_DARK)
CONTRAST_DARK = _contrast("#000000", "#ffffff", "#ffe100")
CONTRAST_LIGHT = _contrast("#ffffff", "#000000", "#0000c8")


def screen_theme(*, dark: bool, contrast: bool, safe: bool) -> Theme:
    """The theme for a screen; high contrast has no colours that a set could change."""
    if contrast:
        return CONTRAST_DARK if dark else CONTRAST_LIGHT
    if safe:
        return SAFE_DARK if dark else SAFE_LIGHT
    return SCREEN_DARK if dark else SCREEN_LIGHT
