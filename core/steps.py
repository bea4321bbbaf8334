"""The cut order as steps a person can follow, in words.

The cuts of a lay are exact but bare: rectangles and positions. Here they become
numbered steps: equal cuts one after the other are one step ("six times"), the
pieces of cloth in hand get names ("section 2"), and each step says what falls
off. A step is data; `sentence` puts it into words.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from typing import Final

from core.cloth_names import told_cloth
from core.language import marked, told
from core.lay.lay import THE_BOLT, Cut, Direction, Rect, Sheet
from core.lengths import Inches, Rounding, Units, show, show_size
from core.table import Hold, Table, hold

CLOTH: Final = "cloth"


class Becomes(StrEnum):
    """What a rectangle is once it has been cut off."""

    PIECE = "piece"
    SECTION = "section"
    OFFCUT = "offcut"
    WASTE = "waste"


@dataclass(frozen=True, slots=True)
class Fall:
    """A rectangle that a cut leaves: a labelled piece, a section to cut on, an offcut, waste."""

    becomes: Becomes
    label: str
    rect: Rect


@dataclass(frozen=True, slots=True)
class CutStep:
    """`times` equal cuts of `source`, each `measure` from the fresh near edge.

    `region` is the source before the first cut; `falls` what comes off, in
    order, the remainder last if it needs no further cut. A straightening step
    trims the raw end.
    """

    number: int
    sheet: Sheet
    source: str
    region: Rect
    direction: Direction
    measure: Inches
    times: int
    falls: tuple[Fall, ...]
    straightening: bool = False

    def hold(self, table: Table) -> Hold:
        """How the cloth lies for it, and how often the ruler is laid."""
        crosswise = self.direction is Direction.CROSSWISE
        length = self.region.across if crosswise else self.region.along
        return hold(table, length, crosswise=crosswise)


def steps_for(
    cuts: Iterable[Cut],
    labels: dict[tuple[Sheet, Rect], str],
    offcuts: frozenset[tuple[Sheet, Rect]],
    straightening: Inches,
    raw: frozenset[Sheet] = frozenset({THE_BOLT}),
) -> tuple[CutStep, ...]:
    """The steps of one cloth. `labels` names the finished pieces; 0 straightens nothing.

    `raw` are the sheets whose end is to be straightened before they are cut.
    """
    listed = tuple(cuts)
    namer = _Namer(labels, offcuts, frozenset((cut.sheet, cut.region) for cut in listed))
    steps: list[CutStep] = []
    for cut in listed:
        straight = any(s.straightening and s.sheet == cut.sheet for s in steps)
        if straightening and cut.sheet in raw and not straight:
            steps.append(_straighten(cut, len(steps) + 1, straightening))
        _append(steps, cut, namer)
    return tuple(steps)


def _straighten(cut: Cut, number: int, by: Inches) -> CutStep:
    end = Fall(Becomes.WASTE, "the raw end", replace(cut.region, y=-by, along=by))
    return CutStep(
        number, cut.sheet, CLOTH, cut.region, Direction.CROSSWISE, by, 1, (end,), straightening=True
    )


def _append(steps: list[CutStep], cut: Cut, namer: _Namer) -> None:
    """Add one cut: to the last step if it repeats it, else as a step of its own."""
    near, far = split(cut)
    source = namer.name_of(cut.sheet, cut.region)
    falls = tuple(
        fall
        for fall in (namer.fall(cut.sheet, near), namer.fall(cut.sheet, far, parent=source))
        if fall is not None
    )
    last = steps[-1] if steps else None
    if last is not None and _repeats(last, cut, source):
        steps[-1] = replace(last, times=last.times + 1, falls=last.falls + falls)
        return
    steps.append(
        CutStep(len(steps) + 1, cut.sheet, source, cut.region, cut.direction, cut.measure, 1, falls)
    )


def _repeats(last: CutStep, cut: Cut, source: str) -> bool:
    """Whether `cut` goes on from the fresh edge that `last` left, at the same setting."""
    same = (last.sheet, last.source, last.direction, last.measure, last.straightening) == (
        cut.sheet,
        source,
        cut.direction,
        cut.measure,
        False,
    )
    moved = last.measure * last.times
    crosswise = cut.direction is Direction.CROSSWISE
    start = replace(
        last.region,
        x=last.region.x + (0 if crosswise else moved),
        y=last.region.y + (moved if crosswise else 0),
    )
    return same and (start.x, start.y) == (cut.region.x, cut.region.y)


def split(cut: Cut) -> tuple[Rect, Rect]:
    """The rectangles that a cut leaves, the one at the measured edge first."""
    r, by = cut.region, cut.measure
    if cut.direction is Direction.CROSSWISE:
        return replace(r, along=by), replace(r, y=r.y + by, along=r.along - by)
    return replace(r, across=by), replace(r, x=r.x + by, across=r.across - by)


class _Namer:
    """Names for the rectangles of cloth in hand while the cuts go on."""

    def __init__(
        self,
        labels: dict[tuple[Sheet, Rect], str],
        offcuts: frozenset[tuple[Sheet, Rect]],
        cut_later: frozenset[tuple[Sheet, Rect]],
    ) -> None:
        self._labels = labels
        self._offcuts = offcuts
        self._cut_later = cut_later
        self._names: dict[tuple[Sheet, Rect], str] = {}
        self._sections = 0

    def name_of(self, sheet: Sheet, rect: Rect) -> str:
        return self._names.get((sheet, rect), CLOTH)

    def fall(self, sheet: Sheet, rect: Rect, parent: str | None = None) -> Fall | None:
        """What `rect` has become; None for a remainder that keeps its parent's name."""
        place = (sheet, rect)
        if place in self._labels:
            return Fall(Becomes.PIECE, self._labels[place], rect)
        if place in self._cut_later:
            if parent is not None:
                self._names[place] = parent
                return None
            self._sections += 1
            self._names[place] = f"section {self._sections}"
            return Fall(Becomes.SECTION, self._names[place], rect)
        kind = Becomes.OFFCUT if place in self._offcuts else Becomes.WASTE
        return Fall(kind, kind.value, rect)


