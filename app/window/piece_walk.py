"""Walking from piece to piece of a drawing with the arrow keys: where, what, and which next."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QPointF, QRectF, Qt

from core.drawing.marks import Area, Drawing, Label

# A gap to the side counts as so many steps ahead: what lies in a row comes first. Of two
# pieces that both lie ahead, the one whose middle is less to the side is the nearer.
GAP_ASIDE, MIDDLE_ASIDE = 3.0, 0.1
STEPS = {
    Qt.Key.Key_Left: QPointF(-1, 0),
    Qt.Key.Key_Right: QPointF(1, 0),
    Qt.Key.Key_Up: QPointF(0, -1),
    Qt.Key.Key_Down: QPointF(0, 1),
}


def places(drawing: Drawing) -> dict[str, QRectF]:
    """The box round each keyed piece; round the first of those that share a key."""
    found: dict[str, QRectF] = {}
    for mark in drawing.marks:
        if isinstance(mark, Area) and mark.key and mark.key not in found:
            xs, ys = [x for x, _ in mark.points], [y for _, y in mark.points]
            found[mark.key] = QRectF(QPointF(min(xs), min(ys)), QPointF(max(xs), max(ys)))
    return found


def words(drawing: Drawing, key: str) -> str:
    """What is written on the piece with a key, in one line, or nothing."""
    labels = (mark for mark in drawing.marks if isinstance(mark, Label))
    texts = (label.texts[0] for label in labels if key and label.key == key)
    return ", ".join(next(texts, "").split("\n"))


def walked(places: Mapping[str, QRectF], here: str, key: int) -> str | None:
    """The piece that a key leads to from `here`; None if it is no key to walk with.

    Home leads to the first piece and End to the last, in the order of `places`;
    an arrow leads to the first from nowhere, and stays where nothing is further on.
    """
    if key in (Qt.Key.Key_Home, Qt.Key.Key_End):
        return next(iter(places if key == Qt.Key.Key_Home else reversed(list(places))), "")
    step = next((way for arrow, way in STEPS.items() if arrow == key), None)
    if step is None:
        return None
    if here not in places:
        return next(iter(places), "")
    return _nearest(places, here, step)


def _nearest(places: Mapping[str, QRectF], here: str, step: QPointF) -> str:
    start = places[here]

    def ahead(place: QRectF) -> float:
        return QPointF.dotProduct(place.center() - start.center(), step)

    def cost(key: str) -> float:
        low, high = _aside(places[key], step)
        own_low, own_high = _aside(start, step)
        gap = max(0.0, low - own_high, own_low - high)
        middles = abs(low + high - own_low - own_high) / 2
        return ahead(places[key]) + GAP_ASIDE * gap + MIDDLE_ASIDE * middles

    onward = (key for key, place in places.items() if key != here and ahead(place) > 0)
    return min(onward, key=cost, default=here)


def _aside(place: QRectF, step: QPointF) -> tuple[float, float]:
    """From where to where a piece reaches across the way of a step."""
    if step.x():
        return place.top(), place.bottom()
    return place.left(), place.right()
