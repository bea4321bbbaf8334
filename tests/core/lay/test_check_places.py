"""The second opinion on pins, flaws and motifs, first against lays known to be bad."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest

from core.lay.check import FaultKind, check
from core.lay.lay import THE_BOLT, ClothLay, Cut, Direction, Lay, Offcut, Placement, Rect, Unplaced
from core.lay.problem import Cloth, Flaw, LayProblem, Motif, Piece, Pin, Run

F = Fraction
CROSS, ALONG = Direction.CROSSWISE, Direction.LENGTHWISE


def rect(x: int, y: int, across: int, along: int) -> Rect:
    return Rect(F(x), F(y), F(across), F(along))


# Two panels side by side, one of them pinned to the right of a strip that is spoilt.
PROBLEM = LayProblem(
    (Cloth("plum", F(40), F(4)),),
    (Piece("panel", "plum", F(18), F(10), 2),),
    (Run("binding", "plum", F(2), F(30), F(2), F(10)),),
    pins=(
        Pin("panel", F(22), F(0), copy=2),
        Pin("binding", F(0), F(10), length=F(30)),
    ),
    flaws=(Flaw("plum", rect(18, 3, 4, 3)),),
    motifs=(Motif("panel", rect(2, 2, 5, 5)),),
)
PLACED = (
    Placement("panel", 1, THE_BOLT, rect(0, 0, 18, 10)),
    Placement("panel", 2, THE_BOLT, rect(22, 0, 18, 10)),
    Placement("binding", 1, THE_BOLT, rect(0, 10, 30, 2), run_copy=1),
)
CUTS = (
    Cut(THE_BOLT, rect(0, 0, 40, 12), CROSS, F(10)),
    Cut(THE_BOLT, rect(0, 0, 40, 10), ALONG, F(18)),
    Cut(THE_BOLT, rect(18, 0, 22, 10), ALONG, F(22)),
    Cut(THE_BOLT, rect(0, 10, 40, 2), ALONG, F(30)),
)
PLUM = ClothLay(
    "plum",
    F(12),
    F(12),
    F(0),
    proved_least=False,
    sheets=((THE_BOLT, rect(0, 0, 40, 12)),),
    placements=PLACED,
    cuts=CUTS,
)
LAY = Lay((PLUM,))


def kinds(lay: Lay, problem: LayProblem = PROBLEM) -> set[FaultKind]:
    return {fault.kind for fault in check(problem, lay)}


def asked(**changes: object) -> LayProblem:
    return replace(PROBLEM, **changes)  # type: ignore[arg-type]


def test_the_good_lay_has_no_fault() -> None:
    assert check(PROBLEM, LAY) == ()


@pytest.mark.parametrize(
    ("problem", "kind"),
    [
        (lambda: asked(pins=(Pin("panel", F(22), F(0), copy=1),)), FaultKind.PIN),
        (lambda: asked(pins=(Pin("panel", F(21), F(0)),)), FaultKind.PIN),
        (lambda: asked(pins=(Pin("panel", F(22), F(1)),)), FaultKind.PIN),
        (lambda: asked(pins=(Pin("binding", F(0), F(10), length=F(29)),)), FaultKind.PIN),
        (
            lambda: asked(pins=(Pin("binding", F(0), F(10), length=F(30), run_copy=2),)),
            FaultKind.PIN,
        ),
        (lambda: asked(flaws=(Flaw("plum", rect(17, 3, 4, 3)),)), FaultKind.FLAW),
        (lambda: asked(flaws=(Flaw("plum", rect(29, 11, 4, 1)),)), FaultKind.FLAW),
        (lambda: asked(flaws=(Flaw("plum", rect(1, 1, 1, 1)),)), FaultKind.FLAW),
        (lambda: asked(motifs=(Motif("panel", rect(15, 2, 5, 5)),)), FaultKind.MOTIF),
        (lambda: asked(motifs=(Motif("panel", rect(2, 6, 5, 5)),)), FaultKind.MOTIF),
        (lambda: asked(motifs=(Motif("binding", rect(2, 2, 5, 5)),)), FaultKind.MOTIF),
    ],
)
def test_what_is_not_minded_is_a_fault(problem: Callable[[], LayProblem], kind: FaultKind) -> None:
    assert kinds(LAY, problem()) == {kind}


def test_the_edge_of_a_flaw_may_be_touched_and_a_motif_may_fill_its_piece() -> None:
    problem = asked(
        flaws=(Flaw("plum", rect(18, 0, 4, 10)), Flaw("plum", rect(30, 10, 10, 2))),
        motifs=(Motif("panel", rect(0, 0, 18, 10)),),
    )
    assert check(problem, LAY) == ()


def test_an_offcut_with_a_flaw_in_it_is_a_fault() -> None:
    offcut = Offcut(THE_BOLT, rect(18, 0, 4, 10))
    assert kinds(Lay((replace(PLUM, offcuts=(offcut,)),))) == {FaultKind.FLAW}


def test_a_flaw_on_another_sheet_is_none_here() -> None:
    flaw = Flaw("plum", rect(1, 1, 1, 1), replace(THE_BOLT, on="on_hand[0]"))
    assert check(asked(flaws=(flaw,)), LAY) == ()


def test_a_run_that_is_unplaced_need_not_lie_where_it_is_pinned() -> None:
    without = replace(PLUM, placements=PLACED[:2], cuts=CUTS[:3], used_along=F(10))
    assert kinds(Lay((without,), (Unplaced("binding", 1),))) == set()
