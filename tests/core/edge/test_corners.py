"""Corners: a strip is folded round them numerically, thread by thread.

A thread is a polyline in the plane (complex numbers, inches) that lies `inside`
inches from the strip's raw edge. A fold reflects whatever of the thread lies
past the crease; nothing here uses the formulas under test.
"""

from __future__ import annotations

import cmath
from fractions import Fraction
from itertools import pairwise
from math import atan2, degrees, isclose, pi, radians, sin, sqrt, tan

import pytest

from core.edge.corners import stop_before_corner
from core.finish.binding_width import widths_of
from core.quilt import Binding, Fold

# From the sharpest corner of a common outline to nearly straight: 45° to 170°, twenty of them.
ANGLES = [
    45,
    50,
    55,
    60,
    67.5,
    72,
    75,
    80,
    90,
    100,
    105,
    108,
    112.5,
    120,
    128,
    135,
    144,
    150,
    160,
    170,
]
WIDTH = 2.5
BEFORE, AFTER = 9.0, 14.0  # inches of the strip's raw edge before and after the corner
INSIDE = [WIDTH * tenth / 10 for tenth in range(11)]
NEAR = 1e-9
Thread = list[complex]


def turned(angle: float) -> complex:
    """The unit vector at `angle` degrees."""
    return cmath.rect(1.0, radians(angle))


def reflected(point: complex, at: complex, along: complex) -> complex:
    """`point` reflected in the line through `at` that runs `along`."""
    unit = along / abs(along)
    return at + unit * unit * (point - at).conjugate()


def left_of(point: complex, at: complex, along: complex) -> float:
    """How far `point` lies to the left of the line."""
    return float(((point - at) * along.conjugate()).imag) / abs(along)


def folded(thread: Thread, at: complex, along: complex, onto: complex) -> Thread:
    """The thread with its loose end folded along the line, to the side where `onto` lies."""
    side = 1.0 if left_of(onto, at, along) > 0 else -1.0
    start, end = thread[-2:]
    here, there = side * left_of(start, at, along), side * left_of(end, at, along)
    assert here > -NEAR > there, "the loose end must lie past the crease, the rest before it"
    crease = start + (end - start) * here / (here - there)
    return [*thread[:-1], crease, reflected(end, at, along)]


def length(thread: Thread) -> float:
    return sum(abs(end - start) for start, end in pairwise(thread))


def edges(angle: float) -> tuple[complex, complex]:
    """The ways that two edges run, to a corner at 0 and on from it; the quilt lies left of both."""
    return turned(0), turned(180 - angle)


def round_the_corner(angle: float, inside: float, slip: float = 0.0) -> Thread:
    """A thread after both folds; the second crease lies `slip` beyond the corner.

    First the strip goes away from the quilt, its raw edge in line with the next
    edge; then it comes back over a crease at the corner, square to that edge.
    """
    to, on = edges(angle)
    thread = [inside * 1j - BEFORE * to, inside * 1j + AFTER * to]
    away = folded(thread, 0j, to - on, onto=-on)  # halfway between its way and the way back
    return folded(away, -slip * on, on * 1j, onto=on)


@pytest.mark.parametrize("angle", ANGLES)
@pytest.mark.parametrize("inside", INSIDE)
def test_every_thread_keeps_its_length_and_so_uses_none_at_the_corner(
    angle: int, inside: float
) -> None:
    to, on = edges(angle)
    thread = round_the_corner(angle, inside)
    assert isclose(length(thread), BEFORE + AFTER)
    # What was laid along the first edge and what follows the second add up to the whole strip:
    # the thread starts BEFORE inches short of the corner and ends AFTER inches beyond it.
    inwards = on * 1j * inside
    assert abs(thread[0] - (inside * 1j - BEFORE * to)) < NEAR
    assert abs(thread[-1] - (AFTER * on + inwards)) < NEAR


@pytest.mark.parametrize("angle", ANGLES)
def test_the_raw_edge_passes_through_the_corner_and_follows_both_edges(angle: float) -> None:
    _, on = edges(angle)
    _, first_crease, second_crease, end = round_the_corner(angle, 0.0)
    assert abs(first_crease) < NEAR
    assert abs(second_crease) < NEAR
    assert abs(left_of(end, 0j, on)) < NEAR


@pytest.mark.parametrize("angle", ANGLES)
@pytest.mark.parametrize("inside", INSIDE[1:])
def test_the_mitre_lies_on_the_bisector(angle: float, inside: float) -> None:
    # Geometry; see Verhoeff and Verhoeff, "The Mathematics of Mitering", Bridges. The interior
    # angle lies between the way back along the first edge and the way along the second.
    to, on = edges(angle)
    mitre = round_the_corner(angle, inside)[1]
    to_first = degrees(abs(cmath.phase(mitre / -to)))
    to_second = degrees(abs(cmath.phase(mitre / on)))
    assert isclose(to_first, angle / 2)
    assert isclose(to_second, angle / 2)


