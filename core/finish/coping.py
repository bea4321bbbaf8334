"""How wide a border finishes: as written, or as a coping strip that reaches a size.

A coping strip brings the quilt to a wished size, so that what comes round it
fits: the strips at the sides are (wished width − width) / 2 wide, those at top
and bottom (wished length − length) / 2. To fit a border pieced of blocks, the
wished size is a whole number of blocks and two seams.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from core.language import told
from core.lengths import Inches
from core.quilt import Border, Corners, Sizing
from core.refusal import Refusal

Size = tuple[Inches, Inches]  # width, length


def finished_widths(border: Border, path: str, centre: Size) -> Size:
    """Finished width of the side strips, and of those at top and bottom; 0 for none."""
    match border.sizing:
        case Sizing.WIDTH:
            return border.width, border.width
        case Sizing.BLOCKS:
            wished = reached_in_blocks(border, path, centre)
        case Sizing.SIZE:
            wished = border.to_width or centre[0], border.to_length or centre[1]
    _refuse_smaller(path, centre, wished)
    sides, ends = (wished[0] - centre[0]) / 2, (wished[1] - centre[1]) / 2
    if border.corners is Corners.MITRED and sides != ends:
        raise Refusal(
            f"{path}.corners",
            told(
                "strips of {sides} and {ends} do not meet in a mitre of 45°; choose butted corners"
            ),
            sides=sides,
            ends=ends,
        )
    return sides, ends


def blocks_round(border: Border, path: str, centre: Size) -> tuple[int, int]:
    """How many blocks the quilt is wide and long, once its coping strip is on.

    >>> half, three = Fraction(1, 2), Fraction(3)
    >>> coping = Border("plum", half, sizing=Sizing.BLOCKS, block=three)
    >>> blocks_round(coping, "borders[0]", (Fraction(101, 2), Fraction(121, 2)))
    (17, 21)
    """
    block = border.block
    if block is None:
        raise Refusal(
            f"{path}.block", told("write the finished size of the blocks that come round it")
        )
    least = 2 * border.width - 2 * border.seam
    width, length = (ceil((side + least) / block) for side in centre)
    return width, length


def reached_in_blocks(border: Border, path: str, centre: Size) -> Size:
    """The quilt's size, raw edge to raw edge, that is a whole number of blocks."""
    across, along = blocks_round(border, path, centre)
    block, seams = border.block or Fraction(0), 2 * border.seam
    return across * block + seams, along * block + seams


def _refuse_smaller(path: str, centre: Size, wished: Size) -> None:
    told_of = {
        "to_width": told(
            "the quilt is {has} wide before this strip, which cannot make it smaller; "
            "write more than that"
        ),
        "to_length": told(
            "the quilt is {has} long before this strip, which cannot make it smaller; "
            "write more than that"
        ),
    }
    for (key, said), has, wants in zip(told_of.items(), centre, wished, strict=True):
        if wants < has:
            raise Refusal(f"{path}.{key}", said, has=has)
    if wished == centre:
        raise Refusal(
            f"{path}.to_width",
            told("the quilt has that size already; write more, or remove this border"),
        )
