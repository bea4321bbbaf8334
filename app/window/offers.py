"""What is up for choice in the fields of a part: fabrics, a fabric's cloths, what is cut of it."""

from __future__ import annotations

from typing import NamedTuple

from app.window.field import FileForm, value_at, with_unit
from core.language import told
from core.numerals import told_to_edit
from core.plan import Plan


class Offers(NamedTuple):
    """Fabrics by name; cloths of the part's own fabric, as the file has them and in words."""

    fabrics: tuple[str, ...]
    sheets: tuple[tuple[str, str], ...]


def offers_of(form: FileForm, prefix: str) -> Offers:
    """What the part at a prefix may choose from.

    >>> offers_of({"fabrics": [{"name": "plum", "on_hand": []}]}, "fabrics[0].flaws[0]")
    Offers(fabrics=('plum',), sheets=(('bolt', 'The bolt'),))
    """
    fabric, _, inner = prefix.partition(".")
    on_hand = value_at(form, f"{fabric}.on_hand") if inner and fabric.startswith("fabrics[") else ()
    units = form.get("units", "")
    pieces = (
        (f"on_hand[{place}]", _on_hand(size, units)) for place, size in enumerate(on_hand or ())
    )
    names = tuple(fabric["name"] for fabric in form["fabrics"])
    return Offers(names, (("bolt", told("The bolt")), *pieces))


class Laid(NamedTuple):
    """A part that is cut from a fabric: its letter and its name; `joined` if it is of strips."""

    letter: str
    name: str
    joined: bool


def laid_of(plan: Plan, fabric: str) -> tuple[Laid, ...]:
    """What a plan cuts from a fabric."""
    parts = (part for part in plan.parts if part.fabric == fabric)
    return tuple(Laid(part.letter, part.name, part.along is None) for part in parts)


def _on_hand(size: FileForm, units: str) -> str:
    return told(
        "On hand {across} × {along}",
        across=told_to_edit(size["across"]),
        along=with_unit(size["along"], units),
    )
