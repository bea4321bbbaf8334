"""What was said by hand of a fabric's cloths, in the plan's JSON: exact inches."""

from __future__ import annotations

from typing import Any

from core.by_hand.said import HandFlaw, HandMotif, HandPin
from core.lay.lay import Placement
from core.lay.places_file import rect_document, sheet_document
from core.plan import FabricPlan, Plan


def by_hand_document(plan: Plan, fabric: FabricPlan) -> dict[str, Any]:
    """Pins and motifs with the piece that each came to (null: none), and the flaws."""
    pinned, holding = dict(fabric.by_hand.pins), dict(fabric.by_hand.motifs)
    own = fabric.fabric
    return {
        "pins": [_pin(plan, pin, pinned.get(i)) for i, pin in enumerate(own.pins)],
        "flaws": [_flaw(flaw) for flaw in own.flaws],
        "motifs": [_motif(plan, motif, holding.get(i)) for i, motif in enumerate(own.motifs)],
    }


def _pin(plan: Plan, pin: HandPin, placed: Placement | None) -> dict[str, Any]:
    return {
        "name": pin.name,
        "copy": pin.copy,
        "run_copy": pin.run_copy,
        "length": None if pin.length is None else str(pin.length),
        **sheet_document(pin.sheet),
        "x": str(pin.x),
        "y": str(pin.y),
        "turned": pin.turned,
        "label": _label(plan, placed),
    }


def _flaw(flaw: HandFlaw) -> dict[str, Any]:
    return {"word": flaw.word, **sheet_document(flaw.sheet), **rect_document(flaw.rect)}


def _motif(plan: Plan, motif: HandMotif, placed: Placement | None) -> dict[str, Any]:
    at = {**sheet_document(motif.sheet), **rect_document(motif.rect)}
    return {"name": motif.name, **at, "label": _label(plan, placed)}


def _label(plan: Plan, placed: Placement | None) -> str | None:
    return None if placed is None else plan.label(placed)
