"""Drawings in another size."""

from __future__ import annotations

from dataclasses import replace

from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point


def enlarged(drawing: Drawing, times: float) -> Drawing:
    """The drawing `times` as large, for a view that shows it beside others."""
    return Drawing(
        drawing.title,
        drawing.width * times,
        drawing.height * times,
        tuple(_enlarged(mark, times) for mark in drawing.marks),
    )


def _enlarged(mark: Mark, times: float) -> Mark:
    def there(point: Point) -> Point:
        return point[0] * times, point[1] * times

    if isinstance(mark, Label):
        return Label(there(mark.centre), mark.texts, there(mark.room), mark.role, mark.key)
    points = tuple(map(there, mark.points))
    if isinstance(mark, Area):
        return replace(mark, points=points)
    return Line(points, mark.role)
