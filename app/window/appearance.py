"""Light and dark: following the system, or as the person chose.

On "follow the system" the platform's own style and palette stay. A choice gets
the Fusion style with a palette of ours, since not every platform can be asked
to change. The canvas takes its theme from what the palette turns out to be.
"""

from __future__ import annotations

from enum import Enum

from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication

from app.style import SCREEN_DARK, SCREEN_LIGHT, Theme

Roles = QPalette.ColorRole


class Look(Enum):
    """What the person chose; the value is how it is remembered."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


_LIGHT = {
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
}
_DARK = {
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
    Roles.Highlight: "#3a7dbd",
    Roles.HighlightedText: "#ffffff",
    Roles.Link: "#8ec7ff",
    Roles.LinkVisited: "#c3aef0",
}
_FAINT = (Roles.WindowText, Roles.Text, Roles.ButtonText)

# Sizes and gaps only; every colour comes from the palette.
SHEET = """
QLabel#group { font-weight: bold; padding: 4px 0 2px 0; }
QLabel#problem { color: %s; }
QLabel#banner { color: %s; padding: 6px 10px; }
QLabel#note { color: palette(placeholder-text); }
QFrame#warned { border: 1px solid %s; border-left: 5px solid %s; }
QToolButton#add::menu-indicator, QToolButton#part-menu::menu-indicator { image: none; width: 0; }
QToolButton#part-menu { padding: 3px 8px; }
QGraphicsView { border: 2px solid transparent; }
QGraphicsView:focus { border: 2px solid palette(highlight); }
"""


class Appearance:
    """The application's look."""

    def __init__(self, application: QApplication) -> None:
        self._application = application
        self._own_style = application.style().objectName()
        self.look = Look.SYSTEM
        self._dress()

    def wear(self, look: Look) -> None:
        """Change the look of every window."""
        self.look = look
        if look is Look.SYSTEM:
            self._application.setStyle(self._own_style)
            self._application.setPalette(QPalette())
        else:
            self._application.setStyle("Fusion")
            self._application.setPalette(_palette(_DARK if look is Look.DARK else _LIGHT))
        self._dress()

    def _dress(self) -> None:
        dark = is_dark(self._application.palette())
        problem, mind = ("#ff9d92", "#d9a441") if dark else ("#a3241b", "#9a6a00")
        sheet = SHEET % (problem, problem, mind, mind)
        if self._application.styleSheet() != sheet:
            self._application.setStyleSheet(sheet)

    def follow(self) -> None:
        """The system's palette changed."""
        self._dress()


def is_dark(palette: QPalette) -> bool:
    """Whether a palette has light words on dark."""
    return palette.color(Roles.WindowText).lightness() > palette.color(Roles.Window).lightness()


def theme_for(palette: QPalette) -> Theme:
    """The canvas's theme that goes with a palette."""
    return SCREEN_DARK if is_dark(palette) else SCREEN_LIGHT


def _palette(colours: dict[QPalette.ColorRole, str]) -> QPalette:
    palette = QPalette(QColor(colours[Roles.Button]), QColor(colours[Roles.Window]))
    for role, colour in colours.items():
        palette.setColor(role, QColor(colour))
    for role in _FAINT:
        faint = QColor(colours[Roles.PlaceholderText])
        faint.setAlphaF(0.6)
        palette.setColor(QPalette.ColorGroup.Disabled, role, faint)
    return palette
