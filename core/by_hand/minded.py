"""What was said by hand, as the lay takes it; what no longer fits the quilt is left aside.

A quilt is edited after its pieces were pinned: there may be fewer of them, or they
may come from another cloth. Such a pin is kept in the project, but no lay minds it,
and a sentence says so. What can still be meant but not be done is refused by the lay.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from core.by_hand.said import NOWHERE, HandFlaw, HandMotif, HandPin, Said, moved_sheet
from core.fabric import Fabric
from core.finish.demand import Wanted
from core.language import told, told_count
from core.lay.lay import BOLT, Rect
from core.lay.places import pinned_at, sheet_size
from core.lay.problem import Flaw, Motif, Piece, Pin, Run
from core.part_names import told_part


@dataclass(frozen=True, slots=True)
class Aside:
    """What no lay minds: where it stands among what is said of its fabric, and why."""

    path: str
    why: str


@dataclass(frozen=True, slots=True)
class Minded:
    """What the lay minds, each with its place among what is said of its fabric."""

    pins: tuple[tuple[int, Pin], ...] = ()
    flaws: tuple[tuple[int, Flaw], ...] = ()
    motifs: tuple[tuple[int, Motif], ...] = ()
    aside: tuple[Aside, ...] = ()

    def paths(self, fabric_path: str) -> tuple[tuple[str, str], ...]:
        """Each path in the lay problem, and what it is in the project."""
        places = {
            "pins": [place for place, _ in self.pins],
            "flaws": [place for place, _ in self.flaws],
            "motifs": [place for place, _ in self.motifs],
        }
        each = (
            (f"{kind}[{number}]", f"{fabric_path}.{kind}[{place}]")
            for kind, own in places.items()
            for number, place in enumerate(own)
        )
        whole = ((kind, f"{fabric_path}.{kind}") for kind, own in places.items() if own)
        return (*each, *whole)


def minded(fabric: Fabric, wanted: Sequence[Wanted]) -> Minded:
    """What the lay of a fabric minds where `wanted` is cut from it."""
    if not (fabric.pins or fabric.flaws or fabric.motifs):
        return Minded()
    parts = {part.name: part for part in wanted}
    aside: list[Aside] = []
    pins = tuple(_pins(fabric, parts, aside))
    flaws = tuple(_flaws(fabric, aside))
    motifs = tuple(_motifs(fabric, parts, [pin for _, pin in pins], aside))
    return Minded(pins, flaws, motifs, tuple(aside))


def _pins(
    fabric: Fabric, parts: dict[str, Wanted], aside: list[Aside]
) -> Iterator[tuple[int, Pin]]:
    taken: Counter[str] = Counter()
    for place, said in enumerate(fabric.pins):
        part = parts.get(said.name)
        why = _no_sheet(fabric, said) or _no_piece(fabric, said, part)
        if why is None and isinstance(part, Piece):
            taken[said.name] += 1
            if taken[said.name] > part.count:
                why = told("there are only {count} of them now", count=part.count)
        if why is None:
            pin = Pin(said.name, said.x, said.y, said.sheet, said.turned, said.copy)
            yield place, replace(pin, length=said.length, run_copy=said.run_copy)
        else:
            text = told("The pin of {piece} is left aside: {why}.", piece=called(said), why=why)
            aside.append(Aside(f"pins[{place}]", text))


def otherwise_cut(fabric: Fabric, wanted: Sequence[Wanted]) -> int:
    """How many pinned pieces are cut in another size than when they were put down."""
    sizes = {part.name: (part.across, part.along) for part in wanted if isinstance(part, Piece)}
    return sum(
        pin.across is not None and sizes.get(pin.name, ()) != (pin.across, pin.along)
        for pin in fabric.pins
    )


def called(said: HandPin) -> str:
    """What a pinned piece is called without its letter: "border 2 side 1"."""
    name = told_part(said.name)
    return name if said.copy is None else f"{name} {said.copy}"


def _no_piece(fabric: Fabric, said: HandPin, part: Wanted | None) -> str | None:
    """Why nothing is there to be pinned; None if it is."""
    if part is None:
        return _not_cut_from(fabric)
    if isinstance(part, Run):
        if said.length is None:
            return told("it is joined from strips now")
        count, copy = part.count, said.run_copy
    else:
        if said.length is not None:
            return told("it is cut in one piece now")
        count, copy = part.count, said.copy or 1
    if copy <= count:
        return None
    return told_count("there is only {count} now", "there are only {count} now", count)


def _not_cut_from(fabric: Fabric) -> str:
    return told("no such piece is cut from {fabric} now", fabric=fabric.name)


def _no_sheet(fabric: Fabric, said: Said) -> str | None:
    """Why the sheet is not there; None if it is."""
    if said.sheet.on == BOLT:
        if fabric.buy_more:
            return None
        return told("no more {fabric} may be bought", fabric=fabric.name)
    if sheet_size(fabric, said.sheet) is None:
        return told("that piece of {fabric} is not on hand now", fabric=fabric.name)
    return None


def _flaws(fabric: Fabric, aside: list[Aside]) -> Iterator[tuple[int, Flaw]]:
    """The flaws, as far as they lie on cloth: it may be narrower now than when they were marked."""
    for place, said in enumerate(fabric.flaws):
        why = _no_sheet(fabric, said) if said.sheet.on != BOLT else None
        rect = None if why else _on_cloth(fabric, said)
        if rect is not None:
            yield place, Flaw(fabric.name, rect, said.sheet)
            continue
        why = why or told("it lies beside the cloth")
        text = told(
            "The {flaw} on {fabric} is left aside: {why}.",
            flaw=said.called,
            fabric=fabric.name,
            why=why,
        )
        aside.append(Aside(f"flaws[{place}]", text))


def _on_cloth(fabric: Fabric, said: HandFlaw) -> Rect | None:
    across, along = sheet_size(fabric, said.sheet) or (fabric.cutting_width, said.rect.end)
    return said.rect.within(Rect(Fraction(0), Fraction(0), across, along))


def _motifs(
    fabric: Fabric, parts: dict[str, Wanted], pins: Sequence[Pin], aside: list[Aside]
) -> Iterator[tuple[int, Motif]]:
    """The motifs that a piece is still to be found for: a pinned one may hold its own."""
    free = Counter({p.name: p.count for p in parts.values() if isinstance(p, Piece)})
    free.subtract(pin.name for pin in pins)
    for place, said in enumerate(fabric.motifs):
        if said.name is None or any(_holds(pin, parts[pin.name], said) for pin in pins):
            continue
        why = _no_sheet(fabric, said)
        if why is None and not isinstance(parts.get(said.name), Piece):
            why = _not_cut_from(fabric)
        if why is None and free[said.name] <= 0:
            why = told("every such piece has its place already")
        if why is None:
            free[said.name] -= 1
            yield place, Motif(said.name, said.rect, said.sheet)
        else:
            text = told(
                "The motif for {piece} is left aside: {why}.", piece=told_part(said.name), why=why
            )
            aside.append(Aside(f"motifs[{place}]", text))


def _holds(pin: Pin, part: Wanted, motif: HandMotif) -> bool:
    same = (pin.name, pin.sheet) == (motif.name, motif.sheet)
    return same and pinned_at(pin, part).rect.holds(motif.rect)


def on_other_sheets(fabric: Fabric, places: Mapping[int, int]) -> Fabric:
    """The fabric with what was said of its pieces on hand said of those at their new places."""
    return replace(
        fabric,
        pins=tuple(replace(pin, sheet=moved_sheet(pin.sheet, places)) for pin in fabric.pins),
        flaws=tuple(replace(flaw, sheet=moved_sheet(flaw.sheet, places)) for flaw in fabric.flaws),
        motifs=tuple(replace(one, sheet=moved_sheet(one.sheet, places)) for one in fabric.motifs),
    )


def without_sheet(fabric: Fabric, gone: int) -> Fabric:
    """The fabric without what was said of a piece on hand that is taken from the list."""
    count = len(fabric.on_hand)
    left = {place: place - (place > gone) for place in range(count) if place != gone}
    moved = on_other_sheets(fabric, left)
    return replace(
        moved,
        pins=tuple(pin for pin in moved.pins if pin.sheet != NOWHERE),
        flaws=tuple(flaw for flaw in moved.flaws if flaw.sheet != NOWHERE),
        motifs=tuple(motif for motif in moved.motifs if motif.sheet != NOWHERE),
    )
