"""A scrappy binding: equal segments from several cloths, in a repeating or a random order.

As many segments as the least length lets there be, at least one of each cloth,
all cut to one length. The binding is a ring: of those that are sewn on, no two
neighbours are of one cloth, the last and the first included, which rules out one
segment more than whole rounds of the cloths. What the allowance adds is kept.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from random import Random

from core.binding_choices import Order, Scrappy
from core.edge.joins import as_many_as_reach
from core.fabric import Grain
from core.figures import figure
from core.finish.bias_cloth import BiasPlan
from core.finish.demand import Demand
from core.language import told
from core.lay.problem import Piece
from core.lengths import Inches, round_up
from core.refusal import Refusal

# Our default, no source: a quarter of the width of ordinary cloth, near enough.
SHORTEST, SHORTEST_MM = Fraction(10), Fraction(250)
_MARK, _MARK_MM = Fraction(1, 8), Fraction(1)
_TRIES = 200


@dataclass(frozen=True, slots=True)
class ScrappyPlan:
    """`order` names the cloth of each segment from the start; all are `length` long.

    `bias` is what they are cut from on the bias, cloth by cloth.
    """

    length: Inches
    order: tuple[str, ...]
    bias: tuple[tuple[str, BiasPlan], ...] = ()

    @property
    def counts(self) -> dict[str, int]:
        """How many segments each cloth gives, in the order in which they are first used."""
        return {name: self.order.count(name) for name in dict.fromkeys(self.order)}

    def demands(self, width: Inches, grain: Grain) -> tuple[Demand, ...]:
        """The segments of each cloth, as pieces; on the bias the cloth that gives them."""
        if self.bias:
            path = "binding.scrappy.cloths"
            return tuple(d for name, cut in self.bias for d in cut.demands(path, "binding", name))
        sides = (self.length, width)
        across, along = sides[::-1] if grain is Grain.LENGTHWISE else sides
        turn = grain is Grain.EITHER
        return tuple(
            Demand(
                "binding.scrappy.cloths",
                "binding",
                Piece(segment_name(fabric), fabric, across, along, count, may_turn=turn),
            )
            for fabric, count in self.counts.items()
        )


@dataclass(frozen=True, slots=True)
class Needs:
    """The length of the ring as it is sewn, and the `whole` with its handling allowance."""

    ring: Inches
    whole: Inches


def segment_name(fabric: str) -> str:
    """What the segments of one cloth are called in a lay."""
    return f"binding segment, {fabric}"


def plan_scrappy(
    scrappy: Scrappy, needs: Needs, loss: Inches, width: Inches, longest: Inches
) -> ScrappyPlan:
    """The segments that make what is needed; none may be longer than `longest`, if cut across."""
    cloths = scrappy.cloths
    least = scrappy.shortest
    if least is None:
        least = min(figure(width, SHORTEST, SHORTEST_MM), longest)
    _refuse(least, loss, longest)
    most = int((needs.whole - loss) / (least - loss))
    mark = figure(width, _MARK, _MARK_MM)
    if most < len(cloths):
        raise _too_long(least, len(cloths))
    # Fewer segments are longer; one more than `least` allows is taken at that length.
    for count in (*range(most, len(cloths) - 1, -1), *range(most + 1, most + 4)):
        even = (needs.whole + (count - 1) * loss) / count
        length = max(least, round_up(even, mark))
        sewn = as_many_as_reach((length,) * count, loss, needs.ring)
        if length <= longest and sewn % len(cloths) != 1:
            spare = tuple(cloths[place % len(cloths)] for place in range(sewn, count))
            return ScrappyPlan(length, (*in_order(scrappy, sewn), *spare))
    raise _too_long(least, len(cloths))


def _too_long(least: Inches, cloths: int) -> Refusal:
    return Refusal(
        "binding.scrappy.shortest",
        told(
            "segments of {least} are too long for all {cloths} cloths to have one; write a shorter "
            "one, or fewer cloths",
            least="{least}",
            cloths=cloths,
        ),
        least=least,
    )


def _refuse(least: Inches, loss: Inches, longest: Inches) -> None:
    if least <= loss:
        raise Refusal(
            "binding.scrappy.shortest",
            told(
                "a segment of {least} is used up by its join, which takes {loss}; write a longer "
                "one"
            ),
            least=least,
            loss=loss,
        )
    if least > longest:
        raise Refusal(
            "binding.scrappy.shortest",
            told(
                "a segment of {least} is longer than the narrowest of its cloths, {longest}; write "
                "a shorter one"
            ),
            least=least,
            longest=longest,
        )


def in_order(scrappy: Scrappy, count: int) -> tuple[str, ...]:
    """The cloths of `count` segments, in turn or at random."""
    cloths = scrappy.cloths
    repeating = tuple(cloths[place % len(cloths)] for place in range(count))
    if scrappy.order is not Order.RANDOM:
        return repeating
    random = Random(scrappy.seed)
    for _ in range(_TRIES):
        found = _drawn(Counter(repeating), random)
        if len(found) == count and found[0] != found[-1]:
            return tuple(found)
    return repeating  # with two cloths, say, no other ring is to be had


def _drawn(left: Counter[str], random: Random) -> list[str]:
    """Cloths drawn one by one, never the same twice running, as far as that goes."""
    drawn: list[str] = []
    while True:
        open_to = sorted(name for name, count in left.items() if count and [name] != drawn[-1:])
        if not open_to:
            return drawn
        name = random.choices(open_to, [left[name] for name in open_to])[0]
        left[name] -= 1
        drawn.append(name)
