"""The ways of a binding: bias cloth, two cloths, scrappy, accents, facings; and what cannot be."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import pairwise
from math import pi
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.binding_choices import (
    Accent,
    AccentKind,
    BiasCut,
    BiasMethod,
    BiasSource,
    Face,
    Order,
    Scrappy,
)
from core.binding_json import binding_document
from core.edge.bias import tube_yield
from core.edge.bias_strips import bias_strips
from core.edge.joins import chain_length, slanted_loss
from core.edge.shapes import outline_of
from core.fabric import Fabric, Grain, OnHand
from core.finish.bias_cloth import BiasPiece
from core.finish.binding import plan_binding
from core.finish.binding_plan import BindingPlan
from core.finish.bound_edge import BoundEdge, rectangle
from core.lay.problem import Piece, Run
from core.lengths import INCHES_PER_MM
from core.quilt import Binding, Fold, Joins
from core.refusal import Refusal
from core.shape import Shape, ShapeKind
from tests.core.finish.published import bound, cloth

F = Fraction
QUARTERS = st.integers(40, 400).map(lambda quarters: F(quarters, 4))
NAMES = ("plum", "dots", "tide", "rust", "moss")
FAT_QUARTER = OnHand(F(21), F(18), 6)


def planned(binding: Binding, width: Fraction, length: Fraction, **fabric: object) -> BindingPlan:
    def named(name: str) -> Fabric:
        return cloth(42, name=name, **fabric)

    return plan_binding(binding, rectangle(width, length, F(1, 8)), named)


def bias(method: BiasMethod, source: BiasSource, **choices: object) -> Binding:
    cut = BiasCut(method, source)
    return Binding("plum", F(5, 2), grain=Grain.BIAS, bias=cut, **choices)  # type: ignore[arg-type]


@pytest.mark.parametrize("method", list(BiasMethod))
@pytest.mark.parametrize("source", [BiasSource.SQUARE, BiasSource.RECTANGLE])
@given(QUARTERS, QUARTERS)
def test_bias_cloth_gives_enough_and_its_strips_join_to_what_is_promised(
    method: BiasMethod, source: BiasSource, width: Fraction, length: Fraction
) -> None:
    plan = planned(bias(method, source), width, length)
    assert plan.bias is not None
    assert plan.spare >= 0
    assert plan.joined_length == chain_length(plan.bias.lengths, slanted_loss(F(1, 4)))
    assert plan.joined_length * F(5, 2) <= sum(
        piece.across * piece.along * piece.count for piece in plan.bias.pieces
    )
    pieces = [demand.wanted for demand in plan.demands]
    assert all(isinstance(piece, Piece) and piece.may_turn for piece in pieces)


@pytest.mark.parametrize("method", list(BiasMethod))
@pytest.mark.parametrize("source", [BiasSource.SQUARE, BiasSource.RECTANGLE])
def test_a_little_less_cloth_would_not_give_enough(method: BiasMethod, source: BiasSource) -> None:
    needs = planned(bias(method, source), F(40), F(50)).needs
    plan = planned(bias(method, source), F(40), F(50)).bias
    assert plan is not None
    [piece] = plan.pieces
    shorter = OnHand(
        piece.across - F(1, 2) if source is BiasSource.SQUARE else piece.across,
        piece.along - F(1, 2),
    )
    on_hand = bias(method, BiasSource.ON_HAND)
    with pytest.raises(Refusal, match="on hand give") as refused:
        planned(on_hand, F(40), F(50), on_hand=(shorter,))
    assert refused.value.lengths["given"] < needs


@pytest.mark.parametrize("method", list(BiasMethod))
def test_fat_quarters_are_used_as_they_are_and_no_more_than_needed(method: BiasMethod) -> None:
    plan = planned(bias(method, BiasSource.ON_HAND), F(30), F(40), on_hand=(FAT_QUARTER,))
    assert plan.bias is not None
    [piece] = plan.bias.pieces
    assert (piece.across, piece.along) == (F(21), F(18))
    assert 1 < piece.count < 6
    one_less = piece.gives * (piece.count - 1) - (piece.count - 2) * plan.join_loss
    assert one_less < plan.needs <= plan.joined_length


def test_no_strip_cut_one_by_one_is_shorter_than_the_least_segment() -> None:
    for shortest in (F(6), F(12), F(18)):
        plan = planned(
            bias(BiasMethod.STRIPS, BiasSource.SQUARE, shortest=shortest), F(30), F(40)
        ).bias
        assert plan is not None
        assert min(plan.lengths) >= shortest


def test_straight_joins_of_bias_strips_cost_their_slanted_ends() -> None:
    slanted = planned(bias(BiasMethod.STRIPS, BiasSource.SQUARE), F(30), F(40)).bias
    square = planned(
        bias(BiasMethod.STRIPS, BiasSource.SQUARE, joins=Joins.STRAIGHT), F(30), F(40)
    ).bias
    assert slanted is not None
    assert square is not None
    assert square.join_loss == F(1, 2)
    assert square.pieces[0].across >= slanted.pieces[0].across


@given(st.sampled_from([F(2), F(9, 4), F(5, 2), F(3)]), st.sampled_from([F(0), F(1, 8), F(1, 4)]))
def test_two_cloths_make_the_strip_and_meet_on_the_edge(strip: Fraction, thick: Fraction) -> None:
    binding = Binding("plum", strip, back_fabric="dots")
    plan = plan_binding(binding, rectangle(F(40), F(50), thick), lambda name: cloth(42, name=name))
    two = plan.two_cloth
    assert two is not None
    assert two.sewn == strip
    seam_lies = two.front - two.seam  # across the strip from the first face's raw edge
    assert 2 * F(1, 4) <= seam_lies <= 2 * F(1, 4) + thick
    turned = plan_binding(
        Binding("plum", strip, back_fabric="dots", first_face=Face.BACK),
        rectangle(F(40), F(50), thick),
        lambda name: cloth(42, name=name),
    ).two_cloth
    assert turned is not None
    assert (turned.front, turned.back) == (two.back, two.front)


def test_each_of_two_cloths_is_a_run_that_goes_round() -> None:
    plan = planned(Binding("plum", F(5, 2), back_fabric="dots"), F(40), F(50))
    runs = [demand.wanted for demand in plan.demands]
    assert [run.cloth for run in runs] == ["plum", "dots"]
    for run in runs:
        assert isinstance(run, Run)
        assert run.needs == plan.needs
        assert run.join_loss == run.strip


@given(
    QUARTERS,
    st.integers(2, 5),
    st.sampled_from([Order.REPEATING, Order.RANDOM]),
    st.integers(4, 30).map(F),
    st.integers(1, 50),
)
def test_a_scrappy_ring_reaches_with_all_cloths_and_no_two_alike_side_by_side(
    length: Fraction, count: int, order: Order, shortest: Fraction, seed: int
) -> None:
    scrappy = Scrappy(order, NAMES[:count], shortest, seed)
    try:
        plan = planned(Binding("plum", F(5, 2), scrappy=scrappy), F(40), length)
    except Refusal as refusal:
        assert refusal.path == "binding.scrappy.shortest"  # noqa: PT017 - either may come
        return
    made = plan.scrappy
    assert made is not None
    assert made.length >= shortest
    assert set(made.order) == set(NAMES[:count])
    ring = plan.perimeter + plan.closing
    sewn = next(  # the rest is what the allowance adds, and is not sewn on
        n
        for n in range(1, len(made.order) + 1)
        if n * made.length - (n - 1) * plan.join_loss >= ring
    )
    on_it = made.order[:sewn]
    assert all(here != following for here, following in pairwise((*on_it, on_it[0])))
    total = len(made.order) * made.length - (len(made.order) - 1) * plan.join_loss
    assert total == plan.joined_length >= plan.needs
    counts = Counter(made.order).values()
    assert max(counts) - min(counts) <= 1
    asked = {d.wanted.cloth: d.wanted.count for d in plan.demands}
    assert asked == Counter(made.order)


def test_the_same_seed_gives_the_same_order_and_another_one_another() -> None:
    def order(seed: int) -> tuple[str, ...]:
        scrappy = Scrappy(Order.RANDOM, NAMES, F(10), seed)
        plan = planned(Binding("plum", F(5, 2), scrappy=scrappy), F(60), F(70)).scrappy
        assert plan is not None
        return plan.order

    assert order(1) == order(1)
    assert len({order(seed) for seed in range(1, 6)}) > 1


def accented(kind: AccentKind, **choices: object) -> Binding:
    return Binding("plum", F(5, 2), accent=Accent(kind, "dots", **choices))  # type: ignore[arg-type]


def test_a_flange_is_folded_from_twice_its_seam_and_what_shows() -> None:
    plan = planned(accented(AccentKind.FLANGE, shows=F(1, 4)), F(30), F(40))
    accent = plan.accent
    assert accent is not None
    assert accent.strip == 2 * (F(1, 4) + F(1, 4))
    assert accent.whole
    sizes = [(d.wanted.across, d.wanted.count) for d in plan.demands if isinstance(d.wanted, Piece)]
    assert sizes == [(F(40), 2), (F(30), 2)]
    assert plan.layers[0].first_face == 6


def test_a_flange_longer_than_the_cloth_is_joined() -> None:
    accent = planned(accented(AccentKind.FLANGE), F(60), F(70)).accent
    assert accent is not None
    assert not accent.whole
    assert accent.needs == 260


@given(st.integers(1, 8).map(lambda sixteenths: F(sixteenths, 16)))
def test_a_piping_strip_goes_round_its_cord_and_not_a_ruler_mark_more(cord: Fraction) -> None:
    accent = planned(accented(AccentKind.PIPING, cord=cord), F(30), F(40)).accent
    assert accent is not None
    wraps = float(accent.strip - 2 * F(1, 4))
    assert pi * float(cord) <= wraps < pi * float(cord) + 1 / 16
    assert accent.needs == 140 + 1


def test_accents_of_a_metric_binding_are_round_millimetres() -> None:
    mm = INCHES_PER_MM
    binding = Binding("plum", 60 * mm, seam=6 * mm, accent=Accent(AccentKind.FLANGE))
    accent = planned(binding, 800 * mm, 900 * mm).accent
    assert accent is not None
    assert accent.strip == 18 * mm


def test_a_piping_under_a_bias_binding_is_cut_on_the_bias_too() -> None:
    binding = bias(BiasMethod.TUBE, BiasSource.SQUARE, accent=Accent(AccentKind.PIPING, "dots"))
    accent = planned(binding, F(30), F(40)).accent
    assert accent is not None
    assert accent.bias is not None
    assert accent.bias.joined_length >= accent.needs


def test_a_facing_is_four_strips_with_turned_ends_and_no_closing() -> None:
    plan = planned(Binding("plum", F(5, 2), fold=Fold.FACED), F(30), F(40))
    assert plan.facing is not None
    assert [(strip.length, strip.sides) for strip in plan.facing.strips] == [
        (F(40), (1, 3)),
        (F(31), (2, 4)),
    ]
    assert (plan.strips, plan.joins, plan.closing) == (4, 0, F(0))
    assert plan.ends is None
    assert plan.needs == plan.joined_length == 142


def test_a_facing_longer_than_the_cloth_is_joined_and_cut_to_length() -> None:
    plan = planned(Binding("plum", F(5, 2), fold=Fold.FACED), F(60), F(70))
    [demand] = plan.demands
    assert isinstance(demand.wanted, Run)
    assert demand.wanted.needs == 2 * (70 + 61) + 10


def faced(shape: Shape, **more: Any) -> BindingPlan:  # noqa: ANN401 - a binding's fields
    outline = outline_of(shape, F(40), F(50))
    binding = Binding("plum", F(5, 2), fold=Fold.FACED, **more)
    edge = BoundEdge(outline, F(40), F(50), F(1, 8))
    return plan_binding(binding, edge, lambda name: cloth(42, name=name))


def test_a_clipped_quilt_is_faced_with_a_strip_a_side_whose_ends_meet_on_the_mitre() -> None:
    # Sides of 42 and 32 between clips of 4·√2 = 5.657, up to 5 11/16; 1/2 turned in at either end.
    plan = faced(Shape(ShapeKind.CLIPPED))
    assert plan.facing is not None
    assert {(str(s.length), s.sides) for s in plan.facing.strips} == {
        ("43", (1, 5)), ("107/16", (2, 4, 6, 8)), ("33", (3, 7)),
    }  # fmt: skip
    assert plan.demands[0].wanted.name == "binding"  # 43 in are longer than the cloth is wide


def test_a_facing_goes_further_at_an_inside_corner() -> None:
    # An L: its inside corner is 270°, halved 135°; a facing 1 1/4 deep goes 1 1/4 past it.
    corners = ((0, 0), (0, 50), (40, 50), (40, 30), (20, 30), (20, 0))
    plan = faced(Shape(ShapeKind.POLYGON, points=tuple((F(x), F(y)) for x, y in corners)))
    assert plan.facing is not None
    lengths = {side: s.length for s in plan.facing.strips for side in s.sides}
    assert lengths == {1: 51, 2: 41, 3: 21, 4: 20 + 1 + F(5, 4), 5: 30 + 1 + F(5, 4), 6: 21}


def test_a_quilt_an_inch_longer_than_wide_is_faced_with_four_equal_strips() -> None:
    plan = planned(Binding("plum", F(5, 2), fold=Fold.FACED), F(30), F(31))
    assert plan.facing is not None
    assert [(strip.length, strip.sides) for strip in plan.facing.strips] == [(F(31), (1, 2, 3, 4))]
    facing = binding_document(plan)["facing"]
    assert (facing["side"], facing["top_and_bottom"]) == ("31", "31")


def test_a_curved_edge_is_faced_with_one_bias_strip() -> None:
    plan = faced(Shape(ShapeKind.ROUNDED), grain=Grain.BIAS)
    assert plan.facing is None
    assert plan.bias is not None
    assert plan.needs >= plan.perimeter + F(5, 2) + 10
    assert plan.layers[2] is None  # no corner
    with pytest.raises(Refusal, match="faced with a bias strip") as refused:
        faced(Shape(ShapeKind.ROUNDED))
    assert refused.value.path == "binding.grain"


@pytest.mark.parametrize("source", list(BiasSource))
@pytest.mark.parametrize("method", list(BiasMethod))
def test_scraps_on_the_bias_are_cut_apart_from_each_cloth(
    method: BiasMethod, source: BiasSource
) -> None:
    scrappy = Scrappy(Order.REPEATING, NAMES[:3], F(9))
    on_hand = (OnHand(F(18), F(21), 6),)
    plan = planned(bias(method, source, scrappy=scrappy), F(30), F(40), on_hand=on_hand)
    assert plan.scrappy is not None
    assert plan.joined_length >= plan.needs
    assert plan.join_loss == slanted_loss(F(1, 4))
    for name, cut in plan.scrappy.bias:
        given = sum(piece.segments * piece.count for piece in cut.pieces)
        assert given >= plan.scrappy.counts[name]
        for piece in cut.pieces:
            assert piece.segment == plan.scrappy.length
            assert piece.segments <= sum(int(u / piece.segment) for u in whole_of(piece))


def whole_of(piece: BiasPiece) -> tuple[Fraction, ...]:
    """The strips of a piece of cloth, worked out anew; a tube's is one."""
    if piece.strips:
        made = bias_strips(piece.across, piece.along, F(5, 2))
        return tuple(strip.usable for strip in made)
    return (tube_yield(piece.across, F(5, 2), F(1, 4), piece.along),)


