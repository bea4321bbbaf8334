"""The packet as an independent reader finds it: pages, fonts, words, outline."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Sequence
from itertools import combinations
from typing import Any

import pytest

from app.packet.column import HEADING
from app.packet.packet import packet_bytes
from app.packet.paper import Paper
from app.type_fit import shortened, wrap
from app.typeface import typeface
from core.drawing.cloth import sheet_title
from core.lay.lay import Placement
from core.lengths import show, typeset
from core.plan import FabricPlan, Plan
from tests.app.packet.pdf_reader import Seen, Text, pages, reader
from tests.app.packet.plans import DEMOS, NAMES, packet, plan, seen, seen_in
from tests.languages import others

every_plan = pytest.mark.parametrize("name", NAMES)
NO_BREAK = "\u00a0"
# Points. The frame common to both papers: 210 mm × 11 in less 1/2 in a side.
FRAME = (210 / 25.4 * 72 - 72, 11 * 72 - 72)


def words(name: str) -> str:
    """All words of a packet, each run on a line."""
    return "\n".join(page.words for page in seen(name)).replace(NO_BREAK, " ")


@pytest.mark.parametrize(
    ("paper", "size"),
    [
        # ANSI/ASME Y14.1 size A, 8.5 × 11 in, at 72 points to the inch.
        (Paper.LETTER, (612.0, 792.0)),
        # ISO 216:2007 A4, 210 × 297 mm.
        (Paper.A4, (595.276, 841.890)),
    ],
)
def test_every_page_has_the_papers_size(paper: Paper, size: tuple[float, float]) -> None:
    for page in reader(packet("harbour-lights", paper)).pages:
        box = page.mediabox
        assert (float(box.width), float(box.height)) == pytest.approx(size, abs=0.001)


@every_plan
@pytest.mark.parametrize("paper", list(Paper))
def test_all_words_lie_in_the_frame_that_fits_both_papers(name: str, paper: Paper) -> None:
    assert_in_frame(seen(name, paper), paper)


def assert_in_frame(found: Sequence[Seen], paper: Paper) -> None:
    wide, high = paper.size
    left, bottom = (wide - FRAME[0]) / 2, (high - FRAME[1]) / 2
    for page in found:
        for text in page.texts:
            x1, y1, x2, y2 = text.box
            inside = left - 0.01 <= x1 and x2 <= left + FRAME[0] + 0.01
            assert inside, text
            assert bottom - 0.01 <= y1, text
            assert y2 <= bottom + FRAME[1] + 0.01, text


@every_plan
def test_no_words_are_drawn_over_others(name: str) -> None:
    assert_apart(seen(name))


@pytest.mark.parametrize("language", [*others()])
@pytest.mark.parametrize("name", [*DEMOS, "Kursdecke", "slivers"])
def test_other_languages_keep_in_the_frame_and_their_words_apart(language: str, name: str) -> None:
    assert_in_frame(seen_in(language, name), Paper.LETTER)
    assert_apart(seen_in(language, name))


def assert_apart(found: Sequence[Seen]) -> None:
    for number, page in enumerate(found, start=1):
        for one, other in combinations(page.texts, 2):
            assert not _meet(one, other), f"page {number}: {one} and {other}"


def _meet(one: Text, other: Text) -> bool:
    """Whether two boxes overlap by more than a hair (runs of one line touch)."""
    hair = 0.3
    left, bottom = max(one.box[0], other.box[0]), max(one.box[1], other.box[1])
    right, top = min(one.box[2], other.box[2]), min(one.box[3], other.box[3])
    return right - left > hair and top - bottom > hair


@every_plan
def test_only_embedded_subsets_of_our_typeface_are_used(name: str) -> None:
    for page in reader(packet(name)).pages:
        resources: Any = page["/Resources"]
        for font in resources["/Font"].values():
            described = font.get_object()
            assert re.fullmatch(r"/[A-Z]{6}\+DejaVuSans(-Bold)?", described["/BaseFont"])
            assert "/FontFile2" in described["/FontDescriptor"]


@every_plan
def test_no_letter_is_drawn_as_an_empty_box(name: str) -> None:
    # Code 0 of a subset is the font's .notdef glyph, which the reader reads as U+0000.
    assert "\0" not in words(name)


def test_letters_that_the_type_lacks_are_spelled_and_explained() -> None:
    assert "niilaa kapaddaa" in words("king")
    assert "are given in Latin letters" in words("king")
    assert "Latin letters" not in words("harbour-lights")
    keywords = reader(packet("king")).metadata["/Keywords"]  # type: ignore[index]
    assert keywords == "नीला कपड़ा", "the Hebrew name is set as it is written"


def test_a_name_that_runs_from_right_to_left_stands_so() -> None:
    """Each letter of the page in the order in which it is seen."""
    assert "שמיים"[::-1] in words("king")


@every_plan
def test_every_part_is_named_with_its_letter_size_and_count(name: str) -> None:
    lines = words(name).split("\n")
    for part in plan(name).parts:
        size = show(part.across, plan(name).project.units, unit=part.along is None)
        row = lines.index(part.letter, lines.index("What to cut"))
        assert lines[row + 1] == part.name
        assert lines[row + 2].startswith(typeset(size))
        assert str(part.count) in lines[row + 3 : row + 5]


@every_plan
def test_every_piece_is_lettered_on_the_page_of_its_cloth(name: str) -> None:
    """Or the key says that pieces of its letter are too small to hold one."""
    made = plan(name)
    for fabric in made.fabrics:
        for sheet, _ in fabric.lay.sheets:
            pieces = [p for p in fabric.lay.placements if p.sheet == sheet]
            assert any(
                all(_lettered(made, piece, words) for piece in pieces) for words in _lays(name)
            ), sheet


def _lettered(made: Plan, piece: Placement, words: str) -> bool:
    letter = re.escape(made.part(piece.name).letter)
    unlettered = re.search(rf"^{letter} × \d+: .*\(hatch only\)$", words, re.M)
    return made.label(piece) in _labels(words) or unlettered is not None


def _labels(words: str) -> set[str]:
    """All that is written on or beside pieces; "D1 to D12" names each of them."""
    said = set(words.split())
    for letter, low, high in re.findall(r"\b([A-Z]+)(\d+) to [A-Z]+(\d+)", words):
        said |= {f"{letter}{number}" for number in range(int(low), int(high) + 1)}
    return said | {word.rstrip(",") for word in said}


def test_a_piece_too_small_for_its_letter_has_a_line_to_it() -> None:
    assert [name for name in NAMES if "(hatch only)" in words(name)] == []
    assert "C1 to C24" in words("small squares")


@every_plan
def test_the_key_of_a_cloth_says_what_each_letter_stands_for(name: str) -> None:
    made = plan(name)
    for fabric in made.fabrics:
        for sheet, _ in fabric.lay.sheets:
            on_it = [p.name for p in fabric.lay.placements if p.sheet == sheet]
            lines = {
                f"{made.part(part).letter} × {on_it.count(part)}: {part[:12]}" for part in on_it
            }
            assert any(all(line in words for line in lines) for words in _lays(name)), lines


def _lays(name: str) -> list[str]:
    """The words of each cloth, over all its pages."""
    groups: dict[str, str] = {}
    titles = [sheet for fabric in plan(name).fabrics for sheet in _titles(name, fabric)]
    for page in seen(name):
        title = ""
        for text in page.texts if "Scale 1 : " in page.words else ():
            title = text.words if text.words in titles else title
            groups[title] = groups.get(title, "") + "\n" + text.words.replace(NO_BREAK, " ")
    return list(groups.values())


def _titles(name: str, fabric: FabricPlan) -> list[str]:
    """The headings of a fabric's cloths, as they are set."""
    face, found = typeface(bold=True), []
    for sheet, rect in fabric.lay.sheets:
        title = sheet_title(fabric.fabric, sheet, rect.along, plan(name).project.units)
        found += [
            wrap(face.words(title), FRAME[0], face.width, HEADING)[0],
            shortened(face.words(title), FRAME[0], face.width, HEADING),  # on pages turned to
        ]
    return found


