"""The SVG, opened by a renderer that shares no code with ours, is the same picture as the PNG."""

from __future__ import annotations

from io import BytesIO
from typing import cast

import pytest
from PIL import Image, ImageChops, ImageFilter, ImageStat
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from app.paint_png import paint_png
from app.paint_svg import paint_svg
from app.pictures import pictures
from app.style import PAPER_COLOUR
from tests.app.packet.plans import plan

BLUR = 4  # pixels: hatches and edges of letters differ by less than one
MOST = 6.0  # of 255, on average: letters are a little fatter in one than in the other


def _rendered(svg: str, size: tuple[int, int]) -> Image.Image:
    renderer = QSvgRenderer(QByteArray(svg.encode("utf-8")))
    assert renderer.isValid()
    image = QImage(*size, QImage.Format.Format_RGB32)
    image.fill(QColor(PAPER_COLOUR.table))
    painter = QPainter(image)
    renderer.render(painter)
    painter.end()
    raw = bytes(cast("bytes", image.constBits()))
    return Image.frombytes("RGB", size, raw, "raw", "BGRX")


def _apart(one: Image.Image, other: Image.Image) -> float:
    blurred = (image.filter(ImageFilter.BoxBlur(BLUR)) for image in (one, other))
    return max(ImageStat.Stat(ImageChops.difference(*blurred)).mean)


@pytest.mark.parametrize("name", ["harbour-lights", "bias", "by hand", "king"])
def test_every_picture_looks_the_same_in_another_renderer(name: str, qapp: object) -> None:
    for _, drawing, flat in pictures(plan(name)):
        ours = Image.open(BytesIO(paint_png(drawing, PAPER_COLOUR))).convert("RGB")
        svg = paint_svg(drawing, PAPER_COLOUR, layered=flat)
        assert _apart(ours, _rendered(svg, ours.size)) < MOST, drawing.title


def test_a_picture_on_its_head_is_told_apart(qapp: object) -> None:
    _, drawing, _ = list(pictures(plan("harbour-lights")))[-1]
    ours = Image.open(BytesIO(paint_png(drawing, PAPER_COLOUR))).convert("RGB")
    turned = ours.transpose(Image.Transpose.ROTATE_180)
    assert _apart(ours, turned) > MOST
