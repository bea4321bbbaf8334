"""A piece in small, with its grain arrow, as on the tag that is pinned to it.

Not to scale: as wide and as long as tells it apart, across level and along upright.
"""

from __future__ import annotations

from core.drawing.marks import Area, Drawing, Line
from core.language import told
from core.lay.lay import Rect

SIDE = 10.0  # of the square that the picture fills at the most
_LEAST = 4.0
_HEAD = 1.3


def draw_piece(rect: Rect, role: str, *, one_way: bool) -> Drawing:
    """The piece with an arrow along the cloth's length; one head where the print has a way up."""
    longer = float(max(rect.across, rect.along))
    wide = max(_LEAST, SIDE * float(rect.across) / longer)
    high = max(_LEAST, SIDE * float(rect.along) / longer)
    x, top, foot = wide / 2, 0.5, high - 0.5
    marks: list[Area | Line] = [
        Area(((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)), role),
        Line(((x, top), (x, foot)), "grain"),
        _head(x, top, 1),
    ]
    if not one_way:
        marks.append(_head(x, foot, -1))
    return Drawing(told("piece"), wide, high, tuple(marks))


def _head(x: float, tip: float, way: int) -> Area:
    back = tip + way * _HEAD
    return Area(((x, tip), (x - _HEAD / 2, back), (x + _HEAD / 2, back)), "grain")
