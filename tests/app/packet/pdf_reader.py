"""What a PDF page shows, read from its content stream without the library that wrote it.

pypdf splits the stream into operators; the few that a packet uses are followed
here, with the graphics and text matrices of ISO 32000-1, 8.3 and 9.4. Places are
points from the page's bottom left corner.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from io import BytesIO
from math import hypot
from typing import Any, TypeAlias

from pypdf import PageObject, PdfReader
from pypdf.generic import ContentStream

Matrix: TypeAlias = tuple[float, float, float, float, float, float]
Point: TypeAlias = tuple[float, float]
Colour: TypeAlias = tuple[float, ...]

_IDENTITY: Matrix = (1, 0, 0, 1, 0, 0)
# DejaVu Sans, in ems: a capital's height and a descender's depth (its OS/2 and hhea tables).
CAPITAL, DESCENDER = 0.73, 0.24


@dataclass(frozen=True)
class Text:
    """One run of words. `box` is (left, bottom, right, top) of its letters."""

    words: str
    box: tuple[float, float, float, float]
    size: float


@dataclass(frozen=True)
class Shape:
    """One painted path without a break: its corners, and how it was painted."""

    points: tuple[Point, ...]
    filled: bool
    stroked: bool
    line_width: float
    fill: Colour
    stroke: Colour

    @property
    def box(self) -> tuple[float, float, float, float]:
        xs, ys = zip(*self.points, strict=True)
        return min(xs), min(ys), max(xs), max(ys)

    @property
    def outer_size(self) -> tuple[float, float]:
        """Width and height of the ink, the line's own width counted in."""
        left, bottom, right, top = self.box
        ink = self.line_width if self.stroked else 0.0
        return right - left + ink, top - bottom + ink


@dataclass
class Seen:
    """Everything painted on one page, in order."""

    texts: list[Text] = field(default_factory=list)
    shapes: list[Shape] = field(default_factory=list)

    @property
    def words(self) -> str:
        return "\n".join(text.words for text in self.texts)


def reader(data: bytes) -> PdfReader:
    return PdfReader(BytesIO(data), strict=True)


def pages(data: bytes) -> list[Seen]:
    pdf = reader(data)
    return [_Reading(pdf, page).seen for page in pdf.pages]


@dataclass(frozen=True)
class _State:
    matrix: Matrix = _IDENTITY
    width: float = 1.0
    fill: Colour = (0.0,)
    stroke: Colour = (0.0,)


class _Reading:
    """One page being read, operator by operator."""

    def __init__(self, pdf: PdfReader, page: PageObject) -> None:
        self.seen, self.state, self.stack = Seen(), _State(), list[_State]()
        self.path: list[list[Point]] = []
        self.fonts = {
            name: _Font(font.get_object())
            for name, font in page["/Resources"].get("/Font", {}).items()  # type: ignore[attr-defined]
        }
        self.font, self.size = _Font(None), 0.0
        self.text = self.line = _IDENTITY
        self.forms = page["/Resources"].get("/XObject", {})  # type: ignore[attr-defined]
        self.pdf = pdf
        self._follow_all(page.get_contents())

    def _follow_all(self, contents: Any) -> None:  # noqa: ANN401 - a PDF stream
        for operands, operator in ContentStream(contents, self.pdf).operations:
            self._follow(operator.decode("ascii"), operands)

    def _follow(self, operator: str, operands: list[Any]) -> None:
        if operator == "Tf":
            self.font, self.size = self.fonts[operands[0]], float(operands[1])
        elif operator == "Tj":
            self._show(operands[0].original_bytes)
        elif operator == "Do":
            self._follow_all(self.forms[operands[0]].get_object())
        elif operator in _PAINTING:
            self._paint(*_PAINTING[operator])
        elif operator in ("q", "Q", "cm", "w", "rg", "RG"):
            self._set(operator, [float(number) for number in operands])
        elif operator in ("BT", "ET", "Tm", "Td", "TL", "T*"):
            self._move(operator, [float(number) for number in operands])
        elif operator in ("m", "l", "re", "h"):
            self._draw(operator, [float(number) for number in operands])
        elif operator not in ("W", "W*", "d", "j", "J", "M"):
            raise NotImplementedError(f"the reader does not know the operator {operator}")

    def _set(self, operator: str, numbers: list[float]) -> None:
        state = self.state
        if operator == "q":
            self.stack.append(state)
        elif operator == "Q":
            self.state = self.stack.pop()
        elif operator == "cm":
            self.state = _State(_times(_matrix(numbers), state.matrix), *_rest(state))
        elif operator == "w":
            self.state = _State(state.matrix, numbers[0], state.fill, state.stroke)
        elif operator == "rg":
            self.state = _State(state.matrix, state.width, tuple(numbers), state.stroke)
        else:
            self.state = _State(state.matrix, state.width, state.fill, tuple(numbers))

    def _move(self, operator: str, numbers: list[float]) -> None:
        if operator == "BT":
            self.text = self.line = _IDENTITY
        elif operator == "Tm":
            self.text = self.line = _matrix(numbers)
        elif operator == "Td":
            self.text = self.line = _times((1, 0, 0, 1, *numbers), self.line)  # type: ignore[arg-type]

    def _draw(self, operator: str, numbers: list[float]) -> None:
        if operator == "re":
            x, y, wide, high = numbers
            corners = ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))
            self.path.append([_apply(self.state.matrix, corner) for corner in corners])
        elif operator in ("m", "l"):
            if operator == "m":
                self.path.append([])
            self.path[-1].append(_apply(self.state.matrix, (numbers[0], numbers[1])))

    def _paint(self, filled: bool, stroked: bool) -> None:
        if filled or stroked:
            width, fill, stroke = _rest(self.state)
            width *= hypot(*self.state.matrix[:2])
            for points in self.path:
                shape = Shape(tuple(points), filled, stroked, width, fill, stroke)
                self.seen.shapes.append(shape)
        self.path = []

    def _show(self, codes: bytes) -> None:
        words, width = self.font.read(codes)
        ends = (0.0, width * self.size)
        whole = _times(self.text, self.state.matrix)
        heights = (-DESCENDER * self.size, CAPITAL * self.size)
        corners = [_apply(whole, (x, y)) for x in ends for y in heights]
        xs, ys = zip(*corners, strict=True)
        if words.strip():
            box = (min(xs), min(ys), max(xs), max(ys))
            self.seen.texts.append(Text(words, box, self.size * hypot(*whole[:2])))
        self.text = _times((1, 0, 0, 1, ends[1], 0), self.text)


