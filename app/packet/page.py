"""Pages as data: what lies where in the frame, before any PDF is thought of.

Places are points from the frame's top left corner, y down. A page holds words,
rules, boxes and pictures; `print_pages` puts them into a PDF, and a preview could
put the same ones on a screen.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from core.drawing.marks import Drawing, Point


@dataclass(frozen=True, slots=True)
class Words:
    """One line of words; `at` is the left end of its baseline."""

    at: Point
    text: str
    size: float
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Rule:
    """A straight line, `width` points thick, whole or dashed."""

    start: Point
    end: Point
    width: float = 0.5
    dashed: bool = False


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle whose *outer* edges measure `width` × `height`; `solid` or drawn `line` thick."""

    left: float
    top: float
    width: float
    height: float
    line: float = 0.8
    solid: bool = False


@dataclass(frozen=True, slots=True)
class Frame:
    """A rectangle of the page."""

    left: float
    top: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing with its top left corner `at`, `scale` points to the inch, cut off at `frame`.

    Without a frame nothing is cut off. `least` is the smallest type on it, in points
    of layout, where that is not the format's.
    """

    drawing: Drawing
    at: Point
    scale: float
    frame: Frame | None = None
    least: float | None = None


Item: TypeAlias = Words | Rule | Box | Picture


@dataclass(frozen=True, slots=True)
class Entry:
    """A line of the outline that leads to a place on the page."""

    title: str
    level: int
    top: float


@dataclass(frozen=True, slots=True)
class Page:
    """One page: its items in painting order, its outline entries, and what is at its foot.

    Pages of several packets may share one tuple of items, which is then printed once.
    """

    items: tuple[Item, ...]
    entries: tuple[Entry, ...] = ()
    foot: tuple[Item, ...] = ()
