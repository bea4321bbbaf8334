"""Batting: one rectangle, from a package that covers it or from the roll.

From the roll it is cut in one piece where the roll is wide enough, turned if
that takes less; else in pieces that are laid edge to edge and sewn with wide
zigzag stitches, without overlap, so that a join uses nothing up.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from core.batting_packages import Package
from core.finish.overage import overages
from core.language import told, told_as
from core.lengths import Inches, round_up, sale_text
from core.quilt import Batting, BattingFrom
from core.refusal import Refusal


@dataclass(frozen=True, slots=True)
class Roll:
    """Batting from a roll: `pieces` side by side for each quilt, each `cut` long.

    `along` is for all the copies, rounded up to the step it is sold in.
    """

    width: Inches
    pieces: int
    cut: Inches
    along: Inches
    sale_unit: Inches

    @property
    def joins(self) -> int:
        return self.pieces - 1

    @property
    def sale_text(self) -> str:
        return sale_text(self.along, self.sale_unit)


@dataclass(frozen=True, slots=True)
class BattingPlan:
    """Size of the batting, and what to buy: a package, or so much from the roll.

    Exactly one of the two is set; `too_small` marks a package that was asked for
    by name and does not cover the batting.
    """

    across: Inches
    along: Inches
    package: Package | None
    roll: Roll | None
    too_small: bool = False


def plan_batting(batting: Batting, width: Inches, length: Inches, copies: int = 1) -> BattingPlan:
    """The batting of a quilt of `width` × `length`; from the roll where no package covers it.

    >>> from fractions import Fraction
    >>> plan_batting(Batting(Fraction(4)), Fraction(60), Fraction(80)).package.name
    'twin'
    """
    across, along = overages(batting).round(width, length)
    package = _package(batting, across, along) if batting.source is BattingFrom.PACKAGE else None
    if package is None:
        return BattingPlan(across, along, None, _from_roll(batting, across, along, copies))
    return BattingPlan(across, along, package, None, not package.covers(across, along))


def _package(batting: Batting, across: Inches, along: Inches) -> Package | None:
    """The one asked for, else the smallest that covers the batting."""
    if batting.package is not None:
        found = [package for package in batting.packages if package.name == batting.package]
        if not found:
            known = ", ".join(package.name for package in batting.packages) or told_as(
                "packages", "none"
            )
            raise Refusal(
                "batting.package",
                told(
                    'no package is called "{package}"; write one of the table ({known}) or '
                    "leave it empty",
                    package=batting.package,
                    known=known,
                ),
            )
        return found[0]
    covering = [package for package in batting.packages if package.covers(across, along)]
    return min(covering, key=lambda package: package.width * package.length, default=None)


def _from_roll(batting: Batting, across: Inches, along: Inches, copies: int) -> Roll:
    """The way round that makes fewest joins, then takes least."""
    wide = batting.roll_width
    ways = []
    for over, cut in ((across, along), (along, across)):
        pieces = ceil(over / wide)
        abreast = max(1, wide // over)
        rows = pieces * copies if pieces > 1 else ceil(copies / abreast)
        ways.append((pieces, rows * cut, cut))
    pieces, total, cut = min(ways)
    unit = batting.roll_sale_unit
    return Roll(wide, pieces, cut, round_up(total, unit), unit)