@pytest.mark.parametrize("angle", ANGLES)
def test_a_crease_beyond_the_corner_would_use_strip(angle: float) -> None:
    # The same folding with the crease a quarter inch too far out: each inch goes out and back.
    _, on = edges(angle)
    slip = 0.25
    end = round_the_corner(angle, 0.0, slip)[-1]
    assert isclose(abs(end), AFTER - 2 * slip)
    assert abs(end - (AFTER - 2 * slip) * on) < NEAR


@pytest.mark.parametrize("sides", [3, 4, 6, 8])
def test_the_run_round_a_polygon_is_exactly_its_perimeter(sides: int) -> None:
    side, angle = 20.0, 180 - 360 / sides
    thread, place = [-side / 2 + 0j, sides * side - side / 2 + 0j], 0j
    for corner in range(sides):
        to, on = turned(corner * (180 - angle)), turned((corner + 1) * (180 - angle))
        thread = folded(thread, place, to - on, onto=place - on)
        thread = folded(thread, place, on * 1j, onto=place + on)
        place += side * on
    assert abs(thread[-1] - thread[0]) < 1e-6, "the end meets the start"
    assert isclose(length(thread), sides * side)


@pytest.mark.parametrize("angle", ANGLES)
@pytest.mark.parametrize("seam", [Fraction(1, 4), Fraction(3, 8), Fraction(1, 2)])
def test_sewing_stops_where_the_seam_lines_meet(angle: float, seam: Fraction) -> None:
    to, on = edges(angle)
    stop = stop_before_corner(seam, angle)
    needle = float(seam) * 1j - stop * to
    assert isclose(left_of(needle, 0j, to), float(seam))
    assert isclose(left_of(needle, 0j, on), float(seam))


@pytest.mark.parametrize("angle", ANGLES)
def test_the_mitre_starts_where_the_sewing_stops(angle: float) -> None:
    seam = Fraction(1, 4)
    mitre = round_the_corner(angle, float(seam))[1]
    assert isclose(-mitre.real, stop_before_corner(seam, angle))


@pytest.mark.parametrize(("angle", "seams"), [(60, sqrt(3)), (90, 1.0), (135, sqrt(2) - 1)])
def test_known_corners_stop_at_known_places(angle: float, seams: float) -> None:
    # 1/tan 30°, 1/tan 45°, 1/tan 67.5°: textbook values.
    assert isclose(stop_before_corner(Fraction(1), angle), seams)


@pytest.mark.parametrize(("sides", "off_square"), [(4, 45.0), (5, 36.0), (6, 30.0), (8, 22.5)])
def test_a_regular_corner_is_mitred_at_half_its_turn(sides: int, off_square: float) -> None:
    # Off-square angle 180/n: Wonderful Woodworking, "Figure out uncommon angles",
    # https://www.wonderfulwoodworking.com/figure-out-uncommon-angles/
    stop = stop_before_corner(Fraction(1), 180 - 360 / sides)
    assert isclose(degrees(atan2(stop, 1.0)), off_square)
    assert isclose(stop, tan(pi / sides))


@pytest.mark.parametrize("angle", [0, -1, 180, 270])
def test_only_an_outside_corner_has_a_place_to_stop(angle: float) -> None:
    with pytest.raises(ValueError, match="between 0 and 180"):
        stop_before_corner(Fraction(1, 4), angle)


def crossing(one: complex, along: complex, other: complex, onward: complex) -> complex:
    """Where the line through `one` meets the line through `other`."""
    across = (along.conjugate() * onward).imag
    return one + along * ((other - one).conjugate() * onward).imag / across


@pytest.mark.parametrize("angle", ANGLES)
@pytest.mark.parametrize("fold", [Fold.DOUBLE, Fold.SINGLE])
def test_the_fold_lands_past_the_seam_by_its_reach_along_both_edges_and_at_the_mitre(
    angle: float, fold: Fold
) -> None:
    # Turned up over the seam line, then down over an edge as thick as the quilt.
    binding = Binding("plum", Fraction(5, 2), fold=fold)
    thickness = Fraction(1, 8)
    widths = widths_of(binding, thickness)
    seam, edge = float(widths.seam), -float(thickness) / 2
    far = float(widths.strip) / 2 if fold is Fold.DOUBLE else float(widths.strip - widths.seam)
    landed, seams = [], []
    for way in edges(angle):
        inwards = way * 1j
        up = reflected(far * inwards, seam * inwards, way)
        down = reflected(up, edge * inwards, way)
        assert isclose(left_of(down, 0j, way), float(widths.second_face))
        assert isclose(left_of(down, seam * inwards, way), float(widths.reach))
        landed.append((down, way))
        seams.append((seam * inwards, way))
    mitre, stop = crossing(*landed[0], *landed[1]), crossing(*seams[0], *seams[1])
    assert isclose(abs(mitre - stop) * sin(radians(angle / 2)), float(widths.reach))
