"""What can be wrong with a lay, as data."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class FaultKind(StrEnum):
    """The kinds of fault that `core.lay.check` finds."""

    OVERLAP = "overlap"
    OFF_CLOTH = "off the cloth"
    NO_SUCH_SHEET = "no such sheet"
    WRONG_CLOTH = "wrong cloth"
    WRONG_SIZE = "wrong size"
    GRAIN = "against the grain"
    MISSING = "missing"
    SURPLUS = "surplus"
    STRIP = "strip width"
    SHORT_SEGMENT = "short segment"
    SHORT_RUN = "short run"
    WRONG_USE = "wrong length used"
    BOUGHT = "bought wrongly"
    BOUND = "wrong claim"
    CUTS = "cuts"
    STAGES = "stages"
    OFFCUT = "offcut"
    PIN = "pin"
    FLAW = "flaw"
    MOTIF = "motif"


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault: its kind, whom it concerns, and a plain sentence."""

    kind: FaultKind
    names: tuple[str, ...]
    sentence: str
