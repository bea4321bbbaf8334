"""Styles: what each role of a drawing looks like, on a screen or on paper.

A drawing carries roles ("binding"), never colours; a painter asks a `Theme` for
the role's `Style`. Fills are light on paper and on the light screen, so that
words on them read easily; a part is told by its hatch as well as by its colour,
so that a black-and-white print or a colour-blind eye loses nothing. `PAPER_GREY`
has only greys.

Colours are "#rrggbb", line widths are points on paper and 1/96 in on screen,
dashes are lengths on and off in line widths. Hatches are ids of `app.hatch`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Style:
    """One role's look: its fill, outline (also of its lines), words and hatch ("" for none).

    `strength` is how much of the outline's colour a hatch has on a screen; the rest is the fill's.
    """

    fill: str
    outline: str
    hatch: str = ""
    ink: str = "#1c1c1c"
    width: float = 0.7
    dash: tuple[float, ...] = ()
    strength: float = 0.42


@dataclass(frozen=True, slots=True)
class Theme:
    """A style for every role, and the table that the cloth lies on.

    `ink` is for words on the table, `chosen` for the ring round a chosen piece; `words`
    is how many times their usual size words have on a screen; `real_cloth` tells whether
    cloth may be shown in its own colours: on paper they would eat ink, in high contrast words.
    """

    table: str
    ink: str
    chosen: str
    styles: Mapping[str, Style]
    words: float = 1.0
    real_cloth: bool = False

    def __getitem__(self, role: str) -> Style:
        return self.styles[role]


# One hatch a part, the same in every theme, so that a person learns it once.
HATCHES: Mapping[str, str] = MappingProxyType(
    {
        "selvage": "level",
        "straightening": "zigzag",
        "flaw": "lattice",
        "border": "rising",
        "border corner": "crossed",
        "backing": "dashes",
        "batting": "dots",
        "binding": "falling",
        "accent": "upright",
        "sleeve": "grid",
        "label": "stitches",
        "step now": "rising",
    }
)
_LOOKS: Mapping[str, tuple[float, tuple[float, ...]]] = MappingProxyType(
    {
        "offcut": (0.7, (4.0, 3.0)),
        "flaw": (1.2, ()),
        "motif": (1.6, (1.0, 1.6)),
        "pin": (1.6, ()),
        "seam": (0.7, (3.0, 2.0)),
        "edge": (1.2, ()),
        "ruler": (0.5, ()),
        "grain": (0.9, ()),
        "join": (1.4, ()),
        "start": (2.0, ()),
        "cut": (1.6, ()),
        "next cut": (5.0, ()),
    }
)


def _styles(ink: str, colours: Mapping[str, tuple[str, str]]) -> Mapping[str, Style]:
    """Styles from (fill, outline) of each role, all with the same ink."""
    styles = {}
    for role, (fill, outline) in colours.items():
        style = Style(fill, outline, HATCHES.get(role, ""), ink)
        width, dash = _LOOKS.get(role, (style.width, style.dash))
        styles[role] = replace(style, width=width, dash=dash)
    return MappingProxyType(styles)


PAPER_COLOUR = Theme(
    table="#ffffff",
    ink="#1a1a1a",
    chosen="#1a4f8a",
    styles=_styles(
        "#1a1a1a",
        {
            "cloth": ("#fbfaf7", "#4d4a45"),
            "selvage": ("#ebe8e2", "#79746b"),
            "straightening": ("#f1eee8", "#79746b"),
            "offcut": ("#ffffff", "#6d6960"),
            "flaw": ("#f7d9d4", "#9c2f1d"),
            "motif": ("#ffffff", "#6a2a8c"),
            "pin": ("#ffffff", "#1a1a1a"),
            "top": ("#f4efe4", "#6b6250"),
            "border": ("#f9dfbd", "#8a5410"),
            "border corner": ("#efd3e2", "#8b3767"),
            "backing": ("#d5e6f4", "#2b5f8c"),
            "batting": ("#e9e6e0", "#68635a"),
            "binding": ("#cbe8dc", "#176450"),
            "accent": ("#f6d5cc", "#8f3a20"),
            "sleeve": ("#f1eeb9", "#6b6410"),
            "label": ("#e3d9f0", "#5b3f86"),
            "seam": ("#ffffff", "#4a4a4a"),
            "edge": ("#ffffff", "#1a1a1a"),
            "ruler": ("#ffffff", "#4a4a4a"),
            "grain": ("#ffffff", "#5a5a5a"),
            "join": ("#ffffff", "#8b1a1a"),
            "start": ("#d9e6f5", "#1a4f8a"),
            "cut": ("#ffffff", "#1a1a1a"),
            "next cut": ("#ffffff", "#b3261e"),
            "note": ("#ffffff", "#1a1a1a"),
            "step": ("#e6ecf2", "#3d4b59"),
            "step now": ("#cfe0f2", "#1a4f8a"),
        },
    ),
)

PAPER_GREY = Theme(
    table="#ffffff",
    ink="#000000",
    chosen="#000000",
    styles=_styles(
        "#000000",
        {
            "cloth": ("#ffffff", "#333333"),
            "selvage": ("#ececec", "#666666"),
            "straightening": ("#f4f4f4", "#666666"),
            "offcut": ("#ffffff", "#666666"),
            "flaw": ("#ffffff", "#222222"),
            "motif": ("#ffffff", "#000000"),
            "pin": ("#ffffff", "#000000"),
            "top": ("#ffffff", "#444444"),
            "border": ("#f2f2f2", "#4a4a4a"),
            "border corner": ("#e6e6e6", "#3a3a3a"),
            "backing": ("#fafafa", "#555555"),
            "batting": ("#eeeeee", "#606060"),
            "binding": ("#dcdcdc", "#303030"),
            "accent": ("#f0f0f0", "#404040"),
            "sleeve": ("#f6f6f6", "#505050"),
            "label": ("#fafafa", "#404040"),
            "seam": ("#ffffff", "#333333"),
            "edge": ("#ffffff", "#000000"),
            "ruler": ("#ffffff", "#333333"),
            "grain": ("#ffffff", "#444444"),
            "join": ("#ffffff", "#000000"),
            "start": ("#ffffff", "#000000"),
            "cut": ("#ffffff", "#000000"),
            "next cut": ("#ffffff", "#000000"),
            "note": ("#ffffff", "#000000"),
            "step": ("#f4f4f4", "#333333"),
            "step now": ("#dcdcdc", "#000000"),
        },
    ),
)

PICTURE = replace(PAPER_COLOUR, real_cloth=True)
SCREEN_LIGHT = replace(PICTURE, table="#e7e9eb", ink="#24282c", chosen="#0b57a4")

SCREEN_DARK = Theme(
    real_cloth=True,
    table="#1b1f23",
    ink="#dfe3e6",
    chosen="#8ec7ff",
    styles=_styles(
        "#f3f3f1",
        {
            "cloth": ("#30363c", "#a9b0b6"),
            "selvage": ("#262b30", "#8d949a"),
            "straightening": ("#292e33", "#8d949a"),
            "offcut": ("#363d43", "#9aa1a7"),
            "flaw": ("#54251f", "#ff9d8a"),
            "motif": ("#30363c", "#d9b2ff"),
            "pin": ("#30363c", "#ffffff"),
            "top": ("#403d36", "#b3a98f"),
            "border": ("#574021", "#e0a659"),
            "border corner": ("#522f45", "#dc93ba"),
            "backing": ("#28455e", "#86b8e2"),
            "batting": ("#45433f", "#b4afa5"),
            "binding": ("#1f4c40", "#6fcdb0"),
            "accent": ("#5c2f22", "#eb9d84"),
            "sleeve": ("#4b4920", "#cfc95f"),
            "label": ("#3d3154", "#b79be0"),
            "seam": ("#30363c", "#c5cace"),
            "edge": ("#30363c", "#eef0f1"),
            "ruler": ("#1b1f23", "#aab1b7"),
            "grain": ("#30363c", "#bcc2c7"),
            "join": ("#30363c", "#ff9d8f"),
            "start": ("#1c3a55", "#8ec7ff"),
            "cut": ("#30363c", "#ffffff"),
            "next cut": ("#30363c", "#ff9d8f"),
            "note": ("#1b1f23", "#dfe3e6"),
            "step": ("#2b3641", "#93a6b8"),
            "step now": ("#244a70", "#8ec7ff"),
        },
    ),
)
