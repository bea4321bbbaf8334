"""What the person has: fabrics, by the bolt and as pieces on hand.

Width of fabric (WOF) is measured selvage to selvage; the usable width is what
is left after washing and without the selvages. The usable *length* of a bolt is
not known here: the lay decides how much of it is bought.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from core.by_hand.said import HandFlaw, HandMotif, HandPin
from core.lengths import INCHES_PER_MM, RULERS, Inches, Rounding, Units, rounded

INCHES_PER_YARD = 36
INCHES_PER_METRE = 1000 * INCHES_PER_MM


class Grain(StrEnum):
    """Which way a strip runs on the cloth."""

    CROSSWISE = "crosswise"
    LENGTHWISE = "lengthwise"
    EITHER = "either"
    BIAS = "bias"


@dataclass(frozen=True, slots=True)
class OnHand:
    """A piece of cloth already on the shelf: usable size, washed and straight."""

    across: Inches
    along: Inches
    count: int = 1


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo of the cloth: a file, as seen from the project's own, and the width it shows."""

    file: str
    shows: Inches


@dataclass(frozen=True, slots=True)
class RealCloth:
    """What a cloth looks like, for pictures of it alone; the photo goes before the "#rrggbb"."""

    colour: str | None = None
    photo: Photo | None = None


@dataclass(frozen=True, slots=True)
class Fabric:
    """One fabric as the person knows it. Shrinkages are shares (1/20 is 5 %).

    `pins`, `flaws` and `motifs` are what was said by hand of its cloths (`core.by_hand`).

    >>> Fabric("plum", width=Fraction(43), selvage=Fraction(1, 2)).usable_width
    Fraction(42, 1)
    """

    name: str
    width: Inches
    selvage: Inches
    sale_unit: Inches = Fraction(9, 2)
    price_per_yard: Fraction | None = None
    one_way_print: bool = False
    repeat: Inches | None = None
    shrinkage_across: Fraction = Fraction(0)
    shrinkage_along: Fraction = Fraction(0)
    straightening: Inches = Fraction(0)
    on_hand: tuple[OnHand, ...] = ()
    buy_more: bool = True
    price_per_metre: Fraction | None = None
    pins: tuple[HandPin, ...] = ()
    flaws: tuple[HandFlaw, ...] = ()
    motifs: tuple[HandMotif, ...] = ()
    real: RealCloth | None = None

    @property
    def price_per_inch(self) -> Fraction | None:
        """The price by the yard or by the metre, as it is sold; None where it is not known."""
        if self.price_per_metre is not None:
            return self.price_per_metre / INCHES_PER_METRE
        return None if self.price_per_yard is None else self.price_per_yard / INCHES_PER_YARD

    @property
    def usable_width(self) -> Inches:
        """WOF × (1 − shrinkage across) − 2 × selvage."""
        return self.width * (1 - self.shrinkage_across) - 2 * self.selvage

    @property
    def cutting_width(self) -> Inches:
        """The usable width down to a mark that a ruler has: what pieces are laid on.

        Shrinkage gives widths like 42.12 in, which nobody can measure; rounding
        such a one up would promise cloth that is not there.

        >>> half, share = Fraction(1, 2), Fraction(1, 50)
        >>> Fabric("tide", Fraction(44), half, shrinkage_across=share).cutting_width
        Fraction(673, 16)
        """
        usable = self.usable_width
        if any((usable / ruler.finest).denominator == 1 for ruler in RULERS.values()):
            return usable
        return rounded(usable, RULERS[Units.INCHES].step, Rounding.DOWN)
