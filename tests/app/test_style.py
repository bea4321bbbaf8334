"""Style tables: every role has a look, and no part is told by colour alone."""

from __future__ import annotations

from itertools import combinations

import pytest

from app.colour import contrast
from app.hatch import HATCHES
from app.style import PAPER_COLOUR, PAPER_GREY, SCREEN_DARK, SCREEN_LIGHT, Theme
from core.drawing.marks import ROLES

THEMES = {
    "paper colour": PAPER_COLOUR,
    "paper grey": PAPER_GREY,
    "screen light": SCREEN_LIGHT,
    "screen dark": SCREEN_DARK,
}
every_theme = pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES.keys())
PARTS = ("border", "border corner", "backing", "batting", "binding", "sleeve", "flaw")
WORDED = (*PARTS, "cloth", "selvage", "straightening", "offcut", "top", "note", "ruler")


@every_theme
def test_every_role_has_a_style_and_no_style_is_without_a_role(theme: Theme) -> None:
    assert set(theme.styles) == set(ROLES)


@every_theme
def test_every_hatch_named_is_a_hatch(theme: Theme) -> None:
    assert {style.hatch for style in theme.styles.values()} <= {"", *HATCHES}


@every_theme
@pytest.mark.parametrize(("one", "other"), list(combinations(PARTS, 2)))
def test_two_parts_differ_in_hatch_whatever_their_colour(
    theme: Theme, one: str, other: str
) -> None:
    assert theme[one].hatch
    assert theme[one].hatch != theme[other].hatch


@every_theme
@pytest.mark.parametrize("role", WORDED)
def test_words_on_a_fill_read_at_seven_to_one(theme: Theme, role: str) -> None:
    # 7:1 is WCAG 2.2 criterion 1.4.6, the enhanced contrast for text.
    assert contrast(theme[role].fill, theme[role].ink) >= 7


@every_theme
@pytest.mark.parametrize("role", ROLES)
def test_an_outline_stands_off_its_fill_at_three_to_one(theme: Theme, role: str) -> None:
    # 3:1 is WCAG 2.2 criterion 1.4.11, the contrast for graphical objects.
    assert contrast(theme[role].fill, theme[role].outline) >= 3


@every_theme
@pytest.mark.parametrize("role", ["edge", "ruler", "note", "cut", "cloth"])
def test_what_lies_on_the_table_stands_off_it(theme: Theme, role: str) -> None:
    assert contrast(theme.table, theme[role].outline) >= 3
    assert contrast(theme.table, theme.ink) >= 7
    assert contrast(theme.table, theme.chosen) >= 3


def test_the_grey_paper_has_no_colour() -> None:
    colours = {c for style in PAPER_GREY.styles.values() for c in (style.fill, style.outline)}
    assert all(c[1:3] == c[3:5] == c[5:7] for c in colours)
