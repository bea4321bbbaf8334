"""Pins, flaws and motifs that no lay can mind, refused before any search."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import combinations

from core.fabric import Grain
from core.language import told
from core.lay.lay import BOLT, Rect, Sheet
from core.lay.places import arrangements, cloth_of, meet, pinned_at, sheet_size
from core.lay.problem import Cloth, LayProblem, Motif, Piece, Pin, Run
from core.part_names import told_part
from core.refusal import Refusal


def require_places(problem: LayProblem) -> None:
    """Raise `Refusal` for the first pin, flaw or motif that cannot be minded.

    Expects cloths, pieces and runs that are right in themselves.
    """
    cloths = {cloth.name: cloth for cloth in problem.cloths}
    every: tuple[Piece | Run, ...] = (*problem.pieces, *problem.runs)
    parts = {part.name: part for part in every}
    flaws = []
    for index, flaw in enumerate(problem.flaws):
        path = f"flaws[{index}]"
        if flaw.cloth not in cloths:
            raise Refusal(
                f"{path}.cloth",
                told(
                    'there is no cloth "{cloth}"; write one of {known}',
                    cloth=flaw.cloth,
                    known=_quoted(cloths),
                ),
            )
        _require_on_sheet(path, cloths[flaw.cloth], flaw.sheet, flaw.rect)
        flaws.append((path, flaw.cloth, flaw.sheet, flaw.rect, told("a flaw")))
    pinned = []
    for index, pin in enumerate(problem.pins):
        path = f"pins[{index}]"
        part = _part(path, pin, parts)
        _require_pin(path, pin, part)
        rect, name = pinned_at(pin, part).rect, cloth_of(pin, part)
        _require_cloth_there(path, cloths[name], pin.sheet, rect)
        called = told('the pinned "{pin}"', pin=told_part(pin.name))
        pinned.append((path, name, pin.sheet, rect, called))
    for index, motif in enumerate(problem.motifs):
        path = f"motifs[{index}]"
        part = _part(path, motif, parts)
        _require_cloth_there(path, cloths[part.cloth], motif.sheet, motif.rect)
        _require_motif(path, motif, part)
    _require_apart(pinned, flaws)
    _require_copies(problem)
    for cloth in problem.cloths:
        if next(arrangements(problem, cloth), None) is None:
            raise _cannot_be_cut(problem, cloth)


def _quoted(names: Iterable[str]) -> str:
    return ", ".join(f'"{name}"' for name in names)


def _part(path: str, asked: Pin | Motif, parts: dict[str, Piece | Run]) -> Piece | Run:
    if asked.name not in parts:
        raise Refusal(
            f"{path}.name",
            told(
                'there is no piece or run "{name}"; write one of {known}',
                name=asked.name,
                known=_quoted(map(told_part, parts)),
            ),
        )
    return parts[asked.name]


def _require_pin(path: str, pin: Pin, part: Piece | Run) -> None:
    sources = part.sources if isinstance(part, Run) else (part.cloth,)
    if cloth_of(pin, part) not in sources:
        known = _quoted(sources)
        raise Refusal(
            f"{path}.cloth",
            told(
                '"{pin}" is cut from {known}; write one of its cloths',
                pin=told_part(pin.name),
                known=known,
            ),
        )
    if isinstance(part, Piece):
        if pin.length is not None:
            raise Refusal(f"{path}.length", told("a piece has its own length; leave this out"))
        if pin.turned and not part.may_turn:
            raise Refusal(
                f"{path}.turned",
                told(
                    '"{pin}" may not turn; write false or let it ("may_turn")',
                    pin=told_part(pin.name),
                ),
            )
        if pin.copy is not None and not 1 <= pin.copy <= part.count:
            raise Refusal(
                f"{path}.copy", told("write a number from 1 to {count}", count=part.count)
            )
        return
    if pin.copy is not None:
        raise Refusal(f"{path}.copy", told("the lay numbers the segments of a run; leave this out"))
    if pin.length is None:
        raise Refusal(
            f"{path}.length", told("this is missing; write how long the pinned segment is")
        )
    if pin.length < min(part.shortest, part.needs):
        raise Refusal(
            f"{path}.length",
            told("a segment is at least {shortest}; write a longer one"),
            shortest=part.shortest,
        )
    if not 1 <= pin.run_copy <= part.count:
        raise Refusal(
            f"{path}.run_copy", told("write a number from 1 to {count}", count=part.count)
        )
    against = Grain.CROSSWISE if pin.turned else Grain.LENGTHWISE
    if part.grain is against:
        raise Refusal(
            f"{path}.turned",
            told("the segments of this run lie crosswise; turn the other way")
            if pin.turned
            else told("the segments of this run lie lengthwise; turn the other way"),
        )


def _require_cloth_there(path: str, cloth: Cloth, sheet: Sheet, rect: Rect) -> None:
    if sheet.on == BOLT and not cloth.buy_more:
        raise Refusal(
            f"{path}.on",
            told('no more "{cloth}" may be bought; choose a piece on hand', cloth=cloth.name),
        )
    _require_on_sheet(path, cloth, sheet, rect)


def _require_on_sheet(path: str, cloth: Cloth, sheet: Sheet, rect: Rect) -> None:
    size = sheet_size(cloth, sheet)
    if size is None and (sheet.on != BOLT or sheet.copy != 1):
        if sheet.on == BOLT or sheet_size(cloth, replace(sheet, copy=1)) is not None:
            too_many = told("there are not so many equal pieces; write a smaller number")
            raise Refusal(f"{path}.on_copy", too_many)
        raise Refusal(
            f"{path}.on",
            told(
                '"{cloth}" has no {on}, copy {copy}; write "bolt", or "on_hand[0]" for the '
                "first piece on hand",
                cloth=cloth.name,
                on=sheet.on,
                copy=sheet.copy,
            ),
        )
    across, along = size or (cloth.usable_width, None)
    if rect.x < 0 or rect.right > across:
        raise Refusal(
            f"{path}.x",
            told(
                'this reaches to {{right}} across and "{cloth}" gives {{across}} there; move '
                "it onto the cloth",
                cloth=cloth.name,
            ),
            right=rect.right,
            across=across,
        )
    if rect.y < 0 or (along is not None and rect.end > along):
        raise Refusal(
            f"{path}.y",
            told(
                'this reaches to {{end}} along and the piece of "{cloth}" is {{along}} long; '
                "move it onto the cloth",
                cloth=cloth.name,
            ),
            end=rect.end,
            along=along or rect.end,
        )


def _require_motif(path: str, motif: Motif, part: Piece | Run) -> None:
    if isinstance(part, Run):
        raise Refusal(
            f"{path}.name",
            told('"{motif}" is a run; only a piece can hold a motif', motif=told_part(motif.name)),
        )
    ways = [(part.across, part.along)] + [(part.along, part.across)] * part.may_turn
    if not any(motif.rect.across <= a and motif.rect.along <= b for a, b in ways):
        raise Refusal(
            f"{path}.across",
            told(
                'the motif is {{wide}} × {{long}} and "{motif}" only {{across}} × {{along}}; '
                "choose a smaller motif or a larger piece",
                motif=told_part(motif.name),
            ),
            wide=motif.rect.across,
            long=motif.rect.along,
            across=part.across,
            along=part.along,
        )


At = tuple[str, str, Sheet, Rect, str]  # path, cloth, sheet, rectangle, what it is called


def _require_apart(pinned: list[At], flaws: list[At]) -> None:
    for one, other in combinations(pinned, 2):
        if _meet(one, other):
            raise Refusal(
                other[0],
                told(
                    "{other} lies over {one}; pin one of them elsewhere", other=other[4], one=one[4]
                ),
            )
    for pin in pinned:
        for flaw in flaws:
            if _meet(pin, flaw):
                raise Refusal(
                    pin[0], told("{pin} lies on a flaw; pin it beside the flaw", pin=pin[4])
                )


def _meet(one: At, other: At) -> bool:
    return one[1] == other[1] and meet(*one[2:4], *other[2:4])


def _require_copies(problem: LayProblem) -> None:
    """No copy is pinned twice, and no more are pinned, or hold motifs, than there are."""
    seen: set[tuple[str, int]] = set()
    for index, pin in enumerate(problem.pins):
        if pin.copy is not None:
            if (pin.name, pin.copy) in seen:
                raise Refusal(
                    f"pins[{index}].copy",
                    told(
                        'copy {copy} of "{pin}" is pinned already; choose another copy',
                        copy=pin.copy,
                        pin=told_part(pin.name),
                    ),
                )
            seen.add((pin.name, pin.copy))
    counts = {piece.name: piece.count for piece in problem.pieces}
    taken: Counter[str] = Counter()
    for path, name in _with_places(problem):
        taken[name] += 1
        if taken[name] > counts.get(name, taken[name]):
            raise Refusal(
                f"{path}.name",
                told(
                    'there are only {count} of "{name}", and all have their place already',
                    count=counts[name],
                    name=told_part(name),
                ),
            )


def _with_places(problem: LayProblem) -> Iterator[tuple[str, str]]:
    for index, pin in enumerate(problem.pins):
        yield f"pins[{index}]", pin.name
    for index, motif in enumerate(problem.motifs):
        yield f"motifs[{index}]", motif.name


def _cannot_be_cut(problem: LayProblem, cloth: Cloth) -> Refusal:
    own = {piece.name for piece in problem.pieces if piece.cloth == cloth.name}
    if any(motif.name in own for motif in problem.motifs):
        return Refusal(
            "motifs",
            told(
                'no place on "{cloth}" was found where each motif lies inside its piece, '
                "clear of pins and flaws, and edge-to-edge cuts free them; move a motif or a "
                "pin",
                cloth=cloth.name,
            ),
        )
    if problem.stages is not None and next(
        arrangements(replace(problem, stages=None), cloth), None
    ):
        return Refusal(
            "stages",
            told(
                'what is pinned on "{cloth}" takes more stages of cuts than {stages}; allow '
                "more, or move a pin",
                cloth=cloth.name,
                stages=problem.stages,
            ),
        )
    return Refusal(
        "pins",
        told(
            'no edge-to-edge cuts free all that is pinned on "{cloth}"; move a pin',
            cloth=cloth.name,
        ),
    )
