"""Exact lengths: what is read, what is refused, and that nothing is lost on the way."""

from __future__ import annotations

from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.lengths import (
    INCHES_PER_MM,
    RULERS,
    LengthError,
    Rounding,
    Units,
    exact_text,
    parse,
    round_up,
    rounded,
    sale_text,
    show,
    typeset,
)

F = Fraction
MANY = settings(max_examples=2000)
SOME = settings(max_examples=400)
UNITS = st.sampled_from(list(Units))

# What a person may type: the spelling, the unit of bare numbers, inches.
SPELLINGS = [
    ("50", Units.INCHES, F(50)),
    ("50 1/2", Units.INCHES, F(101, 2)),
    ("50½", Units.INCHES, F(101, 2)),
    ("50 ½", Units.INCHES, F(101, 2)),
    ("50-1/2", Units.INCHES, F(101, 2)),
    ("50.5", Units.INCHES, F(101, 2)),
    ("50,5", Units.INCHES, F(101, 2)),
    (".5", Units.INCHES, F(1, 2)),
    ("25/2", Units.INCHES, F(25, 2)),
    ("25 / 2", Units.INCHES, F(25, 2)),
    ("½", Units.INCHES, F(1, 2)),
    ("7⁄16", Units.INCHES, F(7, 16)),
    ("50⁷⁄₁₆", Units.INCHES, F(807, 16)),
    ("  50 1/2  ", Units.INCHES, F(101, 2)),
    ('50 1/2"', Units.INCHES, F(101, 2)),
    ("50 1/2″", Units.INCHES, F(101, 2)),
    ("50 1/2 in", Units.INCHES, F(101, 2)),
    ("50.5 inches", Units.INCHES, F(101, 2)),
    ("1 in.", Units.INCHES, F(1)),
    ("3' 6 1/2\"", Units.INCHES, F(85, 2)),
    ("3′6½″", Units.INCHES, F(85, 2)),
    ("3 ft 6 in", Units.INCHES, F(42)),
    ("2 FEET", Units.INCHES, F(24)),
    ("1 1/4 yd", Units.INCHES, F(45)),
    ("1¼yd", Units.INCHES, F(45)),
    ("2 yards", Units.INCHES, F(72)),
    ("1 yd 4 in", Units.INCHES, F(40)),
    ("254 mm", Units.INCHES, F(10)),
    ("25.4 cm", Units.INCHES, F(10)),
    ("25,4 cm", Units.INCHES, F(10)),
    ("0.254 m", Units.INCHES, F(10)),
    ("1 m 20 cm", Units.INCHES, F(6000, 127)),
    ("128", Units.CENTIMETRES, F(6400, 127)),
    ("6,5", Units.CENTIMETRES, F(325, 127)),
    ("254", Units.MILLIMETRES, F(10)),
    ("2 1/2 in", Units.CENTIMETRES, F(5, 2)),
    ("\uff15\uff10", Units.INCHES, F(50)),
    ("0", Units.INCHES, F(0)),
]


def test_there_are_many_spellings() -> None:
    assert len({text for text, _, _ in SPELLINGS}) >= 22


@pytest.mark.parametrize(("text", "units", "inches"), SPELLINGS)
def test_a_spelling_is_read_exactly(text: str, units: Units, inches: Fraction) -> None:
    assert parse(text, units) == inches


# What could mean two things, or nothing: the text, and words of the sentence that says why.
REFUSED = [
    ("", "missing"),
    ("   ", "missing"),
    ("1,250", "could mean 1 1/4 or 1250"),
    ("10,000", "could mean 10 or 10000"),
    ("50 1", "not one clear length"),
    ("50 - 1/2", "not one clear length"),
    ("1 1 1/2", "not one clear length"),
    ("1/2/3", "not one clear length"),
    ("1.5 1/2", "not one clear length"),
    ("1.5.2", "not one clear length"),
    ("½ ½", "not one clear length"),
    ("2½/3", "not one clear length"),
    ("1 3/2", "below 1"),
    ("1/0", "divides by 0"),
    ("-3", "negative"),
    ("−3", "negative"),
    ("1e5", '"e" is not a unit'),
    ("0x10", '"x" is not a unit'),
    ("5 furlongs", '"furlongs" is not a unit'),
    ("NaN", "not one clear length"),
    ("inf", "not one clear length"),
    ("three", "not one clear length"),
    ("5%", "not one clear length"),
    ("1_000", "not one clear length"),
    ("٣", "not one clear length"),
    ("3' 6", "not one clear length"),
    ("5 in 3 ft", "not one clear length"),
    ("1 ft 1 ft", "not one clear length"),
    ("0.1234567", "finer than any ruler"),
    ("1/99999999999", "finer than any ruler"),
    ("9" * 61, "too long"),
]