@every_plan
def test_every_cut_has_a_numbered_line_and_a_box_to_tick(name: str) -> None:
    made = plan(name)
    cut = [fabric for fabric in made.fabrics if fabric.lay.placements]
    steps = [step for fabric in cut for step in fabric.steps]
    boxes = [
        shape
        for page in seen(name)
        for shape in page.shapes
        if len(shape.points) == 4 and shape.stroked
        if shape.outer_size == pytest.approx((11.0, 11.0), abs=0.01)
    ]
    assert len(boxes) == len(steps) + len(cut)
    numbers = [line for line in words(name).split("\n") if re.fullmatch(r"\d+\.", line)]
    assert numbers == [f"{step.number}." for step in steps]


def test_the_first_page_says_what_to_buy_and_for_how_much() -> None:
    first = seen("harbour-lights")[0].words.replace(NO_BREAK, " ")
    for fabric in plan("harbour-lights").fabrics:
        assert typeset(fabric.buy.sale_text) in first
        assert typeset(show(fabric.buy.along, plan("harbour-lights").project.units)) in first
        assert fabric.buy.cost is not None
        assert f"{float(fabric.buy.cost):.2f}" in first


def test_cautions_and_warnings_are_in_every_packet() -> None:
    for name in NAMES:
        assert "makers' instructions" in words(name)
        assert "under the eyes of a teacher" in words(name)
        for warning in plan(name).warnings:
            assert _joined(typeface().words(warning.text)) in _joined(words(name))


