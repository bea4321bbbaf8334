"""What lies behind the top: backing, batting, hanging sleeve and label."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from core.batting_packages import COMMON, Package
from core.lengths import Inches

MOST_SHORT_STRIPS = 4  # our default, no source: more are more seams than the cloth is worth


class Seams(StrEnum):
    """Which way the seams between backing panels run."""

    AUTO = "auto"
    LENGTHWISE = "lengthwise"
    CROSSWISE = "crosswise"
    NONE = "none"


class Panels(StrEnum):
    """How a backing is shared out in panels: what buys least, whole ones, or two halves at
    the sides of full ones."""

    LEAST = "least"
    WHOLE = "whole"
    HALVES = "halves"


class Frame(StrEnum):
    """Which edge of the quilt goes on a long-arm frame's rollers, if one is used."""

    NONE = "none"
    TOP = "top"
    SIDE = "side"


class BattingFrom(StrEnum):
    """What the batting is cut from."""

    PACKAGE = "package"
    ROLL = "roll"


class SleeveShape(StrEnum):
    """A flat tube, one with more cloth in front, or one layer sewn to the back."""

    TUBE = "tube"
    D = "d"
    SINGLE = "single"


@dataclass(frozen=True, slots=True)
class Backing:
    """The back of the quilt, larger than the quilt by `overage` on each side.

    `overage_*` is a side's own overage. An accent strip, `accent_width` finished, lies
    between the first two panels. `frame` prefers seams along the rollers. At most
    `most_short_strips` make a last panel that is pieced.
    """

    fabric: str
    overage: Inches = Fraction(4)
    seam: Inches = Fraction(1, 2)
    seams: Seams = Seams.AUTO
    panels: Panels = Panels.LEAST
    frame: Frame = Frame.NONE
    narrowest_panel: Inches = Fraction(6)
    accent_fabric: str | None = None
    accent_width: Inches = Fraction(6)
    most_short_strips: int = MOST_SHORT_STRIPS
    overage_top: Inches | None = None
    overage_right: Inches | None = None
    overage_bottom: Inches | None = None
    overage_left: Inches | None = None


@dataclass(frozen=True, slots=True)
class Batting:
    """The layer between, larger than the quilt by `overage` on each side.

    `package` names the package to use (None: the smallest of `packages` that will do).
    """

    overage: Inches = Fraction(4)
    source: BattingFrom = BattingFrom.PACKAGE
    package: str | None = None
    roll_width: Inches = Fraction(96)
    roll_sale_unit: Inches = Fraction(9)
    packages: tuple[Package, ...] = COMMON
    overage_top: Inches | None = None
    overage_right: Inches | None = None
    overage_bottom: Inches | None = None
    overage_left: Inches | None = None


@dataclass(frozen=True, slots=True)
class Sleeve:
    """The tube on the back that a hanging rod goes through; `depth` is its flat depth.

    `ease` is what its front is cut deeper (None: as its shape has it). It is cut
    `shorter` than the quilt is wide, and in two with a `gap` if longer than `split_above`.
    `seam` closes a tube, `hem` is turned under on a sleeve of one layer, and `shortest`
    is the least length of a joined strip (None: the usual figures).
    """

    fabric: str
    depth: Inches = Fraction(4)
    shape: SleeveShape = SleeveShape.TUBE
    ease: Inches | None = None
    shorter: Inches = Fraction(1)
    split_above: Inches = Fraction(90)
    gap: Inches = Fraction(4)
    seam: Inches | None = None
    hem: Inches | None = None
    shortest: Inches | None = None


@dataclass(frozen=True, slots=True)
class Label:
    """A patch on the back, `width` × `length` finished, its edges turned under by `hem`."""

    fabric: str
    width: Inches = Fraction(6)
    length: Inches = Fraction(4)
    hem: Inches = Fraction(1, 4)
