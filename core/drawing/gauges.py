"""Guides to print at true size: the strip's width with its 45° line, and the sewing gauge.

Inches, which a page must draw as inches.
"""

from __future__ import annotations

from core.drawing.marks import Area, Drawing, Label, Line
from core.language import told
from core.lengths import Inches, Units, show

_LEAST_LONG, _BESIDE = 3.0, 1.5
_GAUGE = 2.0  # inches of the quilt's corner
_DOT = 0.04


def draw_strip_guide(width: Inches, units: Units, longest: float) -> Drawing:
    """A strip as wide as it is cut, with the 45° line of a diagonal join or a mitre.

    At most `longest` inches long; the line runs across the strip's own square.
    """
    w = float(width)
    long = min(longest, max(_LEAST_LONG, 2 * w + _BESIDE))
    right = min(long, w)
    marks = (
        Area(((0.0, 0.0), (long, 0.0), (long, w), (0.0, w)), "cloth"),
        Line(((0.0, w), (right, w - right)), "cut"),
        Line(((right, 0.0), (right, w)), "seam"),
        Label((right * 0.72, w * 0.72), ("45°",), (right * 0.4, w * 0.3), "note"),
        Label(
            ((right + long) / 2, w / 2),
            (told("strip, cut\n{width} wide", width=show(width, units)), show(width, units)),
            ((long - right) * 0.9, w * 0.9),
            "note",
        ),
    )
    return Drawing(told("strip of {width}", width=show(width, units)), long, w, marks)


def draw_sewing_gauge(seam: Inches, stop: Inches) -> Drawing:
    """The lower right corner of a quilt: the edge heavy, the seam dashed, a dot where to stop."""
    s, at, foot = float(seam), _GAUGE - float(stop), _GAUGE - float(seam)
    dot = ((at, foot - _DOT), (at + _DOT, foot), (at, foot + _DOT), (at - _DOT, foot))
    marks = (
        Area(((0.0, 0.0), (_GAUGE, 0.0), (_GAUGE, _GAUGE), (0.0, _GAUGE)), "top"),
        Line(((_GAUGE, 0.0), (_GAUGE, _GAUGE), (0.0, _GAUGE)), "cut"),
        Line(((0.0, foot), (at, foot)), "seam"),
        Line(((_GAUGE - s, 0.0), (_GAUGE - s, foot)), "seam"),
        Area(dot, "grain"),
    )
    return Drawing(told("sewing gauge"), _GAUGE, _GAUGE, marks)
