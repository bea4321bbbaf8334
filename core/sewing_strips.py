"""How strips are cut on the bias and joined end to end, in words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from core.binding_choices import BiasMethod
from core.finish.bias_cloth import BiasPlan
from core.language import marked, told
from core.lengths import Units, show
from core.plan import Part, Plan
from core.quilt import Joins
from core.steps import from_to

_JOINED: Final = {
    Joins.DIAGONAL: marked("with diagonal joins"),
    Joins.STRAIGHT: marked("with straight joins"),
    Joins.ANGLED: marked("with angled joins"),
}


def labels(part: Part) -> str:
    """All of a part's pieces: "B", or "B1 to B4"."""
    first, last = part.label(1), part.label(part.count)
    return first if first == last else from_to(first, last)


def joined(joins: Joins) -> str:
    """How strips are joined, as the end of a sentence's clause."""
    return told(_JOINED[joins])


def end_to_end(part: Part, joins: Joins, trim: str) -> str:
    """Joining the copies of a part; `trim` says what is done with the seams."""
    return told(
        "Join {pieces} end to end {joined}; {trim}.",
        pieces=labels(part),
        joined=joined(joins),
        trim=trim,
    )


def joined_up(part: Part, joins: Joins, trim: str) -> Iterator[str]:
    """The same where there is more than one."""
    if part.count > 1:
        yield end_to_end(part, joins, trim)


def bias_cut(plan: Plan, bias: BiasPlan, units: Units) -> Iterator[str]:
    """Cutting cloth into bias strips."""
    wide = show(bias.width, units)
    for piece in bias.pieces:
        cloth = labels(plan.part(piece.name))
        if bias.method is BiasMethod.TUBE:
            yield told(
                "Cut {piece} at 45° from a corner, sew the freed triangle to the other end with a "
                "{seam} seam, mark {count} strips {wide} wide along the "
                "slanted edge, sew the long edges to a tube one strip out of step, and cut along "
                "the line.",
                piece=cloth,
                seam=show(bias.seam, units),
                count=piece.turns,
                wide=wide,
            )
        else:
            yield told(
                "Cut {piece} at 45° from a corner, then {count} strips {wide} wide "
                "as drawn, and trim their ends to slant the same way.",
                piece=cloth,
                count=len(piece.strips),
                wide=wide,
            )
