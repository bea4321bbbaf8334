"""A packet holds the pages that were chosen, once for each name and copy, in the format asked."""

from __future__ import annotations

import re

import pytest

from app.packet.choice import (
    PacketChoice,
    Pages,
    copies_counted,
    correction_of,
    names_listed,
    pages_named,
)
from app.packet.packet import packet_bytes, packet_pages
from app.packet.paper import Format, Paper
from core.lengths import Units
from core.refusal import Refusal
from tests.app.packet.pdf_reader import Seen, pages, reader
from tests.app.packet.plans import plan, seen

DEMO = "tide-pool-runner"
CLASS = ("Ada Brown", "Bo", "Cléo")
INCH = 72.0  # PDF points


def _seen(choice: PacketChoice, name: str = DEMO) -> list[Seen]:
    return pages(packet_bytes(plan(name), choice))


def test_only_the_chosen_pages_are_bound() -> None:
    found = _seen(PacketChoice(pages=(Pages.CUTS,)))
    assert [page.texts[0].words for page in found] == ["The cut order"]


def test_pages_are_bound_in_their_order_however_they_are_written() -> None:
    assert pages_named("cautions,quilt") == (Pages.QUILT, Pages.CAUTIONS)


@pytest.mark.parametrize("text", ["", " , ", "quilt,lining"])
def test_no_page_or_an_unknown_one_is_refused_with_the_words_there_are(text: str) -> None:
    with pytest.raises(Refusal, match=r"--pages: .* write some of quilt, cloths, cuts"):
        pages_named(text)


def test_pages_with_nothing_on_them_are_refused() -> None:
    with pytest.raises(Refusal, match="nothing on them"):
        packet_pages(plan("bare"), PacketChoice(pages=(Pages.CUTS,)))


def test_a_class_gets_a_packet_a_name_each_numbered_for_itself() -> None:
    one = len(seen(DEMO))
    found = _seen(PacketChoice(names=CLASS))
    assert len(found) == 3 * one
    for place, page in enumerate(found):
        assert f"page {place % one + 1} of {one}" in page.words
        assert CLASS[place // one] in page.words
        others = set(CLASS) - {CLASS[place // one]}
        assert not any(other in page.words for other in others)


def test_copies_follow_each_other_and_the_outline_leads_to_the_first() -> None:
    data = packet_bytes(plan(DEMO), PacketChoice(copies=2, pages=(Pages.QUILT, Pages.CUTS)))
    assert len(pages(data)) == 4
    assert len([e for e in reader(data).outline if not isinstance(e, list)]) == 2


def test_a_class_shares_what_is_the_same_in_all_packets() -> None:
    alone = len(packet_bytes(plan(DEMO)))
    many = len(packet_bytes(plan(DEMO), PacketChoice(names=tuple(f"Pupil {n}" for n in range(30)))))
    assert many < 8 * alone


def test_the_same_choice_gives_the_same_bytes() -> None:
    choice = PacketChoice(names=CLASS, form=Format(Paper.A4, large=True))
    assert packet_bytes(plan(DEMO), choice) == packet_bytes(plan(DEMO), choice)


def test_a_name_said_twice_is_one_packet() -> None:
    assert names_listed("Ada, Ben\nAda") == ("Ada", "Ben")


@pytest.mark.parametrize("text", ["x" * 10_000, "Ada, B\0en", "Ada, " + "B" * 81])
def test_what_is_no_name_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="names of at most 80 letters") as refused:
        names_listed(text)
    assert refused.value.path == "--for"


def test_more_packets_than_a_file_should_hold_are_refused() -> None:
    names = tuple(f"Pupil {n}" for n in range(200))
    assert PacketChoice(names=names, copies=2).copies == 2
    with pytest.raises(Refusal, match="50 for each name are 10000 packets") as refused:
        PacketChoice(names=names, copies=50)
    assert refused.value.path == "--copies"


@pytest.mark.parametrize("text", ["0", "-1", "many", "1.5", "51", ""])
def test_a_count_of_copies_that_is_none_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="whole number from 1 to 50"):
        copies_counted(text)


@pytest.mark.parametrize("name", ["harbour-lights", "king", "slivers", "metric class"])
def test_large_print_has_no_words_under_18_points_and_none_cut_off(name: str) -> None:
    for page in _seen(PacketChoice(form=Format(large=True)), name):
        for text in page.texts:
            assert text.size >= 18 - 0.01, text
            left, bottom, right, top = text.box
            assert 36 - 0.01 <= left < right <= 612 - 36 + 0.01, text
            assert 36 - 0.01 <= bottom < top <= 792 - 36 + 0.01, text


def test_a_printers_correction_is_taken_by_every_length() -> None:
    """A printer that makes 100 mm of 98: what is sent to it is 100/98 times as long."""
    form = Format(correction=correction_of("98 mm", Units.INCHES))
    page = _seen(PacketChoice(pages=(Pages.CLOTHS,), form=form))[0]
    square = INCH * 100 / 98
    assert any(s.outer_size == pytest.approx((square, square), abs=0.02) for s in page.shapes)
    bar = 100 / 25.4 * INCH * 100 / 98
    assert any(s.outer_size[0] == pytest.approx(bar, abs=0.02) for s in page.shapes)
    assert re.search(r"1\.02 times", re.sub(r"\s+", " ", page.words))


@pytest.mark.parametrize("text", ["10 mm", "0", "98", "a bit", "200 mm"])
def test_a_bar_that_no_printer_makes_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="--bar"):
        correction_of(text, Units.INCHES)
