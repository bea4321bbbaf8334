"""A staircase in words: what moves is told step by step, what does not is told once."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from app.comparing import alike_text, step_text
from core.compare.choices import STRIP_WIDTH
from core.compare.staircase import Staircase, Step
from core.fabric import Fabric
from core.quilt import Project, Quilt

F = Fraction
PLUM = Fabric("plum", F(43), F(1, 2), sale_unit=F(9, 2))
TWO = Project(Quilt("Two", F(60), F(80)), (PLUM, replace(PLUM, name="dots")))
FIRST = Step(F(2), F(5, 2), (F(9), F(144)), F(51))
STAIRS = Staircase(
    STRIP_WIDTH, 0, F(1, 64), F(2), (FIRST, Step(F(3), F(4), (F(18), F(144)), F(54)))
)


def test_every_step_names_only_what_moves() -> None:
    assert step_text(TWO, FIRST, STAIRS.moving) == "plum 1/4 yd (51.00)"
    assert step_text(TWO, FIRST) == "plum 1/4 yd, dots 4 yd (51.00)"


def test_what_does_not_move_is_told_once() -> None:
    told = "All buy dots 4 yd as well; the costs are those of all cloth."
    assert alike_text(TWO, STAIRS) == told
    unpriced = replace(STAIRS, steps=tuple(replace(step, cost=None) for step in STAIRS.steps))
    assert alike_text(TWO, unpriced) == "All buy dots 4 yd as well."


def test_one_cloth_alone_needs_no_such_words() -> None:
    alone = replace(STAIRS, steps=(replace(FIRST, bought=(F(9),)),))
    assert alike_text(replace(TWO, fabrics=(PLUM,)), alone) == ""
