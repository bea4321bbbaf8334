"""What was said by hand, as it came out in a lay: which piece lies pinned, which holds what."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from core.by_hand.minded import Aside, minded
from core.by_hand.said import HandMotif
from core.fabric import Fabric
from core.finish.demand import Wanted
from core.lay.lay import Placement
from core.lay.problem import Pin


@dataclass(frozen=True, slots=True)
class ByHand:
    """Pins and motifs by their place among what is said of the fabric, each with its piece.

    `aside` is what the lay did not mind.
    """

    pins: tuple[tuple[int, Placement], ...] = ()
    motifs: tuple[tuple[int, Placement], ...] = ()
    aside: tuple[Aside, ...] = ()

    def pin_of(self, placement: Placement) -> int | None:
        """The place of the pin that holds a piece; None if it is free."""
        return next((place for place, pinned in self.pins if pinned == placement), None)

    def motifs_of(self, placement: Placement) -> tuple[int, ...]:
        """The places of the motifs that a piece holds."""
        return tuple(place for place, holder in self.motifs if holder == placement)


NOTHING_BY_HAND: Final = ByHand()


def as_laid_by_hand(
    fabric: Fabric, wanted: Sequence[Wanted], placements: Sequence[Placement]
) -> ByHand:
    """What came of the pins and motifs of a fabric."""
    said = minded(fabric, wanted)
    pins = (
        (place, next((p for p in placements if _obeys(p, pin)), None)) for place, pin in said.pins
    )
    motifs = (
        (place, next((p for p in placements if _holds(p, motif)), None))
        for place, motif in enumerate(fabric.motifs)
    )
    return ByHand(
        tuple((place, placed) for place, placed in pins if placed is not None),
        tuple((place, placed) for place, placed in motifs if placed is not None),
        said.aside,
    )


def _obeys(placed: Placement, pin: Pin) -> bool:
    rect = placed.rect
    there = (placed.sheet, rect.x, rect.y, placed.turned) == (pin.sheet, pin.x, pin.y, pin.turned)
    return there and placed.name == pin.name and pin.copy in (None, placed.copy)


def _holds(placed: Placement, motif: HandMotif) -> bool:
    same = (placed.name, placed.sheet) == (motif.name, motif.sheet)
    return same and placed.rect.holds(motif.rect)
