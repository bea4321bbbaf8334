"""What a person may choose about a binding beyond its cloth, width and grain.

Lengths that are None stand for the usual figure, in round inches or round
millimetres as the strip was measured; the module that uses one says where the
figure comes from.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from core.lengths import Inches


class Face(StrEnum):
    """A face of the quilt."""

    FRONT = "front"
    BACK = "back"


class Finishing(StrEnum):
    """How the second face is sewn down."""

    HAND = "hand"
    MACHINE = "machine"


class WidthRule(StrEnum):
    """What a wished finished width means.

    Published rules disagree. `FACES`: both faces finish alike, so the seam is as
    wide as the finished width (six times the finished width for a double fold,
    and a little for the turn and the reach). `SEAM`: the seam stays as it is and
    the two faces together show twice the finished width.
    """

    FACES = "faces"
    SEAM = "seam"


class BiasMethod(StrEnum):
    """Tube: one continuous strip from a sewn tube. Strips: cut one by one and joined."""

    TUBE = "tube"
    STRIPS = "strips"


class BiasSource(StrEnum):
    """What bias is cut from: a square, the cloth's full width, or pieces on hand as they are."""

    SQUARE = "square"
    RECTANGLE = "rectangle"
    ON_HAND = "on_hand"


@dataclass(frozen=True, slots=True)
class BiasCut:
    """How bias strips are had; squares and rectangles are whole `step`s long."""

    method: BiasMethod = BiasMethod.TUBE
    source: BiasSource = BiasSource.SQUARE
    step: Inches | None = None


@dataclass(frozen=True, slots=True)
class Tails:
    """The unsewn ends of a binding that is closed by a join, and the gap left between them."""

    tail: Inches | None = None
    gap: Inches | None = None


@dataclass(frozen=True, slots=True)
class Tuck:
    """A tucked closing: the end folded under, how far the other lies inside it, where to start.

    `start` is how far past the fold the sewing starts.
    """

    turned: Inches | None = None
    overlap: Inches | None = None
    start: Inches | None = None


class AccentKind(StrEnum):
    """What shows along the binding: nothing, a flat folded flange, or a corded piping."""

    NONE = "none"
    FLANGE = "flange"
    PIPING = "piping"


@dataclass(frozen=True, slots=True)
class Accent:
    """A strip sewn under the binding's first face. `cloth` None: the binding's own.

    `shows` is the flange's finished width, `cord` the piping cord's diameter, and
    `overlap` how far the piping's ends lie over each other.
    """

    kind: AccentKind = AccentKind.NONE
    cloth: str | None = None
    shows: Inches | None = None
    cord: Inches | None = None
    overlap: Inches | None = None


class Order(StrEnum):
    """How the cloths of a scrappy binding follow each other."""

    NONE = "none"
    REPEATING = "repeating"
    RANDOM = "random"


@dataclass(frozen=True, slots=True)
class Scrappy:
    """A binding of segments from several cloths, each at least `shortest` long.

    `seed` chooses one of the random orders; the same seed gives the same order.
    """

    order: Order = Order.NONE
    cloths: tuple[str, ...] = ()
    shortest: Inches | None = None
    seed: int = 1
