"""The window's own palettes, a colour for each of Qt's roles.

Words reach 4.5:1 on their ground in light and dark, 7:1 in high contrast, which
has black, white, a grey and one accent (WCAG 2.2, criteria 1.4.3 and 1.4.6; the
test works the ratios out).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from PySide6.QtGui import QColor, QPalette

Roles = QPalette.ColorRole


@dataclass(frozen=True, slots=True)
class Paint:
    """A palette's colours, and those that Qt has no role for: of what is wrong, of what to mind.

    `frame` is the colour round fields and boxes, "" where the style's own is seen well enough.
    """

    colours: Mapping[QPalette.ColorRole, str]
    problem: str
    mind: str
    frame: str = ""

    def palette(self) -> QPalette:
        """As Qt wants it; what cannot be used is fainter."""
        colours = self.colours
        palette = QPalette(QColor(colours[Roles.Button]), QColor(colours[Roles.Window]))
        for role, colour in colours.items():
            palette.setColor(role, QColor(colour))
        for role in _FAINT:
            faint = QColor(colours[Roles.PlaceholderText])
            faint.setAlphaF(FAINTER)
            palette.setColor(QPalette.ColorGroup.Disabled, role, faint)
        return palette


FAINTER = 0.7  # what cannot be used, beside what stands in a field as long as nothing does
_FAINT = (Roles.WindowText, Roles.Text, Roles.ButtonText)

LIGHT = Paint(
    {
        Roles.Window: "#f4f5f5",
        Roles.WindowText: "#1f2326",
        Roles.Base: "#ffffff",
        Roles.AlternateBase: "#eaecee",
        Roles.Text: "#1f2326",
        Roles.PlaceholderText: "#5b6268",
        Roles.Button: "#f4f5f5",
        Roles.ButtonText: "#1f2326",
        Roles.BrightText: "#a3241b",
        Roles.ToolTipBase: "#ffffff",
        Roles.ToolTipText: "#1f2326",
        Roles.Highlight: "#0b57a4",
        Roles.HighlightedText: "#ffffff",
        Roles.Link: "#0b57a4",
        Roles.LinkVisited: "#5b3a94",
    },
    problem="#a3241b",
    mind="#9a6a00",
)
DARK = Paint(
    {
        Roles.Window: "#272b2f",
        Roles.WindowText: "#e6e9eb",
        Roles.Base: "#1f2327",
        Roles.AlternateBase: "#32373c",
        Roles.Text: "#e6e9eb",
        Roles.PlaceholderText: "#a3abb2",
        Roles.Button: "#32373c",
        Roles.ButtonText: "#e6e9eb",
        Roles.BrightText: "#ff9d92",
        Roles.ToolTipBase: "#32373c",
        Roles.ToolTipText: "#e6e9eb",
        Roles.Highlight: "#2f6da8",
        Roles.HighlightedText: "#ffffff",
        Roles.Link: "#8ec7ff",
        Roles.LinkVisited: "#c3aef0",
    },
    problem="#ff9d92",
    mind="#d9a441",
    frame="#868f97",
)


def _two_tone(ground: str, ink: str, accent: str, on_accent: str, unwritten: str) -> Paint:
    """Ink on ground, and one accent for what is chosen, for links and for what to mend.

    `unwritten` is for what stands in a field as long as nothing does, so that it does not
    look as if somebody had written it.
    """
    grounds = (Roles.Window, Roles.Base, Roles.AlternateBase, Roles.Button, Roles.ToolTipBase)
    inks = (
        Roles.WindowText, Roles.Text, Roles.ButtonText, Roles.ToolTipText,
    )  # fmt: skip
    accents = (Roles.BrightText, Roles.Highlight, Roles.Link, Roles.LinkVisited)
    colours = (
        dict.fromkeys(grounds, ground) | dict.fromkeys(inks, ink) | dict.fromkeys(accents, accent)
    )
    return Paint(
        colours | {Roles.HighlightedText: on_accent, Roles.PlaceholderText: unwritten},
        problem=accent,
        mind=accent,
        frame=ink,
    )


CONTRAST_DARK = _two_tone("#000000", "#ffffff", "#ffe100", "#000000", "#a6a6a6")
CONTRAST_LIGHT = _two_tone("#ffffff", "#000000", "#0000c8", "#ffffff", "#555555")
