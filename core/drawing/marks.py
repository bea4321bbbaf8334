"""Marks: the neutral shapes that every picture is made of.

A drawing is data: a tuple of marks in inches of cloth or quilt, x to the right,
y *down*, with roles instead of colours. Painters (window, PDF, SVG) give a role
its colour and hatch, and choose type sizes; they compute nothing else. Numbers
are floats, for drawing only: nothing is decided from them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from core.fabric import RealCloth

Point: TypeAlias = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Area:
    """A filled polygon. `key` names the piece it stands for ("B2"), or is empty.

    `real` is what the cloth it is cut from looks like, where the person said so;
    `turned`: that cloth lies a quarter turn to the left, its straight end at the left.
    """

    points: tuple[Point, ...]
    role: str
    key: str = ""
    real: RealCloth | None = None
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Line:
    """An open line through its points."""

    points: tuple[Point, ...]
    role: str


@dataclass(frozen=True, slots=True)
class Label:
    """Words centred at `centre` within `room` (width, height).

    `texts` says the same thing from the fullest to the shortest; each may hold
    line breaks. A painter takes the first that fits its type size, turning it a
    quarter turn where the room is taller than wide, and leaves it out if none
    fits. `key` as in `Area`.
    """

    centre: Point
    texts: tuple[str, ...]
    room: tuple[float, float]
    role: str
    key: str = ""


Mark: TypeAlias = Area | Line | Label


@dataclass(frozen=True, slots=True)
class Drawing:
    """Marks in painting order, inside (0, 0) … (width, height)."""

    title: str
    width: float
    height: float
    marks: tuple[Mark, ...]


# Every role a mark may have. Painters' style tables are checked against this.
ROLES = (
    "cloth",  # the piece of cloth itself, under everything
    "selvage",  # the edges that are cut away
    "straightening",  # the end that is cut off to straighten
    "offcut",  # left over and worth keeping
    "flaw",  # a rectangle of the cloth that nothing may lie on
    "motif",  # the outline of a rectangle that one piece must contain
    "pin",  # a pin in a piece that lies where a hand put it
    "top",  # the quilt top inside the project's borders
    "border",
    "border corner",
    "backing",
    "batting",
    "binding",
    "accent",  # a flange or a piping under the binding
    "sleeve",
    "label",
    "seam",  # a sewn line
    "edge",  # an outline
    "ruler",  # ticks and their numbers
    "grain",  # grain and print-direction arrows
    "join",  # where two segments of a run are joined
    "start",  # where sewing a run begins, and the way it goes
    "cut",  # a line to cut along
    "next cut",  # the one to cut along now
    "note",  # words beside the drawing
    "step",  # a block of the staircase
    "step now",  # the one that the project stands on
)
