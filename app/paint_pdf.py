"""Painting a drawing on a PDF page: vectors and real text."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from app.hatch import Segment
from app.paint import LEAST, Painter, Pen
from app.right_to_left import as_seen
from app.style import Theme
from app.type_fit import Setting
from app.typeface import typeface
from core.drawing.marks import Drawing, Point

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas


def paint_pdf(
    canvas: Canvas,
    drawing: Drawing,
    *,
    at: Point,
    scale: float,
    style: Theme,
    least: float = LEAST,
) -> None:
    """Paint `drawing` with its top left corner `at` a place on the page.

    `at` is in points from the page's bottom left corner, as the canvas counts;
    `scale` is points to an inch of the drawing (72 is true size), `least` the
    smallest type in points.
    """
    face = typeface()
    Painter(_Page(canvas, at, scale, face.name), scale, style, face, least).paint(drawing)


class _Page:
    """A surface: inches of drawing, y down, to points of page, y up."""

    def __init__(self, canvas: Canvas, at: Point, scale: float, font: str) -> None:
        self.canvas, self.at, self.scale, self.font = canvas, at, scale, font
        canvas.setLineJoin(0)

    def layer(self, name: str) -> None:
        """Pages are not layered."""

    def place(self, point: Point) -> Point:
        return self.at[0] + point[0] * self.scale, self.at[1] - point[1] * self.scale

    def polygon(self, points: Sequence[Point], fill: str, key: str) -> None:
        self.canvas.setFillColor(fill)
        self.canvas.drawPath(self._path(points, closed=True), stroke=0, fill=1)

    def outline(self, points: Sequence[Point], pen: Pen, *, closed: bool) -> None:
        self._take(pen)
        self.canvas.drawPath(self._path(points, closed=closed))

    def segments(self, segments: Iterable[Segment], pen: Pen) -> None:
        self._take(pen)
        self.canvas.lines([(*self.place(start), *self.place(end)) for start, end in segments])

    def words(self, setting: Setting, centre: Point, ink: str) -> None:
        canvas = self.canvas
        canvas.saveState()
        canvas.translate(*self.place(centre))
        canvas.rotate(90 if setting.turned else 0)
        canvas.setFillColor(ink)
        canvas.setFont(self.font, setting.size)
        for line, below in setting.baselines():
            canvas.drawCentredString(0, -below, as_seen(line))
        canvas.restoreState()

    def _path(self, points: Sequence[Point], *, closed: bool) -> object:
        path = self.canvas.beginPath()
        path.moveTo(*self.place(points[0]))
        for point in points[1:]:
            path.lineTo(*self.place(point))
        if closed:
            path.close()
        return path

    def _take(self, pen: Pen) -> None:
        self.canvas.setStrokeColor(pen.colour)
        self.canvas.setLineWidth(pen.width)
        self.canvas.setDash(list(pen.dash))
