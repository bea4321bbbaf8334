"""A lay after a change, as like the one before as can be had for nothing.

Where somebody types, the picture must not jump. Of the lay before, what can stay
is pinned where it lies, and the rest is laid anew; the outcome is taken only if
it buys no more, has no more joins and leaves nothing more unplaced than the lay
that was made afresh. If nothing can stay, equal pieces at least keep their numbers.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import TypeAlias

from core.fabric import Grain
from core.lay.check import is_right
from core.lay.lay import BOLT, ClothLay, Lay, Placement
from core.lay.places import meet, pinned_at
from core.lay.problem import Cloth, LayProblem, Motif, Piece, Pin, Run
from core.lay.refuse import require_layable
from core.lay.several import is_shared, only
from core.lay.solve import solve
from core.lay.stop import Stop
from core.lengths import Inches
from core.refusal import Refusal

# What is left to lay round that which stays is little.
QUICK = Stop(60)
Worth: TypeAlias = tuple[int, Inches, int]


def repair(problem: LayProblem, fresh: Lay, before: Lay, *, stop: Stop = QUICK) -> Lay:
    """The lay of `problem` that keeps most of `before` and costs no more than `fresh`.

    `fresh` is a lay of `problem`, `before` one of a problem that was a little
    different. The same three give the same lay, if `stop` has no deadline.
    """
    old = {cloth.name: cloth for cloth in before.cloths}
    lay = fresh
    for place, cloth in enumerate(fresh.cloths):
        if cloth.name in old and not any(
            cloth.name in run.sources for run in problem.runs if is_shared(run)
        ):
            part = only(problem, cloth.name)
            own = Lay((cloth,), tuple(g for g in fresh.unplaced if g.name in _names(part)))
            kept = _repaired(part, own, old[cloth.name], stop)
            lay = replace(lay, cloths=(*lay.cloths[:place], kept, *lay.cloths[place + 1 :]))
    return lay


def _names(problem: LayProblem) -> set[str]:
    every: tuple[Piece | Run, ...] = (*problem.pieces, *problem.runs)
    return {part.name for part in every}


def _repaired(problem: LayProblem, fresh: Lay, old: ClothLay, stop: Stop) -> ClothLay:
    """The lay of one cloth with all that can stay, else with what lies before the change."""
    [new] = fresh.cloths
    there = Lay((old,), fresh.unplaced)
    if _worth(Lay((old,))) <= _worth(Lay((new,))) and is_right(problem, there):
        return _with_bound_of(new, old, problem.cloths[0])
    afresh = _renumbered(problem, fresh, old)
    staying = list(_free_to_stay(problem, list(_staying(problem, old))))
    gone = [placed for placed in old.placements if placed not in staying]
    ways = (tuple(staying), _without_ends(staying), _before(staying, gone), _apart(staying, gone))
    for kept in dict.fromkeys(ways):
        found = _with_kept(problem, kept, stop, new)
        if found is not None and _worth(found) <= _worth(fresh) and is_right(problem, found):
            kept_lay = _renumbered(problem, found, old)
            steady = _with_bound_of(new, kept_lay, problem.cloths[0])
            return max(steady, afresh, key=lambda lay: _stayed(lay, old))
    return afresh


def _worth(lay: Lay) -> Worth:
    """What finds no room, what is bought, the joins."""
    segments = [
        (placed.name, placed.run_copy)
        for cloth in lay.cloths
        for placed in cloth.placements
        if placed.run_copy is not None
    ]
    return (
        sum(gone.count for gone in lay.unplaced),
        sum((cloth.bought_along for cloth in lay.cloths), Fraction(0)),
        len(segments) - len(set(segments)),
    )


def _with_bound_of(new: ClothLay, kept: ClothLay, cloth: Cloth) -> ClothLay:
    """`kept` with what is known of the fresh lay of the same problem."""
    bound = min(kept.used_along, max(new.bound_along, Fraction(0)))
    proved = new.proved_least and cloth.bought(bound) == kept.bought_along
    return replace(kept, bound_along=bound, proved_least=proved)


def _staying(problem: LayProblem, old: ClothLay) -> Iterator[Placement]:
    """What of the old lay is asked for as it lies, and on which no flaw or pin has come."""
    every: tuple[Piece | Run, ...] = (*problem.pieces, *problem.runs)
    parts = {part.name: part for part in every}
    taken = [(pin.sheet, pinned_at(pin, parts[pin.name]).rect) for pin in problem.pins]
    taken += [(flaw.sheet, flaw.rect) for flaw in problem.flaws]
    for placed in old.placements:
        part = parts.get(placed.name)
        meets = any(meet(placed.sheet, placed.rect, *other) for other in taken)
        if part is not None and not meets and _as_asked(part, placed):
            yield placed


def _free_to_stay(problem: LayProblem, staying: Sequence[Placement]) -> Iterator[Placement]:
    """All but the copies that are pinned elsewhere, and those that motifs wait for."""
    pinned = {(pin.name, pin.copy) for pin in problem.pins if pin.length is None}
    waiting = Counter(motif.name for motif in _without(problem.motifs, staying))
    for placed in reversed(staying):
        if placed.run_copy is None and (placed.name, placed.copy) in pinned:
            continue
        if waiting[placed.name] > 0 and not any(_holds(placed, m) for m in problem.motifs):
            waiting[placed.name] -= 1
            continue
        yield placed


def _as_asked(part: Piece | Run, placed: Placement) -> bool:
    rect, turned = placed.rect, placed.turned
    sides = (rect.along, rect.across) if turned else (rect.across, rect.along)
    if isinstance(part, Piece):
        same = sides == (part.across, part.along) and placed.run_copy is None
        return same and placed.copy <= part.count and (part.may_turn or not turned)
    against = Grain.CROSSWISE if turned else Grain.LENGTHWISE
    there = placed.run_copy is not None and placed.run_copy <= part.count
    long_enough = sides[0] >= min(part.shortest, part.needs)
    return there and sides[1] == part.strip and part.grain is not against and long_enough


def _without_ends(staying: Sequence[Placement]) -> tuple[Placement, ...]:
    """All but the shortest segment of each run, which takes up what has changed of it."""
    ends: dict[tuple[str, int], Placement] = {}
    for placed in staying:
        if placed.run_copy is not None:
            end = ends.setdefault((placed.name, placed.run_copy), placed)
            if _length(placed) <= _length(end):
                ends[placed.name, placed.run_copy] = placed
    return tuple(placed for placed in staying if placed not in ends.values())


def _length(segment: Placement) -> Inches:
    return segment.rect.along if segment.turned else segment.rect.across


def _before(staying: Sequence[Placement], gone: Sequence[Placement]) -> tuple[Placement, ...]:
    """What ends before anything that is gone begins, on each sheet."""
    return tuple(
        placed
        for placed in staying
        if all(other.sheet != placed.sheet or placed.rect.end <= other.rect.y for other in gone)
    )


def _apart(staying: Sequence[Placement], gone: Sequence[Placement]) -> tuple[Placement, ...]:
    """What lies on cloth on hand from which nothing is gone."""
    spoilt = {placed.sheet for placed in gone}
    return tuple(p for p in staying if p.sheet not in spoilt and p.sheet.on != BOLT)


def _with_kept(
    problem: LayProblem, kept: Sequence[Placement], stop: Stop, fresh: ClothLay
) -> Lay | None:
    """The lay with all of `kept` pinned; None if that cannot be. `fresh` knows a bound."""
    if not kept:
        return None
    runs = {run.name for run in problem.runs}
    pins = tuple(_pin(placed, segment=placed.name in runs) for placed in kept)
    pinned = replace(
        problem, pins=(*problem.pins, *pins), motifs=tuple(_without(problem.motifs, kept))
    )
    try:
        require_layable(pinned)
    except Refusal:
        return None
    return solve(pinned, stop=stop, bounds={fresh.name: fresh.bound_along})


def _pin(placed: Placement, *, segment: bool) -> Pin:
    rect = placed.rect
    pin = Pin(placed.name, rect.x, rect.y, placed.sheet, placed.turned)
    if not segment:
        return replace(pin, copy=placed.copy)
    return replace(pin, length=_length(placed), run_copy=placed.run_copy or 1)


def _without(motifs: Sequence[Motif], kept: Sequence[Placement]) -> Iterator[Motif]:
    """The motifs that no kept piece holds."""
    holding = list(kept)
    for motif in motifs:
        found = next((placed for placed in holding if _holds(placed, motif)), None)
        if found is None:
            yield motif
        else:
            holding.remove(found)


def _holds(placed: Placement, motif: Motif) -> bool:
    same = (placed.name, placed.sheet) == (motif.name, motif.sheet)
    return same and placed.rect.holds(motif.rect)


def _renumbered(problem: LayProblem, lay: Lay, old: ClothLay) -> ClothLay:
    """The same lay; what lies as it lay before has the number that it had, if pins allow."""
    [new] = lay.cloths
    there = {_key(placed): placed.copy for placed in old.placements}
    left: dict[str, set[int]] = defaultdict(set)
    for placed in new.placements:
        left[placed.name].add(placed.copy)
    copies: list[int | None] = []
    for placed in new.placements:
        copy = there.get(_key(placed))
        copies.append(copy if copy in left[placed.name] else None)
        left[placed.name].discard(copy or 0)
    placements = []
    for placed, copy in zip(new.placements, copies, strict=True):
        if copy is None:
            copy = min(left[placed.name])
            left[placed.name].remove(copy)
        placements.append(replace(placed, copy=copy))
    again = replace(new, placements=tuple(placements))
    same = again == new
    return again if same or is_right(problem, replace(lay, cloths=(again,))) else new


def _stayed(lay: ClothLay, old: ClothLay) -> int:
    return len(set(lay.placements) & set(old.placements))


def _key(placed: Placement) -> tuple[object, ...]:
    return placed.name, placed.sheet, placed.rect, placed.turned, placed.run_copy
