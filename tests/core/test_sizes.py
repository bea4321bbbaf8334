"""The table of quilt sizes reads back equal, and says what is wrong with it."""

from __future__ import annotations

import json
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.assets import asset
from core.lengths import INCHES_PER_MM, Units
from core.refusal import Refusal
from core.sizes import QuiltSize, QuiltSizes, dumps, loads

NAMES = st.text(st.characters(whitelist_categories=("L", "Nd")), min_size=1, max_size=20)
LENGTHS = st.builds(Fraction, st.integers(1, 900), st.sampled_from([1, 2, 8, 64]))
MILLIMETRES = st.integers(1, 20_000).map(lambda number: number * INCHES_PER_MM)
SIZES = st.lists(st.builds(QuiltSize, NAMES, LENGTHS | MILLIMETRES, LENGTHS), max_size=5).map(tuple)


@given(SIZES, SIZES)
def test_a_table_reads_back_equal(
    inches: tuple[QuiltSize, ...], metric: tuple[QuiltSize, ...]
) -> None:
    table = QuiltSizes(inches, metric)
    assert loads(dumps(table)) == table


def test_the_usual_sizes_say_where_they_are_from_and_are_round() -> None:
    table = loads(asset("quilt-sizes.json").read_text(encoding="utf-8"))
    assert all(size.source for size in (*table.inches, *table.metric))
    assert all(size.width.denominator == 1 for size in table.inches)
    assert all((size.width / INCHES_PER_MM / 10).denominator == 1 for size in table.metric)


def test_the_beds_are_those_of_a_published_list() -> None:
    # Magazine editors' standard sizes, quoted in Stitching Times, July 2011:
    # https://stitchingtimes.blogspot.com/2011/07/quilt-sizes-how-to-measure-for-specific.html
    published = {
        "Crib": (30, 54),
        "Twin bed": (65, 95),
        "Full bed": (80, 95),
        "Queen bed": (86, 100),
        "King bed": (106, 106),
    }
    table = loads(asset("quilt-sizes.json").read_text(encoding="utf-8"))
    ours = {size.name: (size.width, size.length) for size in table.inches}
    assert all(ours[name] == tuple(map(Fraction, sides)) for name, sides in published.items())


@pytest.mark.parametrize(
    ("row", "path"),
    [
        ({"name": "", "width": "1", "length": "1"}, "inches[0].name"),
        ({"name": "a", "width": "one", "length": "1"}, "inches[0].width"),
        ({"name": "a", "width": "1", "length": "0"}, "inches[0].length"),
        ({"name": "a", "width": "1"}, "inches[0].length"),
        ({"name": "a", "width": "1", "length": "1", "depth": "1"}, "inches[0].depth"),
        ("a", "inches[0]"),
    ],
)
def test_a_bad_row_is_named(row: object, path: str) -> None:
    table = {"format": "crossgrain-sizes", "version": 1, "inches": [row], "metric": []}
    with pytest.raises(Refusal) as refused:
        loads(json.dumps(table))
    assert refused.value.path == path


def test_each_kind_of_units_has_its_list() -> None:
    table = QuiltSizes((), ())
    lap = (QuiltSize("Lap", Fraction(50), Fraction(60)),)
    assert table.having(Units.INCHES, lap).of(Units.INCHES) == lap
    assert table.having(Units.MILLIMETRES, lap).of(Units.CENTIMETRES) == lap
    assert table.having(Units.INCHES, lap).of(Units.MILLIMETRES) == ()
