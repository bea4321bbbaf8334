"""Two thousand problems at random, each laid, checked, and cut out by a stranger."""

from __future__ import annotations

from fractions import Fraction

import pytest

from core.lay.check import check
from core.lay.solve import Stop, solve
from core.steps import steps_for
from tests.core.lay.at_random import problem_at
from tests.core.stranger import cut_out

PARTS, EACH = 8, 250
QUICK = Stop(2)


@pytest.mark.parametrize("part", range(PARTS))
def test_every_lay_is_legal_and_can_be_cut_out(part: int) -> None:
    for number in range(part * EACH, (part + 1) * EACH):
        problem = problem_at(number)
        lay = solve(problem, stop=QUICK)
        assert check(problem, lay) == (), number
        if all(cloth.buy_more for cloth in problem.cloths):
            assert lay.unplaced == (), number
        for cloth in lay.cloths:
            labels = {(p.sheet, p.rect): f"{p.name} {p.copy}" for p in cloth.placements}
            offcuts = frozenset((one.sheet, one.rect) for one in cloth.offcuts)
            sheets = {sheet: (rect.across, rect.along) for sheet, rect in cloth.sheets}
            steps = steps_for(cloth.cuts, labels, offcuts, Fraction(0))
            whole = {(sheet, rect) for sheet, rect in cloth.sheets}
            wanted = {
                label: (rect.across, rect.along)
                for (sheet, rect), label in labels.items()
                if (sheet, rect) not in whole
            }
            assert cut_out(sheets, steps) == wanted, number
