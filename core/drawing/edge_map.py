"""The edge map: the binding as it is sewn on, from its start round to its closing.

The quilt is seen from the face that the binding is sewn to first. The band is
drawn wider than it is, so that joins and corners can be told.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import hypot

from core.drawing.edge import band, inwards_at
from core.drawing.facing import draw_facing
from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.edge.edge_map import Landing
from core.edge.nearest import nearest_place
from core.finish.sewn import Sewn
from core.language import told
from core.lengths import Inches, show
from core.plan import Plan

_BAND = 0.03  # of the picture's larger side
_ASIDE = 0.09  # room round the quilt for the segments' letters, of the same
_MANY_CORNERS = 12  # words at each would only cover one another
_MANY_JOINS = 9
_RIGHT_ANGLE = 90.0
# Rooms for the words at a join, as shares of the picture: wide, high, and so much further in.
_AT_LENGTH = (
    (0.36, 0.06, 0.0), (0.3, 0.06, 0.0), (0.3, 0.06, 0.07), (0.3, 0.06, 0.14), (0.2, 0.06, 0.0),
    (0.08, 0.05, 0.0),
)  # fmt: skip
_BRIEFLY = ((0.16, 0.045, 0.0), (0.16, 0.045, 0.05), (0.16, 0.045, 0.1), (0.05, 0.04, 0.0))


@dataclass(frozen=True, slots=True)
class _Frame:
    """Places on the outline as points on the picture."""

    plan: Plan
    sewn: Sewn

    @property
    def size(self) -> float:
        outline = self.plan.sizes.outline
        return float(max(outline.width, outline.length))

    @property
    def band(self) -> float:
        return self.size * _BAND

    @property
    def aside(self) -> float:
        return self.size * _ASIDE

    def shown(self, point: Point) -> Point:
        outline = self.plan.sizes.outline
        return (
            point[0] - float(outline.x) + self.aside,
            point[1] - float(outline.y) + self.aside,
        )

    def on_quilt(self, shown: Point) -> Point:
        """The point of the quilt that is shown there."""
        outline = self.plan.sizes.outline
        return (
            shown[0] + float(outline.x) - self.aside,
            shown[1] + float(outline.y) - self.aside,
        )

    def at(self, place: float, inside: float) -> Point:
        """The point `inside` inches within the edge at a place; outside it below 0."""
        (x, y), (dx, dy) = self.plan.sizes.outline.point_at(place)
        return self.shown((x + dx * inside, y + dy * inside))

    def across(self, place: float) -> tuple[Point, Point]:
        """The ends of a line across the band."""
        return self.at(place, -self.band / 3), self.at(place, self.band * 4 / 3)

    @property
    def many(self) -> bool:
        """Whether there are so many joins that each is told by number and distance alone."""
        return len(self.sewn.edge_map.joins) > _MANY_JOINS

    def labels(self, place: float, texts: tuple[str, ...]) -> tuple[Label, ...]:
        """Words beside the band, inside the quilt: there, a line further in, or but briefly."""
        outline = self.plan.sizes.outline
        _, (dx, dy) = outline.point_at(place)
        inside = float(outline.width) - 3.2 * self.band
        rooms = _BRIEFLY if self.many else _AT_LENGTH
        if inside <= 0:
            return ()
        found = []
        for wide, high, further in rooms:
            said = min(self.size * wide, inside), self.size * high
            room = abs(dx) * said[0] / 2 + abs(dy) * said[1] / 2 + self.size * further
            centre = self._inside(self.at(place, self.band * 1.6 + room), said)
            found.append(Label(centre, texts, said, "note"))
        return tuple(found)

    def _inside(self, centre: Point, room: Point) -> Point:
        """The centre, moved so far that words near a corner do not lie over the band.

        Where there is no such place, the middle.
        """
        outline, band = self.plan.sizes.outline, self.band * 1.2

        def moved(at: float, wide: float, whole: float) -> float:
            least, most = self.aside + band + wide / 2, self.aside + whole - band - wide / 2
            return min(max(at, least), most) if least < most else self.aside + whole / 2

        return (
            moved(centre[0], room[0], float(outline.width)),
            moved(centre[1], room[1], float(outline.length)),
        )


def _apart(wanted: Iterable[tuple[Label, ...]], edge: tuple[Point, ...]) -> Iterator[Label]:
    """Of each label's ways to be set, the first that covers none before it; else none.

    One that keeps off the `edge` goes first, as between the scallops of a quilt.
    """
    kept: list[Label] = []
    for ways in wanted:
        free = [way for way in ways if not any(_cover(way, other) for other in kept)]
        clear = (way for way in free if not any(_holds(way, point) for point in edge))
        if (found := next(clear, free[0] if free else None)) is not None:
            kept.append(found)
    yield from kept


def _holds(label: Label, point: Point) -> bool:
    return all(abs(label.centre[way] - point[way]) < label.room[way] / 2 for way in (0, 1))


def _cover(one: Label, other: Label) -> bool:
    return all(
        abs(one.centre[way] - other.centre[way]) < (one.room[way] + other.room[way]) / 2
        for way in (0, 1)
    )


def draw_edge_map(plan: Plan) -> Drawing | None:
    """The picture of the binding as sewn, in inches of quilt, or of the facing; None without."""
    if plan.sewn is None:
        return draw_facing(plan)
    frame, outline = _Frame(plan, plan.sewn), plan.sizes.outline
    marks = (
        Area(tuple(frame.shown(point) for point in outline.points), "top"),
        *_segments(frame),
        *_joins(frame),
        *_start(frame),
        *_apart([*_landings(frame), *_corners(frame), *_letters(frame)], _inner_edge(frame)),
    )
    wide, high = (float(size) + 2 * frame.aside for size in (outline.width, outline.length))
    return Drawing(told("the binding as sewn"), wide, high, marks)


def place_under(plan: Plan, at: Point, step: Inches) -> tuple[Inches, float]:
    """The place on the outline nearest to a point of the picture, and how far off that is.

    The place is a multiple of `step`; raises `ValueError` for a plan without a binding.
    """
    frame = _frame_of(plan)
    return nearest_place(plan.sizes.outline, frame.on_quilt(at), step)


def start_shown(plan: Plan) -> Point:
    """Where the start is on the picture; raises `ValueError` for a plan without a binding."""
    frame = _frame_of(plan)
    return frame.at(float(frame.sewn.edge_map.closing.place), frame.band / 2)


def _frame_of(plan: Plan) -> _Frame:
    if plan.sewn is None:
        raise ValueError("there is no binding to start")
    return _Frame(plan, plan.sewn)


def _stretches(frame: _Frame) -> Iterator[tuple[str, float, float]]:
    """Each segment, from the join before it to the one behind it."""
    made, ring = frame.sewn.edge_map, float(frame.plan.sizes.outline.ring)
    first = float(made.closing.place)
    joins = [(float(join.place) - first) % ring + first for join in made.joins]
    yield from zip(made.order, [first, *joins], [*joins, first + ring], strict=True)


def _segments(frame: _Frame) -> Iterator[Mark]:
    for name, start, end in _stretches(frame):
        points = band(frame.plan.sizes.outline, start, end, frame.band)
        yield Area(tuple(map(frame.shown, points)), "binding", name)


def _inner_edge(frame: _Frame) -> tuple[Point, ...]:
    """Points along the band's inner edge, as close as words are high."""
    ring = float(frame.plan.sizes.outline.ring)
    count = max(1, int(ring / frame.band))
    return tuple(frame.at(ring * step / count, frame.band) for step in range(count))