@pytest.mark.parametrize(("text", "words"), REFUSED)
def test_unclear_text_is_refused_with_a_sentence(text: str, words: str) -> None:
    with pytest.raises(LengthError, match=words.replace("(", r"\(")) as refused:
        parse(text)
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize("value", [5, 5.0, None, True, [], float("nan")])
def test_what_is_not_text_is_refused(value: object) -> None:
    with pytest.raises(LengthError, match="as text"):
        parse(value)  # type: ignore[arg-type]


@SOME
@given(st.text(max_size=20) | st.text(alphabet="0123456789 ./,-'\"½⅛incmftyd", max_size=20), UNITS)
def test_any_text_is_a_length_or_is_refused(text: str, units: Units) -> None:
    with suppress(LengthError):
        assert parse(text, units) >= 0


# Units of measure. Circular 572: National Bureau of Standards, Addendum (22 January 1960)
# to Circular 572. Cloth yard: encyclopedia, Wikipedia, "Yard" (old revision 640524846).
DEFINITIONS = [
    ("1 yd", "0.9144 m", "Circular 572"),
    ("1 in", "25.4 mm", "Circular 572"),
    ("1 ft", "304.8 mm", "Circular 572"),
    ("1 yd", "36 in", "Circular 572"),
    ("1/4 yd", "9 in", "cloth yard: a quarter"),
    ("1/8 yd", "4 1/2 in", "cloth yard: an eighth, or finger"),
    ("1/16 yd", "2 1/4 in", "cloth yard: a sixteenth, or nail"),
]


@pytest.mark.parametrize(("one", "other", "source"), DEFINITIONS)
def test_units_are_the_defined_ones(one: str, other: str, source: str) -> None:
    assert parse(one) == parse(other), source


@st.composite
def typed(draw: st.DrawFn, units: Units) -> Fraction:
    """A length as a person could type it in `units`: decimals, or a fraction of a ruler."""
    whole = draw(st.integers(0, 1000))
    bottom = draw(st.sampled_from([1, 2, 3, 4, 7, 8, 10, 16, 32, 64, 97, 100, 127, 1000, 10_000]))
    number = whole + F(draw(st.integers(0, bottom - 1)), bottom)
    return number * {"in": F(1), "cm": 10 * INCHES_PER_MM, "mm": INCHES_PER_MM}[units.value]


@MANY
@given(UNITS.flatmap(lambda units: st.tuples(typed(units), st.just(units))), UNITS)
def test_exact_text_reads_back_as_the_same_length(
    typed_in: tuple[Fraction, Units], written_in: Units
) -> None:
    length, _ = typed_in
    assert parse(exact_text(length, written_in), written_in) == length


@MANY
@given(st.fractions(0, 1000, max_denominator=100_000), UNITS)
def test_exact_text_loses_no_fraction_at_all(length: Fraction, units: Units) -> None:
    assert parse(exact_text(length, units), units) == length


@SOME
@given(st.text(alphabet="0123456789./ ", min_size=1, max_size=60), UNITS, UNITS)
def test_whatever_was_read_can_be_written_and_read_again(
    text: str, units: Units, other: Units
) -> None:
    try:
        length = parse(text, units)
    except LengthError:
        return
    assert parse(exact_text(length, other), other) == length


