"""Lay problems that cannot be laid, refused before any search.

For problems read from a file and for those made in memory alike; the path leads
to the field as the file would have it (`pieces[2].across`).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from typing import Final

from core.fabric import Grain
from core.language import told
from core.lay.places_file import MOST_PIECES
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.refuse_places import require_places
from core.lengths import Inches
from core.part_names import told_part
from core.refusal import Refusal

MOST_SHEETS: Final = 1000
FEWEST_STAGES: Final = 2


def require_layable(problem: LayProblem) -> None:
    """Raise `Refusal` for the first fault of the problem as such.

    Cloth on hand that is not enough is no such fault: what finds no room is
    `unplaced` in the lay.
    """
    if not problem.cloths:
        raise Refusal("cloths", told("there is no cloth; write at least one"))
    _require_different("cloths", (cloth.name for cloth in problem.cloths))
    for index, cloth in enumerate(problem.cloths):
        _require_cloth(f"cloths[{index}]", cloth)
    cloths = {cloth.name: cloth for cloth in problem.cloths}
    used = {piece.name: f"pieces[{index}]" for index, piece in enumerate(problem.pieces)}
    _require_different("pieces", (piece.name for piece in problem.pieces))
    _require_different("runs", (run.name for run in problem.runs))
    for index, piece in enumerate(problem.pieces):
        _require_piece(f"pieces[{index}]", piece, _cloth_of(f"pieces[{index}]", piece, cloths))
    for index, run in enumerate(problem.runs):
        path = f"runs[{index}]"
        if run.name in used:
            raise Refusal(
                f"{path}.name",
                told(
                    '"{run}" is also {used}; choose another',
                    run=told_part(run.name),
                    used=used[run.name],
                ),
            )
        _require_run(path, run, _cloth_of(path, run, cloths))
        for place, name in enumerate(run.cloths):
            other = _cloth_of(path, replace(run, cloth=name), cloths, f"cloths[{place}]")
            _require_run(path, run, other)
    if problem.stages is not None and problem.stages < FEWEST_STAGES:
        raise Refusal(
            "stages", told("rows and what stands in them take 2 stages; write 2 or more, or null")
        )
    _require_few(problem)
    require_places(problem)


def _require_different(path: str, names: Iterable[str]) -> None:
    seen: dict[str, int] = {}
    for index, name in enumerate(names):
        if name in seen:
            raise Refusal(
                f"{path}[{index}].name",
                told(
                    '"{name}" is also the name of {path}[{place}]; choose another',
                    name=told_part(name),
                    path=path,
                    place=seen[name],
                ),
            )
        seen[name] = index


def _require_above_zero(path: str, length: Inches) -> None:
    if length <= 0:
        raise Refusal(path, told("this must be above 0; write a length such as 2 1/2"))


def _require_not_negative(path: str, length: Inches) -> None:
    if length < 0:
        raise Refusal(path, told("this cannot be negative; write 0 or a length"))


def _require_count(path: str, count: int) -> None:
    if not 1 <= count <= MOST_PIECES:
        raise Refusal(
            f"{path}.count",
            told("write a whole number from 1 to {most}", most=MOST_PIECES),
        )


def _require_cloth(path: str, cloth: Cloth) -> None:
    _require_above_zero(f"{path}.usable_width", cloth.usable_width)
    _require_above_zero(f"{path}.sale_unit", cloth.sale_unit)
    _require_not_negative(f"{path}.straightening", cloth.straightening)
    if not 0 <= cloth.shrinkage_along < 1:
        raise Refusal(f"{path}.shrinkage_along", told('write a share below 100%, such as "3%"'))
    for index, hand in enumerate(cloth.on_hand):
        _require_above_zero(f"{path}.on_hand[{index}].across", hand.across)
        _require_above_zero(f"{path}.on_hand[{index}].along", hand.along)
        _require_count(f"{path}.on_hand[{index}]", hand.count)
    if sum(hand.count for hand in cloth.on_hand) > MOST_SHEETS:
        raise Refusal(
            f"{path}.on_hand",
            told("write at most {most} pieces of cloth in all", most=MOST_SHEETS),
        )


def _cloth_of(path: str, part: Piece | Run, cloths: dict[str, Cloth], key: str = "cloth") -> Cloth:
    if part.cloth not in cloths:
        known = ", ".join(f'"{name}"' for name in cloths)
        raise Refusal(
            f"{path}.{key}",
            told(
                'there is no cloth "{cloth}"; write one of {known}', cloth=part.cloth, known=known
            ),
        )
    return cloths[part.cloth]


def _require_piece(path: str, piece: Piece, cloth: Cloth) -> None:
    _require_above_zero(f"{path}.across", piece.across)
    _require_above_zero(f"{path}.along", piece.along)
    _require_count(path, piece.count)
    turned = piece.along, piece.across
    if _fits(cloth, piece.across, piece.along):
        return
    if _fits(cloth, *turned):
        if piece.may_turn:
            return
        raise Refusal(
            f"{path}.across",
            told(
                '"{piece}" is {{across}} across and fits "{cloth}" only if it is turned; let '
                'it turn ("may_turn": true) or choose wider cloth',
                piece=told_part(piece.name),
                cloth=cloth.name,
            ),
            across=piece.across,
        )
    raise Refusal(
        f"{path}.across",
        told(
            '"{piece}" is {{across}} across and "{cloth}" gives {{most}}; choose wider '
            "cloth or a smaller piece",
            piece=told_part(piece.name),
            cloth=cloth.name,
        ),
        across=piece.across,
        most=_widest(cloth),
    )


def _fits(cloth: Cloth, across: Inches, along: Inches) -> bool:
    """Whether it fits the bolt, at any length, or a piece on hand."""
    if across <= cloth.usable_width:
        return True
    return any(across <= hand.across and along <= hand.along for hand in cloth.on_hand)


def _widest(cloth: Cloth) -> Inches:
    return max([cloth.usable_width, *(hand.across for hand in cloth.on_hand)])


def _require_run(path: str, run: Run, cloth: Cloth) -> None:
    _require_above_zero(f"{path}.strip", run.strip)
    _require_above_zero(f"{path}.needs", run.needs)
    _require_not_negative(f"{path}.join_loss", run.join_loss)
    _require_not_negative(f"{path}.shortest", run.shortest)
    _require_count(path, run.count)
    if run.grain is Grain.BIAS:
        raise Refusal(
            f"{path}.grain", told("write crosswise, lengthwise or either; bias is not laid")
        )
    if run.strip > _widest(cloth):
        raise Refusal(
            f"{path}.strip",
            told(
                'the strip is {{strip}} wide and "{cloth}" gives {{most}}; choose wider '
                "cloth or a narrower strip",
                cloth=cloth.name,
            ),
            strip=run.strip,
            most=_widest(cloth),
        )
    if run.grain is Grain.CROSSWISE:
        _require_segments(path, run, cloth)


def _require_segments(path: str, run: Run, cloth: Cloth) -> None:
    """A crosswise run is made of segments that the cloth's width gives."""
    most = _widest(cloth)
    if run.needs <= most:
        return
    if run.shortest > most:
        raise Refusal(
            f"{path}.shortest",
            told(
                '"{cloth}" gives segments of {{most}} at most; write a shorter length',
                cloth=cloth.name,
            ),
            most=most,
        )
    if run.join_loss >= most:
        raise Refusal(
            f"{path}.join_loss",
            told(
                'a join loses as much as a whole segment of "{cloth}" gives ({{most}}); '
                "write a smaller loss",
                cloth=cloth.name,
            ),
            most=most,
        )


def _require_few(problem: LayProblem) -> None:
    """Refuse so many pieces and segments that no person would cut them from one plan."""
    total = sum(piece.count for piece in problem.pieces)
    widths = {cloth.name: _widest(cloth) for cloth in problem.cloths}
    for run in problem.runs:
        width = min(widths[name] for name in run.sources)
        gain = max(width - run.join_loss, Fraction(1, 8))
        total += run.count * (1 + int(run.needs / gain))
    if total > MOST_PIECES:
        raise Refusal(
            "pieces",
            told(
                "that makes {total} pieces and segments; write at most {most} in all",
                total=total,
                most=MOST_PIECES,
            ),
        )
