"""What was said by hand of a fabric's cloths, in the file: pins, flaws and motifs.

The keys are those of a lay problem. A list that is empty is not written, so that a
file in which nothing is said by hand is as it was before there were such lists.
"""

from __future__ import annotations

import re
from typing import Any, Final, TypedDict

from core.by_hand.said import HandFlaw, HandMotif, HandPin, Said
from core.fabric import Fabric
from core.language import told
from core.lay.lay import Sheet
from core.lay.places_file import MOST_FLAWS, MOST_PIECES, read_region, read_sheet
from core.lengths import Units, exact_text
from core.reading import Fields
from core.refusal import Refusal

SIDES: Final = ("x", "y", "across", "along")
_SHEET: Final = re.compile(r"bolt|on_hand\[\d{1,3}\]", re.ASCII)


class ByHand(TypedDict):
    """The fields of a fabric that hold what is said by hand."""

    pins: tuple[HandPin, ...]
    flaws: tuple[HandFlaw, ...]
    motifs: tuple[HandMotif, ...]


def read_by_hand(fields: Fields) -> ByHand:
    """What the object of a fabric holds of it; nothing, where the lists are absent."""
    units = fields.units
    return ByHand(
        pins=fields.each("pins", lambda d, p: _pin(Fields(d, p, units)), most=MOST_PIECES),
        flaws=fields.each("flaws", lambda d, p: _flaw(Fields(d, p, units)), most=MOST_FLAWS),
        motifs=fields.each("motifs", lambda d, p: _motif(Fields(d, p, units)), most=MOST_FLAWS),
    )


def _pin(fields: Fields) -> HandPin:
    pin = HandPin(
        name=fields.text("name"),
        x=fields.length("x", zero=True),
        y=fields.length("y", zero=True),
        sheet=_sheet(fields),
        turned=fields.flag("turned", default=False),
        copy=fields.count("copy", most=MOST_PIECES) if fields.has("copy") else None,
        length=fields.length("length") if fields.has("length") else None,
        run_copy=fields.count("run_copy", 1, most=MOST_PIECES),
        across=fields.length("across") if fields.has("across") else None,
        along=fields.length("along") if fields.has("along") else None,
    )
    fields.done()
    return pin


def _flaw(fields: Fields) -> HandFlaw:
    flaw = HandFlaw(read_region(fields), _sheet(fields), fields.text("word", "", empty=True))
    fields.done()
    return flaw


def _motif(fields: Fields) -> HandMotif:
    name = fields.text("name") if fields.has("name") else None
    motif = HandMotif(name, read_region(fields), _sheet(fields))
    fields.done()
    return motif


def _sheet(fields: Fields) -> Sheet:
    sheet = read_sheet(fields)
    if not _SHEET.fullmatch(sheet.on):
        raise Refusal(
            fields.at("on"), told('write "bolt", or "on_hand[0]" for the first piece on hand')
        )
    return sheet


def by_hand_documents(fabric: Fabric, units: Units) -> dict[str, Any]:
    """The lists of a fabric as the file has them."""
    lists: dict[str, list[dict[str, Any]]] = {
        "pins": [said_document(pin, units) for pin in fabric.pins],
        "flaws": [said_document(flaw, units) for flaw in fabric.flaws],
        "motifs": [said_document(motif, units) for motif in fabric.motifs],
    }
    return {key: said for key, said in lists.items() if said}


def said_document(said: Said, units: Units) -> dict[str, Any]:
    """A pin, a flaw or a motif as the file has it."""
    on = {"on": said.sheet.on, "on_copy": said.sheet.copy}
    if isinstance(said, HandPin):
        cut = {"across": said.across, "along": said.along}
        return {
            "name": said.name,
            "copy": said.copy,
            "run_copy": said.run_copy,
            "length": None if said.length is None else exact_text(said.length, units),
            **on,
            "x": exact_text(said.x, units),
            "y": exact_text(said.y, units),
            "turned": said.turned,
            **{key: exact_text(side, units) for key, side in cut.items() if side is not None},
        }
    sides = {
        key: exact_text(getattr(said.rect, key), units) for key in ("x", "y", "across", "along")
    }
    if isinstance(said, HandFlaw):
        return {"word": said.word, **on, **sides}
    return {"name": said.name, **on, **sides}
