"""A miscut at any moment of any plan: what is cut and what is laid again is all that was asked."""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from math import prod

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from core.cutting.cutting import begin
from core.cutting.miscut import (
    Miscut,
    OtherSize,
    Spoilt,
    WrongWidth,
    bolt_width,
    may_be_wrong,
    on_table_after,
)
from core.cutting.order import Marked, Order, planned_orders
from core.cutting.progress import OnTable, on_table
from core.cutting.remaining import LaidAgain
from core.cutting.words import to_buy
from core.fabric import Grain, OnHand
from core.lay.lay import THE_BOLT, Direction
from core.lengths import Units
from core.plan import Plan, make_plan
from core.quilt import Project
from core.refusal import Refusal
from tests.core.demos import DEMOS, demo
from tests.core.stranger import Size, cut_out
from tests.strategies import projects

F = Fraction
FEW = 4  # tries of a lay: what is laid is checked, not how well


def planned(project: Project) -> Plan:
    try:
        return make_plan(project, draft=True)
    except Refusal:
        assume(False)
        raise


def laid_again(order: Order, done: int, miscut: Miscut) -> Order:
    return LaidAgain(order, done, miscut, Units.INCHES, FEW).answer()


def area(table: OnTable) -> Fraction:
    """Square inches of all that lies there, raw ends included."""
    raw = sum((bit.raw * bit.rect.across for bit in table.hand), F(0))
    bits = (bit.rect for bit in (*table.hand, *table.waste))
    rects = (*bits, *(mark.placed.rect for mark in table.pieces))
    return raw + sum((rect.across * rect.along for rect in rects), F(0))


def size_of(mark: Marked) -> Size:
    return mark.placed.rect.across, mark.placed.rect.along


def cut_by_a_stranger(order: Order) -> dict[str, Size]:
    """What the stranger gets who follows an order's steps, with what is cut already."""
    cloths = {one.sheet: (one.rect.across, one.rect.along + one.raw) for one in order.sheets}
    whole = {(one.sheet, one.rect) for one in order.sheets}
    uncut = {m.label: size_of(m) for m in order.pieces if (m.placed.sheet, m.placed.rect) in whole}
    had = {mark.label: size_of(mark) for mark in order.had}
    return cut_out(cloths, order.steps) | uncut | had


def assert_all_there(order: Order, pieces: Iterable[Marked]) -> None:
    """Every piece once, in its size, and every run long enough in joinable segments."""
    pieces = tuple(pieces)
    labels = [mark.label for mark in pieces]
    assert len(set(labels)) == len(labels), "a letter is written on one piece only"
    by_name: dict[str, list[Marked]] = defaultdict(list)
    for mark in pieces:
        by_name[mark.placed.name].append(mark)
    for piece in order.problem.pieces:
        marks = by_name.pop(piece.name)
        assert sorted(mark.placed.copy for mark in marks) == list(range(1, piece.count + 1))
        for mark in marks:
            asked = piece.across, piece.along
            assert size_of(mark) in ((asked, asked[::-1]) if piece.may_turn else (asked,))
    for run in order.problem.runs:
        copies: dict[int | None, list[Fraction]] = defaultdict(list)
        for mark in by_name.pop(run.name):
            sizes = size_of(mark)[::-1] if mark.placed.turned else size_of(mark)
            assert sizes[1] == run.strip
            copies[mark.placed.run_copy].append(sizes[0])
        assert sorted(copies, key=str) == sorted(range(1, run.count + 1), key=str)
        for lengths in copies.values():
            assert sum(lengths) - (len(lengths) - 1) * run.join_loss >= run.needs
            assert len(lengths) == 1 or min(lengths) >= run.shortest
    assert not by_name


def a_miscut(draw: st.DrawFn, order: Order, done: int) -> Miscut:
    """Anything that can go wrong at that moment."""
    table = on_table(order, done)
    kinds = ["size"] * bool(table.hand) + ["spoilt"] * bool(table.pieces)
    kinds += ["width"] * may_be_wrong(order, done)
    kind = draw(st.sampled_from(kinds))
    if kind == "spoilt":
        return Spoilt(draw(st.sampled_from(table.pieces)).label)
    if kind == "size":
        place = draw(st.integers(0, len(table.hand) - 1))
        rect = table.hand[place].rect
        shares = draw(st.sampled_from(((F(1, 2), F(1)), (F(1), F(15, 16)), (F(3, 4), F(3, 4)))))
        return OtherSize(place, rect.across * shares[0], rect.along * shares[1])
    cut = order.cuts[done - 1]
    whole = cut.region.along
    if cut.step.direction is Direction.LENGTHWISE:
        whole = cut.region.across
    share = draw(
        st.sampled_from((F(1, 7), F(1, 2))).filter(lambda s: s * whole != cut.step.measure)
    )
    return WrongWidth(whole * share, draw(st.booleans()))


