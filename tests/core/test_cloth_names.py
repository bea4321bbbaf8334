"""Cloth in hand is told by name where it is shown: all that a cut order calls it."""

from __future__ import annotations

import pytest

from core.cloth_names import BOLT, BOUGHT, LEFT, ON_HAND, told_cloth, told_sheet
from core.cutting.miscut import WRONG_STRIP
from core.steps import CLOTH, Becomes
from tests.stand_in import untold

NAMES = (CLOTH, "section 2", Becomes.OFFCUT.value, Becomes.WASTE.value, WRONG_STRIP, "piece A1")


@pytest.mark.usefixtures("stand_in")
@pytest.mark.parametrize("name", NAMES)
def test_all_cloth_in_hand_is_told(name: str) -> None:
    assert untold(told_cloth(name)) == []


@pytest.mark.usefixtures("stand_in")
def test_the_letter_on_a_piece_is_the_same_in_every_language() -> None:
    assert told_cloth("AB12") == "AB12"
    assert told_cloth("piece AB12").endswith(" AB12")


@pytest.mark.usefixtures("stand_in")
@pytest.mark.parametrize("called", [BOLT, ON_HAND, BOUGHT, LEFT, "section 2"])
def test_all_sheets_are_told(called: str) -> None:
    for count in (1, 3):
        assert untold(told_sheet("ψ", called, "9 × 4", 1, count)) == []
