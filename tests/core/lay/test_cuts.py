"""The cut order: what a person does first, and what is worth keeping."""

from __future__ import annotations

from fractions import Fraction

import pytest

from core.lay.cuts import cut_order
from core.lay.lay import Direction, Placement, Rect, Sheet
from core.lay.slabs import NotGuillotine

F = Fraction
BOLT = Sheet()


def rect(x: int, y: int, across: int, along: int) -> Rect:
    return Rect(F(x), F(y), F(across), F(along))


def placed(*rects: Rect) -> list[Placement]:
    return [Placement("piece", copy, BOLT, one) for copy, one in enumerate(rects, 1)]


def test_the_bolt_is_cut_crosswise_first_and_each_cut_is_measured_from_the_last() -> None:
    things = placed(rect(0, 0, 20, 30), rect(20, 0, 20, 30), rect(0, 30, 40, 5))
    cuts, offcuts = cut_order(BOLT, rect(0, 0, 40, 35), things)
    assert [(cut.direction, cut.measure, cut.length) for cut in cuts] == [
        (Direction.CROSSWISE, F(30), F(40)),
        (Direction.LENGTHWISE, F(20), F(30)),
    ]
    assert offcuts == ()


def test_equal_settings_come_one_after_the_other() -> None:
    things = placed(
        rect(0, 0, 10, 9), rect(0, 9, 20, 8), rect(0, 17, 10, 7), rect(10, 0, 10, 9),
        rect(10, 17, 10, 7), rect(20, 9, 20, 8), rect(20, 0, 20, 9), rect(20, 17, 20, 7),
    )  # fmt: skip
    cuts, _ = cut_order(BOLT, rect(0, 0, 40, 24), things)
    settings = [cut.measure for cut in cuts if cut.direction is Direction.LENGTHWISE]
    assert settings == [10, 10, 10, 10, 20]


def test_a_piece_in_a_corner_leaves_the_largest_offcut() -> None:
    hand = Sheet("on_hand[0]")
    _, offcuts = cut_order(hand, rect(0, 0, 20, 30), placed(rect(0, 0, 10, 4)))
    assert max(o.rect.across * o.rect.along for o in offcuts) == 20 * 26


def test_scraps_under_two_inches_are_not_kept() -> None:
    _, offcuts = cut_order(BOLT, rect(0, 0, 40, 10), placed(rect(0, 0, 39, 10)))
    assert offcuts == ()


def test_a_pinwheel_cannot_be_cut_edge_to_edge() -> None:
    pinwheel = placed(
        rect(0, 0, 2, 1), rect(2, 0, 1, 2), rect(1, 2, 2, 1), rect(0, 1, 1, 2), rect(1, 1, 1, 1)
    )
    with pytest.raises(NotGuillotine):
        cut_order(BOLT, rect(0, 0, 3, 3), pinwheel)


def test_a_slab_goes_on_at_the_setting_that_the_last_one_ended_at() -> None:
    things = placed(
        rect(0, 0, 6, 9), rect(6, 0, 10, 9),
        rect(0, 9, 6, 8), rect(6, 9, 12, 8),
        rect(0, 17, 10, 7), rect(10, 17, 12, 7),
    )  # fmt: skip
    cuts, _ = cut_order(BOLT, rect(0, 0, 40, 24), things)
    settings = [cut.measure for cut in cuts if cut.direction is Direction.LENGTHWISE]
    assert settings == [6, 10, 10, 12, 6, 12]


def test_few_stages_are_chosen_before_few_cuts() -> None:
    # Three columns first and their ends off after: two stages. Rows first: three.
    things = placed(rect(0, 0, 10, 9), rect(10, 0, 10, 20), rect(20, 0, 10, 20))
    hand = Sheet("on_hand[0]")
    cuts, _ = cut_order(hand, rect(0, 0, 30, 20), things, few_stages=True)
    assert [cut.direction.value for cut in cuts] == ["lengthwise", "lengthwise", "crosswise"]