def test_a_facing_of_several_cloths_has_one_a_side() -> None:
    scrappy = Scrappy(Order.REPEATING, NAMES[:2])
    plan = planned(Binding("plum", F(5, 2), fold=Fold.FACED, scrappy=scrappy), F(30), F(40))
    assert plan.facing is not None
    assert [(s.fabric, s.sides) for s in plan.facing.strips] == [
        (NAMES[0], (1, 3)), (NAMES[1], (2, 4)),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("binding", "path", "words"),
    [
        (
            Binding("plum", F(5, 2), fold=Fold.FACED, scrappy=Scrappy(Order.REPEATING, NAMES)),
            "binding.scrappy.cloths", "this quilt has 4 sides",
        ),
        (
            bias(BiasMethod.TUBE, BiasSource.SQUARE, back_fabric="dots"),
            "binding.grain", "stretch out of line",
        ),
        (
            Binding("plum", F(5, 2), fold=Fold.FACED, back_fabric="dots"),
            "binding.back_fabric", "shows on the back only",
        ),
        (
            Binding("plum", F(5, 2), back_fabric="dots",
                    scrappy=Scrappy(Order.REPEATING, NAMES[:2])),
            "binding.back_fabric", "not two side by side",
        ),
        (
            Binding("plum", F(5, 2), scrappy=Scrappy(Order.REPEATING, NAMES[:2], F(2))),
            "binding.scrappy.shortest", "used up by its join",
        ),
        (
            Binding("plum", F(5, 2), scrappy=Scrappy(Order.REPEATING, NAMES[:2], F(43))),
            "binding.scrappy.shortest", "longer than the narrowest of its cloths, 42 in",
        ),
        (
            Binding("plum", F(5, 2), scrappy=Scrappy(Order.REPEATING, NAMES, F(40))),
            "binding.scrappy.shortest", "too long for all 5 cloths",
        ),
    ],
)  # fmt: skip
def test_choices_that_cannot_be_together_are_refused(
    binding: Binding, path: str, words: str
) -> None:
    with pytest.raises(Refusal, match=words) as refused:
        planned(binding, F(30), F(40))
    assert refused.value.path == path


@pytest.mark.parametrize("method", list(BiasMethod))
def test_cloth_too_small_for_a_bias_strip_is_refused(method: BiasMethod) -> None:
    binding = bias(method, BiasSource.ON_HAND)
    with pytest.raises(Refusal, match="on hand give 0 in of bias strip") as refused:
        planned(binding, F(30), F(40), on_hand=(OnHand(F(3), F(3)),))
    assert refused.value.path == "binding.bias.source"


def test_angled_joins_cost_the_width_and_the_slanted_seam() -> None:
    plan = bound(40, 50, 42, joins=Joins.ANGLED)
    assert plan.join_loss == F(5, 2) + slanted_loss(F(1, 4))
