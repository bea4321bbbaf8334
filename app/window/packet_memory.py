"""The pages and the format that were chosen last, remembered between packets."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from app.packet.choice import (
    USUAL_PAGES,
    PacketChoice,
    Pages,
    bar_of,
    correction_of,
    pages_named,
)
from app.packet.paper import Format, Paper
from app.window.memory import Memory
from core.lengths import Units
from core.refusal import Refusal

_PAGES, _GREY, _LARGE, _BAR = "packet pages", "packet grey", "packet large", "packet bar"
_YES: Final = "yes"


def remembered(memory: Memory, paper: Paper) -> PacketChoice:
    """The choice to start from; names and copies belong to one class, and start empty."""
    form = Format(
        paper,
        memory.text(_GREY, "") == _YES,
        memory.text(_LARGE, "") == _YES,
        _correction(memory.text(_BAR, "")),
    )
    return PacketChoice(_pages(memory.text(_PAGES, "")), form=form)


def remember(memory: Memory, choice: PacketChoice) -> None:
    """Keep the pages and the format; the paper has a place of its own."""
    form = choice.form
    memory.keep(_PAGES, ",".join(choice.pages))
    memory.keep(_GREY, _YES if form.grey else "")
    memory.keep(_LARGE, _YES if form.large else "")
    memory.keep(_BAR, bar_of(form.correction))


def _pages(text: str) -> tuple[Pages, ...]:
    try:
        return pages_named(text)
    except Refusal:
        return USUAL_PAGES


def _correction(text: str) -> Fraction:
    try:
        return correction_of(text, Units.MILLIMETRES) if text else Fraction(1)
    except Refusal:
        return Fraction(1)