@SOME
@given(UNITS.flatmap(lambda units: st.tuples(typed(units), st.just(units))))
def test_shown_text_is_exact_or_says_that_it_is_not(pair: tuple[Fraction, Units]) -> None:
    length, units = pair
    text = show(length, units)
    if text.startswith("≈"):
        assert abs(parse(text[1:], units) - length) <= RULERS[units].step / 2
    else:
        assert parse(text, units) == length


@SOME
@given(st.fractions(0, 1000, max_denominator=5000), UNITS)
def test_the_rounding_mark_is_there_exactly_when_the_ruler_lacks_the_mark(
    length: Fraction, units: Units
) -> None:
    off_the_ruler = (length / RULERS[units].finest).denominator != 1
    assert show(length, units).startswith("≈") == off_the_ruler


@SOME
@given(st.fractions(0, 1000, max_denominator=5000), UNITS)
def test_rounding_up_and_down_enclose_the_length(length: Fraction, units: Units) -> None:
    low = parse(show(length, units, Rounding.DOWN).lstrip("≈"), units)
    high = parse(show(length, units, Rounding.UP).lstrip("≈"), units)
    assert low <= length <= high
    assert high - low in (0, RULERS[units].step)


@SOME
@given(st.integers(0, 64_000), st.sampled_from(["in", ""]))
def test_typeset_fractions_are_read_back(sixty_fourths: int, unit: str) -> None:
    length = F(sixty_fourths, 64)
    text = show(length, Units.INCHES, unit=bool(unit))
    assert parse(typeset(text)) == length


@pytest.mark.parametrize(
    ("plain", "set_in_type"),
    [
        ("50 1/2 in", "50¹⁄₂ in"),
        ("7/16 × 3 1/8 in", "⁷⁄₁₆ × 3¹⁄₈ in"),
        ("≈5/16 in", "≈⁵⁄₁₆ in"),
        ("2/3/4", "2/3/4"),
        ("no numbers", "no numbers"),
    ],
)
def test_only_fractions_are_typeset(plain: str, set_in_type: str) -> None:
    assert typeset(plain) == set_in_type


@pytest.mark.parametrize(
    ("length", "units", "text"),
    [
        (F(101, 2), Units.INCHES, "50 1/2 in"),
        (F(3, 64), Units.INCHES, "3/64 in"),
        (F(1, 3), Units.INCHES, "≈5/16 in"),
        (F(0), Units.INCHES, "0 in"),
        (parse("128 cm"), Units.CENTIMETRES, "128 cm"),
        (parse("12.85 cm"), Units.CENTIMETRES, "12.85 cm"),
        (parse("1 in"), Units.CENTIMETRES, "2.54 cm"),
        (parse("1/8 in"), Units.CENTIMETRES, "≈0.3 cm"),
        (parse("1 in"), Units.MILLIMETRES, "25.4 mm"),
        (parse("1/4 in"), Units.MILLIMETRES, "≈6 mm"),
    ],
)
def test_a_length_is_shown_to_the_marks_of_a_ruler(
    length: Fraction, units: Units, text: str
) -> None:
    assert show(length, units) == text


@SOME
@given(st.fractions(0, 500, max_denominator=1000), st.fractions(F(1, 64), 40, max_denominator=64))
def test_rounding_up_gives_the_least_multiple_that_is_enough(
    length: Fraction, step: Fraction
) -> None:
    up = round_up(length, step)
    assert (up / step).denominator == 1
    assert up - step < length <= up
    assert rounded(up, step, Rounding.NEAREST) == up


@pytest.mark.parametrize(
    ("length", "sale_unit", "text"),
    [
        ("49 1/2", "1/8 yd", "1 3/8 yd"),
        ("54", "1/4 yd", "1 1/2 yd"),
        ("24", "1/3 yd", "2/3 yd"),
        ("36", "1 yd", "1 yd"),
        ("120 cm", "10 cm", "1.2 m"),
        ("150 cm", "25 cm", "1.5 m"),
        ("23", "1 in", "23 in"),
    ],
)
def test_what_is_bought_is_said_in_the_words_of_the_shop(
    length: str, sale_unit: str, text: str
) -> None:
    assert sale_text(parse(length), parse(sale_unit)) == text
