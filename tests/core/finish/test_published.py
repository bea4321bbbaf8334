"""Outside checks: what others have published, each value with its source beside it."""

from __future__ import annotations

import pytest

from tests.core.finish import (
    published_backing,
    published_binding,
    published_borders,
    published_cloth,
    published_layers,
    published_ways,
)
from tests.core.finish.published import Value

TABLES: dict[str, tuple[Value, ...]] = {
    "binding lengths and strips": published_binding.LENGTHS,
    "binding widths": published_binding.WIDTHS,
    "joins": published_binding.JOIN_LOSSES,
    "bias": published_binding.BIAS,
    "binding ways": published_ways.WAYS,
    "borders": published_borders.BORDERS,
    "backing": published_backing.BACKINGS,
    "batting": published_layers.BATTINGS,
    "sleeve": published_layers.SLEEVES,
    "cloth": published_cloth.CLOTH,
    "measures": published_cloth.MEASURES,
    "allowances": published_cloth.ALLOWANCES,
}
VALUES = [value for table in TABLES.values() for value in table]

# Published, but not a thing that this program works out: what and why.
NOT_TESTED = {
    "binding yardage of 44 1/2 and 73 1/2 square quilts (Bonsib; Thimble Blossoms)": (
        "the strip's width is not stated"
    ),
    "binding yardage of the 63 × 87 and 84 × 92 chart": "strip and cloth width are not stated",
    "square quilts of 18 in as a rectangle of 8 × 42 (Geta)": "bare area; no strip width",
    "bias by the yard, up to 200, 350, 525 in (Cotton Patch)": "ranges, not values",
    "one fat quarter gives about 5 yd of bias": "the strip's width is not given",
    "cut the bias square a multiple of the strip's width (The Textile)": (
        "not what the geometry needs: (S − 2s)/√2 must divide"
    ),
    "bias diagonal of a 31 in width, 44; 45° across 9 in, 12.73": "plain √2, no part of a plan",
    "scallops: 12 × 20 + 18 = 8 yd; square of 15": "the depth of the scallops is not stated",
    "backing table, twin 5 1/4 to king 8 yd (St. Croix)": "the quilts' sizes are not stated",
    "overage of 2 to 3 in at the sides of 40 × 45 from one width of 40 to 42 (St. Croix)": (
        "40 and twice 2 in are more than 42: the page leaves less over at the sides"
    ),
    "overage 4-5, and 6-8 over 38 in wide, as ranges": (
        "ranges; each number is tried as an overage of its own"
    ),
    "a panel seam of 1 in, pressed open or to one side": "pressing is not cut from cloth",
    "joins at 45° are for looks, up to about 3 in wide": "a rule of taste, no length in it",
    "lengthwise grain stretches less": "a rule with no number",
    "batting shrinks by 3 to 5 % in the first wash": "a range; and of the finished quilt",
    "measure a top in three places and take the mean": (
        "advice without a value; done in tests/core/edge/test_squareness.py"
    ),
    "120° corner: stop on its bisector; 60° corner: stop at the seam line": (
        "no lengths in it; the meeting of the seam lines is tests/core/edge/test_corners.py"
    ),
    "take-up of 3 to 5 % by quilting, up to 5 % by washing": "the person's choice; 0 here",
    "sleeve top gaps of 1/4, 1/2 and 1 in; hung length of 90 or 96": "not cut from cloth",
    "mattress, comforter and quilt sizes": "the person's choice; the top is measured",
    "precut strips and squares": "cloth on hand is measured",
    "Letter and A4": "no part of a plan; see the packet's own tests",
    "ASTM, AATCC and ISO cloth tests": "methods, no values",
    "earlier US yard of 3600/3937 m": "history; nothing is measured in it",
}


@pytest.mark.parametrize("value", VALUES, ids=lambda value: value.what)
def test_a_published_value_is_met_or_the_difference_is_explained(value: Value) -> None:
    assert value.ours() == value.expected, f"{value.what}; {value.source}; {value.why}"


@pytest.mark.parametrize("value", [v for v in VALUES if v.why], ids=lambda value: value.what)
def test_an_explained_difference_is_one(value: Value) -> None:
    assert value.exact != value.published


def test_there_are_enough_outside_checks_and_each_has_a_source() -> None:
    assert len(VALUES) >= 40
    assert all(len(value.source) > 10 for value in VALUES)


def test_no_value_stands_twice() -> None:
    said = [(value.what, value.source) for value in VALUES]
    assert len(said) == len(set(said))


def test_what_is_left_out_has_a_reason() -> None:
    assert all(NOT_TESTED.values())
