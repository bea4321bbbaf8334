"""What shape the quilt is cut to; its geometry is worked out in `core.edge`.

A shape is always cut from the quilt with its borders: rounded and clipped
corners, scallops, ovals and points lie within that rectangle, and a regular
hexagon or octagon is the largest that it holds.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import TypeAlias

from core.language import told_as
from core.lengths import Inches

Spot: TypeAlias = tuple[Inches, Inches]


class Facing(StrEnum):
    """Which way a side of the quilt faces."""

    LEFT = "left"
    BOTTOM = "bottom"
    RIGHT = "right"
    TOP = "top"


def told_facing(facing: Facing) -> str:
    """Which side that is, as a person reads it."""
    return {
        Facing.LEFT: told_as("side of a quilt", "left"),
        Facing.BOTTOM: told_as("side of a quilt", "bottom"),
        Facing.RIGHT: told_as("side of a quilt", "right"),
        Facing.TOP: told_as("side of a quilt", "top"),
    }[facing]


class ShapeKind(StrEnum):
    """The shapes that an outline may have."""

    RECTANGLE = "rectangle"
    ROUNDED = "rounded"
    CLIPPED = "clipped"
    HEXAGON = "hexagon"
    OCTAGON = "octagon"
    CIRCLE = "circle"
    OVAL = "oval"
    SCALLOPED = "scalloped"
    POLYGON = "polygon"


class Upright(StrEnum):
    """Whether a hexagon has a side or a corner at its top."""

    SIDE = "side"
    CORNER = "corner"


@dataclass(frozen=True, slots=True)
class Shape:
    """The outline as the person gives it; each kind reads its own fields.

    `radius` rounds the corners, `clip` is what a clipped corner takes off each
    of its two edges, `upright` is the hexagon's. `scallops_across` and
    `scallops_along` count them on the top and on a side, each `depth` deep;
    `scallops_*` and `depth_*` are one side's own (None: as the others). `points`
    are the polygon's corners, measured right and down from the upper left corner
    of the quilt.
    """

    kind: ShapeKind = ShapeKind.RECTANGLE
    radius: Inches = Fraction(4)
    clip: Inches = Fraction(4)
    upright: Upright = Upright.SIDE
    scallops_across: int = 5
    scallops_along: int = 6
    depth: Inches = Fraction(2)
    scallops_left: int | None = None
    scallops_bottom: int | None = None
    scallops_right: int | None = None
    scallops_top: int | None = None
    depth_left: Inches | None = None
    depth_bottom: Inches | None = None
    depth_right: Inches | None = None
    depth_top: Inches | None = None
    points: tuple[Spot, ...] = ()

    def scallops_on(self, side: Facing) -> int:
        """How many scallops a side has."""
        own = {
            Facing.LEFT: self.scallops_left,
            Facing.BOTTOM: self.scallops_bottom,
            Facing.RIGHT: self.scallops_right,
            Facing.TOP: self.scallops_top,
        }[side]
        upright = side in (Facing.LEFT, Facing.RIGHT)
        return own or (self.scallops_along if upright else self.scallops_across)

    def depth_on(self, side: Facing) -> Inches:
        """How deep the scallops of a side are."""
        own = {
            Facing.LEFT: self.depth_left,
            Facing.BOTTOM: self.depth_bottom,
            Facing.RIGHT: self.depth_right,
            Facing.TOP: self.depth_top,
        }[side]
        return self.depth if own is None else own