_PAINTING = {
    "n": (False, False),
    "S": (False, True),
    "s": (False, True),
    "f": (True, False),
    "f*": (True, False),
    "B": (True, True),
}


class _Font:
    """An embedded font: what its codes stand for and how wide they are, in ems."""

    def __init__(self, font: Any) -> None:  # noqa: ANN401 - a PDF dictionary, or None
        if font is None:
            return
        self.first = int(font["/FirstChar"])
        self.widths = [float(width) / 1000 for width in font["/Widths"]]
        self.letters = dict(_to_unicode(font["/ToUnicode"].get_data().decode("latin-1")))

    def read(self, codes: bytes) -> tuple[str, float]:
        words = "".join(self.letters[code] for code in codes)
        return words, sum(self.widths[code - self.first] for code in codes)


def _to_unicode(cmap: str) -> Iterator[tuple[int, str]]:
    """Code -> text from a CMap's ranges and single characters (ISO 32000-1, 9.10.3)."""
    for block in re.findall(r"beginbfrange(.*?)endbfrange", cmap, re.S):
        for low, _high, listed in re.findall(r"<(\w+)>\s*<(\w+)>\s*\[(.*?)\]", block, re.S):
            for place, target in enumerate(re.findall(r"<(\w+)>", listed)):
                yield int(low, 16) + place, _text(target)
        for low, high, target in re.findall(r"<(\w+)>\s*<(\w+)>\s*<(\w+)>", block):
            for place in range(int(high, 16) - int(low, 16) + 1):
                yield int(low, 16) + place, chr(int(target, 16) + place)
    for block in re.findall(r"beginbfchar(.*?)endbfchar", cmap, re.S):
        for code, target in re.findall(r"<(\w+)>\s*<(\w+)>", block):
            yield int(code, 16), _text(target)


def _text(digits: str) -> str:
    return bytes.fromhex(digits).decode("utf-16-be")


def _rest(state: _State) -> tuple[float, Colour, Colour]:
    return state.width, state.fill, state.stroke


def _matrix(numbers: list[float]) -> Matrix:
    a, b, c, d, e, f = numbers
    return a, b, c, d, e, f


def _times(one: Matrix, other: Matrix) -> Matrix:
    """`one` applied first, then `other`."""
    a, b, c, d, e, f = one
    p, q, r, s, t, u = other
    return (
        a * p + b * r,
        a * q + b * s,
        c * p + d * r,
        c * q + d * s,
        e * p + f * r + t,
        e * q + f * s + u,
    )


def _apply(matrix: Matrix, point: Point) -> Point:
    a, b, c, d, e, f = matrix
    x, y = point
    return a * x + c * y + e, b * x + d * y + f
