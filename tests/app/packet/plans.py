"""Plans and packets that many tests look at, made once."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Final

from app.languages import ENGLISH, speak_language
from app.packet.choice import PacketChoice
from app.packet.packet import packet_bytes
from app.packet.paper import Format, Paper
from core.plan import Plan, make_plan
from core.project_file import load
from tests.app.packet.pdf_reader import Seen, pages
from tests.app.packet.projects import HARD
from tests.finishes import FINISHES

_ASSETS = Path(__file__).parents[3] / "assets"
DEMOS: Final = {path.stem: path for path in sorted(_ASSETS.glob("*.crossgrain"))}
NAMES: Final = (*DEMOS, *HARD)


@cache
def plan(name: str) -> Plan:
    return make_plan(load(DEMOS[name]) if name in DEMOS else {**HARD, **FINISHES}[name]())


@cache
def packet(name: str, paper: Paper = Paper.LETTER, *, grey: bool = False) -> bytes:
    return packet_bytes(plan(name), PacketChoice(form=Format(paper, grey)))


@cache
def seen(name: str, paper: Paper = Paper.LETTER) -> tuple[Seen, ...]:
    return tuple(pages(packet(name, paper)))


@cache
def seen_in(language: str, name: str) -> tuple[Seen, ...]:
    """The packet as it is in another language."""
    speak_language(language)
    try:
        return tuple(pages(packet_bytes(make_plan(plan(name).project, draft=True))))
    finally:
        speak_language(ENGLISH)
