"""What crosses the pipe comes out as it went in; for plans see `tests/app/window/test_items`."""

from __future__ import annotations

import pickle
from dataclasses import dataclass
from fractions import Fraction

import pytest

from app.solver.pickling import fraction, pickled
from app.solver.talk import AsDrafted, Fault
from core.fabric import Grain
from core.lay.lay import Placement, Rect, Sheet
from core.lengths import Units
from core.refusal import Refusal

RECT = Rect(Fraction(0), Fraction(1, 3), Fraction(5, 2), Fraction(7))


@dataclass
class Open:
    """A value that is neither frozen nor slotted."""

    sides: dict[str, Fraction]


@pytest.mark.parametrize(
    "value",
    [
        Fraction(-7, 64),
        RECT,
        Placement("side", 2, Sheet("on_hand[0]", 3), RECT, turned=True),
        (RECT, [Grain.EITHER, None, "a word", 2.5], {"units": Units.INCHES}),
        Open({"left": Fraction(1, 2)}),
        Fault("ValueError: no"),
    ],
)
def test_a_value_comes_back_equal_and_of_its_kind(value: object) -> None:
    again = pickle.loads(pickled(value))
    assert again == value
    assert type(again) is type(value)


def test_a_refusal_and_a_word_of_the_solver_s_come_back() -> None:
    refusal = Refusal("quilt.width", "wider than {most}", most=Fraction(9, 4))
    again = pickle.loads(pickled(refusal))
    assert (again.path, again.sentence, again.lengths) == (
        refusal.path,
        refusal.sentence,
        refusal.lengths,
    )
    assert isinstance(pickle.loads(pickled(AsDrafted())), AsDrafted)


def test_equal_fractions_are_made_once() -> None:
    one, other = pickle.loads(pickled([Fraction(3, 7), Fraction(6, 14)]))
    assert one is other is fraction(3, 7)