def _joined(text: str) -> str:
    return re.sub(r"\s", "", text)


def test_what_one_page_cannot_hold_goes_on_the_next() -> None:
    assert "The quilt, continued" in seen("slivers")[1].words


@every_plan
def test_pages_are_numbered_at_the_foot(name: str) -> None:
    count = len(seen(name))
    for number, page in enumerate(seen(name), start=1):
        assert f"page {number} of {count}" in page.words


def test_the_file_carries_title_language_outline_labels_and_print_scaling() -> None:
    pdf = reader(packet("harbour-lights"))
    root: Any = pdf.trailer["/Root"]
    assert pdf.metadata is not None
    assert pdf.metadata.title == "Harbour Lights: cutting packet"
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/PrintScaling"] == "/None"
    assert pdf.page_labels == [str(number) for number in range(1, len(pdf.pages) + 1)]


def test_the_outline_leads_to_each_cloth_and_to_the_cut_order() -> None:
    pdf = reader(packet("tide-pool-runner"))
    top = [entry for entry in pdf.outline if not isinstance(entry, list)]
    titles = [str(entry.title) for entry in top]
    assert titles == [
        "The quilt",
        "shelf blue, on hand 42 × 11 in",
        "shelf linen, on hand 53 × 22 in",
        "The cut order",
        "Piece tags",
        "Sewing the strips",
        "True size",
        "Cautions",
    ]
    numbers = [pdf.get_destination_page_number(entry) or 0 for entry in top]
    assert numbers[:4] == [0, 1, 1, 2], "two small cloths share a page"
    assert numbers == sorted(numbers)


@every_plan
def test_the_same_plan_gives_the_same_bytes(name: str) -> None:
    assert packet_bytes(plan(name)) == packet(name)


_ONE_PACKET = """
import hashlib
from tests.app.packet.plans import packet
print(hashlib.sha256(packet("harbour-lights")).hexdigest())
"""


def test_another_process_with_another_hash_seed_gives_the_same_bytes() -> None:
    runs = [
        subprocess.run(
            [sys.executable, "-c", _ONE_PACKET],
            env={"PYTHONHASHSEED": seed, "TZ": zone, "PYTHONPATH": ":".join(sys.path)},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed, zone in (("1", "UTC"), ("2", "Asia/Tokyo"))
    ]
    assert runs[0] == runs[1]


def test_grey_has_no_colour() -> None:
    for page in pages(packet("harbour-lights", grey=True)):
        for shape in page.shapes:
            for colour in (shape.fill, shape.stroke):
                assert len(set(colour)) == 1, colour


def test_colour_has_colour() -> None:
    fills = {shape.fill for page in seen("harbour-lights") for shape in page.shapes}
    assert any(len(set(fill)) > 1 for fill in fills)


def test_a_quilt_with_nothing_to_cut_still_has_its_page() -> None:
    made: Plan = plan("bare")
    assert not made.parts
    titles = [page.texts[0].words for page in seen("bare")]
    assert titles == ["A quilt", "True size", "Cautions"]
    assert "What to cut" not in words("bare")


_IMPORT_ONLY = """
import sys
import app.packet.packet, app.paint_pdf, app.paint_svg
assert "reportlab" not in sys.modules
assert "PySide6" not in sys.modules
"""


def test_the_pdf_library_is_imported_only_to_write_one() -> None:
    subprocess.run([sys.executable, "-c", _IMPORT_ONLY], check=True)


def test_flaws_are_told_in_words_and_figures_on_the_page_of_their_cloth() -> None:
    """The smaller one is too small on paper to hold its word."""
    [page] = [seen.words for seen in seen("by hand") if "harbour print, from" in seen.words][:1]
    told = " ".join(page.replace(NO_BREAK, " ").split())
    assert typeset("the stain, 3 × 4 in, 8 in from the near edge and 20 in from the") in told
    assert typeset("the hole, 1/2 × 1/2 in, 30 in from the near edge") in told
