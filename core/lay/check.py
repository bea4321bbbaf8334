"""Whether a lay is right, by a second opinion.

It shares no code with the search, the bound or the cut order: it knows the
problem, the lay, rectangles, and what an edge-to-edge cut does. Each fault is
data: its kind, the names concerned, and a plain sentence.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from fractions import Fraction

from core.fabric import Grain
from core.lay.check_cuts import cutting_faults
from core.lay.check_places import place_faults
from core.lay.fault import Fault, FaultKind
from core.lay.lay import BOLT, ClothLay, Lay, Placement, Rect, Sheet
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lengths import Inches

__all__ = ["Fault", "FaultKind", "check", "is_right"]


def check(problem: LayProblem, lay: Lay) -> tuple[Fault, ...]:
    """Every fault of `lay` as an answer to `problem`; none if it is right."""
    return tuple(_faults(problem, lay))


def is_right(problem: LayProblem, lay: Lay) -> bool:
    """Whether `check` finds no fault; it looks no further than the first."""
    return next(_faults(problem, lay), None) is None


def _faults(problem: LayProblem, lay: Lay) -> Iterator[Fault]:
    names = tuple(cloth.name for cloth in problem.cloths)
    if tuple(laid.name for laid in lay.cloths) != names:
        yield Fault(
            FaultKind.WRONG_CLOTH, names, f"the lay must have these cloths: {', '.join(names)}"
        )
        return
    for cloth, laid in zip(problem.cloths, lay.cloths, strict=True):
        yield from _belonging(problem, cloth, laid)
        yield from _apart(laid)
        yield from _within(cloth, laid)
        yield from _buying(cloth, laid)
        yield from cutting_faults(laid, problem.stages)
    unplaced = {gone.name: gone.count for gone in lay.unplaced}
    yield from _not_asked(problem, unplaced)
    for piece in problem.pieces:
        yield from _piece(piece, _named(lay, piece.name), unplaced.get(piece.name, 0))
    for run in problem.runs:
        yield from _run(run, _named(lay, run.name), unplaced.get(run.name, 0))
    yield from place_faults(problem, lay)


def _named(lay: Lay, name: str) -> list[Placement]:
    return [placed for cloth in lay.cloths for placed in cloth.placements if placed.name == name]


def _belonging(problem: LayProblem, cloth: Cloth, laid: ClothLay) -> Iterator[Fault]:
    """Only what is cut from this cloth lies on it."""
    homes = {piece.name: {piece.cloth} for piece in problem.pieces}
    homes |= {run.name: {run.cloth, *run.cloths} for run in problem.runs}
    for placed in laid.placements:
        home = homes.get(placed.name)
        if home is None:
            yield Fault(FaultKind.SURPLUS, (placed.name,), f"{placed.name} was not asked for")
        elif cloth.name not in home:
            yield Fault(
                FaultKind.WRONG_CLOTH,
                (placed.name, cloth.name),
                f"{placed.name} lies on {cloth.name} but is cut from {' or '.join(sorted(home))}",
            )


def _apart(laid: ClothLay) -> Iterator[Fault]:
    """No two things on one sheet overlap; touching is no overlap."""
    for one, other in _near(laid.placements):
        if _overlap(one.rect, other.rect):
            yield Fault(
                FaultKind.OVERLAP,
                (one.name, other.name),
                f"{_title(one)} and {_title(other)} overlap on {one.sheet.on}",
            )


def _near(placements: tuple[Placement, ...]) -> Iterator[tuple[Placement, Placement]]:
    """All pairs on one sheet of which the second starts before the first ends, along the cloth."""
    by_sheet: dict[Sheet, list[Placement]] = defaultdict(list)
    for placed in placements:
        by_sheet[placed.sheet].append(placed)
    for on_sheet in by_sheet.values():
        on_sheet.sort(key=lambda placed: placed.rect.y)
        for index, one in enumerate(on_sheet):
            for other in on_sheet[index + 1 :]:
                if other.rect.y >= one.rect.y + one.rect.along:
                    break
                yield one, other


def _overlap(one: Rect, other: Rect) -> bool:
    across = one.x < other.x + other.across and other.x < one.x + one.across
    return across and one.y < other.y + other.along and other.y < one.y + one.along


def _within(cloth: Cloth, laid: ClothLay) -> Iterator[Fault]:
    """Every thing lies on a sheet that exists."""
    for placed in laid.placements:
        size = _sheet_size(cloth, laid, placed.sheet)
        if size is None:
            yield Fault(
                FaultKind.NO_SUCH_SHEET,
                (placed.name,),
                f"{_title(placed)} lies on {placed.sheet.on}, copy {placed.sheet.copy}, "
                f"which {cloth.name} does not have",
            )
        elif not _inside(placed.rect, *size):
            yield Fault(
                FaultKind.OFF_CLOTH,
                (placed.name,),
                f"{_title(placed)} reaches off the cloth on {placed.sheet.on}",
            )
    yield from _sheet_list(cloth, laid)


def _sheet_list(cloth: Cloth, laid: ClothLay) -> Iterator[Fault]:
    """The lay lists the sheets it uses, each once, with their true size."""
    listed = [sheet for sheet, _ in laid.sheets]
    in_use = {placed.sheet for placed in laid.placements}
    wrong = [sheet for sheet in in_use if listed.count(sheet) != 1]
    for sheet, rect in laid.sheets:
        size = _sheet_size(cloth, laid, sheet)
        if sheet not in in_use or size is None or rect != Rect(Fraction(0), Fraction(0), *size):
            wrong.append(sheet)
    for sheet in sorted(set(wrong), key=lambda sheet: (sheet.on, sheet.copy)):
        yield Fault(
            FaultKind.NO_SUCH_SHEET,
            (cloth.name,),
            f"{sheet.on}, copy {sheet.copy}, is not listed as it is used",
        )


def _sheet_size(cloth: Cloth, laid: ClothLay, sheet: Sheet) -> tuple[Inches, Inches] | None:
    if sheet == Sheet(BOLT, 1):
        return cloth.usable_width, _cut_from(cloth, laid)
    for index, hand in enumerate(cloth.on_hand):
        if sheet.on == f"on_hand[{index}]" and 1 <= sheet.copy <= hand.count:
            return hand.across, hand.along
    return None


def _cut_from(cloth: Cloth, laid: ClothLay) -> Inches:
    """The length that is left of what is bought when it has been straightened and washed."""
    return (laid.bought_along - cloth.straightening) * (1 - cloth.shrinkage_along)


def _inside(rect: Rect, across: Inches, along: Inches) -> bool:
    fits_across = rect.x >= 0 and rect.x + rect.across <= across
    return fits_across and rect.y >= 0 and rect.y + rect.along <= along


def _buying(cloth: Cloth, laid: ClothLay) -> Iterator[Fault]:
    """What is bought gives what is used, in whole sale units, and the claims hold together."""
    name = cloth.name
    reached = [p.rect.y + p.rect.along for p in laid.placements if p.sheet == Sheet(BOLT, 1)]
    if laid.used_along != max(reached, default=0):
        yield Fault(FaultKind.WRONG_USE, (name,), f"{name}: the length used is not what is laid")
    if laid.used_along > 0 and not cloth.buy_more:
        yield Fault(FaultKind.BOUGHT, (name,), f"{name} is on the bolt, but no more may be bought")
    if laid.used_along > 0 and _cut_from(cloth, laid) < laid.used_along:
        yield Fault(FaultKind.BOUGHT, (name,), f"{name}: less is bought than the lay uses")
    if (laid.bought_along / cloth.sale_unit).denominator != 1:
        yield Fault(FaultKind.BOUGHT, (name,), f"{name}: not bought in whole sale units")
    if laid.used_along == 0 and laid.bought_along != 0:
        yield Fault(FaultKind.BOUGHT, (name,), f"{name} is bought, but nothing lies on it")
    if laid.bound_along > laid.used_along:
        yield Fault(FaultKind.BOUND, (name,), f"{name}: the bound is above what is used")
    if laid.proved_least and cloth.bought(laid.bound_along) != laid.bought_along:
        yield Fault(FaultKind.BOUND, (name,), f"{name} is called least, but the bound buys less")


def _not_asked(problem: LayProblem, unplaced: dict[str, int]) -> Iterator[Fault]:
    """Only what was asked for, of cloth that may not be bought, can be unplaced."""
    parts: tuple[Piece | Run, ...] = (*problem.pieces, *problem.runs)
    counts = {part.name: part.count for part in parts}
    for name, count in unplaced.items():
        if not 1 <= count <= counts.get(name, 0):
            yield Fault(FaultKind.SURPLUS, (name,), f"{count} of {name} cannot be unplaced")


def _piece(piece: Piece, placed: list[Placement], unplaced: int) -> Iterator[Fault]:
    """Each copy once, of the right size, and turned only if it may be."""
    copies: dict[int, int] = defaultdict(int)
    for one in placed:
        copies[one.copy] += 1
        yield from _shape(piece, one)
    for copy in range(1, piece.count + 1):
        if copies[copy] > 1:
            yield Fault(FaultKind.SURPLUS, (piece.name,), f"{piece.name} {copy} is laid twice")
    for copy in sorted(copies):
        if not 1 <= copy <= piece.count:
            yield Fault(FaultKind.SURPLUS, (piece.name,), f"{piece.name} {copy} was not asked for")
    there = sum(copies[copy] > 0 for copy in range(1, piece.count + 1))
    if there + unplaced < piece.count:
        missing = piece.count - there - unplaced
        yield Fault(FaultKind.MISSING, (piece.name,), f"{missing} of {piece.name} are missing")
    if there + unplaced > piece.count:
        yield Fault(
            FaultKind.SURPLUS, (piece.name,), f"{piece.name} is both laid and called unplaced"
        )


def _shape(piece: Piece, one: Placement) -> Iterator[Fault]:
    asked = (piece.along, piece.across) if one.turned else (piece.across, piece.along)
    if (one.rect.across, one.rect.along) != asked:
        yield Fault(FaultKind.WRONG_SIZE, (piece.name,), f"{_title(one)} has the wrong size")
    if one.turned and not piece.may_turn:
        yield Fault(FaultKind.GRAIN, (piece.name,), f"{_title(one)} is turned and may not be")
    if one.run_copy is not None:
        yield Fault(FaultKind.SURPLUS, (piece.name,), f"{_title(one)} is no part of a run")


def _run(run: Run, segments: list[Placement], unplaced: int) -> Iterator[Fault]:
    """Each copy whole, of segments as wide as the strip, long enough, along the right grain."""
    for one in segments:
        yield from _segment(run, one)
    numbers = sorted(one.copy for one in segments)
    if numbers != list(range(1, len(segments) + 1)):
        yield Fault(FaultKind.SURPLUS, (run.name,), f"{run.name}'s segments are not counted once")
    by_copy: dict[int, list[Inches]] = defaultdict(list)
    for one in segments:
        by_copy[one.run_copy or 0].append(_length(one))
    for copy, lengths in sorted(by_copy.items()):
        if not 1 <= copy <= run.count:
            yield Fault(FaultKind.SURPLUS, (run.name,), f"{run.name} {copy} was not asked for")
        yield from _joined(run, copy, lengths)
    if len(by_copy) + unplaced != run.count:
        kind = FaultKind.MISSING if len(by_copy) + unplaced < run.count else FaultKind.SURPLUS
        yield Fault(kind, (run.name,), f"{run.name}: {len(by_copy)} of {run.count} are laid")


def _length(segment: Placement) -> Inches:
    return segment.rect.along if segment.turned else segment.rect.across


def _segment(run: Run, one: Placement) -> Iterator[Fault]:
    strip = one.rect.across if one.turned else one.rect.along
    if strip != run.strip:
        yield Fault(FaultKind.STRIP, (run.name,), f"{_title(one)} has the wrong strip width")
    allowed = (Grain.LENGTHWISE, Grain.EITHER) if one.turned else (Grain.CROSSWISE, Grain.EITHER)
    if run.grain not in allowed:
        yield Fault(FaultKind.GRAIN, (run.name,), f"{_title(one)} lies against its grain")


def _joined(run: Run, copy: int, lengths: list[Inches]) -> Iterator[Fault]:
    """Σ lengths − joins × loss reaches what is needed; no segment is too short to join."""
    reach = sum(lengths) - (len(lengths) - 1) * run.join_loss
    if reach < run.needs:
        yield Fault(
            FaultKind.SHORT_RUN,
            (run.name,),
            f"{run.name} {copy} comes to {float(reach):g} in and needs {float(run.needs):g} in",
        )
    if len(lengths) > 1 and min(lengths) < run.shortest:
        yield Fault(
            FaultKind.SHORT_SEGMENT,
            (run.name,),
            f"{run.name} {copy} has a segment of {float(min(lengths)):g} in, "
            f"under the shortest of {float(run.shortest):g} in",
        )


def _title(placed: Placement) -> str:
    return f"{placed.name} {placed.copy}"
