"""Letters that run from right to left, for painters that set one letter after the other."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.right_to_left import as_seen, joined


@pytest.mark.parametrize(
    ("read", "seen"),
    [
        ("plum", "plum"),
        ("שמיים", "םיימש"),
        ("שמיים כחולים, from the bolt", "םילוחכ םיימש, from the bolt"),
        ("A1 שם 12 in", "A1 םש 12 in"),
        ("שם (12.5) שם", "םש (12.5) םש"),
        ("שם, plum, שם", "םש, plum, םש"),
    ],
)
def test_only_stretches_of_letters_are_turned(read: str, seen: str) -> None:
    """The Unicode Bidirectional Algorithm gives the same where each name is isolated."""
    assert as_seen(read) == seen


@pytest.mark.parametrize(
    ("text", "forms"),
    [
        # Unicode Standard 15.0, 9.2: beh initial, yeh medial, teh final.
        ("بيت", ["BEH INITIAL", "YEH MEDIAL", "TEH FINAL"]),
        # Dal joins only what stands before it.
        ("دب", ["DAL ISOLATED", "BEH ISOLATED"]),
        ("بدب", ["BEH INITIAL", "DAL FINAL", "BEH ISOLATED"]),
        ("سلام", ["SEEN INITIAL", "LIGATURE LAM WITH ALEF FINAL", "MEEM ISOLATED"]),
    ],
)
def test_arabic_letters_join_their_neighbours(text: str, forms: list[str]) -> None:
    names = [unicodedata.name(char) for char in joined(text)]
    found = [n.replace("ARABIC ", "").replace("LETTER ", "").removesuffix(" FORM") for n in names]
    assert found == forms


@given(st.text(max_size=20))
def test_nothing_is_lost_by_turning(text: str) -> None:
    line = text.replace("\n", " ")
    assert len(as_seen(line)) == len(line)
    plain = line.translate(str.maketrans("()[]{}<>«»", " " * 10))
    assert sorted(as_seen(plain)) == sorted(plain)
