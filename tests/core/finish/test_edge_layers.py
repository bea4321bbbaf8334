"""Layers in a bound edge, against a strip that is folded point by point."""

from __future__ import annotations

from collections import defaultdict
from fractions import Fraction
from math import sqrt

import pytest

from core.finish.binding_width import Widths, widths_of
from core.finish.edge_layers import Layers, layers_at_corner, layers_at_join, plain_layers
from core.quilt import Binding, Fold, Joins

F = Fraction
GRAIN = F(1, 64)  # inches between the points that are followed
FIRST, EDGE, SECOND = "first face", "edge", "second face"
Place = tuple[str, Fraction]


def folded(fold: Fold, widths: Widths) -> dict[Place, list[Fraction]]:
    """Where every point of the strip lies: its distance from the quilt's edge, on each face."""
    stacks: dict[Place, list[Fraction]] = defaultdict(list)
    points = int(widths.strip / GRAIN)
    for number in range(points):
        across = (number + F(1, 2)) * GRAIN
        stacks[lies(across, fold, widths)].append(across)
    return stacks


def lies(across: Fraction, fold: Fold, widths: Widths) -> Place:
    w, s = widths.strip, widths.seam
    if fold is not Fold.SINGLE and across > w / 2:
        across = w - across
    if fold is Fold.FACED:  # sewn s from the edge, then turned back: the seam is the new edge
        return SECOND, abs(across - s)
    turn = w / 2 - widths.second_face if fold is Fold.DOUBLE else w - s - widths.second_face
    if across <= 2 * s:
        return FIRST, s - abs(s - across) if across > s else across
    if across <= turn:
        return EDGE, across
    place = across - turn
    if fold is Fold.SINGLE and place > widths.second_face:
        place = 2 * widths.second_face - place
    return SECOND, place


def most(fold: Fold, widths: Widths, joins: Joins | None) -> tuple[int, ...]:
    """The most layers on each face, over all places and all places along the join."""
    stacks = folded(fold, widths)
    reach = float(widths.seam) * (1 if joins is Joins.STRAIGHT else sqrt(2))
    found = dict.fromkeys((FIRST, EDGE, SECOND), 0)
    for (face, _), points in stacks.items():
        seam_lines = [0.0 if joins is Joins.STRAIGHT else float(point) for point in points]
        for where in [line + off for line in seam_lines for off in (-reach, 0.0, reach)]:
            doubled = sum(abs(where - line) <= reach + 1e-9 for line in seam_lines)
            count = len(points) + (doubled if joins else 0)
            found[face] = max(found[face], count)
    return tuple(found.values())


CASES = [
    (fold, strip, thickness)
    for fold in Fold
    for strip in (F(7, 4), F(2), F(9, 4), F(5, 2), F(3))
    for thickness in (F(1, 8), F(1, 4))
]


def widths(fold: Fold, strip: Fraction, thickness: Fraction) -> Widths:
    return widths_of(Binding("plum", strip, fold=fold), thickness)


def counts(layers: Layers, fold: Fold) -> tuple[int, ...]:
    """Of a facing only its own face is followed here: the seam is its edge, and has no depth."""
    if fold is Fold.FACED:
        return (layers.second_face,)
    return layers.first_face, layers.edge, layers.second_face


@pytest.mark.parametrize(("fold", "strip", "thickness"), CASES)
def test_the_layers_along_the_edge_are_those_of_the_folded_strip(
    fold: Fold, strip: Fraction, thickness: Fraction
) -> None:
    found = most(fold, widths(fold, strip, thickness), None)
    assert counts(plain_layers(fold), fold) == found[-len(counts(plain_layers(fold), fold)) :]


@pytest.mark.parametrize("joins", [Joins.DIAGONAL, Joins.STRAIGHT])
@pytest.mark.parametrize(("fold", "strip", "thickness"), CASES)
def test_the_layers_at_a_join_are_those_of_the_folded_strip(
    fold: Fold, strip: Fraction, thickness: Fraction, joins: Joins
) -> None:
    sizes = widths(fold, strip, thickness)
    ours = counts(layers_at_join(fold, joins, sizes), fold)
    assert ours == most(fold, sizes, joins)[-len(ours) :]


def test_a_diagonal_join_is_thinner_than_a_straight_one() -> None:
    sizes = widths(Fold.DOUBLE, F(5, 2), F(1, 8))
    diagonal = layers_at_join(Fold.DOUBLE, Joins.DIAGONAL, sizes)
    straight = layers_at_join(Fold.DOUBLE, Joins.STRAIGHT, sizes)
    assert (diagonal.first_face, straight.first_face) == (6, 8)
    assert diagonal.edge < straight.edge


@pytest.mark.parametrize(("fold", "angle", "first", "edge", "second"), [
    (Fold.DOUBLE, 90, 12, 2, 6), (Fold.SINGLE, 120, 6, 1, 6), (Fold.DOUBLE, 60, 20, 2, 10),
    (Fold.DOUBLE, 270, 4, 2, 2), (Fold.FACED, 90, 0, 6, 12), (Fold.FACED, 120, 0, 4, 8),
])  # fmt: skip
def test_an_outside_corner_is_the_thickest_place(
    fold: Fold, angle: float, first: int, edge: int, second: int
) -> None:
    assert layers_at_corner(fold, angle) == Layers(first, edge, second)


@pytest.mark.parametrize("fold", list(Fold))
def test_an_accent_adds_its_layers_where_the_seam_allowances_lie(fold: Fold) -> None:
    bare, accented = plain_layers(fold), plain_layers(fold, 2)
    more = accented.first_face - bare.first_face, accented.second_face - bare.second_face
    assert more == ((0, 2) if fold is Fold.FACED else (2, 0))
    assert accented.edge == bare.edge
