"""The themes for eyes that need more: contrast, and parts told apart without seeing all colours."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from math import dist

import pytest

from app.colour import contrast, linear
from app.screen_styles import (
    CONTRAST_DARK,
    CONTRAST_LIGHT,
    SAFE_DARK,
    SAFE_LIGHT,
    screen_theme,
)
from app.style import SCREEN_DARK, SCREEN_LIGHT, Theme
from core.drawing.marks import ROLES

Matrix = tuple[tuple[float, float, float], ...]

# G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for
# Simulation of Color Vision Deficiency", IEEE TVCG 15(6), 2009, doi 10.1109/TVCG.2009.113:
# the matrices of severity 1.0, for amounts of light in linear sRGB.
SIGHTS: dict[str, Matrix] = {
    "usual": ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
    "protanopia": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "deuteranopia": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "tritanopia": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}
# Linear sRGB to CIE XYZ, and the white of D65 (IEC 61966-2-1).
TO_XYZ: Matrix = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
WHITE = (0.95047, 1.0, 1.08883)
# ΔE*ab; about 2.3 is just noticed (M. Mahy, L. Van Eycken, A. Oosterlinck, Color Res. Appl.
# 19(2), 1994). Four times as much is our bar for fills with lines and words between them.
APART = 9.2

PARTS = ("border", "border corner", "backing", "batting", "binding", "accent", "sleeve", "label")
ON_A_LAY = ("cloth", "selvage", "straightening", "offcut", "flaw", *PARTS)
THEMES = {
    "light": SCREEN_LIGHT,
    "dark": SCREEN_DARK,
    "safe light": SAFE_LIGHT,
    "safe dark": SAFE_DARK,
    "contrast": CONTRAST_DARK,
    "contrast on white": CONTRAST_LIGHT,
}
every_theme = pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES.keys())
safe = pytest.mark.parametrize("theme", [SAFE_LIGHT, SAFE_DARK], ids=["light", "dark"])
high = pytest.mark.parametrize("theme", [CONTRAST_DARK, CONTRAST_LIGHT], ids=["dark", "light"])
sights = pytest.mark.parametrize("sight", SIGHTS.values(), ids=SIGHTS.keys())


def times(matrix: Matrix, vector: Sequence[float]) -> tuple[float, ...]:
    return tuple(sum(a * b for a, b in zip(row, vector, strict=True)) for row in matrix)


def seen(colour: str, sight: Matrix) -> tuple[float, float, float]:
    """The colour as an eye sees it, in CIE L*a*b*."""
    light = [min(max(channel, 0.0), 1.0) for channel in times(sight, linear(colour))]
    x, y, z = (
        _lab(value / white) for value, white in zip(times(TO_XYZ, light), WHITE, strict=True)
    )
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def _lab(share: float) -> float:
    """CIE 15, the function of L*a*b*."""
    return share ** (1 / 3) if share > 216 / 24389 else (24389 / 27 * share + 16) / 116


def apart(one: str, other: str, sight: Matrix) -> float:
    """ΔE*ab of 1976 between two colours as an eye sees them."""
    return dist(seen(one, sight), seen(other, sight))


def test_the_measure_knows_red_from_green_as_eyes_do() -> None:
    pair = "#b05050", "#70702f"  # told apart by red against green alone
    assert apart(*pair, SIGHTS["usual"]) > 2 * apart(*pair, SIGHTS["deuteranopia"])
    assert seen("#ffffff", SIGHTS["protanopia"])[0] == pytest.approx(100, abs=0.1)


@every_theme
@sights
def test_what_lies_side_by_side_on_a_lay_is_told_apart(theme: Theme, sight: Matrix) -> None:
    for one, other in combinations(ON_A_LAY, 2):
        hatches = theme[one].hatch, theme[other].hatch
        dashes = theme[one].dash, theme[other].dash
        colours = apart(theme[one].fill, theme[other].fill, sight)
        told = hatches[0] != hatches[1] or dashes[0] != dashes[1] or colours >= APART
        assert told, (one, other)


@safe
@sights
def test_the_safe_colours_tell_every_two_parts_without_a_hatch(theme: Theme, sight: Matrix) -> None:
    for one, other in combinations(("cloth", *PARTS), 2):
        assert apart(theme[one].fill, theme[other].fill, sight) >= APART, (one, other)


@pytest.mark.parametrize("theme", [SAFE_LIGHT, SAFE_DARK, CONTRAST_DARK, CONTRAST_LIGHT])
def test_every_part_has_a_hatch_that_no_other_has(theme: Theme) -> None:
    hatches = [theme[part].hatch for part in PARTS]
    assert all(hatches)
    assert len(set(hatches)) == len(PARTS)


@every_theme
def test_the_words_of_every_role_read_on_their_ground(theme: Theme) -> None:
    # WCAG 2.2: 4.5:1 is criterion 1.4.3, 7:1 is criterion 1.4.6.
    least = 7 if theme in (CONTRAST_DARK, CONTRAST_LIGHT) else 4.5
    assert {role for role in ROLES if contrast(theme[role].ink, theme[role].fill) < least} == set()
    assert contrast(theme.ink, theme.table) >= least


@every_theme
def test_the_outline_of_every_role_stands_off_its_fill(theme: Theme) -> None:
    # 3:1 is WCAG 2.2 criterion 1.4.11.
    roles = (role for role in ROLES if contrast(theme[role].outline, theme[role].fill) < 3)
    assert set(roles) == set()
    assert contrast(theme.chosen, theme.table) >= 3


@high
def test_high_contrast_has_black_white_and_one_accent(theme: Theme) -> None:
    styles = theme.styles.values()
    used = {colour for style in styles for colour in (style.fill, style.outline, style.ink)}
    assert used == {"#000000", "#ffffff", theme.chosen}
    assert theme.table in {"#000000", "#ffffff"}


@high
def test_the_lines_of_high_contrast_are_heavier(theme: Theme) -> None:
    assert all(theme[role].width > SCREEN_LIGHT[role].width for role in ROLES)


def test_every_wish_has_its_theme() -> None:
    assert screen_theme(dark=False, contrast=False, safe=False) is SCREEN_LIGHT
    assert screen_theme(dark=True, contrast=False, safe=False) is SCREEN_DARK
    assert screen_theme(dark=True, contrast=False, safe=True) is SAFE_DARK
    assert screen_theme(dark=True, contrast=True, safe=True) is CONTRAST_DARK
    assert screen_theme(dark=False, contrast=True, safe=False) is CONTRAST_LIGHT
