"""A scrappy binding: equal segments from several cloths, in a repeating or a random order.

As many segments as the least length lets there be, at least one of each cloth,
all cut to one length. The binding is a ring: no two neighbours are of one cloth,
the last and the first included, which rules out one segment more than whole
rounds of the cloths.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from random import Random

from core.binding_choices import Order, Scrappy
from core.fabric import Grain
from core.figures import figure
from core.finish.demand import Demand
from core.lay.problem import Piece
from core.lengths import Inches, round_up
from core.refusal import Refusal

# Our default, no source: a quarter of the width of ordinary cloth, near enough.
SHORTEST, SHORTEST_MM = Fraction(10), Fraction(250)
_MARK, _MARK_MM = Fraction(1, 8), Fraction(1)
_TRIES = 200


@dataclass(frozen=True, slots=True)
class ScrappyPlan:
    """`order` names the cloth of each segment from the start; all are `length` long."""

    length: Inches
    order: tuple[str, ...]

    def demands(self, width: Inches, grain: Grain) -> tuple[Demand, ...]:
        """The segments of each cloth, as pieces."""
        sides = (self.length, width)
        across, along = sides[::-1] if grain is Grain.LENGTHWISE else sides
        turn = grain is Grain.EITHER
        return tuple(
            Demand(
                "binding.scrappy.cloths",
                "binding",
                Piece(segment_name(fabric), fabric, across, along, count, may_turn=turn),
            )
            for fabric, count in sorted(Counter(self.order).items(), key=self._first_use)
        )

    def _first_use(self, item: tuple[str, int]) -> int:
        return self.order.index(item[0])


def segment_name(fabric: str) -> str:
    """What the segments of one cloth are called in a lay."""
    return f"binding segment, {fabric}"


def plan_scrappy(
    scrappy: Scrappy, needs: Inches, loss: Inches, width: Inches, longest: Inches
) -> ScrappyPlan:
    """The segments that make `needs`; none may be longer than `longest`, if cut across."""
    cloths = scrappy.cloths
    least = scrappy.shortest
    if least is None:
        least = min(figure(width, SHORTEST, SHORTEST_MM), longest)
    if least <= loss:
        raise Refusal(
            "binding.scrappy.shortest",
            "a segment of {least} is used up by its join, which takes {loss}; write a longer one",
            least=least,
            loss=loss,
        )
    if least > longest:
        raise Refusal(
            "binding.scrappy.shortest",
            "a segment of {least} is longer than the narrowest of its cloths, {longest}; write a "
            "shorter one",
            least=least,
            longest=longest,
        )
    count = _count(needs, loss, least, len(cloths))
    mark = figure(width, _MARK, _MARK_MM)
    length = max(least, round_up((needs + (count - 1) * loss) / count, mark))
    if length > longest:  # one more than the least length allows, at that length
        count = _in_a_ring(count + 1, len(cloths), 1)
        length = max(least, round_up((needs + (count - 1) * loss) / count, mark))
    return ScrappyPlan(length, _order(scrappy, count))


def _count(needs: Inches, loss: Inches, least: Inches, cloths: int) -> int:
    """The most segments of at least `least`, in a number that a ring of the cloths can have."""
    most = int((needs - loss) / (least - loss))
    if most < cloths:
        raise Refusal(
            "binding.scrappy.shortest",
            f"segments of {{least}} are too long for all {cloths} cloths to have one; write a "
            "shorter one, or fewer cloths",
            least=least,
        )
    return _in_a_ring(most, cloths, -1)


def _in_a_ring(count: int, cloths: int, step: int) -> int:
    """The nearest number, going by `step`, that is not one more than whole rounds."""
    while count % cloths == 1:
        count += step
    return count


def _order(scrappy: Scrappy, count: int) -> tuple[str, ...]:
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
