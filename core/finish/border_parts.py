"""A strip longer than the cloth is wide, pieced by itself.

Centred: the fewest equal parts, so that two meet in the middle of the side (or
three or more lie the same from both ends). Off-centre: whole strips and a
shorter rest, which the eye does not look for; two that would meet near the middle
all the same are made three, a whole strip between two short ones.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate
from math import ceil

from core.figures import figure, usual
from core.finish.border_sides import BorderStrip
from core.finish.demand import shortest_segment
from core.lay.problem import Piece
from core.lengths import Inches, round_up
from core.quilt import Border, Piecing

# Our defaults, no source.
NEAR_THE_MIDDLE, NEAR_THE_MIDDLE_MM = Fraction(6), Fraction(150)
_STEP, _STEP_MM = Fraction(1, 8), Fraction(1)


@dataclass(frozen=True, slots=True)
class Rules:
    """How near the middle a join off it may lie, and the least length of a part."""

    off_middle: Inches
    shortest: Inches


def rules_of(border: Border, usable: Inches) -> Rules:
    """A border's rules on a cloth of that usable width."""
    near = usual(border.off_middle, usable, NEAR_THE_MIDDLE, NEAR_THE_MIDDLE_MM)
    return Rules(near, shortest_segment(usable, border.shortest))


def parts_of(
    piecing: Piecing, needs: Inches, loss: Inches, usable: Inches, rules: Rules
) -> tuple[Inches, ...]:
    """The lengths of the parts that make `needs`, each join losing `loss`; one if it fits.

    >>> rules = Rules(Fraction(6), Fraction(18))
    >>> parts_of(Piecing.CENTRED, Fraction(60), Fraction(1, 2), Fraction(42), rules)
    (Fraction(121, 4), Fraction(121, 4))
    >>> parts_of(Piecing.OFF_CENTRE, Fraction(60), Fraction(1, 2), Fraction(42), rules)
    (Fraction(42, 1), Fraction(37, 2))
    """
    count = max(1, ceil((needs - loss) / (usable - loss)))
    total = needs + (count - 1) * loss
    if count == 1:
        return (needs,)
    if piecing is Piecing.CENTRED:
        return (min(usable, _marked(total / count)),) * count
    return _off_centre(needs, total, loss, usable, count, rules)


def _off_centre(
    needs: Inches, total: Inches, loss: Inches, usable: Inches, count: int, rules: Rules
) -> tuple[Inches, ...]:
    shortest = rules.shortest
    rest = max(_marked(total - (count - 1) * usable), shortest)
    before = min(usable, _marked(total - rest - (count - 2) * usable))
    if count == 2 and abs(before - loss / 2 - needs / 2) < rules.off_middle:
        ends = max(shortest, _marked((total + loss - usable) / 2))
        middle = _marked(total + loss - 2 * ends)
        if middle >= shortest:
            return ends, middle, ends
    return (*(usable,) * (count - 2), before, rest)


def _marked(length: Inches) -> Inches:
    return round_up(length, figure(length, _STEP, _STEP_MM))


def places_of_joins(parts: tuple[Inches, ...], loss: Inches) -> tuple[Inches, ...]:
    """Where the seams between joined parts lie, from the start of the first.

    >>> places_of_joins((Fraction(42), Fraction(37, 2)), Fraction(1, 2))
    (Fraction(167, 4),)
    """
    return tuple(accumulate((part - loss for part in parts[:-1]), initial=loss / 2))[1:]


def part_pieces(strip: BorderStrip) -> Iterator[Piece]:
    """The pieces that the strips are pieced from, the longest first."""
    lengths = Counter(strip.parts)
    for name, length in zip(
        _names(len(lengths), len(strip.parts)), sorted(lengths, reverse=True), strict=True
    ):
        count = lengths[length] * strip.count
        yield Piece(f"{strip.name}, {name}", strip.fabric, length, strip.cut_width, count)


def _names(different: int, parts: int) -> tuple[str, ...]:
    if different == 1:
        return ("half" if parts == 2 else "part",)
    return (
        ("long part", "short part")
        if different == 2
        else ("long part", "middle part", "short part")
    )
