"""Corners: where to stop sewing, and how the fold turns.

A mitred corner uses no strip: the binding is folded, and folding keeps every
thread's length, so the run round a polygon is exactly its perimeter
(`tests/core/edge/test_corners.py` folds one numerically).
"""

from __future__ import annotations

from math import radians, tan

from core.lengths import Inches


def stop_before_corner(seam: Inches, angle: float) -> float:
    """Inches before a corner of interior `angle` degrees where the seam lines meet.

    >>> from fractions import Fraction
    >>> round(stop_before_corner(Fraction(1, 4), 90), 6)
    0.25
    """
    _refuse_inside(angle)
    return float(seam) / tan(radians(angle) / 2)


def mitre_angle(angle: float) -> float:
    """Degrees between either edge and the mitre, which lies on the bisector.

    >>> mitre_angle(90), mitre_angle(120)
    (45.0, 60.0)
    """
    _refuse_inside(angle)
    return angle / 2


def _refuse_inside(angle: float) -> None:
    if not 0 < angle < 180:
        raise ValueError(f"an outside corner lies between 0 and 180 degrees, not {angle}")
