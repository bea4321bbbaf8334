"""Whatever is put on paper, in a picture or in a table is told in the language spoken."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from io import StringIO

import pytest

from app.commands.summary import summary
from app.comparing import comparison_lines, staircase_lines
from app.packet.choice import USUAL_PAGES, PacketChoice, Pages, asked_of
from app.packet.packet import packet_bytes, packet_pages
from app.packet.page import Page, Picture, Words
from app.packet.paper import Format, Paper
from app.pictures import pictures
from app.tables import table_files
from core.batting_packages import Package
from core.drawing.marks import Drawing, Label
from core.plan import Plan, make_plan
from core.quilt import Backing, Batting, Binding, Border, Corners, Kits, Project, Quilt, Sleeve
from core.quilt import Label as Patch
from tests.app.packet.pdf_reader import reader
from tests.app.packet.projects import HARD, said_by_hand
from tests.finishes import FINISHES
from tests.items import ITEMS
from tests.items_described import without_latin_names
from tests.nameless import nameless
from tests.stand_in import untold

EVERY = tuple(Pages)
SAME = {"Crossgrain", "ReportLab", "Unicode"}


def everything() -> Project:
    """A class of three with kits of its own, cloth with flaws, motifs and pins, and every part."""
    project = said_by_hand()
    print_ = replace(project.fabrics[0], on_hand=FINISHES["Framed"]().fabrics[0].on_hand)
    own = (Package("Ω", Fraction(72), Fraction(90)),)
    return nameless(
        replace(
            project,
            quilt=replace(project.quilt, copies=3, kits=Kits.EACH),
            fabrics=(print_, *project.fabrics[1:]),
            borders=(*project.borders, Border("plain", Fraction(2), Corners.MITRED)),
            backing=Backing("plain"),
            batting=Batting(packages=own),
            sleeve=Sleeve("plain"),
            label=Patch("plain", Fraction(6), Fraction(4)),
        )
    )


def small() -> Project:
    """A quilt that is only bound, for the pages that compare: they plan it many times."""
    bound = Project(
        Quilt("Ω", Fraction(36), Fraction(45)),
        (said_by_hand().fabrics[1],),
        binding=Binding("plain", Fraction(5, 2)),
    )
    return nameless(bound)


def drawn(drawing: Drawing) -> Iterator[str]:
    yield from (text for mark in drawing.marks if isinstance(mark, Label) for text in mark.texts)


def printed(pages: Iterable[Page]) -> Iterator[str]:
    """All words of the pages: lines, outline entries, and what stands on their pictures."""
    for page in pages:
        yield from (entry.title for entry in page.entries)
        for item in (*page.items, *page.foot):
            if isinstance(item, Words):
                yield item.text
            elif isinstance(item, Picture):
                yield from drawn(item.drawing)


def left(texts: Iterable[str]) -> dict[str, list[str]]:
    """The texts that were not told, with the words that show it."""
    found = {text: [word for word in untold(text) if word not in SAME] for text in texts}
    return {text: words for text, words in found.items() if words}


def beside_the_packet(plan: Plan) -> Iterator[str]:
    """Pictures with their titles, tables, and what the terminal shows."""
    for named in pictures(plan):
        yield named.drawing.title
        yield from drawn(named.drawing)
    for _, table in table_files(plan):
        for row in csv.reader(StringIO(table.decode("utf-8-sig"))):
            yield from row
    yield from summary(plan).splitlines()


@pytest.mark.usefixtures("stand_in")
@pytest.mark.parametrize("large", [False, True])
def test_every_page_of_a_packet_with_everything_in_it_is_told(*, large: bool) -> None:
    plan = make_plan(everything(), draft=True)
    form = Format(Paper.A4, large=large, correction=Fraction(50, 49))
    choice = PacketChoice(USUAL_PAGES, names=("Ωα", "Ωβ"), form=form)
    assert left(printed(packet_pages(plan, choice))) == {}
    assert left(beside_the_packet(plan)) == {}


@pytest.mark.usefixtures("stand_in")
def test_the_pages_that_compare_are_told_and_what_the_terminal_shows_of_them() -> None:
    project, asked = small(), asked_of(small(), EVERY)
    plan = make_plan(project, draft=True)
    assert left(printed(packet_pages(plan, PacketChoice(EVERY), asked))) == {}
    assert asked.comparison is not None
    assert asked.stairs is not None
    assert left(comparison_lines(asked.comparison, project.units)) == {}
    assert left(staircase_lines(project, asked.stairs)) == {}


@pytest.mark.parametrize("name", ITEMS)
def test_every_way_of_finishing_is_told_on_paper(name: str, request: pytest.FixtureRequest) -> None:
    project = without_latin_names(name)  # in English, since what is new is named in the language
    request.getfixturevalue("stand_in")
    plan = make_plan(project, draft=True)
    assert left(printed(packet_pages(plan))) == {}
    assert left(beside_the_packet(plan)) == {}


@pytest.mark.usefixtures("stand_in")
@pytest.mark.parametrize("name", [*FINISHES, *(name for name in HARD if name != "king")])
def test_what_is_hard_on_paper_is_told_there(name: str) -> None:
    plan = make_plan(nameless({**FINISHES, **HARD}[name]()), draft=True)
    assert left(printed(packet_pages(plan))) == {}
    assert left(beside_the_packet(plan)) == {}


@pytest.mark.usefixtures("stand_in")
def test_what_a_reader_of_the_file_shows_about_it_is_told() -> None:
    read = reader(packet_bytes(make_plan(everything(), draft=True)))
    assert read.metadata is not None
    assert left(str(read.metadata[key]) for key in ("/Title", "/Subject", "/Keywords")) == {}
