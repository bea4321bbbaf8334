"""How bias strips come out of their cloth: the tube's marking plan, or the strips one by one.

A tube is drawn as two pictures side by side: the cloth with its one cut, and
the band that its two pieces make, marked in strips. Inches of cloth, long side
level; a strip is drawn as wide as it is.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from math import sqrt

from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.drawing.shapes import moved
from core.edge.root_two import root_two_down
from core.finish.bias_cloth import BiasPiece, BiasPlan
from core.language import told, told_count
from core.lengths import Inches, Rounding, Units, show, show_size
from core.part_names import told_part
from core.plan import Plan

_ROOT = sqrt(2)
_MARGIN = 0.5
_SHARE = 1 / 12  # of the cloth's long side: the height of a line of words


def bias_drawings(plan: Plan) -> tuple[Drawing, ...]:
    """A drawing for each kind of bias cloth in the plan: of its binding, its scraps, its accent."""
    binding = plan.binding
    if binding is None:
        return ()
    return tuple(
        draw_bias(bias, piece, plan.project.units)
        for bias in binding.bias_cloths
        for piece in bias.pieces
    )


def draw_bias(bias: BiasPlan, piece: BiasPiece, units: Units) -> Drawing:
    """The marking plan of one piece of cloth."""
    if piece.strips:
        return _one_by_one(bias, piece, units)
    return _tube(bias, piece, units)


def _tube(bias: BiasPlan, piece: BiasPiece, units: Units) -> Drawing:
    long, high = float(max(piece.across, piece.along)), float(min(piece.across, piece.along))
    row = long * _SHARE
    band = [moved(mark, long + 2 * row, 0) for mark in _band(bias, piece, row)]
    marks = [*_cloth(long, high, row), *band]
    lines = _tube_words(bias, piece, units)
    width = long + 2 * row + long + high
    marks.append(_below(lines, width, high, row))
    return _framed(told_part(piece.name), marks, width, high + row * (_rows(lines) + 0.5))


def _below(lines: Sequence[tuple[str, ...]], width: float, top: float, row: float) -> Label:
    """Lines of words under a drawing, in letters of one size; all in full, or all in short."""
    texts = tuple("\n".join(line[which] for line in lines) for which in (0, -1))
    high = _rows(lines) * row
    return Label((width / 2, top + row / 2 + high / 2), texts, (width, high), "note")


def _rows(lines: Sequence[tuple[str, ...]]) -> int:
    return sum(1 + full.count("\n") for full, *_ in lines)


def _cloth(long: float, high: float, row: float) -> Iterator[Mark]:
    """The cloth, cut at 45° from a corner."""
    yield Area(((0, 0), (long, 0), (long, high), (0, high)), "cloth")
    yield Area(((0, 0), (high, 0), (0, high)), "binding")
    yield Line(((0, high), (high, 0)), "cut")
    yield Label((high / 4, high / 4), ("1",), (high / 3, row), "note")
    yield Label((long - high / 4, high * 3 / 4), ("2",), (high / 3, row), "note")


def _band(bias: BiasPlan, piece: BiasPiece, row: float) -> Iterator[Mark]:
    """Piece 1 sewn on at the other end of piece 2; strips marked along the slanted edges."""
    long, high = float(max(piece.across, piece.along)), float(min(piece.across, piece.along))
    seam, step = float(bias.seam), float(bias.width) * _ROOT
    base = long - 2 * seam
    yield Area(((high, 0), (high + base, 0), (base, high), (0, high)), "offcut")
    for place in range(piece.turns):
        left, right = place * step, (place + 1) * step
        yield Area(((high + left, 0), (high + right, 0), (right, high), (left, high)), "binding")
        middle = (high + left + right) / 2
        yield Label((middle, high / 2), (str(place + 1),), (step, row), "binding")
    sewn = long - seam
    yield Line(((sewn, 0), (sewn, high)), "seam")


def _tube_words(bias: BiasPlan, piece: BiasPiece, units: Units) -> tuple[tuple[str, ...], ...]:
    size = show_size(piece.across, piece.along, units)
    wide, seam = show(bias.width, units), show(bias.seam, units)
    gives = show(piece.gives, units, Rounding.DOWN)
    step = _marked(bias.width, units)
    return (
        (
            told(
                "Cut {size} at 45°; sew 1 to the other end of 2\n"
                "with a {seam} seam: the dashed line",
                size=size,
                seam=seam,
            ),
        ),
        (
            told_count(
                "Mark {count} strip {wide} wide, {step} apart along the edge",
                "Mark {count} strips {wide} wide, {step} apart along the edge",
                piece.turns,
                wide=wide,
                step=step,
            ),
            told("{count} strips of {wide}", count=piece.turns, wide=wide),
        ),
        (told("Sew top to bottom, one strip out of step: line 1 above to the first corner below"),),
        _given(piece, told("Gives {length} in whole strips", length=gives), units),
    )


def _given(piece: BiasPiece, joined: str, units: Units) -> tuple[str, ...]:
    """What the cloth gives, joined or cut apart, beside its bare area; shorter ways behind."""
    bare = told("charts print {length} by bare area", length=show(piece.bare_area, units))
    if not piece.segments:
        return f"{joined}; {bare}", joined
    apart = told_count(
        "{count} segment of {length}",
        "{count} segments of {length}",
        piece.segments,
        length=show(piece.segment, units),
    )
    return (
        told("Cut apart at the same slant: {apart}; {bare}", apart=apart, bare=bare),
        told("Cut apart: {apart}", apart=apart),
        apart,
    )


def _span(lengths: list[Inches], units: Units) -> str:
    longest, shortest = (show(of(lengths), units, Rounding.DOWN) for of in (max, min))
    return told("Long edges then {longest} to {shortest}", longest=longest, shortest=shortest)


def _marked(width: Inches, units: Units) -> str:
    """How far apart the lines lie along an edge: w·√2, in the marks of a ruler."""
    return show(root_two_down(width), units)


def _one_by_one(bias: BiasPlan, piece: BiasPiece, units: Units) -> Drawing:
    across, along = float(piece.across), float(piece.along)
    row = max(across, along) * _SHARE
    marks: list[Mark] = [Area(((0, 0), (across, 0), (across, along), (0, along)), "cloth")]
    first, step = min(across, along), float(bias.width) * _ROOT
    strips = sorted(piece.strips, key=lambda strip: strip.place)
    for number, strip in enumerate(strips, start=1):
        near = first + strip.place * step
        shape = _between(across, along, near, near + step)
        marks.append(Area(shape, "binding"))
        centre = sum(x for x, _ in shape) / len(shape), sum(y for _, y in shape) / len(shape)
        marks.append(Label(centre, (str(number),), (step, step / 2), "binding"))
    marks.append(Line(_line(across, along, first), "cut"))
    size, wide = show_size(piece.across, piece.along, units), show(bias.width, units)
    joined = show(piece.gives, units, Rounding.DOWN)
    lines = (
        (
            told(
                "{size}: first cut from a corner at 45°, then every {step}",
                size=size,
                step=_marked(bias.width, units),
            ),
        ),
        (
            told(
                "{count} strips {wide} wide, both ends trimmed to slant the same way",
                count=len(strips),
                wide=wide,
            ),
            told("{count} strips {wide} wide", count=len(strips), wide=wide),
        ),
        (
            told(
                "Long edges then: {lengths}",
                lengths=_lengths([strip.usable for strip in strips], units),
            ),
            _span([strip.usable for strip in strips], units),
        ),
        _given(piece, told("Joined {length}", length=joined), units),
    )
    width = max(across, 3 * max(across, along) / 2)
    marks.append(_below(lines, width, along, row))
    return _framed(told_part(piece.name), marks, width, along + row * (_rows(lines) + 0.5))


def _lengths(lengths: list[Inches], units: Units) -> str:
    """Equal ones next to each other together.

    >>> from fractions import Fraction
    >>> _lengths([Fraction(9), Fraction(12), Fraction(12)], Units.INCHES)
    '1: 9 in; 2 to 3: 12 in'
    """
    said, number = [], 1
    for length, same in groupby(lengths):
        last = number + len(list(same)) - 1
        which = (
            str(number) if last == number else told("{first} to {last}", first=number, last=last)
        )
        said.append(f"{which}: {show(length, units, Rounding.DOWN)}")
        number = last + 1
    return "; ".join(said)


def _between(across: float, along: float, near: float, far: float) -> tuple[Point, ...]:
    """The part of the cloth between the lines x + y = near and x + y = far."""
    (right, left), (far_right, far_left) = (
        _line(across, along, near),
        _line(across, along, far),
    )
    corners_right = ((across, 0.0),) if near < across < far else ()
    corners_left = ((0.0, along),) if near < along < far else ()
    return (right, *corners_right, far_right, far_left, *corners_left, left)


def _line(across: float, along: float, at: float) -> tuple[Point, Point]:
    """Where x + y = at enters and leaves the cloth; clipped to its far corner."""
    at = min(max(at, 0.0), across + along)
    right, left = min(across, at), max(0.0, at - along)
    return (right, at - right), (left, at - left)


def _framed(title: str, marks: list[Mark], width: float, height: float) -> Drawing:
    placed = tuple(moved(mark, _MARGIN, _MARGIN) for mark in marks)
    return Drawing(title, width + 2 * _MARGIN, height + 2 * _MARGIN, placed)
