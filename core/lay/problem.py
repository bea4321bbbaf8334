"""The lay problem: cloths, the pieces and runs to be cut from them, and the rules.

Axes, here and in every lay: x runs *across* the cloth from the left edge of the
usable width, y runs *along* it from the straightened end. Sizes are exact
inches. All cuts go edge to edge of the piece of cloth in hand (guillotine).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from core.fabric import Grain, OnHand
from core.lay.lay import THE_BOLT, Rect, Sheet
from core.lengths import Inches, round_up
from core.table import DEFAULT_TABLE, Table


@dataclass(frozen=True, slots=True)
class Cloth:
    """One fabric to lay on: pieces on hand first, then a bolt of any length.

    `sale_unit` is the step the bolt is sold in; `straightening` is lost at its
    cut end; `shrinkage_along` is the share of the length lost in washing. The
    lay is made on washed, straightened cloth. `price` is of a yard, in whatever
    currency; it decides which of several cloths a run is bought from.
    """

    name: str
    usable_width: Inches
    sale_unit: Inches
    straightening: Inches = Fraction(0)
    shrinkage_along: Fraction = Fraction(0)
    on_hand: tuple[OnHand, ...] = ()
    buy_more: bool = True
    price: Fraction | None = None

    def bought(self, used_along: Inches) -> Inches:
        """Length to buy so that `used_along` is left to cut from; 0 for nothing.

        >>> Cloth("plum", Fraction(42), Fraction(9, 2), Fraction(1)).bought(Fraction(35))
        Fraction(36, 1)
        """
        if used_along == 0:
            return Fraction(0)
        return round_up(
            used_along / (1 - self.shrinkage_along) + self.straightening, self.sale_unit
        )

    def available(self, bought_along: Inches) -> Inches:
        """Straight, washed length to cut from when `bought_along` has been bought.

        >>> Cloth("plum", Fraction(42), Fraction(9, 2), Fraction(1)).available(Fraction(36))
        Fraction(35, 1)
        """
        return (bought_along - self.straightening) * (1 - self.shrinkage_along)


@dataclass(frozen=True, slots=True)
class Piece:
    """`count` equal rectangles of an exact size; `may_turn`: the grain may run either way."""

    name: str
    cloth: str
    across: Inches
    along: Inches
    count: int = 1
    may_turn: bool = False


@dataclass(frozen=True, slots=True)
class Run:
    """`count` equal long strips, each joined from segments of width `strip`.

    Segments of lengths l1 … ln make Σl − (n − 1) × join_loss, which must reach
    `needs`. Each segment is at least `shortest` unless one alone suffices.
    Crosswise segments lie across the cloth, lengthwise ones along it; `either`
    leaves each segment free. The segments may come from any of `cloths` too.
    """

    name: str
    cloth: str
    strip: Inches
    needs: Inches
    join_loss: Inches
    shortest: Inches
    grain: Grain = Grain.CROSSWISE
    count: int = 1
    cloths: tuple[str, ...] = ()

    @property
    def sources(self) -> tuple[str, ...]:
        """The cloths that it may draw on, each once."""
        return tuple(dict.fromkeys((self.cloth, *self.cloths)))


@dataclass(frozen=True, slots=True)
class Pin:
    """A piece, or one segment of a run, that must lie with its near corner at (x, y).

    `copy` is the piece's number (None: any copy). A segment needs its `length`;
    it belongs to the run's copy `run_copy`, and if it is `turned` it lies lengthwise.
    `cloth` is that of the piece or run (None), or another that the run may draw on.
    """

    name: str
    x: Inches
    y: Inches
    sheet: Sheet = THE_BOLT
    turned: bool = False
    copy: int | None = None
    length: Inches | None = None
    run_copy: int = 1
    cloth: str | None = None


@dataclass(frozen=True, slots=True)
class Flaw:
    """A rectangle of a sheet that nothing laid may touch: a stain, a hole, a fold."""

    cloth: str
    rect: Rect
    sheet: Sheet = THE_BOLT


@dataclass(frozen=True, slots=True)
class Motif:
    """A rectangle of a sheet that one copy of the piece `name` must contain (fussy cutting)."""

    name: str
    rect: Rect
    sheet: Sheet = THE_BOLT


@dataclass(frozen=True, slots=True)
class LayProblem:
    """Everything to lay; each piece and run names the cloth it is cut from.

    All is to be cut in at most so many `stages`: a stage is as many cuts one way
    as one likes, then the pieces are turned (None: any number). The `table` changes
    no lay; it tells how each cut is made.
    """

    cloths: tuple[Cloth, ...]
    pieces: tuple[Piece, ...] = ()
    runs: tuple[Run, ...] = ()
    pins: tuple[Pin, ...] = ()
    flaws: tuple[Flaw, ...] = ()
    motifs: tuple[Motif, ...] = ()
    stages: int | None = None
    table: Table = DEFAULT_TABLE
