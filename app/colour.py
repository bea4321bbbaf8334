"""Colours as numbers: how light one is, and how far two stand apart.

Colours are "#rrggbb" throughout.
"""

from __future__ import annotations

BLACK, WHITE = "#000000", "#ffffff"


def contrast(one: str, other: str) -> float:
    """WCAG 2.2 contrast ratio, 1 … 21 (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio).

    >>> round(contrast("#000000", "#ffffff")), round(contrast("#767676", "#ffffff"), 2)
    (21, 4.54)
    """
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def luminance(colour: str) -> float:
    """Relative luminance, 0 … 1 (https://www.w3.org/TR/WCAG22/#dfn-relative-luminance)."""
    red, green, blue = linear(colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def linear(colour: str) -> tuple[float, float, float]:
    """Red, green and blue as amounts of light, 0 … 1 each."""
    red, green, blue = (_light(int(colour[i : i + 2], 16) / 255) for i in (1, 3, 5))
    return red, green, blue


def _light(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4


def mixed(one: str, other: str, share: float) -> str:
    """`share` of one colour and the rest of the other.

    >>> mixed("#ffffff", "#000000", 0.5)
    '#808080'
    """
    pairs = ((int(one[i : i + 2], 16), int(other[i : i + 2], 16)) for i in (1, 3, 5))
    return "#" + "".join(f"{round(a * share + b * (1 - share)):02x}" for a, b in pairs)


def ink_on(colour: str) -> str:
    """Black or white, whichever reads better on a colour: 4.58 to 1 at the least.

    >>> ink_on("#203050"), ink_on("#f0e0c0")
    ('#ffffff', '#000000')
    """
    return max(BLACK, WHITE, key=lambda ink: contrast(ink, colour))
