"""How wide the panels of a backing are, and what is cut for them.

n panels of usable width U, sewn with seam s, cover n·U − (n − 1)·2s. Least and
whole: all panels but the last are as wide as the cloth. Halves: full panels in
the middle and two equal narrow ones at the sides, so that no seam runs down the
middle of the back. An accent strip lies
between the first two panels; with halves, between two equal ones if they suffice.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from core.fabric import Fabric
from core.figures import figure
from core.finish.demand import Demand
from core.lay.problem import Piece
from core.lengths import Inches, round_up
from core.quilt import Panels

Widths = tuple[Inches, ...]
_STEP, _STEP_MM = Fraction(1, 8), Fraction(1)


def panel_widths(
    arrangement: Panels, cover: Inches, seam: Inches, usable: Inches, narrowest: Inches
) -> Widths:
    """Cut widths of the fewest panels that cover `cover`, in the order sewn.

    >>> half, six = Fraction(1, 2), Fraction(6)
    >>> [str(w) for w in panel_widths(Panels.WHOLE, Fraction(56), half, Fraction(42), six)]
    ['42', '15']
    >>> [str(w) for w in panel_widths(Panels.WHOLE, Fraction(84), half, Fraction(42), six)]
    ['42', '38', '6']
    >>> [str(w) for w in panel_widths(Panels.HALVES, Fraction(56), half, Fraction(42), six)]
    ['8', '42', '8']
    """
    gain = usable - 2 * seam
    count = max(1, ceil((cover - 2 * seam) / gain))
    if count == 1:
        return (cover,)
    if arrangement is Panels.HALVES:
        return _halves(cover, seam, usable, narrowest)
    last = cover - (count - 1) * gain
    short = max(narrowest - last, Fraction(0))
    return (*(usable,) * (count - 2), usable - short, last + short)


def _halves(cover: Inches, seam: Inches, usable: Inches, narrowest: Inches) -> Widths:
    """An odd number of full panels between two equal ones."""
    gain = usable - 2 * seam
    full = max(1, ceil((cover - 2 * seam) / gain) - 2)
    full += 1 - full % 2
    side = (cover + 2 * seam - full * gain) / 2
    short = max(narrowest - side, Fraction(0))
    middle = usable - 2 * short / full
    return (side + short, *(middle,) * full, side + short)


def in_two(cover: Inches, seam: Inches) -> Widths:
    """Two panels where one would do, so that an accent strip can lie between them.

    >>> [str(w) for w in in_two(Fraction(43), Fraction(1, 2))]
    ['22', '22']
    """
    return ((cover + 2 * seam) / 2,) * 2


def whole_panels(fabric: Fabric, widths: Widths, panel_along: Inches) -> tuple[Demand, ...]:
    """Panels of full length, the widest first."""
    counts = Counter(widths)
    return tuple(
        panel(_name(place, len(counts)), fabric, width, panel_along, counts[width])
        for place, width in enumerate(sorted(counts, reverse=True))
    )


def _name(place: int, kinds: int) -> str:
    if place == 0:
        return "backing panel"
    return "narrow backing panel" if place == kinds - 1 else "second backing panel"


def panel(name: str, fabric: Fabric, across: Inches, along: Inches, count: int) -> Demand:
    return Demand("backing", "backing", Piece(name, fabric.name, across, along, count))


def pieced_panels(
    fabric: Fabric, widths: Widths, panel_along: Inches, seam: Inches, most_strips: int
) -> Iterator[tuple[int, tuple[Demand, ...]]]:
    """The last panel pieced from short strips that lie side by side, by their number."""
    if len(widths) == 1:
        return
    step = figure(panel_along, _STEP, _STEP_MM)
    most = min(int(fabric.cutting_width // widths[-1]), most_strips)
    for pieced in range(2, most + 1):
        each = round_up((panel_along + (pieced - 1) * 2 * seam) / pieced, step)
        strips = panel("backing short strip", fabric, widths[-1], each, pieced)
        yield pieced, (*whole_panels(fabric, widths[:-1], panel_along), strips)


def matched_panels(
    fabric: Fabric, widths: Widths, first: Inches, others: Inches
) -> tuple[Demand, ...]:
    """The first panel as long as needed, the others cut `others` to match its print."""
    return (
        panel("first backing panel", fabric, widths[0], first, 1),
        *whole_panels(fabric, widths[1:], others),
    )
