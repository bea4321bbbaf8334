"""The four strips of a border: which corner each covers, and how long it is cut.

A strip is as long as the centre's side that it is sewn to, and longer by the
crossing strip's finished width for each corner that it covers:

* butted (as courthouse steps are): two opposite strips first, the other two over
  their ends, so that the second pair covers all corners;
* squares: no strip covers a corner; mitred: each covers both, on the diagonal;
* pinwheel: each covers the corner at its one end; the first seam is sewn partly,
  and finished when the last strip is on;
* round (as a log cabin is): one strip after another, each over the end of the one
  before; the first covers no corner, the last covers two.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from core.lengths import Inches
from core.quilt import Border, Corners, First


class Side(StrEnum):
    """A side of the quilt, seen from the front."""

    LEFT = "left"
    TOP = "top"
    RIGHT = "right"
    BOTTOM = "bottom"

    @property
    def upright(self) -> bool:
        """Whether its strip runs from top to bottom."""
        return self in (Side.LEFT, Side.RIGHT)


# Clockwise, as a border goes round.
CLOCKWISE = (Side.LEFT, Side.TOP, Side.RIGHT, Side.BOTTOM)
Reach = tuple[bool, bool]  # the corner at its start (top or left), and at its end


@dataclass(frozen=True, slots=True)
class BorderStrip:
    """Equal strips of one border, one for each of `sides`, cut `length` × `cut_width`.

    `parts` are the lengths of the segments that make it, where it is pieced by itself.
    """

    name: str
    sides: tuple[Side, ...]
    fabric: str
    cut_width: Inches
    length: Inches
    parts: tuple[Inches, ...] = ()

    @property
    def count(self) -> int:
        return len(self.sides)


def covered(border: Border) -> dict[Side, Reach]:
    """Which corners the strip on each side covers."""
    none, both = (False, False), (True, True)
    match border.corners:
        case Corners.SQUARES:
            return dict.fromkeys(CLOCKWISE, none)
        case Corners.MITRED:
            return dict.fromkeys(CLOCKWISE, both)
        case Corners.BUTTED:
            late = border.first is First.ENDS
            return {side: both if side.upright is late else none for side in CLOCKWISE}
        case Corners.PINWHEEL:
            start, end = (True, False), (False, True)
            return dict(zip(CLOCKWISE, (start, end, end, start), strict=True))
        case Corners.ROUND:
            start, end = (True, False), (False, True)
            if border.first is First.ENDS:
                return dict(zip(CLOCKWISE, (both, none, start, end), strict=True))
            return dict(zip(CLOCKWISE, (none, start, start, both), strict=True))


def border_strips(
    border: Border, number: int, centre: tuple[Inches, Inches], finished: tuple[Inches, Inches]
) -> tuple[BorderStrip, ...]:
    """The strips round a centre (width, length), the sides and the ends so wide finished.

    Equal strips on opposite sides count as one; a strip of no width is none.
    """
    single = {side: _strip(border, number, side, centre, finished) for side in CLOCKWISE}
    strips: list[BorderStrip] = []
    pairs = ((Side.LEFT, Side.RIGHT, "side"), (Side.TOP, Side.BOTTOM, "top and bottom"))
    for one, other, together in pairs:
        if finished[0 if one.upright else 1] == 0:
            continue
        a, b = single[one], single[other]
        if (a.fabric, a.length) == (b.fabric, b.length):
            name = f"border {number} {together}"
            strips.append(BorderStrip(name, (one, other), a.fabric, a.cut_width, a.length))
        else:
            strips += [a, b]
    return tuple(strips)


def _strip(
    border: Border,
    number: int,
    side: Side,
    centre: tuple[Inches, Inches],
    finished: tuple[Inches, Inches],
) -> BorderStrip:
    along, across = (1, 0) if side.upright else (0, 1)
    corners = sum(covered(border)[side])
    margin = border.mitre_margin if border.corners is Corners.MITRED else Fraction(0)
    return BorderStrip(
        f"border {number} {side}",
        (side,),
        border.cloth_of(side),
        finished[across] + 2 * border.seam,
        centre[along] + corners * finished[along] + margin,
    )
