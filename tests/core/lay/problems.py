"""Lay problems for the tests: small known ones, and random ones from hypothesis."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from hypothesis import strategies as st

from core.fabric import Grain, OnHand
from core.lay.problem import Cloth, LayProblem, Piece, Run

F = Fraction
PLUM = Cloth("plum", F(42), F(9, 2))
DOTS = Cloth("dots", F(40), F(9), on_hand=(OnHand(F(20), F(30), 2),))
BINDING = Run("binding", "plum", F(5, 2), F(280), F(5, 2), F(12))


@cache
def quarters(low: int, high: int) -> st.SearchStrategy[Fraction]:
    """Lengths in quarters of an inch."""
    return st.integers(low * 4, high * 4).map(lambda quarter: Fraction(quarter, 4))


@st.composite
def cloths(draw: st.DrawFn) -> Cloth:
    hands = st.builds(OnHand, quarters(5, 40), quarters(5, 50), st.integers(1, 3))
    return Cloth(
        "plum",
        draw(st.sampled_from([F(20), F(83, 2), F(42), F(107)])),
        draw(st.sampled_from([F(9, 2), F(9), F(36), F(1000, 254)])),
        draw(st.sampled_from([F(0), F(1)])),
        draw(st.sampled_from([F(0), F(3, 100)])),
        tuple(draw(st.lists(hands, max_size=2))),
        draw(st.booleans()) or draw(st.booleans()),
    )


@st.composite
def lay_problems(draw: st.DrawFn) -> LayProblem:
    """One cloth with up to four sizes of pieces and three runs, all of which fit its width."""
    cloth = draw(cloths())
    widest = int(cloth.usable_width)
    pieces = tuple(
        Piece(f"piece {i}", "plum", across, along, count, turn)
        for i, (across, along, count, turn) in enumerate(
            draw(
                st.lists(
                    st.tuples(
                        quarters(1, widest), quarters(1, 60), st.integers(1, 8), st.booleans()
                    ),
                    max_size=4,
                )
            )
        )
    )
    grains = st.sampled_from([Grain.CROSSWISE, Grain.LENGTHWISE, Grain.EITHER])
    runs = tuple(
        Run(f"run {i}", "plum", strip, needs, loss, shortest, grain, count)
        for i, (strip, needs, loss, shortest, grain, count) in enumerate(
            draw(
                st.lists(
                    st.tuples(
                        quarters(1, 8),
                        quarters(5, 300),
                        st.sampled_from([F(1, 2), F(5, 2)]),
                        st.sampled_from([F(0), F(8), F(12)]),
                        grains,
                        st.integers(1, 3),
                    ),
                    max_size=3,
                )
            )
        )
    )
    return LayProblem((cloth,), pieces, runs)
