"""Joins: what sewing strips end to end costs, and what closing the ring takes.

Derivations: two strips laid at right angles for a diagonal join meet in a
square of the strip's width, and each keeps its centre line up to the middle of
that square; so strips a and b make a + b − w. A straight join uses one seam
allowance of each. Ends cut at 45° first are sewn s from the slanted edge, which
is s·√2 along each strip; cutting a square end so loses half a width as well.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from core.edge.root_two import root_two_up
from core.figures import figure
from core.lengths import Inches
from core.quilt import Closing, Joins

# Common practice, no source: the folded end of a tucked closing is turned a
# little over 1/4 in, and 1 to 2 in of the other end is tucked into it.
TUCKED_FOLD, TUCKED_FOLD_MM = Fraction(3, 8), Fraction(10)
TUCKED_OVERLAP, TUCKED_OVERLAP_MM = Fraction(2), Fraction(50)


def join_loss(joins: Joins, width: Inches, seam: Inches) -> Inches:
    """Length that one join of two strips of `width` with square ends uses up.

    Angled joins are rounded up to 1/64 in.

    >>> join_loss(Joins.DIAGONAL, Fraction(3), Fraction(1, 4))
    Fraction(3, 1)
    >>> join_loss(Joins.STRAIGHT, Fraction(3), Fraction(1, 4))
    Fraction(1, 2)
    """
    match joins:
        case Joins.DIAGONAL:
            return width
        case Joins.STRAIGHT:
            return 2 * seam
        case Joins.ANGLED:
            return width + slanted_loss(seam)


def slanted_loss(seam: Inches) -> Inches:
    """Length that a join of two ends that lie at 45° already uses up: 2·s·√2, up to 1/64 in.

    >>> float(slanted_loss(Fraction(1, 4)))
    0.71875
    """
    return root_two_up(2 * seam)


def closing_takes(
    closing: Closing,
    width: Inches,
    seam: Inches,
    fold: Inches | None = None,
    overlap: Inches | None = None,
) -> Inches:
    """Length beyond the perimeter that closing the binding takes.

    Diagonal: the two tails overlap by one strip width. Straight: two seam
    allowances. Tucked: the `fold`, the `overlap` (the usual ones where they are
    not given), and a width for the angled ends.
    """
    if closing is Closing.DIAGONAL:
        return width
    if closing is Closing.STRAIGHT:
        return 2 * seam
    if fold is None:
        fold = figure(width, TUCKED_FOLD, TUCKED_FOLD_MM)
    if overlap is None:
        overlap = figure(width, TUCKED_OVERLAP, TUCKED_OVERLAP_MM)
    return fold + overlap + width


def chain_length(segments: tuple[Inches, ...], loss: Inches) -> Inches:
    """Length of the run that `segments` make when sewn end to end.

    >>> chain_length((Fraction(10), Fraction(10)), Fraction(3))
    Fraction(17, 1)
    """
    return sum(segments, Fraction(0)) - max(len(segments) - 1, 0) * loss


def strips_needed(needs: Inches, loss: Inches, strip_length: Inches) -> int:
    """Fewest equal strips whose chain reaches `needs`; each strip is longer than `loss`.

    >>> strips_needed(Fraction(210), Fraction(5, 2), Fraction(42))
    6
    """
    return max(1, ceil((needs - loss) / (strip_length - loss)))


def narrowest_strip_length(
    needs: Inches, loss: Inches, full: int, others: Inches = Fraction(0), count_others: int = 0
) -> Inches:
    """How short `full` equal strips may be when the rest of the run is `others` long in all."""
    joins = full + count_others - 1
    return (needs + joins * loss - others) / full


def as_many_as_reach(lengths: tuple[Inches, ...], loss: Inches, needs: Inches) -> int:
    """How many of the strips are sewn on; last ones that are slack would be trimmed off whole.

    >>> as_many_as_reach((Fraction(10),) * 5, Fraction(2), Fraction(26))
    3
    """
    count = len(lengths)
    while count > 1 and chain_length(lengths[: count - 1], loss) >= needs:
        count -= 1
    return count
