"""Painting SVG: well-formed, at true size, with every piece where it lies."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from app.paint import LAYERS
from app.paint_svg import paint_svg
from app.pictures import pictures
from app.style import PAPER_COLOUR
from core.by_hand.sheets import sheets_of
from core.drawing.cloth import draw_sheet
from core.drawing.frame import Heading
from core.drawing.marks import Area, Drawing, Label, Line
from core.drawing.quilt import draw_quilt
from tests.app.packet.plans import NAMES, plan

SVG = "{http://www.w3.org/2000/svg}"
PIECE = ((1.0, 2.0), (5.0, 2.0), (5.0, 4.0), (1.0, 4.0))


def parsed(drawing: Drawing) -> ElementTree.Element:
    return ElementTree.fromstring(paint_svg(drawing, PAPER_COLOUR))


def test_the_picture_is_as_large_as_the_cloth() -> None:
    root = parsed(Drawing("plum", 42.5, 81.0, ()))
    assert (root.get("width"), root.get("height")) == ("42.5in", "81in")
    assert root.get("viewBox") == "0 0 3060 5832"  # 72 units an inch


def test_a_piece_lies_where_the_drawing_has_it() -> None:
    root = parsed(Drawing("", 20, 20, (Area(PIECE, "binding", "A1"),)))
    [piece] = [element for element in root if element.get("data-piece") == "A1"]
    assert piece.get("points") == "72,144 360,144 360,288 72,288"
    assert piece.get("fill") == PAPER_COLOUR["binding"].fill


def test_words_state_their_width_and_keep_to_the_room() -> None:
    root = parsed(Drawing("", 20, 20, (Label((3, 3), ("B2", "B"), (4, 2), "binding"),)))
    [text] = root.iter(f"{SVG}text")
    assert text.text == "B2"
    assert 0 < float(text.get("textLength", "nan")) <= 4 * 72
    assert 1 < float(text.get("font-size", "nan")) <= 2 * 72


def test_names_with_marks_of_xml_are_words_like_others() -> None:
    name = "<plum> & \"pear\" 'n' co]]>"
    drawing = Drawing(name, 20, 20, (Label((10, 10), (name,), (19, 19), "note", name),))
    root = parsed(drawing)
    [title] = root.iter(f"{SVG}title")
    [text] = root.iter(f"{SVG}text")
    assert title.text == text.text == name


def test_a_line_is_stroked_and_not_filled() -> None:
    root = parsed(Drawing("", 20, 20, (Line(((0, 0), (3, 4)), "seam"),)))
    [line] = root.iter(f"{SVG}polyline")
    assert line.get("fill") == "none"
    assert line.get("stroke") == PAPER_COLOUR["seam"].outline
    assert line.get("stroke-dasharray")


@pytest.mark.parametrize("name", NAMES)
def test_every_picture_of_a_plan_is_well_formed_and_the_same_twice(name: str) -> None:
    made = plan(name)
    pictures = [draw_quilt(made)]
    for place, fabric in enumerate(made.fabrics):
        pictures += [draw_sheet(made, place, s, Heading.RIGHT) for s in sheets_of(fabric)]
    for picture in pictures:
        keys = {mark.key for mark in picture.marks if isinstance(mark, Area) and mark.key}
        assert {e.get("data-piece") for e in parsed(picture)} - {None} == keys
        assert paint_svg(picture, PAPER_COLOUR) == paint_svg(picture, PAPER_COLOUR)


@pytest.mark.parametrize("name", NAMES)
def test_a_cloth_in_layers_has_the_same_shapes_each_in_its_layer(name: str) -> None:
    for _, drawing, flat in pictures(plan(name)):
        if not flat:
            continue
        root = ElementTree.fromstring(paint_svg(drawing, PAPER_COLOUR, layered=True))
        groups = [child for child in root if child.tag == f"{SVG}g"]
        names = [str(group.get("id")) for group in groups]
        assert names == [layer for layer in LAYERS if layer in names]
        inside = {name: group for name, group in zip(names, groups, strict=True)}
        keys = {mark.key for mark in drawing.marks if isinstance(mark, Area) and mark.key}
        assert {e.get("data-piece") for e in inside["pieces"]} == keys
        assert len(inside["outlines"]) == len(inside["pieces"])
        flat_root = parsed(drawing)
        assert sum(1 for _ in flat_root.iter()) + len(groups) == sum(1 for _ in root.iter())
