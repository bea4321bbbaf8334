"""The packet: a plan on paper, for the table."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import assert_never

from app.packet.cautions_page import cautions_pages
from app.packet.choice import NOTHING_ASKED, THE_USUAL, Asked, PacketChoice, Pages
from app.packet.column import FOOT, FOOT_HEIGHT
from app.packet.comparison_page import comparison_pages
from app.packet.cut_order_page import cut_order_pages
from app.packet.page import Item, Page, Rule, Words
from app.packet.paper import Format
from app.packet.print_pages import print_pages
from app.packet.quilt_page import quilt_pages, respelled
from app.packet.sewing_page import sewing_pages
from app.packet.sheet_page import cloth_pages
from app.packet.staircase_page import staircase_pages
from app.packet.tags_page import tag_pages
from app.packet.true_size_page import true_size_pages
from app.type_fit import shortened
from app.typeface import typeface
from core.language import told
from core.plan import Plan
from core.refusal import Refusal
from core.whole_file import write_whole


def write_packet(plan: Plan, path: Path, choice: PacketChoice = THE_USUAL) -> None:
    """Write the packet to `path`, whole or not at all. Raises `OSError` and `Refusal`."""
    write_whole(path, packet_bytes(plan, choice))


def packet_bytes(
    plan: Plan, choice: PacketChoice = THE_USUAL, asked: Asked = NOTHING_ASKED
) -> bytes:
    """The packet as a PDF; the same plan and choice give the same bytes. Raises `Refusal`."""
    title = told("{quilt}: cutting packet", quilt=plan.project.quilt.name or told("A quilt"))
    return print_pages(
        packet_pages(plan, choice, asked), title, choice.form, keywords=respelled(plan)
    )


def packet_pages(
    plan: Plan, choice: PacketChoice = THE_USUAL, asked: Asked = NOTHING_ASKED
) -> tuple[Page, ...]:
    """A packet for each name, `copies` of each; pages are numbered within a packet.

    Pages that compare are there if what they show has been `asked` for.

    Raises `Refusal` where the chosen kinds of pages give none.
    """
    shared = {kind: _pages(plan, choice.form, kind, asked) for kind in choice.pages}
    pages: list[Page] = []
    for name in choice.names or ("",):
        bound = [page for kind in choice.pages for page in _for(name, kind, shared, plan, choice)]
        if not bound:
            raise Refusal(
                "pages", told("the chosen pages have nothing on them; choose the quilt's page")
            )
        footed = tuple(_footed(bound, plan.project.quilt.name, name, choice.form))
        for copy in range(choice.copies):
            pages.extend(footed if copy == 0 else (replace(page, entries=()) for page in footed))
    return tuple(pages)


def _for(
    name: str,
    kind: Pages,
    shared: dict[Pages, tuple[Page, ...]],
    plan: Plan,
    choice: PacketChoice,
) -> tuple[Page, ...]:
    """The pages of one kind in one person's packet: only the first bears the name."""
    if name and kind is Pages.QUILT:
        first = quilt_pages(plan, choice.form, name)[0]
        return (first, *shared[kind][1:])
    return shared[kind]


def _pages(plan: Plan, form: Format, kind: Pages, asked: Asked) -> tuple[Page, ...]:
    match kind:
        case Pages.QUILT:
            return quilt_pages(plan, form)
        case Pages.CLOTHS:
            return cloth_pages(plan, form)
        case Pages.CUTS:
            return cut_order_pages(plan, form) if plan.parts else ()
        case Pages.SEWING:
            return sewing_pages(plan, form)
        case Pages.TAGS:
            return tag_pages(plan, form)
        case Pages.TRUE_SIZE:
            return true_size_pages(plan, form)
        case Pages.CAUTIONS:
            return cautions_pages(form)
        case Pages.COMPARISON:
            return comparison_pages(asked.comparison, form) if asked.comparison else ()
        case Pages.STAIRCASE:
            return staircase_pages(plan.project, asked.stairs, form) if asked.stairs else ()
        case _:
            assert_never(kind)


def _footed(pages: Sequence[Page], quilt: str, name: str, form: Format) -> Iterator[Page]:
    """The pages with the project's name, whose they are, and "page n of m" at the foot."""
    face = typeface()
    rule, foot = form.height - FOOT_HEIGHT + 8, form.height - 3
    for number, page in enumerate(pages, start=1):
        count = told("page {number} of {count}", number=number, count=len(pages))
        left = form.width - face.width(count) * FOOT
        whose = (
            told("{quilt}, for {name}", quilt=quilt, name=name) if quilt and name else name or quilt
        )
        shown = shortened(face.words(whose), left - 20, face.width, FOOT)
        items: tuple[Item, ...] = (
            Rule((0.0, rule), (form.width, rule), 0.5),
            Words((0.0, foot), shown, FOOT),
            Words((left, foot), count, FOOT),
        )
        yield replace(page, foot=items)
