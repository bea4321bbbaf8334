"""Closings: where to start, where to stop, tails that can meet, and what is refused."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.binding_choices import Tails, Tuck
from core.finish.binding_width import widths_of
from core.finish.closing import JoinedClosing, TuckedClosing, plan_closing
from core.lengths import INCHES_PER_MM
from core.quilt import Binding, Closing
from core.refusal import Refusal

F = Fraction
EIGHTHS = st.integers(0, 192).map(lambda eighths: F(eighths, 8))


SIDE, STRIP = F(40), F(5, 2)


def close(
    side: Fraction = SIDE, strip: Fraction = STRIP, **choices: object
) -> JoinedClosing | TuckedClosing:
    binding = Binding("plum", strip, **choices)  # type: ignore[arg-type]
    return plan_closing(binding, widths_of(binding, F(1, 8)), side)


@given(
    st.sampled_from([Closing.DIAGONAL, Closing.STRAIGHT]),
    EIGHTHS,
    EIGHTHS.filter(lambda length: length >= 4),
)
def test_the_usual_tails_always_meet_and_the_strip_is_always_long_enough(
    closing: Closing, allowance: Fraction, side: Fraction
) -> None:
    ends = close(side, closing=closing, allowance=allowance)
    assert isinstance(ends, JoinedClosing)
    assert ends.gap <= side / 2
    assert 2 * ends.tail - ends.gap >= ends.takes
    assert 2 * ends.tail - ends.gap <= ends.takes + allowance


@given(EIGHTHS, EIGHTHS, EIGHTHS.filter(bool))
def test_tails_are_refused_exactly_where_they_cannot_meet_or_the_strip_is_too_short(
    allowance: Fraction, gap: Fraction, tail: Fraction
) -> None:
    overlap = 2 * tail - gap
    if overlap < STRIP:
        with pytest.raises(Refusal, match="cannot meet") as refused:
            close(allowance=allowance, tails=Tails(tail, gap))
        assert close(allowance=allowance, tails=Tails(refused.value.lengths["least"], gap))
    elif overlap > STRIP + allowance:
        with pytest.raises(Refusal, match="to spare") as refused:
            close(allowance=allowance, tails=Tails(tail, gap))
        assert close(allowance=refused.value.lengths["wants"], tails=Tails(tail, gap))
    else:
        ends = close(allowance=allowance, tails=Tails(tail, gap))
        assert isinstance(ends, JoinedClosing)
        assert (ends.tail, ends.gap) == (tail, gap)


def test_short_tails_alone_make_the_gap_smaller() -> None:
    ends = close(tails=Tails(tail=F(4)))
    assert isinstance(ends, JoinedClosing)
    assert ends.gap == 8 - F(5, 2)


def test_usual_figures_are_round_in_the_units_of_the_strip() -> None:
    ends = close(strip=60 * INCHES_PER_MM, allowance=250 * INCHES_PER_MM)
    assert isinstance(ends, JoinedClosing)
    assert (ends.tail, ends.gap) == (200 * INCHES_PER_MM, 250 * INCHES_PER_MM)


def test_a_tucked_end_takes_its_fold_its_overlap_and_a_strip_width() -> None:
    tuck = Tuck(turned=F(1, 2), overlap=F(3, 2))
    assert close(closing=Closing.TUCKED, tuck=tuck) == TuckedClosing(
        F(1, 2) + F(3, 2) + F(5, 2), F(1, 2), F(3, 2), F(1)
    )


@pytest.mark.parametrize(
    ("choices", "path", "words"),
    [
        ({"tails": Tails(gap=F(41))}, "binding.tails.gap", "longer than a side"),
        ({"tails": Tails(F(5), F(10))}, "binding.tails.tail", "tails of at least 6 1/4 in"),
        ({"tails": Tails(F(1))}, "binding.tails.tail", "cannot meet"),
        ({"tails": Tails(F(8)), "allowance": F(1)}, "binding.allowance", "wants 3 1/2 in"),
        (
            {"closing": Closing.TUCKED, "tuck": Tuck(overlap=F(40))},
            "binding.tuck.overlap", "longer than a side",
        ),
    ],
)  # fmt: skip
def test_a_closing_that_cannot_be_is_refused(
    choices: dict[str, object], path: str, words: str
) -> None:
    with pytest.raises(Refusal, match=words) as refused:
        close(**choices)  # type: ignore[arg-type]
    assert refused.value.path == path
