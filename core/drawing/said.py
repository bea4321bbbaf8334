"""What was said of a cloth by hand, on its picture: flaws, motifs, and pins.

Each is told by words and by its own hatch or line, not by colour alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import cos, pi, sin

from core.drawing.frame import Frame
from core.drawing.marks import Line, Mark
from core.fabric import Fabric
from core.language import told
from core.lay.lay import Placement, Rect, Sheet
from core.lay.places import meet
from core.plan import FabricPlan

_SHANK, _HEAD = Fraction(3, 2), 0.35  # inches of cloth: how long a pin is drawn, how large its head
_SHARE = Fraction(1, 5)  # of a piece's shorter side, that its pin takes at the most
_CORNERS = 12  # of the polygon that a pin's round head is


def flaws_on(frame: Frame, fabric: Fabric, sheet: Sheet, cloth: Rect) -> Iterator[Mark]:
    """The flaws of a sheet, as far as they lie on it: on `cloth`."""
    for flaw in fabric.flaws:
        seen = flaw.rect.within(cloth) if flaw.sheet == sheet else None
        if seen is not None:
            word = flaw.called
            yield frame.area(seen, "flaw")
            yield frame.label(
                seen,
                (
                    told("{flaw}\nkeep clear", flaw=word),
                    told("{flaw}, keep clear", flaw=word),
                    word,
                ),
                "flaw",
            )


def motifs_on(frame: Frame, fabric_plan: FabricPlan, sheet: Sheet, cloth: Rect) -> Iterator[Mark]:
    """The motifs of a sheet; one that lies on no piece says what it is for."""
    laid = fabric_plan.lay.placements
    for motif in fabric_plan.fabric.motifs:
        seen = motif.rect.within(cloth) if motif.sheet == sheet else None
        if seen is not None:
            yield frame.line(seen, "motif")
            if not any(meet(sheet, seen, placed.sheet, placed.rect) for placed in laid):
                words = tuple(dict.fromkeys((motif.called, told("motif"))))
                yield frame.label(seen, words, "motif")


def notes_of(fabric_plan: FabricPlan, placement: Placement) -> str:
    """What is written on a piece beside its letter, name and size."""
    by_hand = fabric_plan.by_hand
    notes = [told("pinned")] if by_hand.pin_of(placement) is not None else []
    return ", ".join([*notes, *([told("with motif")] if by_hand.motifs_of(placement) else [])])


def pin_at(frame: Frame, rect: Rect) -> Iterator[Mark]:
    """A pin in a piece's near corner."""
    reach = min(_SHANK, min(rect.across, rect.along) * _SHARE)
    start = frame.point(rect.x, rect.y)
    x, y = frame.point(rect.x + reach, rect.y + reach)
    radius = _HEAD * float(reach)
    turns = [2 * pi * corner / _CORNERS for corner in range(_CORNERS + 1)]
    yield Line((start, (x, y)), "pin")
    yield Line(tuple((x + radius * cos(turn), y + radius * sin(turn)) for turn in turns), "pin")