@pytest.mark.parametrize("name", DEMOS)
def test_after_every_cut_the_same_cloth_lies_on_the_table(name: str) -> None:
    for order in planned_orders(make_plan(demo(name))):
        whole = area(on_table(order, 0))
        assert all(area(on_table(order, done)) == whole for done in range(len(order.cuts) + 1))
        assert_all_there(order, on_table(order, len(order.cuts)).pieces)


@given(st.data())
@settings(max_examples=40, suppress_health_check=list(HealthCheck))
def test_what_is_cut_and_what_is_laid_again_is_all_that_was_asked(data: st.DataObject) -> None:
    plan = planned(data.draw(projects()))
    cloths = begin(plan).cloths
    assume(cloths)
    order = data.draw(st.sampled_from(cloths)).order
    for _ in range(2):  # and once more, on what is left then
        assume(order.cuts)
        done = data.draw(st.integers(0, len(order.cuts)))
        miscut = data.draw(st.composite(a_miscut)(order, done))
        before, after = on_table(order, done), on_table_after(order, done, miscut)
        assert_conserved(order, before, after, miscut)
        try:
            again = laid_again(order, done, miscut)
        except Refusal:
            # Only a piece as wide as cloth that turned out narrower can lack all room.
            assert too_narrow(order, done, miscut)
            return
        assert again.had == after.pieces
        assert_lies_on(again, after)
        last = on_table(again, len(again.cuts))
        assert_all_there(again, last.pieces)
        assert cut_by_a_stranger(again) == {mark.label: size_of(mark) for mark in last.pieces}
        order = again


def too_narrow(order: Order, done: int, miscut: Miscut) -> bool:
    """Whether something is wider than what may be bought."""
    width = bolt_width(order, done, miscut)
    pieces, runs = order.problem.pieces, order.problem.runs
    narrowest = [min(p.across, p.along) if p.may_turn else p.across for p in pieces]
    shortest = [min(run.strip, run.shortest) for run in runs if run.grain is Grain.EITHER]
    shortest += [max(run.strip, run.shortest) for run in runs if run.grain is Grain.CROSSWISE]
    shortest += [run.strip for run in runs if run.grain is Grain.LENGTHWISE]
    return max([*narrowest, *shortest]) > width


def assert_conserved(order: Order, before: OnTable, after: OnTable, miscut: Miscut) -> None:
    """Cloth neither comes nor goes, but for what is said to be spoilt or to measure less."""
    lost = area(before) - area(after)
    match miscut:
        case Spoilt(label):
            assert lost == prod(next(size_of(m) for m in before.pieces if m.label == label))
        case OtherSize(number, across, along):
            rect, raw = before.hand[number].rect, before.hand[number].raw
            assert lost == rect.across * (rect.along + raw) - across * (along + raw)
        case WrongWidth():
            assert lost == 0


def assert_lies_on(again: Order, table: OnTable) -> None:
    """The new order has the cloth that is there, each piece of it once, and what is bought."""
    there = [(bit.rect.across, bit.rect.along, bit.raw) for bit in table.hand]
    left = [one for one in again.sheets if one.sheet != THE_BOLT]
    assert [(one.rect.across, one.rect.along, one.raw) for one in left] == there
    assert (again.bought > 0) == any(one.sheet == THE_BOLT for one in again.sheets)


def first_order(name: str = "harbour-lights") -> Order:
    return planned_orders(make_plan(demo(name)))[0]


def spoil_a_panel(*, buy_more: bool) -> Order:
    """The whole panel of the demo's backing, spoilt when all is cut."""
    orders = planned_orders(make_plan(demo("harbour-lights")))
    order = next(order for order in orders if order.name == "tide stripe")
    [cloth] = order.problem.cloths
    cloths = (replace(cloth, buy_more=buy_more),)
    order = replace(order, problem=replace(order.problem, cloths=cloths))
    return laid_again(order, len(order.cuts), Spoilt("F"))


