"""Painting a drawing as a PNG picture, for a message. Needs no screen and no Qt.

It is painted three times as large and then made smaller, which smooths its lines.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache
from io import BytesIO
from itertools import pairwise
from typing import TYPE_CHECKING

from app.assets import asset
from app.hatch import Segment
from app.paint import Painter, Pen
from app.right_to_left import as_seen
from app.style import Theme
from app.type_fit import Setting
from app.typeface import typeface
from core.drawing.marks import Drawing, Point

if TYPE_CHECKING:
    from PIL.ImageFont import FreeTypeFont

_LONGEST = 1600  # pixels of the picture's longer side
_PAGE = 540.0  # points that the longer side takes on the page thought of, as for SVG
_SMOOTH = 3


def paint_png(drawing: Drawing, style: Theme) -> bytes:
    """`drawing` as PNG; the same drawing gives the same bytes."""
    from PIL import Image

    longer = max(drawing.width, drawing.height)
    surface = _Pixels(drawing, _SMOOTH * _LONGEST / longer, style.table)
    Painter(surface, _PAGE / longer, style, typeface()).paint(drawing)
    size = (surface.image.width // _SMOOTH, surface.image.height // _SMOOTH)
    out = BytesIO()
    surface.image.resize(size, Image.Resampling.BOX).save(out, "PNG", optimize=True)
    return out.getvalue()


class _Pixels:
    """A surface: inches of drawing become pixels; points as seen too."""

    def __init__(self, drawing: Drawing, scale: float, table: str) -> None:
        from PIL import Image, ImageDraw

        self.scale = scale
        self.point = _SMOOTH * _LONGEST / _PAGE
        size = (
            max(_SMOOTH, round(drawing.width * scale / _SMOOTH) * _SMOOTH),
            max(_SMOOTH, round(drawing.height * scale / _SMOOTH) * _SMOOTH),
        )
        self.image = Image.new("RGB", size, table)
        self.draw = ImageDraw.Draw(self.image)

    def layer(self, name: str) -> None:
        """Pixels have no layers."""

    def place(self, point: Point) -> Point:
        return point[0] * self.scale, point[1] * self.scale

    def polygon(self, points: Sequence[Point], fill: str, key: str) -> None:
        self.draw.polygon([self.place(point) for point in points], fill=fill)

    def outline(self, points: Sequence[Point], pen: Pen, *, closed: bool) -> None:
        ring = [*points, points[0]] if closed else list(points)
        for start, end in pairwise(ring):
            self._line(start, end, pen)

    def segments(self, segments: Iterable[Segment], pen: Pen) -> None:
        for start, end in segments:
            self._line(start, end, pen)

    def _line(self, start: Point, end: Point, pen: Pen) -> None:
        width = max(1, round(pen.width * self.point))
        (x1, y1), (x2, y2) = self.place(start), self.place(end)
        for low, high in _dashes(((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5, pen, self.point):
            ends = [(x1 + (x2 - x1) * at, y1 + (y2 - y1) * at) for at in (low, high)]
            self.draw.line(ends, fill=pen.colour, width=width)

    def words(self, setting: Setting, centre: Point, ink: str) -> None:
        from PIL import Image, ImageDraw

        measure, size = typeface().width, setting.size * self.point
        font = _font(max(1, round(size)))
        wide, high = (round(side * self.point) + 4 for side in setting.extent(measure))
        wide, high = (high, wide) if setting.turned else (wide, high)
        mask = Image.new("L", (wide, high), 0)
        drawn = ImageDraw.Draw(mask)
        for line, below in setting.baselines():
            # Letter by letter, as wide as they were measured: a font at a size rounds its widths.
            x, y = (wide - measure(line) * size) / 2, high / 2 + below * self.point
            for letter in as_seen(line):
                drawn.text((x, y), letter, font=font, fill=255, anchor="ls")
                x += measure(letter) * size
        if setting.turned:
            mask = mask.transpose(Image.Transpose.ROTATE_90)
        x, y = self.place(centre)
        corner = (round(x - mask.width / 2), round(y - mask.height / 2))
        self.image.paste(ink, (*corner, corner[0] + mask.width, corner[1] + mask.height), mask)


def _dashes(length: float, pen: Pen, point: float) -> Iterable[tuple[float, float]]:
    """The drawn stretches of a line, as shares of its length."""
    if not pen.dash or not length:
        yield 0.0, 1.0
        return
    on, off = pen.dash[0] * point, pen.dash[1] * point
    start = 0.0
    while start < length:
        yield start / length, min(1.0, (start + on) / length)
        start += on + off


@cache
def _font(pixels: int) -> FreeTypeFont:
    from PIL import ImageFont

    plain = ImageFont.Layout.BASIC  # the other is not everywhere, and turns letters round itself
    return ImageFont.truetype(str(asset("fonts/DejaVuSans.ttf")), pixels, layout_engine=plain)
