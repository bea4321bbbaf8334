"""The cut order as steps: a stranger who follows them gets every piece."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.lay.lay import Cut, Direction, Rect, Sheet
from core.lengths import Units
from core.plan import FabricPlan, Plan, make_plan
from core.steps import Becomes, CutStep, sentence, split, steps_for
from core.table import DEFAULT_METRIC_TABLE, DEFAULT_TABLE, Hold, Table
from tests.core.demos import DEMOS, demo
from tests.core.stranger import CannotCut, cloths_of, cut_out, pieces_of, whole_cloths

F = Fraction
BOLT = Sheet()
CROSS, ALONG = Direction.CROSSWISE, Direction.LENGTHWISE


def rect(x: int, y: int, across: int, along: int) -> Rect:
    return Rect(F(x), F(y), F(across), F(along))


# Three strips of 3 in off a cloth of 40 × 12, and a patch of 10 × 3 off the third.
CUTS = (
    Cut(BOLT, rect(0, 0, 40, 12), CROSS, F(3)),
    Cut(BOLT, rect(0, 3, 40, 9), CROSS, F(6)),
    Cut(BOLT, rect(0, 6, 40, 6), CROSS, F(9)),
    Cut(BOLT, rect(0, 6, 40, 3), ALONG, F(10)),
)
LABELS = {
    (BOLT, rect(0, 0, 40, 3)): "A1",
    (BOLT, rect(0, 3, 40, 3)): "A2",
    (BOLT, rect(0, 6, 10, 3)): "B",
}
OFFCUTS = frozenset({(BOLT, rect(10, 6, 30, 3))})


def steps(straightening: int = 0) -> tuple[CutStep, ...]:
    return steps_for(CUTS, LABELS, OFFCUTS, F(straightening))


def followed(plan: Plan, fabric: FabricPlan) -> dict[str, tuple[Fraction, Fraction]]:
    return cut_out(cloths_of(fabric), fabric.steps) | whole_cloths(plan, fabric)


@pytest.mark.parametrize("name", DEMOS)
def test_a_stranger_gets_every_piece_of_a_demo_in_its_size(name: str) -> None:
    plan = make_plan(demo(name))
    for fabric in plan.fabrics:
        assert followed(plan, fabric) == pieces_of(plan, fabric)


@pytest.mark.parametrize("name", DEMOS)
def test_what_she_has_cut_is_what_the_parts_ask_for(name: str) -> None:
    plan = make_plan(demo(name))
    cut = {label: size for fabric in plan.fabrics for label, size in followed(plan, fabric).items()}
    for part in plan.parts:
        sizes = [cut[part.label(copy)] for copy in range(1, part.count + 1)]
        if part.along is None:
            assert all(part.across in size for size in sizes), "a run's segments have its width"
        else:
            assert all(sorted(size) == sorted((part.across, part.along)) for size in sizes)
    assert len(cut) == sum(part.count for part in plan.parts)


def test_the_stranger_gets_the_pieces_of_a_small_cloth() -> None:
    cut = cut_out({BOLT: (F(40), F(12))}, steps())
    assert cut == {"A1": (F(40), F(3)), "A2": (F(40), F(3)), "B": (F(10), F(3))}


# The stranger must notice what is wrong, or she proves nothing.
@pytest.mark.parametrize(
    ("place", "wrong"),
    [
        (0, {"source": "section 7"}),
        (0, {"number": 4}),
        (0, {"measure": F(12)}),
        (0, {"measure": F(0)}),
        (0, {"times": 9}),
        (1, {"measure": F(41)}),
        (1, {"region": rect(0, 6, 40, 4)}),
        (1, {"sheet": Sheet("on_hand[0]")}),
    ],
)
def test_the_stranger_notices_steps_that_cannot_be_followed(
    place: int, wrong: dict[str, object]
) -> None:
    good = list(steps())
    good[place] = replace(good[place], **wrong)  # type: ignore[arg-type]
    with pytest.raises(CannotCut):
        cut_out({BOLT: (F(40), F(12))}, good)


@pytest.mark.parametrize("wrong", [{"measure": F(5, 2)}, {"direction": ALONG}, {"times": 2}])
def test_the_stranger_gets_other_pieces_from_other_steps(wrong: dict[str, object]) -> None:
    good = steps()
    bad = (replace(good[0], **wrong), *good[1:])  # type: ignore[arg-type]
    try:
        cut = cut_out({BOLT: (F(40), F(12))}, bad)
    except CannotCut:
        return
    assert cut != cut_out({BOLT: (F(40), F(12))}, good)


def test_equal_cuts_one_after_the_other_are_one_step() -> None:
    first, second = steps()
    assert (first.source, first.direction, first.measure, first.times) == ("cloth", CROSS, F(3), 3)
    assert [(fall.becomes, fall.label) for fall in first.falls] == [
        (Becomes.PIECE, "A1"),
        (Becomes.PIECE, "A2"),
        (Becomes.SECTION, "section 1"),
        (Becomes.WASTE, "waste"),
    ]
    assert (second.source, second.times) == ("section 1", 1)


def test_the_bolt_is_straightened_once_and_first_and_cloth_on_hand_never() -> None:
    listed = steps(1)
    assert [step.straightening for step in listed] == [True, False, False]
    on_hand = Sheet("on_hand[0]")
    moved = tuple(replace(cut, sheet=on_hand) for cut in CUTS)
    labels = {(on_hand, place): label for (_, place), label in LABELS.items()}
    assert not any(step.straightening for step in steps_for(moved, labels, frozenset(), F(1)))


def test_steps_are_numbered_from_one() -> None:
    assert [step.number for step in steps(1)] == [1, 2, 3]


@pytest.mark.parametrize("cut", CUTS)
def test_a_cut_leaves_two_parts_that_make_up_the_whole(cut: Cut) -> None:
    near, far = split(cut)
    assert near.across * near.along + far.across * far.along == cut.region.across * cut.region.along
    assert (near.x, near.y) == (cut.region.x, cut.region.y)
    assert (far.right, far.end) == (cut.region.right, cut.region.end)


def test_steps_read_as_plain_sentences() -> None:
    straighten, strips, patch = (sentence(step, Units.INCHES, DEFAULT_TABLE) for step in steps(1))
    assert straighten == "Straighten the cut end: trim about 1 in off, selvage to selvage."
    assert strips == (
        "Cut the cloth (40 × 12 in), folded once, across, 3 in from its straight end, "
        "3 times, each from the fresh edge. Gives A1, A2, section 1. What is left over is waste."
    )
    assert patch == (
        "Cut section 1 (40 × 3 in) along the grain, 10 in from its near edge. Gives B. "
        "Keep the offcut, 30 × 3 in."
    )


def test_steps_read_in_centimetres_too() -> None:
    assert "25.4 cm from its near edge" in sentence(
        steps()[-1], Units.CENTIMETRES, DEFAULT_METRIC_TABLE
    )


def test_a_step_says_how_the_cloth_is_folded_and_how_often_the_ruler_is_laid() -> None:
    across, along = steps()[0], steps()[-1]
    assert across.hold(Table(F(40))) == Hold(0, 1)
    assert across.hold(Table(F(10), 2)) == Hold(2, 1)
    assert "), folded twice, across," in sentence(across, Units.INCHES, Table(F(10), 2))
    assert "fresh edge. Lay the ruler 4 times. Gives" in sentence(
        across, Units.INCHES, Table(F(10), 0)
    )
    assert along.hold(Table(F(2), 2)) == Hold(0, 2)
    assert "Lay the ruler 2 times." in sentence(along, Units.INCHES, Table(F(2), 2))
