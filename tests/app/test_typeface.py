"""The typeface: what it covers is drawn, what it lacks is spelled in another way."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.typeface import typeface


@pytest.mark.parametrize(
    ("text", "drawn"),
    [
        ("plum", "plum"),
        ("żółć, č, ñ, Ελλάδα, Дом, Việt", "żółć, č, ñ, Ελλάδα, Дом, Việt"),
        ("½ ⅝ × ″ ≈ –", "½ ⅝ × ″ ≈ –"),
        ("नीला कपड़ा", "niilaa kapaddaa"),
        ("みず", "mizu"),
        ("藍 indigo", "[U+85CD] indigo"),
        ("שָׁם", "שם"),
        ("بيت", "\ufe91\ufef4\ufe96"),
        ("🧵", "(spool of thread)"),
        ("e\u0301", "é"),
        ("zero\u200bwidth", "zerowidth"),
        ("\ue000", "[U+E000]"),
    ],
)
def test_letters_are_drawn_or_spelled(text: str, drawn: str) -> None:
    assert typeface().spelled(text) == drawn


def test_fractions_are_set_and_numbers_keep_their_units() -> None:
    assert typeface().words("50 1/2 in") == "50¹⁄₂\u00a0in"


@given(st.text(max_size=30))
def test_whatever_is_written_only_covered_letters_are_drawn(text: str) -> None:
    for bold in (False, True):
        face = typeface(bold=bold)
        assert all(char == "\n" or face.covers(char) for char in face.words(text))
