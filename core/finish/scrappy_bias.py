"""Bias segments of a scrappy binding: what each cloth is cut from.

Every cloth gives its segments from a tube or from strips cut one by one, as a
binding of one cloth does. A strip is cut into segments along lines that slant as
its ends do, so that u inches of strip give ⌊u / segment⌋ of them.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace

from core.binding_choices import BiasMethod, BiasSource
from core.fabric import Fabric
from core.finish.bias_cloth import BiasNeed, BiasPiece, BiasPlan
from core.language import told
from core.lengths import Inches, round_up
from core.refusal import Refusal

_LONGEST = Inches(1000)  # inches, as of every length in a project
_MOST_SQUARES = 50


@dataclass(frozen=True, slots=True)
class Segments:
    """`count` segments of `length`, cut as `need` says."""

    need: BiasNeed
    length: Inches
    count: int

    def piece(self, name: str, across: Inches, along: Inches) -> BiasPiece:
        """What one such piece of cloth gives; of its strips the fewest that give enough."""
        tube = self.need.cut.method is BiasMethod.TUBE
        # Not joined before they are cut apart: all strips that a segment can come from.
        apart = replace(self.need, least=self.length)
        whole = apart.piece(name, across, along, needs=_LONGEST**2)
        strips = sorted(whole.strips, key=lambda strip: -strip.usable)
        kept, given = [], self._from(whole.gives) if tube else 0
        for strip in strips:
            if given >= self.count:
                break
            kept.append(strip)
            given += self._from(strip.usable)
        given = min(given, self.count)
        return replace(whole, strips=tuple(kept), segments=given, gives=given * self.length)

    def _from(self, length: Inches) -> int:
        return int(length / self.length)


def longest_segment(need: BiasNeed, fabric: Fabric) -> Inches:
    """The longest bias strip that the cloth gives in one piece; 0 if none."""
    widest = fabric.cutting_width
    sizes = [(hand.across, hand.along) for hand in fabric.on_hand]
    if need.cut.source is not BiasSource.ON_HAND:
        sizes = [(widest, widest)]
    strips = [need.piece("", *size).lengths for size in sizes]
    return max((length for lengths in strips for length in lengths), default=Inches(0))


def segment_cloth(segments: Segments, fabric: Fabric) -> BiasPlan:
    """The least cloth of the chosen kind that gives the segments. Raises `Refusal`."""
    need = segments.need
    cut = {
        BiasSource.SQUARE: _squares,
        BiasSource.RECTANGLE: _rectangle,
        BiasSource.ON_HAND: _on_hand,
    }[need.cut.source]
    pieces = cut(segments, fabric)
    return BiasPlan(need.cut.method, need.width, need.seam, need.join_loss, pieces)


def _squares(segments: Segments, fabric: Fabric) -> tuple[BiasPiece, ...]:
    """Fewest equal squares, and of those the least."""
    name, step = f"bias square for the {segments.need.part}", segments.need.step
    widest = fabric.cutting_width // step * step
    for squares in range(1, _MOST_SQUARES + 1):
        each = replace(segments, count=-(-segments.count // squares))
        side = round_up(segments.need.width, step)
        while side <= widest:
            piece = each.piece(name, side, side)
            if piece.segments == each.count:
                return (replace(piece, count=squares),)
            side += step
    raise _too_small(segments, fabric)


def _rectangle(segments: Segments, fabric: Fabric) -> tuple[BiasPiece, ...]:
    """The full usable width, as little along the cloth as gives enough."""
    name, step = f"bias cloth for the {segments.need.part}", segments.need.step
    along = round_up(segments.need.width, step)
    while along <= _LONGEST:
        piece = segments.piece(name, fabric.cutting_width, along)
        if piece.segments == segments.count:
            return (piece,)
        along += step
    raise _too_small(segments, fabric)


def _on_hand(segments: Segments, fabric: Fabric) -> tuple[BiasPiece, ...]:
    """Pieces on hand as they are, those that give most first, as few as will do."""
    sizes = [(hand.across, hand.along) for hand in fabric.on_hand for _ in range(hand.count)]
    each = {size: segments.piece("", *size).segments for size in sizes}
    sizes.sort(key=lambda size: -each[size])
    used: list[tuple[Inches, Inches]] = []
    for size in sizes:
        if sum(each[one] for one in used) >= segments.count or not each[size]:
            break
        used.append(size)
    if sum(each[one] for one in used) < segments.count:
        raise _too_small(segments, fabric)
    return tuple(
        replace(segments.piece(f"bias piece {number} for the {segments.need.part}", *size), count=n)
        for number, (size, n) in enumerate(Counter(used).items(), start=1)
    )


def _too_small(segments: Segments, fabric: Fabric) -> Refusal:
    return Refusal(
        "binding.scrappy.shortest",
        told(
            "{fabric} does not give {count} bias segments of {length}; write a "
            "shorter one, or choose another way to cut the bias",
            fabric=fabric.name,
            count=segments.count,
            length="{length}",
        ),
        length=segments.length,
    )