_FOLDED: Final = ("", marked(", folded once,"), marked(", folded twice,"))
FOLDED: Final = marked(
    "Folded is selvage to selvage, so that the ruler reaches; "
    "where it does not, move it along the cut and go on."
)
_THE_CLOTH: Final = {
    Direction.CROSSWISE: marked(
        "Cut the cloth ({size}){folded} across, {by} from its straight end{again}."
    ),
    Direction.LENGTHWISE: marked(
        "Cut the cloth ({size}){folded} along the grain, {by} from its near edge{again}."
    ),
}
_A_SECTION: Final = {
    Direction.CROSSWISE: marked(
        "Cut {source} ({size}){folded} across, {by} from its straight end{again}."
    ),
    Direction.LENGTHWISE: marked(
        "Cut {source} ({size}){folded} along the grain, {by} from its near edge{again}."
    ),
}


def sentence(step: CutStep, units: Units, table: Table) -> str:
    """One step in words, its lengths in `units`, as it is cut on `table`."""
    by, way_held = show(step.measure, units), step.hold(table)
    if step.straightening:
        return told("Straighten the cut end: trim about {by} off, selvage to selvage.", by=by)
    again = told(", {count} times, each from the fresh edge", count=step.times)
    values = {
        "size": show_size(step.region.across, step.region.along, units),
        "folded": told(_FOLDED[way_held.folds]),
        "by": by,
        "again": again if step.times > 1 else "",
    }
    if step.source == CLOTH:
        said = [told(_THE_CLOTH[step.direction], **values)]
    else:
        said = [told(_A_SECTION[step.direction], source=told_cloth(step.source), **values)]
    if way_held.moves > 1:
        said.append(told("Lay the ruler {count} times.", count=way_held.moves))
    return " ".join((*said, _falls(step, units)))


_LEFT_OVER: Final = (Becomes.OFFCUT, Becomes.WASTE)
_STRAIGHT_FOR: Final = 3  # cuts; common practice, no source


def reminder(step: CutStep, units: Units) -> str:
    """What to mind at many cuts across the cloth; nothing at a few.

    Straightening again takes cloth, so it says how much of the cloth is to spare.
    """
    if step.straightening or step.direction is Direction.LENGTHWISE or step.times <= _STRAIGHT_FOR:
        return ""
    rest = step.falls[step.times :]
    spare = sum((f.rect.along for f in rest if f.becomes in _LEFT_OVER), Fraction(0))
    if spare:
        return told(
            "After every {count} cuts look whether the edge is still square to the selvages, and "
            "straighten it if not: {spare} in all is to spare for that.",
            count=_STRAIGHT_FOR,
            spare=show(spare, units, Rounding.DOWN),
        )
    if rest:
        return told(
            "After every {count} cuts look whether the edge is still square to the selvages, and "
            "straighten it if not: nothing is to spare for that, so trim no more than a thread.",
            count=_STRAIGHT_FOR,
        )
    return told(
        "After every {count} cuts look whether the edge is still square to the selvages, and "
        "straighten it if not.",
        count=_STRAIGHT_FOR,
    )


def _falls(step: CutStep, units: Units) -> str:
    """What comes off, as short sentences: "Gives B1, B2. Offcut 6 × 20 in. The rest is waste."."""
    pieces = [f.label for f in step.falls if f.becomes in (Becomes.PIECE, Becomes.SECTION)]
    said = [told("Gives {pieces}.", pieces=", ".join(ranges(pieces)))] if pieces else []
    for fall in step.falls:
        if fall.becomes is Becomes.OFFCUT:
            size = show_size(fall.rect.across, fall.rect.along, units)
            said.append(told("Keep the offcut, {size}.", size=size))
    if any(f.becomes is Becomes.WASTE for f in step.falls):
        said.append(told("What is left over is waste."))
    return " ".join(said)


_NUMBERED = re.compile(r"([A-Z]+|section )(\d+)", re.ASCII)


def ranges(labels: list[str]) -> list[str]:
    """Labels, told, with each stretch of three or more neighbours drawn together.

    >>> ranges(["A1", "A2", "A3", "B", "C1", "C2", "section 1"])
    ['A1 to A3', 'B', 'C1', 'C2', 'section 1']
    """
    out: list[str] = []
    start = 0
    for place in range(1, len(labels) + 1):
        if place < len(labels) and _follows(labels[place - 1], labels[place]):
            continue
        stretch = labels[start:place]
        names = [told_cloth(label) for label in stretch]
        out.extend([from_to(names[0], names[-1])] if len(stretch) > 2 else names)
        start = place
    return out


def from_to(first: str, last: str) -> str:
    """Neighbours drawn together: "A1 to A4"."""
    return told("{first} to {last}", first=first, last=last)


def _follows(label: str, following: str) -> bool:
    one, two = _NUMBERED.fullmatch(label), _NUMBERED.fullmatch(following)
    return (
        one is not None and two is not None and one[1] == two[1] and int(two[2]) == int(one[2]) + 1
    )
