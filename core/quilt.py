"""What the person makes: the quilt, its parts, and the project that holds them.

Every class is a frozen value, so a project compares, hashes and copies for free
and an edit is a new project. What each part *needs* is worked out in
`core.finish`; nothing here computes.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from core.binding_choices import (
    Accent,
    BiasCut,
    Face,
    Finishing,
    Scrappy,
    Tails,
    Tuck,
    WidthRule,
)
from core.fabric import Fabric, Grain
from core.layers import (
    Backing,
    Batting,
    BattingFrom,
    Frame,
    Label,
    Panels,
    Seams,
    Sleeve,
    SleeveShape,
)
from core.lengths import Inches, Units
from core.measured import Measured, Squaring, TakeUp
from core.shape import Facing, Shape
from core.table import Table, default_table

# All that a project is made of is to be had from here.
__all__ = [
    "Backing",
    "Batting",
    "BattingFrom",
    "Binding",
    "Border",
    "Closing",
    "Corners",
    "First",
    "Fold",
    "Frame",
    "Joins",
    "Kits",
    "Label",
    "Panels",
    "Piecing",
    "Project",
    "Quilt",
    "Seams",
    "Sizing",
    "Sleeve",
    "SleeveShape",
]


class Joins(StrEnum):
    """How two strips of a run are sewn end to end; angled: their ends are cut at 45° first."""

    DIAGONAL = "diagonal"
    STRAIGHT = "straight"
    ANGLED = "angled"


class Closing(StrEnum):
    """How the two ends of the binding meet."""

    DIAGONAL = "diagonal"
    TUCKED = "tucked"
    STRAIGHT = "straight"


class Fold(StrEnum):
    """How the strip covers the edge.

    Double fold: the strip is folded in half first. Single fold: its edge is
    turned under. Faced: folded in half, and turned wholly to the back.
    """

    DOUBLE = "double"
    SINGLE = "single"
    FACED = "faced"


class Corners(StrEnum):
    """How the four strips of a border meet."""

    BUTTED = "butted"
    MITRED = "mitred"
    SQUARES = "squares"
    PINWHEEL = "pinwheel"
    ROUND = "round"


class First(StrEnum):
    """Which strips of a border are sewn on first: the sides, or top and bottom."""

    SIDES = "sides"
    ENDS = "ends"


class Piecing(StrEnum):
    """Where the joins of a border fall whose strips are longer than the cloth is wide."""

    END_TO_END = "end_to_end"
    CENTRED = "centred"
    OFF_CENTRE = "off_centre"


class Sizing(StrEnum):
    """What sets a border's width: itself, a size to reach, or a whole number of blocks."""

    WIDTH = "width"
    SIZE = "size"
    BLOCKS = "blocks"


class Kits(StrEnum):
    """Several equal quilts: cut together from one lay, or one lay for each kit."""

    TOGETHER = "together"
    EACH = "each"


@dataclass(frozen=True, slots=True)
class Quilt:
    """The top as measured, raw edge to raw edge, before the project's borders."""

    name: str
    width: Inches
    length: Inches
    edge_thickness: Inches = Fraction(1, 8)
    copies: int = 1
    kits: Kits = Kits.TOGETHER

    @property
    def cut_together(self) -> int:
        """How many of the copies one lay holds."""
        return self.copies if self.kits is Kits.TOGETHER else 1

    @property
    def lays(self) -> int:
        """How many times the lay is bought and cut."""
        return self.copies // self.cut_together


