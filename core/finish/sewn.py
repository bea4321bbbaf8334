"""The binding sewn on: where to start, and where its joins then lie.

Of the sides on which the binding's ends could meet, the one is taken whose
joins stay farthest from the corners, or the one that the person asks for.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.edge.edge_map import Chain, EdgeMap, best_map, map_from
from core.edge.joins import as_many_as_reach
from core.edge.outline import Outline
from core.finish.binding_plan import BindingPlan
from core.language import told
from core.lengths import Inches
from core.quilt import Binding
from core.refusal import Refusal
from core.segments import Segment
from core.shape import Facing

# Of sides that do equally well: where a visitor looks last. Our default, no source.
_LIKED = (Facing.BOTTOM, Facing.LEFT, Facing.RIGHT, Facing.TOP)


@dataclass(frozen=True, slots=True)
class Sewn:
    """The edge map to sew by, and what the person's wishes cost.

    `wished` is how far joins and closing should stay from the corners.
    `elsewhere` is the best on any side, where the one asked for does worse.
    `chain` are the strips, `best` the best that they give anywhere.
    """

    edge_map: EdgeMap
    wished: Inches
    elsewhere: EdgeMap | None
    chain: Chain
    best: EdgeMap

    @property
    def short(self) -> bool:
        """Whether something comes nearer to a corner than wished."""
        return self.edge_map.least is not None and self.edge_map.least < self.wished


def sew(
    binding: Binding, plan: BindingPlan, outline: Outline, segments: tuple[Segment, ...]
) -> Sewn | None:
    """How to sew `segments` round `outline`; None where they leave the closing no room.

    The wished distance is a strip's width unless the person gives another: a
    diagonal join lies half a width to either side of its middle, and a mitre
    needs as much again. Our default, no source. A scrappy binding keeps its
    order; a facing has no ring to close.
    """
    if plan.facing is not None or not segments:
        return None
    strip, loss = plan.widths.strip, plan.join_loss
    chain = Chain(
        segments[: as_many_as_reach(_lengths(segments), loss, plan.perimeter + plan.closing)],
        loss,
        plan.closing,
        least=strip,
        reorder=plan.scrappy is None,
    )
    sides = {side.facing for side in outline.sides}
    maps = {facing: best_map(outline, chain, facing) for facing in _LIKED if facing in sides}
    found = {facing: made for facing, made in maps.items() if made is not None}
    if not found:
        return None
    best = max(found.values(), key=_least)
    chosen = best if binding.start_side is None else found.get(binding.start_side, best)
    wished = strip if binding.least_to_corner is None else binding.least_to_corner
    sewn = _started(Sewn(best, wished, None, chain, best), chosen)
    if binding.start_at is None:
        return sewn
    if binding.start_at >= outline.ring:
        raise Refusal(
            "binding.start_at",
            told("the edge is {ring} round; write less than that, or nothing for the best place"),
            ring=outline.perimeter,
        )
    return started_at(sewn, outline, binding.start_at)


def started_at(sewn: Sewn, outline: Outline, place: Inches) -> Sewn:
    """The same strips with their ends meeting at `place`, wherever that is."""
    return _started(sewn, map_from(outline, sewn.chain, place) or sewn.best)


def dragged_to(sewn: Sewn, outline: Outline, place: Inches) -> Sewn:
    """As `started_at`, but the strips keep the order they have: in a blink, however many.

    Where strips differ in length, another order may do better from there.
    """
    lengths = dict(sewn.chain.segments)
    segments = tuple((name, lengths[name]) for name in sewn.edge_map.order)
    kept = replace(sewn.chain, segments=segments, reorder=False)
    return _started(sewn, map_from(outline, kept, place) or sewn.edge_map)


def _started(sewn: Sewn, chosen: EdgeMap) -> Sewn:
    elsewhere = sewn.best if _least(sewn.best) > _least(chosen) else None
    return replace(sewn, edge_map=chosen, elsewhere=elsewhere)


def _lengths(segments: tuple[Segment, ...]) -> tuple[Inches, ...]:
    return tuple(length for _, length in segments)


def _least(made: EdgeMap) -> Inches:
    return Inches(0) if made.least is None else made.least
