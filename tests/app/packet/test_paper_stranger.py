"""From the paper alone: the cut order, followed word by word, ends with the pieces of the plan."""

from __future__ import annotations

import pytest

from app.packet.choice import PacketChoice, Pages
from app.packet.packet import packet_bytes
from core.lengths import show, typeset
from core.plan import Plan
from tests.app.packet.paper_stranger import Size, Table, cut_lines, follow, read_number
from tests.app.packet.pdf_reader import pages
from tests.app.packet.plans import NAMES, plan
from tests.finishes import FINISHES

CUT = [name for name in (*NAMES, *FINISHES) if name != "bare"]


def _followed(made: Plan) -> Table:
    table = Table()
    for line in cut_lines(pages(packet_bytes(made, PacketChoice(pages=(Pages.CUTS,))))):
        follow(table, line)
    return table


def _wanted(made: Plan) -> dict[str, Size]:
    """The plan's pieces, in the numbers that a page can show."""
    units = made.project.units
    sizes = {}
    for fabric in made.fabrics:
        for placed in fabric.lay.placements:
            across, along = (
                read_number(typeset(show(side, units, unit=False)))
                for side in (placed.rect.across, placed.rect.along)
            )
            sizes[made.label(placed)] = (across, along)
    return sizes


def _whole(made: Plan) -> set[str]:
    """Pieces that take a whole piece of cloth, and so are not cut."""
    return {
        made.label(placed)
        for fabric in made.fabrics
        for placed in fabric.lay.placements
        if placed.rect == dict(fabric.lay.sheets)[placed.sheet]
    }


@pytest.mark.parametrize("name", CUT)
def test_the_cut_order_on_paper_gives_exactly_the_pieces_of_the_plan(name: str) -> None:
    made = plan(name)
    table = _followed(made)
    wanted = _wanted(made)
    assert sorted(table.done) == sorted(wanted)
    assert {**table.pieces, **{k: wanted[k] for k in _whole(made)}} == wanted
