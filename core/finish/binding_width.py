"""How wide a binding is cut, and how wide it finishes.

The strip is w wide, sewn s from the edge, and goes round an edge of thickness
t; the first face shows s, since the binding is filled to the quilt's edge.

* Double fold: folded in half, f = w/2; the second face gets f − 2s − t, which
  reaches f − 3s − t past the seam line.
* Single fold turns its own edge under by s: second face w − 3s − t, reach
  w − 4s − t.
* Faced: folded in half and turned wholly to the back: nothing shows on the
  front, the back shows f − s − t, and the seam line becomes the quilt's edge.

Turned round, a wished width b on each face with a reach c asks for w = 6b + 2t
+ 2c (double) or 4b + t + c (single) and a seam of b: the published "six times
finished, plus a little" (part of the disagreement that `WidthRule` names). With
the seam left as it is, the two faces share 2b: w = 2(2b + s + t) or 2b + 2s + t.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from core.binding_choices import Finishing, WidthRule
from core.figures import figure, usual
from core.language import told
from core.lengths import Inches, Units, show
from core.quilt import Binding, Fold
from core.refusal import Refusal

# Common practice, no source: how far the fold must land past the seam line. By
# machine the stitching runs 1/8 in from the fold and must still land past it.
REACH_BY_HAND, REACH_BY_HAND_MM = Fraction(1, 16), Fraction(3, 2)
REACH_BY_MACHINE, REACH_BY_MACHINE_MM = Fraction(1, 8), Fraction(3)


@dataclass(frozen=True, slots=True)
class Widths:
    """One binding's widths in inches. `reach` may be negative: the fold stops short of the seam.

    For a faced binding `reach` is how far the facing covers the quilt's back past its own seam.
    """

    strip: Inches
    seam: Inches
    first_face: Inches
    second_face: Inches
    reach: Inches
    needed_reach: Inches

    @property
    def reaches(self) -> bool:
        return self.reach >= self.needed_reach


def widths_of(binding: Binding, thickness: Inches) -> Widths:
    """The widths of a binding on an edge of that thickness. Raises `Refusal`."""
    strip, seam = cut_of(binding, thickness)
    needed = needed_reach(binding, strip)
    if binding.fold is Fold.FACED:
        second = strip / 2 - seam - thickness
        least = 2 * (seam + thickness)
        first, reach = Fraction(0), second
    else:
        double = binding.fold is Fold.DOUBLE
        second = (strip / 2 if double else strip - seam) - 2 * seam - thickness
        least = 2 * (2 * seam + thickness) if double else 3 * seam + thickness
        first, reach = seam, second - seam
    if second <= 0:
        raise _used_up(binding, strip, seam, least)
    return Widths(strip, seam, first, second, reach, needed)


def needed_reach(binding: Binding, strip: Inches) -> Inches:
    """How far past the seam the fold has to land for the chosen finishing."""
    if binding.reach is not None:
        return binding.reach
    if binding.finishing is Finishing.HAND:
        return figure(strip, REACH_BY_HAND, REACH_BY_HAND_MM)
    return usual(binding.stitching, strip, REACH_BY_MACHINE, REACH_BY_MACHINE_MM)


def strip_for(binding: Binding, finished: Inches, thickness: Inches) -> Inches:
    """The strip width that gives a finished width, by the binding's rule.

    >>> half = Binding("plum", None, finished_width=Fraction(1, 2), reach=Fraction(0))
    >>> strip_for(half, Fraction(1, 2), Fraction(0))
    Fraction(3, 1)
    """
    if binding.fold is Fold.FACED:
        return 2 * (finished + binding.seam + thickness)
    double, b, t = binding.fold is Fold.DOUBLE, finished, thickness
    if binding.width_rule is WidthRule.SEAM:
        return 2 * (2 * b + binding.seam + t) if double else 2 * b + 2 * binding.seam + t
    reach = needed_reach(binding, finished)
    return 6 * b + 2 * t + 2 * reach if double else 4 * b + t + reach


def seam_of(binding: Binding) -> Inches:
    """The seam that the binding is sewn with: the finished width where both faces are alike."""
    finished = binding.finished_width
    if finished is None or binding.width_rule is WidthRule.SEAM or binding.fold is Fold.FACED:
        return binding.seam
    return finished


def reach_warning(binding: Binding, widths: Widths, units: Units) -> str | None:
    """A sentence where the fold lands too little past the seam, else None."""
    if widths.reaches or binding.fold is Fold.FACED:
        return None
    wider = (2 if binding.fold is Fold.DOUBLE else 1) * (widths.needed_reach - widths.reach)
    values = {
        "lands": _lands(widths.reach, units),
        "needed": show(widths.needed_reach, units),
        "source": told(" (common practice)") if binding.reach is None else "",
        "wider": show(widths.strip + wider, units),
    }
    if binding.finishing is Finishing.HAND:
        return told(
            "The fold {lands}: to finish by hand it should reach {needed}{source}. "
            "Cut the strip {wider} wide, or sew a narrower seam.",
            **values,
        )
    return told(
        "The fold {lands}: to finish by machine it should reach {needed}{source}. "
        "Cut the strip {wider} wide, or sew a narrower seam.",
        **values,
    )


def _lands(reach: Inches, units: Units) -> str:
    if reach > 0:
        return told("reaches only {reach} past the seam", reach=show(reach, units))
    if reach < 0:
        return told("stops {reach} short of the seam", reach=show(-reach, units))
    return told("lands on the seam and not past it")


def cut_of(binding: Binding, thickness: Inches) -> tuple[Inches, Inches]:
    """The strip width and the seam, as written or as they follow from the finished width."""
    if binding.strip_width is not None:
        return binding.strip_width, binding.seam
    if binding.finished_width is None:
        raise Refusal(
            "binding.strip_width",
            told("this is missing; write the strip's width or the finished width"),
        )
    return strip_for(binding, binding.finished_width, thickness), seam_of(binding)


def _used_up(binding: Binding, strip: Inches, seam: Inches, least: Inches) -> Refusal:
    if binding.strip_width is None:
        return Refusal(
            "binding.finished_width",
            told(
                "a strip of {strip} is used up by its seams of {seam} and the quilt's edge; "
                "write a larger finished width, or a narrower seam"
            ),
            strip=strip,
            seam=seam,
        )
    return Refusal(
        "binding.strip_width",
        told(
            "a strip of {strip} is used up by its seams of {seam} and the quilt's edge; "
            "write more than {least}, or a narrower seam"
        ),
        strip=strip,
        seam=seam,
        least=least,
    )
