"""Lengths on paper, measured in the page's own operators by an independent reader."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from app.packet.paper import Paper
from core.lay.lay import Placement, Rect
from core.plan import Plan
from tests.app.packet.pdf_reader import Seen, Shape
from tests.app.packet.plans import plan, seen

INCH = 72.0  # PDF points, ISO 32000-1, 8.3.2.3
MM = INCH / 25.4
# 1 pixel at 300 dpi, the finest that a ruler on a print could show.
PIXEL = INCH / 300
PLANS = ("harbour-lights", "tide-pool-runner", "long cloth", "metric class", "king", "slivers")
every_plan = pytest.mark.parametrize("name", PLANS)
every_paper = pytest.mark.parametrize("paper", list(Paper))


def _scales(page: Seen) -> list[int]:
    """The n of each "Scale 1 : n" that the page states, from the top."""
    return [int(found) for found in re.findall(r"Scale 1 : (\d+)\.", page.words)]


def _to_scale(name: str, paper: Paper) -> list[Seen]:
    found = [page for page in seen(name, paper) if _scales(page)]
    assert found
    return found


@every_plan
@every_paper
def test_every_page_to_scale_has_a_true_square_and_a_true_bar(name: str, paper: Paper) -> None:
    for page in _to_scale(name, paper):
        assert _of_size(page, INCH, INCH), "the 1 in square"
        assert [shape for shape in page.shapes if _is_bar(shape)], "the 100 mm bar"
        assert "100\u00a0%" in page.words or "100 %" in page.words
        assert "actual size" in page.words


def _of_size(page: Seen, wide: float, high: float) -> list[Shape]:
    """Shapes with these outer measures, to a hundredth of a point."""
    return [s for s in page.shapes if s.outer_size == pytest.approx((wide, high), abs=0.01)]


def _is_bar(shape: Shape) -> bool:
    wide, high = shape.outer_size
    return abs(wide - 100 * MM) < 0.01 and high < 20 and shape.filled and not shape.stroked


@every_plan
@every_paper
def test_every_piece_is_drawn_at_the_scale_stated(name: str, paper: Paper) -> None:
    """Each piece has an outline of its size and, on one page, the right place among the others."""
    cloths = _sheets(plan(name))
    for page in _to_scale(name, paper):
        if "of this cloth" in page.words:
            if "Page 1 of" in page.words:
                cloths.pop(0)
            continue
        for scale in _scales(page):
            _check(page, cloths.pop(0), INCH / scale)
    assert not cloths


def _sheets(made: Plan) -> list[list[Placement]]:
    return [
        [p for p in fabric.lay.placements if p.sheet == sheet]
        for fabric in made.fabrics
        for sheet, _ in fabric.lay.sheets
    ]


def _pages_of_cloth(page: Seen) -> int:
    found = re.search(r"Page \d+ of (\d+) of this cloth", page.words)
    assert found is not None
    return int(found[1])


def _check(page: Seen, pieces: list[Placement], scale: float) -> None:
    """Some place of the cloth's corner on the page puts every piece on an outline."""
    outlines = [shape.box for shape in page.shapes if len(shape.points) == 4 and shape.stroked]
    first = pieces[0].rect
    for down in (True, False):
        for left, _bottom, _right, top in outlines:
            corner = _corner(first, left, top, scale, down=down)
            if all(_drawn(piece.rect, corner, scale, outlines, down=down) for piece in pieces):
                return
    pytest.fail("the pieces are not drawn where they lie, at the scale stated")


def _corner(
    rect: Rect, left: float, top: float, scale: float, *, down: bool
) -> tuple[float, float]:
    """Where the cloth's (0, 0) is if `rect` has its upper left corner at (left, top)."""
    if down:
        return left - float(rect.x) * scale, top + float(rect.y) * scale
    return left - float(rect.y) * scale, top - float(rect.right) * scale


def _drawn(
    rect: Rect,
    corner: tuple[float, float],
    scale: float,
    outlines: list[tuple[float, float, float, float]],
    *,
    down: bool,
) -> bool:
    def place(across: Fraction, along: Fraction) -> tuple[float, float]:
        over, on = float(across) * scale, float(along) * scale
        return (corner[0] + over, corner[1] - on) if down else (corner[0] + on, corner[1] + over)

    (x1, y1), (x2, y2) = place(rect.x, rect.y), place(rect.right, rect.end)
    wanted = (min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))
    return any(
        all(abs(have - want) < PIXEL / 4 for have, want in zip(box, wanted, strict=True))
        for box in outlines
    )


@every_paper
def test_pages_of_one_cloth_share_one_scale_and_overlap(paper: Paper) -> None:
    pages = [page for page in _to_scale("long cloth", paper) if "of this cloth" in page.words]
    assert len(pages) == _pages_of_cloth(pages[0])
    assert len({tuple(_scales(page)) for page in pages}) == 1
    for number, page in enumerate(pages, start=1):
        assert f"Page {number} of {len(pages)} of this cloth" in page.words
        assert ("From the page before" in page.words) == (number > 1)
        assert ("Goes on on the next page" in page.words) == (number < len(pages))
