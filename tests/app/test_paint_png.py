"""Pictures for a message: PNG, the same twice, with the drawing's shape and colours."""

from __future__ import annotations

from io import BytesIO

import pytest
from PIL import Image

from app.paint_png import paint_png
from app.pictures import pictures
from app.style import PAPER_COLOUR
from core.drawing.marks import Area, Drawing, Label
from tests.app.packet.plans import plan

PIECE = ((0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (0.0, 10.0))


def _opened(data: bytes) -> Image.Image:
    return Image.open(BytesIO(data)).convert("RGB")


def test_the_picture_has_the_drawings_shape_and_the_parts_colour() -> None:
    image = _opened(paint_png(Drawing("", 20, 10, (Area(PIECE, "top", "A"),)), PAPER_COLOUR))
    assert image.size == (1600, 800)
    red, green, blue = (int(PAPER_COLOUR["top"].fill[n : n + 2], 16) for n in (1, 3, 5))
    assert image.getpixel((800, 400)) == (red, green, blue)


def test_words_are_dark_on_their_fill_and_turn_where_the_room_stands() -> None:
    label = Label((10, 5), ("W" * 16,), (3.0, 10.0), "top")
    image = _opened(paint_png(Drawing("", 20, 10, (Area(PIECE, "top"), label)), PAPER_COLOUR))
    dark = (
        image.convert("L").point(lambda value: 255 if value < 90 else 0).crop((40, 40, 1560, 760))
    )
    box = dark.getbbox()
    assert box is not None
    assert box[3] - box[1] > 2 * (box[2] - box[0]), "the words stand"


@pytest.mark.parametrize("name", ["tide-pool-runner", "bias", "slivers"])
def test_every_picture_of_a_plan_is_the_same_twice(name: str) -> None:
    for _, drawing, _ in pictures(plan(name)):
        data = paint_png(drawing, PAPER_COLOUR)
        assert data == paint_png(drawing, PAPER_COLOUR)
        assert max(_opened(data).size) in (1599, 1600)
