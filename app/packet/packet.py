"""The packet: a plan on paper, for the table."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from app.packet.column import FOOT, FOOT_HEIGHT
from app.packet.cut_order_page import cut_order_pages
from app.packet.page import Page, Rule, Words
from app.packet.paper import FRAME_HEIGHT, FRAME_WIDTH, Paper
from app.packet.print_pages import print_pages
from app.packet.quilt_page import quilt_pages
from app.packet.sheet_page import sheet_pages
from app.style import PAPER_COLOUR, PAPER_GREY
from app.type_fit import shortened
from app.typeface import typeface
from core.drawing.cloth import sheets_of
from core.plan import Plan
from core.whole_file import write_whole


def write_packet(
    plan: Plan, path: Path, *, paper: Paper = Paper.LETTER, grey: bool = False
) -> None:
    """Write the packet to `path`, whole or not at all. Raises `OSError`."""
    write_whole(path, packet_bytes(plan, paper=paper, grey=grey))


def packet_bytes(plan: Plan, *, paper: Paper = Paper.LETTER, grey: bool = False) -> bytes:
    """The packet as a PDF; the same plan gives the same bytes."""
    title = f"{plan.project.quilt.name or 'A quilt'}: cutting packet"
    return print_pages(packet_pages(plan), title, paper, PAPER_GREY if grey else PAPER_COLOUR)


def packet_pages(plan: Plan) -> tuple[Page, ...]:
    """All pages: the quilt, each sheet of cloth, the cut order; numbered at the foot."""
    pages = [
        *quilt_pages(plan),
        *(page for place in range(len(plan.fabrics)) for page in _lays(plan, place)),
        *(cut_order_pages(plan) if plan.parts else ()),
    ]
    return tuple(_footed(pages, plan.project.quilt.name))


def _lays(plan: Plan, fabric_index: int) -> Iterator[Page]:
    for sheet in sheets_of(plan.fabrics[fabric_index]):
        yield from sheet_pages(plan, fabric_index, sheet)


def _footed(pages: Sequence[Page], name: str) -> Iterator[Page]:
    """The pages with the project's name and "page n of m" at the foot."""
    face = typeface()
    rule = FRAME_HEIGHT - FOOT_HEIGHT + 8
    for number, page in enumerate(pages, start=1):
        count = f"page {number} of {len(pages)}"
        left = FRAME_WIDTH - face.width(count) * FOOT
        shown = shortened(face.words(name), left - 20, face.width, FOOT)
        foot = FRAME_HEIGHT - 3
        yield replace(
            page,
            items=(
                *page.items,
                Rule((0.0, rule), (FRAME_WIDTH, rule), 0.5),
                Words((0.0, foot), shown, FOOT),
                Words((left, foot), count, FOOT),
            ),
        )
