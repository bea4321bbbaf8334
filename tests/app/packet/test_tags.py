"""A tag for every piece, with its letter, part, size and fabric."""

from __future__ import annotations

import pytest

from app.packet.choice import PacketChoice, Pages
from app.packet.packet import packet_bytes
from core.lengths import show_size, typeset
from tests.app.packet.pdf_reader import pages
from tests.app.packet.plans import NAMES, plan


@pytest.mark.parametrize("name", [name for name in NAMES if name != "bare"])
def test_every_piece_has_its_tag_and_no_other(name: str) -> None:
    made = plan(name)
    found = pages(packet_bytes(made, PacketChoice(pages=(Pages.TAGS,))))
    texts = [text for page in found for text in page.texts]
    tags = [text.words for text in texts if text.size == pytest.approx(18)]
    placed = [(made.label(p), p) for fabric in made.fabrics for p in fabric.lay.placements]
    assert sorted(tags) == sorted(label for label, _ in placed)
    words = [text.words.replace("\u00a0", " ") for text in texts]
    for label, piece in placed:
        size = show_size(piece.rect.across, piece.rect.along, made.project.units)
        part = "".join(words[words.index(label) :][1:4]).replace(" ", "")
        name = made.part(piece.name).name
        assert part.startswith(f"{name}{typeset(size)}".replace(" ", "")), label
