"""Whether pins, flaws and motifs were minded; a part of the second opinion."""

from __future__ import annotations

from collections.abc import Iterator

from core.lay.fault import Fault, FaultKind
from core.lay.lay import Lay, Placement, Rect
from core.lay.problem import LayProblem, Piece, Pin, Run
from core.lengths import Inches


def place_faults(problem: LayProblem, lay: Lay) -> Iterator[Fault]:
    """What does not lie where it must, or lies where nothing may."""
    placements = [placed for cloth in lay.cloths for placed in cloth.placements]
    every: tuple[Piece | Run, ...] = (*problem.pieces, *problem.runs)
    homes = {part.name: part.cloth for part in every}
    for pin in problem.pins:
        own = [placed for placed in placements if placed.name == pin.name]
        there = next(cloth for cloth in lay.cloths if cloth.name == (pin.cloth or homes[pin.name]))
        if not _excused(problem, lay, pin, own) and not any(
            placed.name == pin.name and _obeys(problem, pin, placed) for placed in there.placements
        ):
            yield Fault(FaultKind.PIN, (pin.name,), f"{pin.name} does not lie where it is pinned")
    for motif in problem.motifs:
        if not any(
            placed.sheet == motif.sheet and _contains(placed.rect, motif.rect)
            for placed in placements
            if placed.name == motif.name
        ):
            yield Fault(
                FaultKind.MOTIF, (motif.name,), f"no {motif.name} holds the motif that it must"
            )
    yield from _flaws(problem, lay)


def _excused(problem: LayProblem, lay: Lay, pin: Pin, own: list[Placement]) -> bool:
    """A run that is not laid at all has no segment to pin."""
    run = any(run.name == pin.name for run in problem.runs)
    left = any(gone.name == pin.name for gone in lay.unplaced)
    return run and left and not any(placed.run_copy == pin.run_copy for placed in own)


def _obeys(problem: LayProblem, pin: Pin, placed: Placement) -> bool:
    rect = placed.rect
    if (placed.sheet, rect.x, rect.y, placed.turned) != (pin.sheet, pin.x, pin.y, pin.turned):
        return False
    for run in problem.runs:
        if run.name == pin.name:
            return placed.run_copy == pin.run_copy and _length(placed) == pin.length
    return pin.copy in (None, placed.copy)


def _length(placed: Placement) -> Inches:
    return placed.rect.along if placed.turned else placed.rect.across


def _contains(outer: Rect, inner: Rect) -> bool:
    across = outer.x <= inner.x and inner.x + inner.across <= outer.x + outer.across
    return across and outer.y <= inner.y and inner.y + inner.along <= outer.y + outer.along


def _flaws(problem: LayProblem, lay: Lay) -> Iterator[Fault]:
    for flaw in problem.flaws:
        [cloth] = [cloth for cloth in lay.cloths if cloth.name == flaw.cloth]
        for placed in cloth.placements:
            if placed.sheet == flaw.sheet and _overlap(placed.rect, flaw.rect):
                yield Fault(
                    FaultKind.FLAW,
                    (placed.name,),
                    f"{placed.name} {placed.copy} lies on a flaw of {flaw.cloth}",
                )
        for offcut in cloth.offcuts:
            if offcut.sheet == flaw.sheet and _overlap(offcut.rect, flaw.rect):
                yield Fault(
                    FaultKind.FLAW, (flaw.cloth,), f"an offcut of {flaw.cloth} holds a flaw"
                )


def _overlap(one: Rect, other: Rect) -> bool:
    across = one.x < other.x + other.across and other.x < one.x + one.across
    return across and one.y < other.y + other.along and other.y < one.y + one.along
