"""The checker against lays that are known to be wrong, each in one way."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from itertools import combinations

import pytest

from core.fabric import OnHand
from core.lay.check import FaultKind, check
from core.lay.lay import (
    ClothLay,
    Cut,
    Direction,
    Lay,
    Offcut,
    Placement,
    Rect,
    Sheet,
    Unplaced,
)
from core.lay.problem import Cloth, LayProblem, Piece, Run

F = Fraction
BOLT = Sheet()
HAND = Sheet("on_hand[0]", 1)
CROSS, ALONG = Direction.CROSSWISE, Direction.LENGTHWISE


def rect(x: int, y: int, across: int, along: int) -> Rect:
    return Rect(F(x), F(y), F(across), F(along))


# Bolt 40 wide: a row of two panels 20 x 30 in, then two rows of the run's strips of 3 in:
# 40 in and 20 in, together 60 - 3 = 57 in, and beside the second a patch of 10 x 3 in.
# 40 in are bought and 1 in is trimmed off, so 39 in lie on the table and 3 in are left over.
CLOTH = Cloth("plum", F(40), F(4), F(1), on_hand=(OnHand(F(12), F(12), 1),))
PROBLEM = LayProblem(
    (CLOTH, Cloth("dots", F(40), F(4))),
    (
        Piece("panel", "plum", F(20), F(30), 2),
        Piece("patch", "plum", F(10), F(3)),
        Piece("square", "plum", F(12), F(10)),
    ),
    (Run("strip", "plum", F(3), F(57), F(3), F(15)),),
)
PLACED = (
    Placement("panel", 1, BOLT, rect(0, 0, 20, 30)),
    Placement("panel", 2, BOLT, rect(20, 0, 20, 30)),
    Placement("strip", 1, BOLT, rect(0, 30, 40, 3), run_copy=1),
    Placement("strip", 2, BOLT, rect(0, 33, 20, 3), run_copy=1),
    Placement("patch", 1, BOLT, rect(20, 33, 10, 3)),
    Placement("square", 1, HAND, rect(0, 0, 12, 10)),
)
CUTS = (
    Cut(HAND, rect(0, 0, 12, 12), CROSS, F(10)),
    Cut(BOLT, rect(0, 0, 40, 39), CROSS, F(30)),
    Cut(BOLT, rect(0, 30, 40, 9), CROSS, F(33)),
    Cut(BOLT, rect(0, 33, 40, 6), CROSS, F(36)),
    Cut(BOLT, rect(0, 0, 40, 30), ALONG, F(20)),
    Cut(BOLT, rect(0, 33, 40, 3), ALONG, F(20)),
    Cut(BOLT, rect(20, 33, 20, 3), ALONG, F(30)),
)
PLUM = ClothLay(
    "plum",
    bought_along=F(40),
    used_along=F(36),
    bound_along=F(36),
    proved_least=True,
    sheets=((HAND, rect(0, 0, 12, 12)), (BOLT, rect(0, 0, 40, 39))),
    placements=PLACED,
    offcuts=(
        Offcut(HAND, rect(0, 10, 12, 2)),
        Offcut(BOLT, rect(30, 33, 10, 3)),
        Offcut(BOLT, rect(0, 36, 40, 3)),
    ),
    cuts=CUTS,
)
DOTS = ClothLay("dots", F(0), F(0), F(0), proved_least=True)
LAY = Lay((PLUM, DOTS))


def kinds(lay: Lay, problem: LayProblem = PROBLEM) -> set[FaultKind]:
    return {fault.kind for fault in check(problem, lay)}


def with_plum(**changes: object) -> Lay:
    return Lay((replace(PLUM, **changes), DOTS))  # type: ignore[arg-type]


def moved(index: int, **changes: object) -> Lay:
    placed = list(PLACED)
    placed[index] = replace(placed[index], **changes)  # type: ignore[arg-type]
    return with_plum(placements=tuple(placed))


def without(index: int) -> Lay:
    return with_plum(placements=PLACED[:index] + PLACED[index + 1 :])


def test_the_lay_that_all_others_spoil_is_right() -> None:
    assert check(PROBLEM, LAY) == ()


@pytest.mark.parametrize(("i", "j"), list(combinations(range(5), 2)))
def test_every_pair_is_looked_at(i: int, j: int) -> None:
    other = PLACED[i].rect
    half = replace(PLACED[j].rect, x=other.x, y=other.y)
    pairs = {
        fault.names
        for fault in check(PROBLEM, moved(j, rect=half))
        if fault.kind is FaultKind.OVERLAP
    }
    names = {PLACED[i].name, PLACED[j].name}
    assert any(set(pair) == names for pair in pairs)


def test_things_that_touch_do_not_overlap() -> None:
    assert FaultKind.OVERLAP not in kinds(LAY)


def test_the_same_place_on_another_sheet_is_no_overlap() -> None:
    assert PLACED[5].rect.x == PLACED[0].rect.x
    assert FaultKind.OVERLAP not in kinds(LAY)


@pytest.mark.parametrize(
    ("spoilt", "kind"),
    [
        (lambda: moved(1, rect=rect(21, 0, 20, 30)), FaultKind.OFF_CLOTH),
        (lambda: moved(4, rect=rect(20, 34, 10, 3)), FaultKind.WRONG_USE),
        (lambda: moved(5, rect=rect(-1, 0, 12, 10)), FaultKind.OFF_CLOTH),
        (lambda: moved(5, rect=rect(0, 3, 12, 10)), FaultKind.OFF_CLOTH),
        (lambda: moved(0, rect=rect(0, 0, 20, 29)), FaultKind.WRONG_SIZE),
        (lambda: moved(0, rect=rect(0, 0, 21, 30)), FaultKind.WRONG_SIZE),
        (lambda: moved(4, rect=rect(20, 33, 3, 10), turned=True), FaultKind.GRAIN),
        (lambda: moved(4, rect=rect(20, 33, 3, 10)), FaultKind.WRONG_SIZE),
        (lambda: moved(4, name="scrap"), FaultKind.SURPLUS),
        (lambda: moved(1, copy=3), FaultKind.SURPLUS),
        (lambda: moved(1, copy=1), FaultKind.SURPLUS),
        (lambda: moved(1, copy=1), FaultKind.MISSING),
        (lambda: moved(4, run_copy=1), FaultKind.SURPLUS),
        (lambda: without(0), FaultKind.MISSING),
        (lambda: without(4), FaultKind.MISSING),
        (lambda: without(2), FaultKind.SHORT_RUN),
        (lambda: without(3), FaultKind.SHORT_RUN),
        (lambda: moved(3, rect=rect(0, 33, 19, 3)), FaultKind.SHORT_RUN),
        (lambda: moved(3, rect=rect(0, 33, 14, 3)), FaultKind.SHORT_SEGMENT),
        (lambda: moved(3, rect=rect(0, 33, 20, 2)), FaultKind.STRIP),
        (lambda: moved(3, rect=rect(0, 33, 3, 20), turned=True), FaultKind.GRAIN),
        (lambda: moved(3, run_copy=2), FaultKind.SURPLUS),
        (lambda: moved(3, copy=1), FaultKind.SURPLUS),
        (lambda: moved(5, sheet=Sheet("on_hand[0]", 2)), FaultKind.NO_SUCH_SHEET),
        (lambda: moved(5, sheet=Sheet("on_hand[1]", 1)), FaultKind.NO_SUCH_SHEET),
        (lambda: moved(5, sheet=Sheet("bolt", 2)), FaultKind.NO_SUCH_SHEET),
        (lambda: with_plum(sheets=PLUM.sheets[1:]), FaultKind.NO_SUCH_SHEET),
        (lambda: with_plum(sheets=(PLUM.sheets[0], (BOLT, rect(0, 0, 40, 36)))), FaultKind.CUTS),
        (
            lambda: with_plum(sheets=(PLUM.sheets[0], (BOLT, rect(0, 0, 40, 36)))),
            FaultKind.NO_SUCH_SHEET,
        ),
        (lambda: with_plum(bought_along=F(36)), FaultKind.BOUGHT),
        (lambda: with_plum(bought_along=F(38)), FaultKind.BOUGHT),
        (lambda: with_plum(bound_along=F(37)), FaultKind.BOUND),
        (lambda: with_plum(bound_along=F(35)), FaultKind.BOUND),
        (lambda: with_plum(used_along=F(35)), FaultKind.WRONG_USE),
        (lambda: with_plum(cuts=CUTS[:-1]), FaultKind.CUTS),
        (lambda: with_plum(cuts=CUTS[::-1]), FaultKind.CUTS),
        (lambda: with_plum(cuts=(*CUTS[:-1], replace(CUTS[-1], at=F(29)))), FaultKind.CUTS),
        (lambda: with_plum(cuts=(*CUTS[:-1], replace(CUTS[-1], at=F(40)))), FaultKind.CUTS),
        (lambda: with_plum(offcuts=(Offcut(BOLT, rect(20, 33, 10, 3)),)), FaultKind.OFFCUT),
        (lambda: with_plum(offcuts=(Offcut(BOLT, rect(30, 33, 9, 3)),)), FaultKind.OFFCUT),
        (lambda: replace(LAY, unplaced=(Unplaced("panel", 1),)), FaultKind.SURPLUS),
        (lambda: replace(LAY, unplaced=(Unplaced("scrap", 1),)), FaultKind.SURPLUS),
        (lambda: replace(LAY, unplaced=(Unplaced("strip", 1),)), FaultKind.SURPLUS),
        (lambda: Lay((DOTS, PLUM)), FaultKind.WRONG_CLOTH),
        (lambda: Lay((replace(PLUM, name="dots"), DOTS)), FaultKind.WRONG_CLOTH),
        (
            lambda: Lay((with_plum(placements=PLACED[1:]).cloths[0], _on_dots(PLACED[0]))),
            FaultKind.WRONG_CLOTH,
        ),
    ],
)
def test_a_lay_that_is_spoilt_in_one_way_has_that_fault(
    spoilt: Callable[[], Lay], kind: FaultKind
) -> None:
    assert kind in kinds(spoilt())


def _on_dots(placed: Placement) -> ClothLay:
    return ClothLay(
        "dots",
        F(32),
        F(30),
        F(0),
        proved_least=False,
        sheets=((BOLT, rect(0, 0, 40, 32)),),
        placements=(placed,),
        cuts=(
            Cut(BOLT, rect(0, 0, 40, 32), CROSS, F(30)),
            Cut(BOLT, rect(0, 0, 40, 30), ALONG, F(20)),
        ),
    )


def test_the_bolt_is_a_fault_where_no_more_may_be_bought() -> None:
    problem = replace(PROBLEM, cloths=(replace(CLOTH, buy_more=False), PROBLEM.cloths[1]))
    assert kinds(LAY, problem) == {FaultKind.BOUGHT}


def test_more_copies_on_hand_than_exist_are_a_fault() -> None:
    problem = replace(PROBLEM, cloths=(replace(CLOTH, on_hand=()), PROBLEM.cloths[1]))
    assert FaultKind.NO_SUCH_SHEET in kinds(LAY, problem)


def test_a_single_segment_may_be_under_the_shortest() -> None:
    problem = LayProblem(
        (PROBLEM.cloths[1],), runs=(Run("strip", "dots", F(3), F(10), F(3), F(15)),)
    )
    placed = (Placement("strip", 1, BOLT, rect(0, 0, 10, 3), run_copy=1),)
    cuts = (
        Cut(BOLT, rect(0, 0, 40, 4), CROSS, F(3)),
        Cut(BOLT, rect(0, 0, 40, 3), ALONG, F(10)),
    )
    lay = ClothLay("dots", F(4), F(3), F(3), True, ((BOLT, rect(0, 0, 40, 4)),), placed, (), cuts)
    assert check(problem, Lay((lay,))) == ()


def test_shrinkage_counts_when_what_is_bought_is_checked() -> None:
    shrinking = replace(CLOTH, shrinkage_along=F(1, 10))
    problem = replace(PROBLEM, cloths=(shrinking, PROBLEM.cloths[1]))
    assert FaultKind.BOUGHT in kinds(LAY, problem)


def test_a_fault_says_what_is_wrong_in_a_plain_sentence() -> None:
    [fault] = [
        fault
        for fault in check(PROBLEM, moved(3, rect=rect(0, 33, 14, 3)))
        if fault.kind is FaultKind.SHORT_SEGMENT
    ]
    assert fault.sentence == "strip 1 has a segment of 14 in, under the shortest of 15 in"
