"""A binding of two cloths, one on each face: two long strips sewn edge to edge.

From the raw edge of the first face the strip holds the seam allowance s, the
first face s, and the quilt's edge t; the seam between the cloths lies in the
middle of that edge. So the first face's cloth takes 2s + t/2 of the strip's
width, the other the rest, and each a seam allowance more.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from core.binding_choices import Face
from core.figures import figure, usual
from core.finish.binding_width import Widths
from core.lengths import Inches, round_up
from core.quilt import Binding

# Common practice, no source: the two strips are sewn together with the usual seam.
SEAM, SEAM_MM = Fraction(1, 4), Fraction(6)
_MARK, _MARK_MM = Fraction(1, 16), Fraction(1)


@dataclass(frozen=True, slots=True)
class TwoCloth:
    """What the two strips are cut, in inches, and the seam between them."""

    front_fabric: str
    back_fabric: str
    front: Inches
    back: Inches
    seam: Inches

    @property
    def sewn(self) -> Inches:
        """The width of the strip that they make."""
        return self.front + self.back - 2 * self.seam


def plan_two_cloth(
    binding: Binding, back_fabric: str, widths: Widths, thickness: Inches
) -> TwoCloth:
    """The two strips; the first face's is rounded up to a ruler's mark, the other takes the rest.

    >>> widths = Widths(*map(Fraction, ("2.5", "0.25", "0.25", "0.625", "0.375", "0.0625")))
    >>> two = plan_two_cloth(Binding("plum", Fraction(5, 2)), "dots", widths, Fraction(1, 8))
    >>> two.front, two.back, two.sewn
    (Fraction(13, 16), Fraction(35, 16), Fraction(5, 2))
    """
    seam = usual(binding.cloths_seam, widths.strip, SEAM, SEAM_MM)
    mark = figure(widths.strip, _MARK, _MARK_MM)
    first = round_up(2 * widths.seam + thickness / 2, mark) + seam
    second = widths.strip + 2 * seam - first
    front, back = (first, second) if binding.first_face is Face.FRONT else (second, first)
    return TwoCloth(binding.fabric, back_fabric, front, back, seam)
