"""The rest of a cloth's pieces laid again, on what is left of the cloth.

Every piece of cloth on the table becomes a piece on hand of its exact size; what
is cut well is not asked for again. Of a run that is partly cut, what remains is its
need less what is cut, and one join more. If what is left is not enough, the new
order buys more, whether or not more was to be bought.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import count

from core.cloth_lay import CannotMind, lay_one
from core.cloth_names import BOUGHT, LEFT
from core.cutting.miscut import Miscut, bolt_width, on_table_after, what_happened
from core.cutting.order import Marked, Order, TableSheet
from core.cutting.progress import Bit, OnTable
from core.fabric import OnHand
from core.finish.binding_plan import segment_length
from core.language import marked, told
from core.lay.lay import THE_BOLT, ClothLay, Lay, Placement, Rect, Sheet
from core.lay.places import meet
from core.lay.problem import Cloth, Flaw, Motif, Piece, Run
from core.lay.stop import Stop
from core.lengths import Inches, Units, sale_text
from core.part_names import told_part
from core.refusal import Refusal
from core.steps import CLOTH, steps_for

ZERO = Fraction(0)
MOTIFS_GONE = marked("Not every motif can be kept: look where the pieces come to lie on the print.")


@dataclass(frozen=True, slots=True)
class LaidAgain:
    """A question for the solver: the order after a miscut; raises `Refusal` if there is none."""

    order: Order
    done: int
    miscut: Miscut
    units: Units
    iterations: int = Stop().iterations

    def answer(self) -> Order:
        """The new order, passed by the checker."""
        try:
            return self._laid()
        except Refusal as refusal:
            raise refusal.in_units(self.units) from None

    def _laid(self) -> Order:
        order, done, miscut = self.order, self.done, self.miscut
        table = on_table_after(order, done, miscut)
        [cloth] = order.problem.cloths
        bolt = replace(cloth, usable_width=bolt_width(order, done, miscut))
        order = replace(order, problem=replace(order.problem, cloths=(bolt,)))
        because = what_happened(order, done, miscut, self.units)
        again = lay_again(order, table, self.units, self.iterations)
        if len(again.problem.motifs) < len(order.problem.motifs) and again.pieces:
            because = f"{because} {told(MOTIFS_GONE)}"
        return replace(again, because=because)


def lay_again(
    order: Order, table: OnTable, units: Units, iterations: int = Stop().iterations
) -> Order:
    """The rest of an order's pieces on what lies on the table.

    Raises `Refusal` where a piece fits neither that nor any cloth that may be bought.
    """
    rest = _Rest(order, table)
    if not rest.named:
        return rest.order(None, units)
    try:
        lay = _laid(rest, iterations)
    except CannotMind:
        rest.problem = replace(rest.problem, motifs=())
        lay = _laid(rest, iterations)
    return rest.order(lay.cloths[0], units)


def _laid(rest: _Rest, iterations: int) -> Lay:
    problem = rest.problem
    by_hand = ("flaws", *(f"flaws[{n}]" for n, _ in enumerate(problem.flaws)))
    motifs = ("motifs", *(f"motifs[{n}]" for n, _ in enumerate(problem.motifs)))
    lay = lay_one(
        problem, tuple((name, "") for name in (*rest.named, *by_hand, *motifs)), iterations
    )
    if lay.unplaced and problem.motifs:
        raise CannotMind("", told("the motifs leave no room for the rest"))
    if lay.unplaced:
        raise _no_room(rest, lay)
    return lay


def _no_room(rest: _Rest, lay: Lay) -> Refusal:
    names = dict.fromkeys(rest.named[gone.name][0] for gone in lay.unplaced)
    sentence = told(
        "what is left of {cloth} has no room for {pieces}, and the bolt is too narrow for it",
        cloth=rest.problem.cloths[0].name,
        pieces=", ".join(map(told_part, names)),
    )
    return Refusal("", sentence)


class _Rest:
    """What remains of an order. `named` leads from the names laid to those of the plan.

    With each goes the numbers of the copies that are still to be cut.
    """

    def __init__(self, order: Order, table: OnTable) -> None:
        self._order, self._table = order, table
        self.named: dict[str, tuple[str, tuple[int, ...]]] = {}
        pieces, runs = tuple(self._pieces()), tuple(self._runs())
        sheets = {bit: Sheet(f"on_hand[{place}]") for place, bit in enumerate(table.hand)}
        self.problem = replace(
            order.problem,
            cloths=(self._cloth(),),
            pieces=pieces,
            runs=runs,
            pins=(),
            flaws=tuple(self._flaws(sheets)),
            motifs=tuple(self._motifs(sheets, pieces)),
        )

    def _cloth(self) -> Cloth:
        """The cloth with what is left of it as pieces on hand; more of it may be bought."""
        [cloth] = self._order.problem.cloths
        hand = tuple(OnHand(bit.rect.across, bit.rect.along) for bit in self._table.hand)
        return replace(cloth, on_hand=hand, buy_more=True)

    def _pieces(self) -> Iterator[Piece]:
        for piece in self._order.problem.pieces:
            cut = {m.placed.copy for m in self._table.pieces if m.placed.name == piece.name}
            left = tuple(copy for copy in range(1, piece.count + 1) if copy not in cut)
            if left:
                self.named[piece.name] = piece.name, left
                yield replace(piece, count=len(left))

    def _runs(self) -> Iterator[Run]:
        """Runs of one name that need equally much stay one run of several copies."""
        for run in self._order.problem.runs:
            needs: dict[Inches, list[int]] = defaultdict(list)
            for copy in range(1, run.count + 1):
                need = self._need(run, copy)
                if need > 0:
                    needs[need].append(copy)
            for number, (need, copies) in enumerate(needs.items()):
                name = run.name if number == 0 else f"{run.name}, {number + 1}"
                self.named[name] = run.name, tuple(copies)
                yield replace(run, name=name, needs=need, count=len(copies))

    def _need(self, run: Run, copy: int) -> Inches:
        """What a copy of a run still needs in one length; 0 for nothing."""
        lengths = [
            segment_length(mark.placed)
            for mark in self._table.pieces
            if (mark.placed.name, mark.placed.run_copy) == (run.name, copy)
        ]
        if not lengths:
            return run.needs
        joined = sum(lengths, ZERO) - (len(lengths) - 1) * run.join_loss
        if joined >= run.needs:
            return ZERO
        return max(run.needs - joined + run.join_loss, run.shortest)

    def _flaws(self, sheets: dict[Bit, Sheet]) -> Iterator[Flaw]:
        for flaw in self._order.problem.flaws:
            for bit, sheet in sheets.items():
                if bit.sheet == flaw.sheet and meet(sheet, bit.rect, sheet, flaw.rect):
                    yield replace(flaw, sheet=sheet, rect=_within(bit.rect, flaw.rect))

    def _motifs(self, sheets: dict[Bit, Sheet], pieces: Sequence[Piece]) -> Iterator[Motif]:
        """Motifs that still lie whole on a piece of cloth, and of which a copy is to be cut."""
        wanted = {piece.name: piece.count for piece in pieces}
        for motif in self._order.problem.motifs:
            for bit, sheet in sheets.items():
                whole = _within(bit.rect, motif.rect)
                same = (whole.across, whole.along) == (motif.rect.across, motif.rect.along)
                if bit.sheet == motif.sheet and same and wanted.get(motif.name, 0) > 0:
                    wanted[motif.name] -= 1
                    yield replace(motif, sheet=sheet, rect=whole)

    def order(self, lay: ClothLay | None, units: Units) -> Order:
        """The order that cuts a lay of the rest; None for nothing left to cut."""
        cloth = self._order.problem.cloths[0]
        pieces = tuple(self._marked(lay.placements)) if lay else ()
        raws = {Sheet(f"on_hand[{n}]"): bit.raw for n, bit in enumerate(self._table.hand)}
        raw = frozenset(sheet for sheet, by in raws.items() if by) | {THE_BOLT}
        labels = {(mark.placed.sheet, mark.placed.rect): mark.label for mark in pieces}
        offcuts = frozenset((one.sheet, one.rect) for one in lay.offcuts) if lay else frozenset()
        steps = steps_for(lay.cuts if lay else (), labels, offcuts, cloth.straightening, raw)
        bought = lay.bought_along if lay else ZERO
        return Order(
            problem=replace(
                self._order.problem,
                cloths=self.problem.cloths,
                pins=(),
                flaws=self.problem.flaws,
                motifs=self.problem.motifs,
            ),
            parts=self._order.parts,
            sheets=tuple(self._sheets(lay)),
            pieces=pieces,
            steps=steps,
            bought=bought,
            sale=sale_text(bought, cloth.sale_unit),
            had=self._table.pieces,
        )

    def _sheets(self, lay: ClothLay | None) -> Iterator[TableSheet]:
        """All that is left, whether the lay uses it or not, and what is bought."""
        for place, bit in enumerate(self._table.hand):
            rect = Rect(ZERO, ZERO, bit.rect.across, bit.rect.along)
            sheet, called = Sheet(f"on_hand[{place}]"), LEFT if bit.name == CLOTH else bit.name
            yield TableSheet(sheet, rect, raw=bit.raw, called=called)
        bought = dict(lay.sheets).get(THE_BOLT) if lay else None
        if lay and bought is not None:
            straight = any(cut.sheet == THE_BOLT for cut in lay.cuts)
            raw = self._order.problem.cloths[0].straightening if straight else ZERO
            yield TableSheet(THE_BOLT, bought, raw=raw, called=BOUGHT)

    def _marked(self, placements: Sequence[Placement]) -> Iterator[Marked]:
        """The new pieces under the plan's names and numbers; new segments take free numbers."""
        used = {mark.label for mark in self._table.pieces}
        numbers = {part.name: count(1) for part in self._order.parts}
        for placed in placements:
            name, copies = self.named[placed.name]
            part = self._order.part(replace(placed, name=name))
            if placed.run_copy is None:
                copy = copies[placed.copy - 1]
                yield Marked(part.label(copy), replace(placed, name=name, copy=copy))
                continue
            copy = next(n for n in numbers[name] if f"{part.letter}{n}" not in used)
            run_copy = copies[placed.run_copy - 1]
            again = replace(placed, name=name, copy=copy, run_copy=run_copy)
            yield Marked(f"{part.letter}{copy}", again)


def _within(outer: Rect, inner: Rect) -> Rect:
    """The part of `inner` that lies in `outer`, measured from the outer's own corner."""
    x, y = max(inner.x, outer.x), max(inner.y, outer.y)
    right, end = min(inner.right, outer.right), min(inner.end, outer.end)
    return Rect(x - outer.x, y - outer.y, right - x, end - y)
