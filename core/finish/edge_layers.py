"""Layers of cloth in a bound edge: on each face, round the edge, at a join, at a corner.

Counted in layers of binding cloth on top of each other; quilt and batting come
on top. From the seam line to the edge the first face holds the strip's seam
allowance and, folded back over it, the face itself. A double fold has two
layers wherever a single fold has one, and on its second face a single fold has
its turned edge under it (First Light Designs, https://firstlightdesigns.com/?p=18968:
4, 2 and 2 round the edge for a double fold, 2, 2 and 1 for a single one).

At a join each layer has a second one, its allowance, beside the seam. A
straight join lies at one place right through the strip, so all layers double
there. A diagonal join crosses the strip at 45°: its allowances lie within √2·s
of that line along the strip, so that of layers stacked on each other only those
double that lie within 2√2·s of each other across the strip.

At a mitred corner each thread that lies d inside the edge is 2d/tan(θ/2) longer
than its way round: that much is folded into a dart, which lies between the mitre
and the line square to the next edge, so that there the strip lies three times.
Round the edge itself (d = 0) nothing is over. At a corner sharper than 90° that
line lies outside the quilt: the dart stands out past the edge, and tucked back
lies on itself. (`tests/core/finish/test_corner_layers.py` folds it for many
angles; nothing is trimmed there.)
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from core.finish.binding_width import Widths
from core.lengths import Inches
from core.quilt import Fold, Joins

_SQUARE = 90.0
_STRAIGHT = 180.0


@dataclass(frozen=True, slots=True)
class Layers:
    """How many layers lie on the first face, round the edge and on the second face."""

    first_face: int
    edge: int
    second_face: int


def plain_layers(fold: Fold, accents: int = 0) -> Layers:
    """Along a straight edge; `accents` layers of a flange or piping lie in the seam.

    >>> plain_layers(Fold.DOUBLE)
    Layers(first_face=4, edge=2, second_face=2)
    """
    match fold:
        case Fold.DOUBLE:
            return Layers(4 + accents, 2, 2)
        case Fold.SINGLE:
            return Layers(2 + accents, 1, 2)
        case Fold.FACED:  # the seam allowances are turned to the back
            return Layers(0, 2, 4 + accents)


def layers_at_join(fold: Fold, joins: Joins, widths: Widths, accents: int = 0) -> Layers:
    """The most that lie on each other at a join, its allowances pressed open.

    >>> widths = Widths(*map(Fraction, ("2.5", "0.25", "0.25", "0.625", "0.375", "0.0625")))
    >>> layers_at_join(Fold.DOUBLE, Joins.DIAGONAL, widths)
    Layers(first_face=6, edge=3, second_face=4)
    """
    plain, bare = plain_layers(fold, accents), plain_layers(fold)
    if joins is Joins.STRAIGHT:
        more = bare
    else:
        more = Layers(
            *(
                max(_doubled(places, widths.seam) for places in stacks)
                for stacks in _stacks(fold, widths)
            )
        )
    return Layers(
        plain.first_face + more.first_face,
        plain.edge + more.edge,
        plain.second_face + more.second_face,
    )


def layers_at_corner(fold: Fold, angle: float, accents: int = 0) -> Layers:
    """The most that lie on each other at a corner of interior `angle` degrees, untrimmed.

    A faced edge has its ends turned in: at a square corner one facing ends on the
    other, elsewhere they meet on the mitre. A flange ends on the next one.

    >>> layers_at_corner(Fold.DOUBLE, 90)
    Layers(first_face=12, edge=2, second_face=6)
    """
    plain = plain_layers(fold)
    if fold is Fold.FACED:
        times = 3 if angle == _SQUARE else 2
        return Layers(0, times * plain.edge, times * plain.second_face + 2 * accents)
    times = strip_at_corner(angle)
    first = times * plain.first_face + (2 * accents if angle < _STRAIGHT else accents)
    return Layers(first, plain.edge, times * plain.second_face)


def strip_at_corner(angle: float) -> int:
    """How many times a strip lies on itself at a corner, where it is mitred and tucked in.

    The dart takes up 90° − θ/2 from the mitre on, and turns back at each edge.

    >>> [strip_at_corner(angle) for angle in (270, 135, 90, 60, 32)]
    [1, 3, 3, 5, 7]
    """
    if angle >= _STRAIGHT:
        return 1
    wedges = (_SQUARE - angle / 2) / angle
    passes = 2 * int(wedges / 2) + (2 if wedges % 2 > 1 / 2 else 1)
    return 1 + 2 * passes


def _stacks(fold: Fold, widths: Widths) -> tuple[tuple[tuple[Inches, ...], ...], ...]:
    """On each face, at its two ends: where across the strip the layers lie."""
    w, s, b = widths.strip, widths.seam, widths.second_face
    places = (Fraction(0), s)
    lower = tuple((s - x, s + x) for x in places)
    both = tuple((s - x, s + x, w - s - x, w - s + x) for x in places)
    round_edge = w / 2 - b  # of a double fold: where across it the second face starts
    if fold is Fold.FACED:
        return ((),), ((s, w - s),), both
    if fold is Fold.DOUBLE:
        second = ((round_edge, w - round_edge), (w / 2, w / 2))
        edge = ((2 * s, w - 2 * s), (round_edge, w - round_edge))
        return both, edge, second
    return lower, ((2 * s,),), ((w - 2 * s, w), (w - s, w - s))


def _doubled(places: tuple[Inches, ...], seam: Inches) -> int:
    """The most of these places that one join's allowances cover at once: within 2√2·seam."""
    return max(
        (
            sum(1 for other in places if other >= place and (other - place) ** 2 <= 8 * seam**2)
            for place in places
        ),
        default=0,
    )
