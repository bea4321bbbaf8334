"""The division of a run that is worth the least, and the dearest bar, against trying everything."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations_with_replacement

from hypothesis import given, settings
from hypothesis import strategies as st

from core.lay.bars import Across, dearest_bar
from core.lay.division import least_division
from core.lay.needs import Lengths
from core.lay.tariff import Step, Tariff

WIDTH = 10


@st.composite
def tariffs(draw: st.DrawFn) -> Tariff:
    prices = st.integers(0, 5)
    steps = draw(st.lists(st.tuples(st.integers(2, WIDTH), st.integers(0, 20)), max_size=3))
    return Tariff(
        lambda width: width,
        draw(prices),
        draw(prices),
        draw(st.integers(0, WIDTH)),
        tuple(Step(*step) for step in steps),
    )


@settings(deadline=None)
@given(tariffs(), st.integers(1, 18), st.integers(0, 1), st.integers(3, 5), st.booleans())
def test_no_division_is_worth_less(
    tariff: Tariff, demand: int, loss: int, least: int, lengthwise: bool
) -> None:
    run = _run(demand, loss, least, lengthwise)
    division = least_division(run, tariff)
    assert division.worth == min(_worths(run, tariff))
    assert division.worth == sum(segment.worth for segment in division.segments)
    assert sum(segment.length - loss for segment in division.segments) >= demand


@settings(deadline=None)
@given(
    tariffs(),
    st.lists(st.tuples(st.integers(2, 9), st.integers(0, 60), st.integers(1, 3)), max_size=3),
    st.integers(2, 9),
)
def test_no_bar_is_dearer(tariff: Tariff, things: list[tuple[int, int, int]], least: int) -> None:
    items = [Across(*thing) for thing in things]
    bar = dearest_bar(WIDTH, items, tariff, least)
    assert bar.worth >= max(_bars(items, tariff, least, WIDTH))
    taken = sum(item.width * count for item, count in zip(items, bar.counts, strict=False))
    assert taken + sum(bar.segments) <= WIDTH


def test_two_segments_share_a_row_only_where_both_have_room() -> None:
    # Of 20 in between 18 and 42, two take 2 places; one of 25 takes both.
    places = Tariff(lambda width: 0, steps=(Step(17, 1), Step(24, 1)))
    assert dearest_bar(42, [], places, 18).worth == 2
    assert least_division(_wide(60), places).worth == 3  # 42 and a short one
    assert least_division(_wide(80), places).worth == 4  # two whole rows


def _wide(demand: int) -> Lengths:
    return Lengths(1, demand, 1, demand + 1, 18, 42, 42, 9, True, False, 1)


def _run(demand: int, loss: int, least: int, lengthwise: bool) -> Lengths:
    return Lengths(2, demand, loss, demand + loss, least, WIDTH, 8, 99, True, lengthwise, 1)


def _worths(run: Lengths, tariff: Tariff) -> Iterator[float]:
    """What every division into whole ticks is worth."""
    across = [(x, run.strip * tariff.of_length(x)) for x in range(1, run.widest + 1)]
    along = [(x, x * tariff.of_width(run.strip)) for x in range(1, run.longest + 1)]
    single = across + along * run.lengthwise
    yield from (worth for length, worth in single if length >= run.needs)
    cheapest: dict[int, float] = {}
    for length, worth in single:
        if length >= run.least:
            cheapest[length] = min(worth, cheapest.get(length, worth))
    for count in range(1, 1 + -(-run.demand // (run.least - run.loss))):
        for lengths in combinations_with_replacement(cheapest, count):
            if sum(lengths) - count * run.loss >= run.demand:
                yield sum(cheapest[length] for length in lengths)


def _bars(items: list[Across], tariff: Tariff, least: int, width: int) -> Iterator[float]:
    """What every bar of the items, and then of segments, is worth."""
    if items:
        item, *others = items
        for count in range(min(item.copies, width // item.width) + 1):
            for rest in _bars(others, tariff, least, width - count * item.width):
                yield count * item.price + rest
        return
    yield 0
    for length in range(least, width + 1):
        for rest in _bars([], tariff, least, width - length):
            yield tariff.of_length(length) + rest