@dataclass(frozen=True, slots=True)
class Border:
    """One border; `width` is the finished width, so the strip is cut `width + 2 × seam`.

    A coping strip (`sizing`) reaches `to_width` × `to_length` (None: as it is), or a
    whole number of `block`s with strips of at least `width`. `squaring` is cut on to
    each strip that comes from a joined one. `*_fabric` is a side's own cloth. A join
    set off the middle lies `off_middle` from it or more, and no part is less than
    `shortest` long (None: the usual figures).
    """

    fabric: str
    width: Inches
    corners: Corners = Corners.BUTTED
    corner_fabric: str | None = None
    grain: Grain = Grain.CROSSWISE
    joins: Joins = Joins.DIAGONAL
    seam: Inches = Fraction(1, 4)
    mitre_margin: Inches = Fraction(4)
    first: First = First.SIDES
    piecing: Piecing = Piecing.END_TO_END
    squaring: Inches = Fraction(1, 2)
    sizing: Sizing = Sizing.WIDTH
    to_width: Inches | None = None
    to_length: Inches | None = None
    block: Inches | None = None
    left_fabric: str | None = None
    top_fabric: str | None = None
    right_fabric: str | None = None
    bottom_fabric: str | None = None
    off_middle: Inches | None = None
    shortest: Inches | None = None

    def cloth_of(self, side: str) -> str:
        """The cloth of the strip on a side: "left", "top", "right" or "bottom"."""
        own = {
            "left": self.left_fabric,
            "top": self.top_fabric,
            "right": self.right_fabric,
            "bottom": self.bottom_fabric,
        }
        return own[side] or self.fabric


@dataclass(frozen=True, slots=True)
class Binding:
    """The strip that goes round the edge; `allowance` is handling slack on the perimeter.

    Either `strip_width` or `finished_width` is given, and `width_rule` says what
    the latter means. `reach` None: what the finishing usually needs.
    `shortest` None: the usual least length of a segment. `back_fabric`: the cloth
    that shows on the back, where it is not the front's, sewn to it with `cloths_seam`.
    `turn_in` is what a facing's ends are turned under, and `stitching` how far from
    the fold a machine finishes (None: the usual figures).
    `start_side` is the side on which its ends are to meet (None: wherever the
    joins land best), `start_at` their place from the upper left corner, down and
    round (None: the best on that side), `least_to_corner` how far joins are to stay from the
    corners (None: a strip's width).
    """

    fabric: str
    strip_width: Inches | None
    fold: Fold = Fold.DOUBLE
    grain: Grain = Grain.CROSSWISE
    joins: Joins = Joins.DIAGONAL
    closing: Closing = Closing.DIAGONAL
    allowance: Inches = Fraction(10)
    seam: Inches = Fraction(1, 4)
    finished_width: Inches | None = None
    width_rule: WidthRule = WidthRule.FACES
    first_face: Face = Face.FRONT
    finishing: Finishing = Finishing.HAND
    reach: Inches | None = None
    shortest: Inches | None = None
    back_fabric: str | None = None
    tails: Tails = field(default_factory=Tails)
    tuck: Tuck = field(default_factory=Tuck)
    bias: BiasCut = field(default_factory=BiasCut)
    accent: Accent = field(default_factory=Accent)
    scrappy: Scrappy = field(default_factory=Scrappy)
    start_side: Facing | None = None
    least_to_corner: Inches | None = None
    cloths_seam: Inches | None = None
    turn_in: Inches | None = None
    stitching: Inches | None = None
    start_at: Inches | None = None


@dataclass(frozen=True, slots=True)
class Project:
    """All that a project file says; borders from the inside out.

    `outline` is the shape that the quilt is cut to (None: a rectangle).
    """

    quilt: Quilt
    fabrics: tuple[Fabric, ...]
    borders: tuple[Border, ...] = ()
    backing: Backing | None = None
    batting: Batting | None = None
    binding: Binding | None = None
    sleeve: Sleeve | None = None
    units: Units = Units.INCHES
    label: Label | None = None
    outline: Shape | None = None
    measured: Measured | None = None
    squaring: Squaring | None = None
    take_up: TakeUp | None = None

    @property
    def top(self) -> tuple[Inches, Inches]:
        """Width and length of the top that the plan goes by."""
        measured = self.measured or self.quilt
        return measured.width, measured.length

    table: Table | None = None  # None: the default of the units

    @property
    def cutting_table(self) -> Table:
        """The table that it is cut on."""
        return self.table or default_table(self.units)

    def fabric(self, name: str) -> Fabric:
        """The fabric of that name; every part names one (see `core.project_file`)."""
        return next(fabric for fabric in self.fabrics if fabric.name == name)
