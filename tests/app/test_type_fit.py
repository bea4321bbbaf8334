"""Fitting words: nothing leaves its room, nothing is lost in wrapping."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.type_fit import Setting, Sizes, fit, limited, shortened, wrap

SIZES = Sizes(least=5, easy=10, most=16)
sides = st.floats(0, 300)
words = st.text("abc de", max_size=40)


def ems(text: str) -> float:
    """A measure as plain as can be: every character is 0.6 wide."""
    return 0.6 * len(text)


@given(st.lists(st.text("ab \n", min_size=1, max_size=30), min_size=1, max_size=4), sides, sides)
def test_words_keep_to_their_room_and_sizes(texts: list[str], wide: float, high: float) -> None:
    setting = fit(texts, (wide, high), ems, SIZES)
    if setting is None:
        return
    assert SIZES.least <= setting.size <= SIZES.most
    across, down = setting.extent(ems)
    assert across <= wide + 1e-9
    assert down <= high + 1e-9
    assert "\n".join(setting.lines) in texts


def test_the_fullest_text_that_reads_easily_is_taken() -> None:
    texts = ["A1\nborder\n8 × 40", "A1  border  8 × 40", "A1"]
    assert fit(texts, (200, 100), ems, SIZES) == Setting(("A1", "border", "8 × 40"), 16)
    lying = fit(texts, (200, 20), ems, SIZES)
    assert lying is not None
    assert lying.lines == ("A1  border  8 × 40",)


def test_a_room_that_stands_turns_its_words() -> None:
    setting = fit(["A1  border  8 × 40"], (20, 200), ems, SIZES)
    assert setting is not None
    assert setting.turned
    assert setting.size > SIZES.easy


def test_a_room_that_is_almost_square_does_not() -> None:
    setting = fit(["B10"], (20, 21), ems, SIZES)
    assert setting is not None
    assert not setting.turned


def test_words_stay_upright_where_they_read_easily() -> None:
    assert fit(["A1"], (50, 200), ems, SIZES) == Setting(("A1",), 16)


def test_too_small_a_room_leaves_its_words_out() -> None:
    assert fit(["A1"], (4, 4), ems, SIZES) is None


@given(words, st.floats(1, 60))
def test_wrapping_loses_no_letter_and_keeps_to_the_width(text: str, width: float) -> None:
    lines = wrap(text, width, ems, 1)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert all(ems(line) <= width or len(line) == 1 for line in lines)


@given(words, st.floats(1, 60))
def test_what_is_shortened_fits_and_begins_as_the_text_does(text: str, width: float) -> None:
    shown = shortened(text, width, ems, 1)
    assert ems(shown) <= max(width, ems("…"))
    assert shown == text or (shown.endswith("…") and text.startswith(shown[:-1]))


@pytest.mark.parametrize(
    ("lines", "kept"), [(["a", "b"], ["a", "b"]), (["a", "b", "c"], ["a", "b …"])]
)
def test_more_lines_than_allowed_end_in_an_ellipsis(lines: list[str], kept: list[str]) -> None:
    assert limited(lines, 2, 10, ems, 1) == kept