def _letters(frame: _Frame) -> Iterator[tuple[Label, ...]]:
    """Each segment's letter outside its stretch."""
    room = (frame.aside * 0.9, frame.aside * 0.6)
    for name, start, end in _stretches(frame):
        centre = frame.at(_clear_of_corners(frame, start, end), -frame.aside * 0.55)
        yield (Label(centre, (name,), room, "binding", name),)


def _clear_of_corners(frame: _Frame, start: float, end: float) -> float:
    """The middle of a stretch, or a place beside it where the middle lies at a corner."""
    outline = frame.plan.sizes.outline
    ring = float(outline.ring)

    def nearest(place: float) -> float:
        ways = ((place - float(corner.place)) % ring for corner in outline.corners)
        return min((min(way, ring - way, frame.aside) for way in ways), default=0.0)

    return max((start + (end - start) * share for share in (0.5, 0.35, 0.65)), key=nearest)


def _corners(frame: _Frame) -> Iterator[tuple[Label, ...]]:
    """The angles of corners that are no right angle; how they are sewn is said in words."""
    outline = frame.plan.sizes.outline
    if len(outline.corners) > _MANY_CORNERS:
        return
    for number, corner in enumerate(outline.corners, start=1):
        if corner.angle != _RIGHT_ANGLE:
            (x, y), (dx, dy) = corner.point, inwards_at(outline, float(corner.place))
            away = frame.aside * 0.5 / hypot(dx, dy)
            centre = frame.shown((x - dx * away, y - dy * away))
            words = (f"{number}\n{corner.angle:.4g}°", str(number))
            yield (Label(centre, words, (frame.aside * 0.9, frame.aside * 0.8), "note"),)


def _joins(frame: _Frame) -> Iterator[Mark]:
    for join in frame.sewn.edge_map.joins:
        yield Line(frame.across(float(join.place)), "join")


def _landings(frame: _Frame) -> Iterator[tuple[Label, ...]]:
    """Words for the closing, then for each join."""
    made = frame.sewn.edge_map
    place = float(made.closing.place)
    yield frame.labels(place, _words(frame, told("start and closing"), told("start"), made.closing))
    for number, join in enumerate(made.joins, start=1):
        name = str(number) if frame.many else told("join {number}", number=number)
        words = _words(frame, name, str(number), join)
        yield frame.labels(float(join.place), words)


def _words(frame: _Frame, name: str, short: str, landing: Landing) -> tuple[str, ...]:
    if landing.to_corner is None:
        return name, short
    away = show(landing.to_corner, frame.plan.project.units)
    brief = f"{name}: {away}", name, short
    return (
        brief
        if frame.many
        else (told("{place}\n{length} to the corner", place=name, length=away), *brief)
    )


def _start(frame: _Frame) -> Iterator[Mark]:
    """Where the ends meet, and an arrow the way the sewing goes."""
    closing = frame.sewn.edge_map.closing
    place = float(closing.place)
    yield Line(frame.across(place), "start")
    long = frame.band
    tip = frame.at(place + 1.5 * long, frame.band / 2)
    base = (frame.at(place + long / 2, 0.0), frame.at(place + long / 2, frame.band))
    yield Area((tip, *base), "start")
