"""The cutting table: the ruler, how often the cloth is folded, and how a cut is made there.

A cut across the cloth may be made folded, selvage to selvage: each fold halves its
length. A cut along the grain lies as long as it is. Where the ruler is shorter
than that, it is laid again and again.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import Final, NamedTuple

from core.lengths import INCHES_PER_MM, Inches, Units

MOST_FOLDS: Final = 2  # more layers slip, and no blade goes through them (common practice)


@dataclass(frozen=True, slots=True)
class Table:
    """A ruler of this length; cloth is folded at most `folds` times, selvage to selvage."""

    ruler: Inches
    folds: int = 1


# Rulers that are widely sold (common practice, no source).
DEFAULT_TABLE: Final = Table(Fraction(24))
DEFAULT_METRIC_TABLE: Final = Table(600 * INCHES_PER_MM)


def default_table(units: Units) -> Table:
    """The table of one who said nothing about it."""
    return DEFAULT_TABLE if units is Units.INCHES else DEFAULT_METRIC_TABLE


class Hold(NamedTuple):
    """How the cloth lies for a cut, and how often the ruler is laid along it."""

    folds: int = 0
    moves: int = 1


def hold(table: Table, length: Inches, *, crosswise: bool) -> Hold:
    """The fewest folds with which the ruler reaches; else the most, and the ruler moves.

    >>> hold(Table(Fraction(24)), Fraction(42), crosswise=True)
    Hold(folds=1, moves=1)
    >>> hold(Table(Fraction(24)), Fraction(24), crosswise=True)
    Hold(folds=0, moves=1)
    >>> hold(Table(Fraction(24)), Fraction(108), crosswise=True)
    Hold(folds=1, moves=3)
    >>> hold(Table(Fraction(24)), Fraction(42), crosswise=False)
    Hold(folds=0, moves=2)
    """
    most = table.folds if crosswise else 0
    folds = next((folds for folds in range(most) if length <= table.ruler * 2**folds), most)
    return Hold(folds, ceil(length / (table.ruler * 2**folds)))
