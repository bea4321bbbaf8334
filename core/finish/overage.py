"""Overage: how far backing and batting stand out beyond the quilt, side by side."""

from __future__ import annotations

from dataclasses import dataclass

from core.lay.lay import Rect
from core.lengths import Inches
from core.quilt import Backing, Batting


@dataclass(frozen=True, slots=True)
class Overages:
    """How far a layer stands out at each side of the quilt."""

    top: Inches
    right: Inches
    bottom: Inches
    left: Inches

    def round(self, width: Inches, length: Inches) -> tuple[Inches, Inches]:
        """The layer's size, across and along the quilt."""
        return width + self.left + self.right, length + self.top + self.bottom

    def grown(self, quilt: Rect) -> Rect:
        """The rectangle of the layer behind the quilt's."""
        across, along = self.round(quilt.across, quilt.along)
        return Rect(quilt.x - self.left, quilt.y - self.top, across, along)

    @property
    def most(self) -> Inches:
        return max(self.top, self.right, self.bottom, self.left)


def overages(layer: Backing | Batting) -> Overages:
    """Each side's own overage, else the one for all sides."""

    def of(own: Inches | None) -> Inches:
        return layer.overage if own is None else own

    return Overages(
        of(layer.overage_top),
        of(layer.overage_right),
        of(layer.overage_bottom),
        of(layer.overage_left),
    )
