"""The cloth that a bias binding is cut from: squares, a strip of the full width, pieces on hand.

Whatever the source, each piece of cloth gives a length by a tube or by strips
cut one by one, and what the pieces give is joined.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from core.binding_choices import BiasCut, BiasMethod, BiasSource
from core.edge.bias import bare_area_rule, tube_turns, tube_yield
from core.edge.bias_strips import BiasStrip, best_strips, bias_strips
from core.edge.joins import chain_length, slanted_loss, strips_needed
from core.fabric import Fabric
from core.figures import usual
from core.finish.demand import Demand
from core.language import told
from core.lay.problem import Piece
from core.lengths import Inches, round_up
from core.quilt import Joins
from core.refusal import Refusal

# Our default, no source: squares and rectangles in round halves of an inch or centimetres.
STEP, STEP_MM = Fraction(1, 2), Fraction(10)
_LONGEST = Fraction(1000)  # inches, as of every length in a project


@dataclass(frozen=True, slots=True)
class BiasPiece:
    """`count` equal pieces of cloth; each gives `gives` inches of strip, joined.

    `strips` are those cut one by one; `turns` counts the whole strips across a
    tube. `bare_area` is what charts print for the same cloth. Cut apart, it gives
    so many `segments` (0: it stays whole).
    """

    name: str
    across: Inches
    along: Inches
    count: int
    gives: Inches
    bare_area: Inches
    turns: int = 0
    strips: tuple[BiasStrip, ...] = ()
    segments: int = 0

    @property
    def segment(self) -> Inches:
        """How long each of its segments is."""
        return self.gives / self.segments if self.segments else self.gives

    @property
    def lengths(self) -> tuple[Inches, ...]:
        """The strips to be joined from one such piece."""
        return tuple(strip.usable for strip in self.strips) or (self.gives,)


@dataclass(frozen=True, slots=True)
class BiasPlan:
    """How a bias binding is cut; `join_loss` is that of two of its strips."""

    method: BiasMethod
    width: Inches
    seam: Inches
    join_loss: Inches
    pieces: tuple[BiasPiece, ...]

    @property
    def lengths(self) -> tuple[Inches, ...]:
        """Every strip to be joined."""
        return tuple(length for piece in self.pieces for length in piece.lengths * piece.count)

    @property
    def joined_length(self) -> Inches:
        return chain_length(self.lengths, self.join_loss)

    def demands(self, path: str, role: str, fabric: str) -> tuple[Demand, ...]:
        """The pieces of cloth; bias is bias either way, so they may turn."""
        return tuple(
            Demand(
                path,
                role,
                Piece(piece.name, fabric, piece.across, piece.along, piece.count, may_turn=True),
            )
            for piece in self.pieces
        )


@dataclass(frozen=True, slots=True)
class BiasNeed:
    """What `part` asks of the cloth: strips of `width` that make `needs` when joined.

    None of those cut one by one is shorter than `least`.
    """

    part: str
    cut: BiasCut
    width: Inches
    seam: Inches
    joins: Joins
    needs: Inches
    least: Inches

    @property
    def join_loss(self) -> Inches:
        """Bias ends are slanted already, unless they are cut square for a straight join."""
        return 2 * self.seam if self.joins is Joins.STRAIGHT else slanted_loss(self.seam)

    @property
    def step(self) -> Inches:
        return usual(self.cut.step, self.width, STEP, STEP_MM)

    def piece(
        self, name: str, across: Inches, along: Inches, count: int = 1, needs: Inches | None = None
    ) -> BiasPiece:
        """What one such piece of cloth gives; of strips only as many as make `needs`."""
        bare = bare_area_rule(across, along, self.width)
        if self.cut.method is BiasMethod.TUBE:
            turns = tube_turns(max(across, along), self.width, self.seam)
            given = self._squared(tube_yield(across, self.width, self.seam, along))
            return BiasPiece(name, across, along, count, given, bare, turns)
        strips = tuple(
            BiasStrip(strip.place, self._squared(strip.usable))
            for strip in bias_strips(across, along, self.width)
        )
        wanted = self.needs if needs is None else needs
        best = best_strips(strips, wanted, self.join_loss, self.least)
        given = chain_length(tuple(strip.usable for strip in best), self.join_loss)
        return BiasPiece(name, across, along, count, given, bare, strips=best)

    def _squared(self, length: Inches) -> Inches:
        """The length left when slanted ends are cut square for straight joins."""
        less = length - self.width if self.joins is Joins.STRAIGHT else length
        return max(less, Fraction(0))


def plan_bias(need: BiasNeed, fabric: Fabric) -> BiasPlan:
    """The least cloth of the chosen kind that gives enough. Raises `Refusal`."""
    source = {
        BiasSource.SQUARE: _squares,
        BiasSource.RECTANGLE: _rectangle,
        BiasSource.ON_HAND: _on_hand,
    }[need.cut.source]
    pieces = source(need, fabric)
    return BiasPlan(need.cut.method, need.width, need.seam, need.join_loss, pieces)


def _squares(need: BiasNeed, fabric: Fabric) -> tuple[BiasPiece, ...]:
    """Fewest equal squares that fit the cloth and that, joined, reach what is needed."""
    name, step = f"bias square for the {need.part}", need.step
    widest = fabric.cutting_width // step * step
    most = need.piece(name, widest, widest).gives if widest else Fraction(0)
    if most <= need.join_loss:
        raise _too_small()
    count = strips_needed(need.needs, need.join_loss, most)
    each = (need.needs + (count - 1) * need.join_loss) / count
    start = round_up(need.width, step)

    def gives(side: Inches) -> Inches:
        return need.piece(name, side, side, needs=each).gives

    side = _least_size(gives, each, start, step, widest)
    if side is None:  # rounded lengths can ask for a little more than the widest gives
        count, side = count + 1, widest
        each = (need.needs + (count - 1) * need.join_loss) / count
    return (need.piece(name, side, side, count, each),)


def _rectangle(need: BiasNeed, fabric: Fabric) -> tuple[BiasPiece, ...]:
    """The full usable width, as little along the cloth as gives enough."""
    name, step = f"bias cloth for the {need.part}", need.step
    across = fabric.cutting_width

    def gives(along: Inches) -> Inches:
        return need.piece(name, across, along).gives

    by_area = need.needs * need.width / across
    along = _least_size(gives, need.needs, round_up(by_area, step), step, _LONGEST)
    if along is None:
        raise _too_small()
    return (need.piece(name, across, along),)


def _on_hand(need: BiasNeed, fabric: Fabric) -> tuple[BiasPiece, ...]:
    """Pieces on hand as they are, those that give most first, as few as will do."""
    sizes = [(hand.across, hand.along) for hand in fabric.on_hand for _ in range(hand.count)]
    each = {size: need.piece("", *size) for size in sizes}
    sizes = [size for size in sizes if each[size].gives > need.join_loss]
    sizes.sort(key=lambda size: -each[size].gives)
    used: list[tuple[Inches, Inches]] = []
    given = Fraction(0)
    for size in sizes:
        if used and given >= need.needs:
            break
        given += each[size].gives - (need.join_loss if used else 0)
        used.append(size)
    if given < need.needs:
        raise Refusal(
            "binding.bias.source",
            told(
                "the pieces of {fabric} on hand give {given} of bias strip and the binding "
                "needs {needs}; write square or rectangle, or add cloth on hand",
                fabric=fabric.name,
                given="{given}",
                needs="{needs}",
            ),
            given=given,
            needs=need.needs,
        )
    return tuple(
        need.piece(f"bias piece {number} for the {need.part}", *size, count)
        for number, (size, count) in enumerate(Counter(used).items(), start=1)
    )


def _least_size(
    gives: Callable[[Inches], Inches], wanted: Inches, start: Inches, step: Inches, most: Inches
) -> Inches | None:
    """The least of `start`, `start` + `step` … up to `most` that gives `wanted`; None if none."""
    size = start
    while size <= most:
        if gives(size) >= wanted:
            return size
        size += step
    return None


def _too_small() -> Refusal:
    return Refusal(
        "binding.grain",
        told("no square on this cloth gives a bias strip this wide; write a narrower strip"),
    )
