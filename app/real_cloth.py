"""Areas in the colour of the cloth that they are cut from.

The hatch stays, in black or white as it shows best, so that a part is still told;
words stand on plain ground. What is left of a cloth is paler than what is cut from it.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from app.colour import contrast, ink_on, mixed
from app.style import Style, Theme
from core.drawing.marks import Area, Drawing

LEFT_OVER = frozenset({"cloth", "offcut", "selvage", "straightening"})
PALE = 0.4  # of the cloth's colour in what is left of it
_SEEN = 3.0  # to one: WCAG 2.2, criterion 1.4.11


def style_of(area: Area, theme: Theme) -> Style:
    """How an area looks in a theme: the role's style, in the cloth's own colour if it has one."""
    style, real = theme[area.role], area.real
    if real is None or real.colour is None or not theme.real_cloth:
        return style
    return in_colour(style, real.colour, pale=area.role in LEFT_OVER)


@cache
def in_colour(style: Style, colour: str, *, pale: bool) -> Style:
    """The style on a cloth of this colour."""
    fill = mixed(colour, style.fill, PALE) if pale else colour
    seen = contrast(style.outline, fill) >= _SEEN
    return replace(style, fill=fill, outline=style.outline if seen else ink_on(fill))


def roles_on_cloth(drawing: Drawing, theme: Theme) -> frozenset[str]:
    """The roles whose words need plain ground behind them."""
    if not theme.real_cloth:
        return frozenset()
    areas = (mark for mark in drawing.marks if isinstance(mark, Area))
    return frozenset(area.role for area in areas if area.real is not None)
