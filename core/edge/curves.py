"""Lengths that are no fraction: roots, arcs and ovals, rounded up by a hair.

A length that is no fraction is kept as the next billionth of an inch above it,
so that nothing built on it comes out short; sums of them stay far within the
1/1000 in that a perimeter promises.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil, cos, isqrt, pi, sin, sqrt

from core.lengths import Inches

HAIR = Fraction(1, 10**9)
_FLOAT_SLIP = 1e-11  # above what a float of a thousand inches can be off by
_STEPS = 512  # of Simpson's rule; an oval's quarter needs a few dozen


def root(square: Fraction) -> Inches:
    """√`square`: exact where it is a fraction, else rounded up by less than `HAIR`.

    >>> root(Fraction(25, 4)), float(root(Fraction(2)))
    (Fraction(5, 2), 1.414213563)
    """
    top, bottom = isqrt(square.numerator), isqrt(square.denominator)
    if top * top == square.numerator and bottom * bottom == square.denominator:
        return Fraction(top, bottom)
    scaled = square / HAIR**2
    return (isqrt(scaled.numerator // scaled.denominator) + 1) * HAIR


def up(length: float) -> Inches:
    """The next multiple of `HAIR` above a length that was worked out in floats."""
    return ceil((length + _FLOAT_SLIP) / float(HAIR)) * HAIR


def oval_length(a: float, b: float) -> float:
    """Length round an oval of half axes `a` and `b`, by the arithmetic-geometric mean.

    The complete elliptic integral of the second kind; Abramowitz and Stegun,
    Handbook of Mathematical Functions, 17.6 (from memory).

    >>> round(oval_length(1, 1) / pi, 12), oval_length(3, 0)
    (2.0, 12)
    """
    a, b = max(a, b), min(a, b)
    if b == 0:
        return 4 * a
    mean, other, lost, weight = 1.0, b / a, (1 - (b / a) ** 2) / 2, 0.5
    while abs(mean - other) > 1e-15:
        half = (mean - other) / 2
        mean, other, weight = (mean + other) / 2, sqrt(mean * other), weight * 2
        lost += weight * half**2
    return 2 * pi * a * (1 - lost) / mean


def oval_arc(a: float, b: float, start: float, end: float) -> float:
    """Length of the oval (a·cos φ, b·sin φ) from φ = `start` to `end` (radians), by Simpson."""
    step = (end - start) / _STEPS

    def speed(place: int) -> float:
        angle = start + place * step
        return sqrt((a * sin(angle)) ** 2 + (b * cos(angle)) ** 2)

    odd = sum(speed(place) for place in range(1, _STEPS, 2))
    even = sum(speed(place) for place in range(2, _STEPS, 2))
    return step / 3 * (speed(0) + 4 * odd + 2 * even + speed(_STEPS))
