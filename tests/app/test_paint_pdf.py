"""Painting on a PDF page: true places, roles as looks, words in their rooms."""

from __future__ import annotations

from io import BytesIO

import pytest
from reportlab.pdfgen.canvas import Canvas

from app.paint_pdf import paint_pdf
from app.style import PAPER_COLOUR, PAPER_GREY, Theme
from app.typeface import typeface
from core.drawing.marks import Area, Drawing, Label, Line, Mark
from tests.app.packet.pdf_reader import Seen, pages

AT = (100.0, 700.0)
SCALE = 10.0
PIECE = ((1.0, 2.0), (5.0, 2.0), (5.0, 4.0), (1.0, 4.0))


def painted(*marks: Mark, style: Theme = PAPER_COLOUR) -> Seen:
    out = BytesIO()
    canvas = Canvas(out, invariant=1, initialFontName=typeface().name)
    paint_pdf(canvas, Drawing("", 20, 20, marks), at=AT, scale=SCALE, style=style)
    canvas.showPage()
    canvas.save()
    [page] = pages(out.getvalue())
    return page


def test_inches_down_the_drawing_are_points_down_the_page() -> None:
    page = painted(Area(PIECE, "cloth", "A1"))
    assert [shape.box for shape in page.shapes] == [(110.0, 660.0, 150.0, 680.0)] * 2
    assert [(shape.filled, shape.stroked) for shape in page.shapes] == [
        (True, False),
        (False, True),
    ]


def test_a_role_has_the_themes_colours() -> None:
    for theme in (PAPER_COLOUR, PAPER_GREY):
        fill, outline = painted(Area(PIECE, "top"), style=theme).shapes
        assert _hex(fill.fill) == theme["top"].fill
        assert _hex(outline.stroke) == theme["top"].outline


def _hex(colour: tuple[float, ...]) -> str:
    red, green, blue = colour * 3 if len(colour) == 1 else colour
    return "#" + "".join(f"{round(part * 255):02x}" for part in (red, green, blue))


def test_a_hatch_stays_inside_its_area() -> None:
    page = painted(Area(PIECE, "border corner"))
    hatch = [shape for shape in page.shapes if len(shape.points) == 2]
    assert len(hatch) > 5
    for shape in hatch:
        left, bottom, right, top = shape.box
        assert left >= 110 - 0.01
        assert right <= 150 + 0.01
        assert bottom >= 660 - 0.01
        assert top <= 680 + 0.01


def test_a_line_is_open() -> None:
    [shape] = painted(Line(((0, 0), (3, 0), (3, 4)), "ruler")).shapes
    assert shape.points == ((100.0, 700.0), (130.0, 700.0), (130.0, 660.0))
    assert shape.stroked
    assert not shape.filled


@pytest.mark.parametrize("room", [(4.0, 2.0), (2.0, 7.0), (9.0, 9.0)])
def test_words_are_centred_in_their_room(room: tuple[float, float]) -> None:
    page = painted(Label((3, 3), ("B2  binding  8 1/2", "B2"), room, "note"))
    [text] = page.texts
    left, bottom, right, top = text.box
    assert left >= 130 - room[0] * SCALE / 2
    assert right <= 130 + room[0] * SCALE / 2
    assert bottom >= 670 - room[1] * SCALE / 2
    assert top <= 670 + room[1] * SCALE / 2
    assert (left + right) / 2 == pytest.approx(130, abs=2)
    assert (bottom + top) / 2 == pytest.approx(670, abs=2)


def test_words_without_room_are_left_out() -> None:
    assert painted(Label((3, 3), ("B2",), (0.2, 0.2), "binding")).texts == []


def test_words_on_a_hatch_have_a_plain_ground_inside_their_room() -> None:
    page = painted(Label((3, 3), ("B2",), (4, 2), "binding"))
    [ground] = page.shapes
    [text] = page.texts
    assert _hex(ground.fill) == PAPER_COLOUR["binding"].fill
    assert ground.box[0] <= text.box[0]
    assert ground.box[2] >= text.box[2]
    assert ground.box[0] >= 110
    assert ground.box[2] <= 150


def test_a_letter_that_the_type_lacks_is_spelled() -> None:
    [text] = painted(Label((10, 10), ("藍",), (20, 4), "note")).texts
    assert text.words == "[U+85CD]"
