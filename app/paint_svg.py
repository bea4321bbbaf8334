"""Painting a drawing as SVG at true size: 72 user units are one inch of cloth.

Lines and words are as large as they would be on a page that the drawing just
fills, since at true size a printed letter would be lost on a yard of cloth. Each
line of words states its width, so that it keeps to its room in any typeface.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from xml.sax.saxutils import escape, quoteattr

from app.hatch import Segment
from app.paint import LAYERS, Painter, Pen
from app.style import Theme
from app.type_fit import Setting
from app.typeface import FAMILY, Typeface, typeface
from core.drawing.marks import Drawing, Point

# Not 1: some programs round type smaller than a unit away.
_UNITS_PER_INCH = 72.0
_PAGE = 540.0  # points that the drawing's longer side takes on the page thought of


def paint_svg(drawing: Drawing, style: Theme, *, layered: bool = False) -> str:
    """`drawing` as an SVG document, as wide and high in inches as the cloth it shows.

    Layered, it has a group for each of `LAYERS`, for a cutting machine or a drawing
    program; only a drawing whose pieces do not lie on each other looks the same so.
    """
    face, scale = typeface(), _PAGE / max(drawing.width, drawing.height)
    surface = _Svg(scale, face, layered=layered)
    Painter(surface, scale, style, face).paint(drawing)
    size = f'width="{drawing.width:g}in" height="{drawing.height:g}in"'
    wide, high = drawing.width * _UNITS_PER_INCH, drawing.height * _UNITS_PER_INCH
    box = f'viewBox="0 0 {wide:.7g} {high:.7g}"'
    title = escape(face.words(drawing.title))
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" {size} {box}>',
            f"<title>{title}</title>",
            *surface.document(),
            "</svg>\n",
        ]
    )


class _Svg:
    """A surface: inches of drawing and points as seen become user units."""

    def __init__(self, scale: float, face: Typeface, *, layered: bool) -> None:
        self.point, self.face, self.layered = _UNITS_PER_INCH / scale, face, layered
        self.layers: dict[str, list[str]] = {name: [] for name in LAYERS}
        self.lines = self.layers[LAYERS[0]]

    def layer(self, name: str) -> None:
        if self.layered:
            self.lines = self.layers[name]

    def document(self) -> Iterator[str]:
        if not self.layered:
            yield from self.lines
            return
        for name, lines in self.layers.items():
            if lines:
                yield f'<g id="{name}">'
                yield from lines
                yield "</g>"

    def polygon(self, points: Sequence[Point], fill: str, key: str) -> None:
        named = f" data-piece={quoteattr(key)}" if key else ""
        self.lines.append(f'<polygon{named} fill="{fill}" points="{_places(points)}"/>')

    def outline(self, points: Sequence[Point], pen: Pen, *, closed: bool) -> None:
        shape = "polygon" if closed else "polyline"
        self.lines.append(f'<{shape} fill="none" {self._look(pen)} points="{_places(points)}"/>')

    def segments(self, segments: Iterable[Segment], pen: Pen) -> None:
        ways = "".join(f"M{_place(start)}L{_place(end)}" for start, end in segments)
        if ways:
            self.lines.append(f'<path fill="none" {self._look(pen)} d="{ways}"/>')

    def words(self, setting: Setting, centre: Point, ink: str) -> None:
        turn = ' transform="rotate(-90)"' if setting.turned else ""
        size = setting.size * self.point
        self.lines.append(f'<g transform="translate({_place(centre)})"><g{turn}>')
        for line, below in setting.baselines():
            width = self.face.width(line) * size
            self.lines.append(
                f'<text xml:space="preserve" y="{below * self.point:.4g}" '
                f'font-size="{size:.4g}" fill="{ink}" '
                f'font-family="{FAMILY}, sans-serif" text-anchor="middle" '
                f'textLength="{width:.4g}" lengthAdjust="spacingAndGlyphs">{escape(line)}</text>'
            )
        self.lines.append("</g></g>")

    def _look(self, pen: Pen) -> str:
        dash = " ".join(f"{part * self.point:.4g}" for part in pen.dash)
        dashes = f' stroke-dasharray="{dash}"' if dash else ""
        return f'stroke="{pen.colour}" stroke-width="{pen.width * self.point:.4g}"{dashes}'


def _places(points: Sequence[Point]) -> str:
    return " ".join(_place(point) for point in points)


def _place(point: Point) -> str:
    """A place in user units, to a thousandth of an inch."""
    x, y = (round(inches * _UNITS_PER_INCH, 2) for inches in point)
    return f"{x:.9g},{y:.9g}"
