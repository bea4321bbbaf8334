"""The borders of a quilt's picture: each strip where it is sewn, and its joins."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from core.drawing.marks import Area, Line, Mark, Point
from core.drawing.shapes import area, corners, label, point
from core.finish.border import BorderPlan, long_strips
from core.finish.border_sides import BorderStrip, Side, covered
from core.language import told
from core.lay.lay import Rect
from core.lengths import Inches
from core.quilt import Corners, Joins

Letters = dict[str, str]


def inside(border: BorderPlan, outer: Rect) -> Rect:
    """What the border goes round, as it shows."""
    across, along = border.sides_width, border.ends_width
    return Rect(
        outer.x + across, outer.y + along, outer.across - 2 * across, outer.along - 2 * along
    )


def draw_border(border: BorderPlan, outer: Rect, letters: Letters) -> Iterator[Mark]:
    """One border between its outer edge and what it goes round, joins and corners too."""
    inner, mitred = inside(border, outer), border.border.corners is Corners.MITRED
    places = dict(border.joins_at)
    for strip in border.strips:
        letter = _letter(border, strip, letters)
        key = letter.partition("+")[0]
        for side in strip.sides:
            band = _band(border, side, outer, inner)
            shape = _mitred(side, outer, inner) if mitred else corners(band)
            yield Area(shape, "border", key)
            yield label(
                band,
                (told("{letter}  border {number}", letter=letter, number=border.number), letter),
                "border",
                key,
            )
            for at in places.get(side, ()):
                if (seam := _join(border, strip, side, band, at)) is not None:
                    yield seam
    yield from _corner_pieces(border, outer, inner, letters)


def _letter(border: BorderPlan, strip: BorderStrip, letters: Letters) -> str:
    """The letter of the pieces that a strip is made of; of several, all of them."""
    runs = [name for name, strips in long_strips(border).items() if strip in strips]
    own = [letters[name] for name in letters if name.startswith(f"{strip.name}, ")]
    return letters.get(strip.name) or "+".join(own) or letters.get(runs[0], "")


def _band(border: BorderPlan, side: Side, outer: Rect, inner: Rect) -> Rect:
    """The rectangle that a strip fills; a mitred one's is that along the centre."""
    start, end = covered(border.border)[side]
    if border.border.corners is Corners.MITRED:
        start = end = False
    if side.upright:
        top, bottom = outer.y if start else inner.y, outer.end if end else inner.end
        x = outer.x if side is Side.LEFT else inner.right
        return Rect(x, top, border.sides_width, bottom - top)
    left, right = outer.x if start else inner.x, outer.right if end else inner.right
    y = outer.y if side is Side.TOP else inner.end
    return Rect(left, y, right - left, border.ends_width)


def _join(
    border: BorderPlan, strip: BorderStrip, side: Side, band: Rect, at: Inches
) -> Line | None:
    """A join `at` from the cut strip's end; None where it runs into a seam or the trimmed end."""
    length = band.along if side.upright else band.across
    place = at - (strip.length - length) / 2
    lean = (
        (band.across if side.upright else band.along) / 2
        if border.border.joins is Joins.DIAGONAL
        else Fraction(0)
    )
    near, far = place - lean, place + lean
    if not 0 <= near <= far <= length:
        return None
    if side.upright:
        ends = (band.x, band.y + near), (band.right, band.y + far)
    else:
        ends = (band.x + near, band.y), (band.x + far, band.end)
    return Line(tuple(point(x, y) for x, y in ends), "seam")


def _corner_pieces(
    border: BorderPlan, outer: Rect, inner: Rect, letters: Letters
) -> Iterator[Mark]:
    letter = letters.get(f"border {border.number} corner")
    if letter is None:
        return
    for x in (outer.x, inner.right):
        for y in (outer.y, inner.end):
            square = Rect(x, y, border.sides_width, border.ends_width)
            yield area(square, "border corner", letter)
            yield label(square, (letter,), "border corner", letter)


def _mitred(side: Side, outer: Rect, inner: Rect) -> tuple[Point, ...]:
    """The strip's band with its ends drawn out to the corners of the border."""
    if side.upright:
        out, into = (outer.x, inner.x) if side is Side.LEFT else (outer.right, inner.right)
        return (
            point(out, outer.y),
            point(into, inner.y),
            point(into, inner.end),
            point(out, outer.end),
        )
    out, into = (outer.y, inner.y) if side is Side.TOP else (outer.end, inner.end)
    return (
        point(outer.x, out),
        point(inner.x, into),
        point(inner.right, into),
        point(outer.right, out),
    )