def test_a_spoilt_piece_is_cut_again_and_more_is_bought_for_it() -> None:
    again = spoil_a_panel(buy_more=True)
    assert [mark.label for mark in again.pieces] == ["F"]
    assert again.because == "F was spoilt or lost."
    assert to_buy(again) == (
        "What is left of tide stripe is not enough: buy 2 1/2 yd more of tide stripe."
    )


def test_what_must_be_bought_is_told_where_no_more_was_to_be_bought() -> None:
    assert spoil_a_panel(buy_more=False).bought == spoil_a_panel(buy_more=True).bought > 0


def test_cloth_on_hand_that_the_plan_did_not_need_is_used_before_more_is_bought() -> None:
    project = demo("harbour-lights")
    stripe = replace(project.fabrics[2], on_hand=(OnHand(F(10), F(10), 2),))
    fabrics = (*project.fabrics[:2], stripe)
    [order] = planned_orders(make_plan(Project(project.quilt, fabrics, label=project.label)))
    assert len(order.sheets) == 2
    assert len({step.sheet for step in order.steps}) == 1, "one is enough for a label"
    again = laid_again(order, len(order.cuts), Spoilt(order.pieces[0].label))
    assert again.bought == 0
    assert [mark.label for mark in again.pieces] == [order.pieces[0].label]


def test_what_one_miscut_leaves_unused_is_there_for_the_next() -> None:
    order = first_order()
    done = len(order.cuts)
    again = laid_again(order, done, Spoilt("B1"))
    table = on_table(order, done)
    spoilt = next(prod(size_of(mark)) for mark in order.pieces if mark.label == "B1")
    assert again.bought == 0
    assert area(on_table(again, 0)) == area(replace(table, waste=())) - spoilt


def test_a_narrower_bolt_is_narrower_all_along() -> None:
    order = first_order()
    bolt = on_table(order, 0).hand[0]
    narrow = bolt.rect.across - 1
    again = laid_again(order, 0, OtherSize(0, narrow, F(10)))
    assert [one.rect.across for one in again.sheets if one.sheet == THE_BOLT] == [narrow]


def test_a_strip_cut_wrong_leaves_the_rest_as_much_longer() -> None:
    order = first_order()
    done = next(n for n in range(1, 99) if may_be_wrong(order, n))
    cut = order.cuts[done - 1]
    wrong = cut.step.measure - F(1, 4)
    after = on_table_after(order, done, WrongWidth(wrong, keep=True))
    rest = next(bit for bit in after.hand if bit.name == cut.step.source)
    longer = rest.rect.along - cut.left.along, rest.rect.across - cut.left.across
    assert sorted(longer) == [0, F(1, 4)]


def test_a_raw_end_not_yet_cut_is_still_to_be_straightened() -> None:
    order = first_order()
    [cloth] = order.problem.cloths
    assert order.steps[0].straightening == (cloth.straightening > 0)
    again = laid_again(order, 0, OtherSize(0, cloth.usable_width, F(200)))
    straight = [step for step in again.steps if step.straightening]
    assert [step.measure for step in straight] == [cloth.straightening] * bool(cloth.straightening)


@pytest.mark.parametrize(
    ("miscut", "path"),
    [
        (OtherSize(0, F(0), F(3)), "across"),
        (OtherSize(0, F(3), F(-1)), "along"),
        (OtherSize(99, F(3), F(3)), "bit"),
        (OtherSize(0, F(42), F(4)), "across"),
        (Spoilt("Z9"), "label"),
        (WrongWidth(F(0), keep=True), "width"),
        (WrongWidth(F(900), keep=False), "width"),
    ],
)
def test_what_cannot_have_happened_is_refused_by_its_field(miscut: Miscut, path: str) -> None:
    order = first_order()
    with pytest.raises(Refusal) as refused:
        on_table_after(order, 3, miscut)
    assert refused.value.path == path


def test_nothing_was_cut_off_before_the_first_cut() -> None:
    with pytest.raises(Refusal, match="nothing was cut off yet"):
        on_table_after(first_order(), 0, WrongWidth(F(2), keep=True))


def test_a_lost_segment_of_the_binding_needs_its_length_and_a_join_again() -> None:
    order = next(o for o in planned_orders(make_plan(demo("harbour-lights"))) if o.problem.runs)
    run = order.problem.runs[0]
    segments = [m for m in order.pieces if m.placed.name == run.name]
    lost = random.Random(3).choice(segments)
    again = laid_again(order, len(order.cuts), Spoilt(lost.label))
    assert {mark.placed.name for mark in again.pieces} == {run.name}
    assert_all_there(again, on_table(again, len(again.cuts)).pieces)
