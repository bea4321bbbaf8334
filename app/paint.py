"""Painting: a drawing's roles become looks, and its marks a few verbs on a surface.

A surface is PDF or SVG (the window has its own painter, since it repaints only
what it must). Places are inches of the drawing, y down, as in `core.drawing`;
line widths and type sizes are points as seen. A surface flips and scales in
one function of its own.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Protocol, assert_never

from app.hatch import Segment, hatch_lines
from app.real_cloth import roles_on_cloth, style_of
from app.style import Style, Theme
from app.type_fit import Setting, Sizes, fit
from app.typeface import Typeface
from core.drawing.marks import Area, Drawing, Label, Line, Point

HATCH_PITCH = 7.0  # points
HATCH_WIDTH = 0.35  # points: thin enough not to drown a letter, thick enough to photocopy
LEAST = 4.5  # points: the smallest words that are drawn where nobody asks for larger ones
LABEL_SIZES = Sizes(least=LEAST, easy=10, most=16)  # 10 reads well at arm's length
_QUIET = Sizes(least=LEAST, easy=8, most=10)
# Words that are not the name of a piece to cut.
_SIZES = {"ruler": _QUIET, "grain": _QUIET, "note": _QUIET, "offcut": _QUIET}
_HALO = 1.5  # points of plain fill kept round words on a hatch


# From the ground up; the cloth with what is left of it, and outlines of pieces alone to cut along.
LAYERS = ("cloth", "pieces", "hatches", "outlines", "lines", "words")


@dataclass(frozen=True, slots=True)
class Pen:
    """How a line looks: colour "#rrggbb", width in points, dashes in points."""

    colour: str
    width: float
    dash: tuple[float, ...] = ()


class Surface(Protocol):
    """What can be painted on. `layer` says which of `LAYERS` what follows belongs to."""

    def layer(self, name: str) -> None: ...
    def polygon(self, points: Sequence[Point], fill: str, key: str) -> None: ...
    def outline(self, points: Sequence[Point], pen: Pen, *, closed: bool) -> None: ...
    def segments(self, segments: Iterable[Segment], pen: Pen) -> None: ...
    def words(self, setting: Setting, centre: Point, ink: str) -> None: ...


@dataclass(frozen=True, slots=True)
class Painter:
    """Paints drawings on one surface; `scale` is points as seen to an inch of drawing."""

    surface: Surface
    scale: float
    theme: Theme
    face: Typeface
    least: float = LEAST

    def paint(self, drawing: Drawing) -> None:
        on_cloth = roles_on_cloth(drawing, self.theme)
        for mark in drawing.marks:
            match mark:
                case Area():
                    self._area(mark)
                case Line():
                    self.surface.layer("lines")
                    self.surface.outline(mark.points, _pen(self.theme[mark.role]), closed=False)
                case Label():
                    self._label(mark, plain=mark.role in on_cloth)
                case _:
                    assert_never(mark)

    def _area(self, area: Area) -> None:
        style = style_of(area, self.theme)
        self.surface.layer("pieces" if area.key else "cloth")
        self.surface.polygon(area.points, style.fill, area.key)
        if style.hatch:
            self.surface.layer("hatches")
            lines = hatch_lines(area.points, style.hatch, HATCH_PITCH / self.scale)
            self.surface.segments(lines, Pen(style.outline, HATCH_WIDTH))
        self.surface.layer("outlines" if area.key else "cloth")
        self.surface.outline(area.points, _pen(style), closed=True)

    def _label(self, label: Label, *, plain: bool) -> None:
        style, setting = (
            self.theme[label.role],
            setting_of(label, self.scale, self.face, self.least),
        )
        if setting is None:
            return
        self.surface.layer("words")
        if style.hatch or plain:
            self.surface.polygon(self._behind(setting, label), style.fill, "")
        self.surface.words(setting, label.centre, style.ink)

    def _behind(self, setting: Setting, label: Label) -> tuple[Point, ...]:
        """The rectangle behind words that keeps a hatch off them."""
        (x, y), (wide, high) = label.centre, setting.extent(self.face.width)
        dx = min((wide + 2 * _HALO) / self.scale, label.room[0]) / 2
        dy = min((high + 2 * _HALO) / self.scale, label.room[1]) / 2
        return ((x - dx, y - dy), (x + dx, y - dy), (x + dx, y + dy), (x - dx, y + dy))


def setting_of(label: Label, scale: float, face: Typeface, least: float = LEAST) -> Setting | None:
    """How `label` is set at `scale` points to the inch; None where `least` does not go in."""
    texts = [face.words(text) for text in label.texts]
    room = (label.room[0] * scale, label.room[1] * scale)
    sizes = _SIZES.get(label.role, LABEL_SIZES)
    least_sizes = replace(sizes, least=least, easy=max(least, sizes.easy))
    return fit(texts, room, face.width, replace(least_sizes, most=max(least, sizes.most)))


def _pen(style: Style) -> Pen:
    return Pen(style.outline, style.width, tuple(part * style.width for part in style.dash))
