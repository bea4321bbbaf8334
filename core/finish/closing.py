"""How the two ends of the binding meet: what that takes, where to start and where to stop.

Closed by a join: the first and the last inches stay unsewn as tails; the sewing
stops a gap before it started, and the tails are joined so that the ring lies
flat. With tails of T over a gap of G they can overlap by 2T − G, which must be
what the closing takes; and the strip must be long enough for such tails.

Tucked: one end is folded under into a pocket, the sewing starts a little past
that fold, and the other end is cut so as to lie inside it.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from core.edge.joins import (
    TUCKED_FOLD,
    TUCKED_FOLD_MM,
    TUCKED_OVERLAP,
    TUCKED_OVERLAP_MM,
    closing_takes,
)
from core.figures import figure, usual
from core.finish.binding_width import Widths
from core.language import told
from core.lengths import Inches, Rounding, rounded
from core.quilt import Binding, Closing
from core.refusal import Refusal

# Published tails run from 5 to 8 in (Angie Quilts, "Brilliant Binding").
TAIL, TAIL_MM = Fraction(8), Fraction(200)
# Common practice, no source: 8 to 12 in are left unsewn, to have room for the hands.
GAP, GAP_MM = Fraction(10), Fraction(250)
# Common practice, no source: the sewing starts 1 to 1 1/2 in past a tucked end's fold.
TUCKED_START, TUCKED_START_MM = Fraction(1), Fraction(25)
_MARK, _MARK_MM = Fraction(1, 8), Fraction(1)


@dataclass(frozen=True, slots=True)
class JoinedClosing:
    """Tails of `tail` over a gap of `gap`; they overlap by `takes` when they are joined."""

    takes: Inches
    tail: Inches
    gap: Inches


@dataclass(frozen=True, slots=True)
class TuckedClosing:
    """The end folded under by `fold`; sewing starts `start` past it; `overlap` is tucked in."""

    takes: Inches
    fold: Inches
    overlap: Inches
    start: Inches


def plan_closing(binding: Binding, widths: Widths, side: Inches) -> JoinedClosing | TuckedClosing:
    """The closing of a binding; `side` is the straight stretch that it is closed on."""
    if binding.closing is Closing.TUCKED:
        return _tucked(binding, widths, side)
    takes = closing_takes(binding.closing, widths.strip, widths.seam)
    gap = _gap(binding, widths, side, takes)
    return JoinedClosing(takes, _tail(binding, widths, gap, takes), gap)


def _gap(binding: Binding, widths: Widths, side: Inches, takes: Inches) -> Inches:
    tails = binding.tails
    if tails.gap is not None:
        if tails.gap > side:
            raise Refusal(
                "binding.tails.gap",
                told(
                    "a gap of {gap} is longer than a side of the quilt, {side}; write a smaller gap"
                ),
                gap=tails.gap,
                side=side,
            )
        return tails.gap
    usual = min(figure(widths.strip, GAP, GAP_MM), side / 2)
    return usual if tails.tail is None else max(min(usual, 2 * tails.tail - takes), Fraction(0))


def _tail(binding: Binding, widths: Widths, gap: Inches, takes: Inches) -> Inches:
    """Tails that can meet, and that the strip is long enough for."""
    least = (gap + takes) / 2
    most = least + binding.allowance / 2
    tail = binding.tails.tail
    if tail is None:
        usual = figure(widths.strip, TAIL, TAIL_MM)
        mark = figure(widths.strip, _MARK, _MARK_MM)
        return max(usual if usual <= most else rounded(most, mark, Rounding.DOWN), least)
    if tail < least:
        raise Refusal(
            "binding.tails.tail",
            told(
                "two tails of {tail} cannot meet across a gap of {gap} and overlap by {takes}; "
                "write tails of at least {least}, or a smaller gap"
            ),
            tail=tail,
            gap=gap,
            takes=takes,
            least=least,
        )
    if tail > most:
        raise Refusal(
            "binding.allowance",
            told(
                "closing with tails of {tail} wants {wants} to spare, and the allowance is "
                "{allowance}; write a larger allowance, or shorter tails"
            ),
            tail=tail,
            wants=2 * (tail - least),
            allowance=binding.allowance,
        )
    return tail


def _tucked(binding: Binding, widths: Widths, side: Inches) -> TuckedClosing:
    tuck, strip = binding.tuck, widths.strip
    fold = usual(tuck.turned, strip, TUCKED_FOLD, TUCKED_FOLD_MM)
    overlap = usual(tuck.overlap, strip, TUCKED_OVERLAP, TUCKED_OVERLAP_MM)
    start = usual(tuck.start, strip, TUCKED_START, TUCKED_START_MM)
    given = (tuck.start, tuck.overlap) != (None, None)
    if given and start + overlap > side:
        raise Refusal(
            "binding.tuck.overlap",
            told(
                "the tucked end, {start} to the first stitch and {overlap} tucked in, is longer "
                "than a side of the quilt, {side}; write smaller lengths"
            ),
            start=start,
            overlap=overlap,
            side=side,
        )
    takes = closing_takes(binding.closing, strip, widths.seam, fold, overlap)
    return TuckedClosing(takes, fold, overlap, start)
