"""The centre: the cloths with their lay, the quilt from the front, and its bound edge."""

from __future__ import annotations

from collections.abc import Sequence

from app.photos_qt import Photos
from app.window.by_hand.gesture import Lane
from app.window.by_hand.hand_canvas import HandCanvas
from app.window.canvas import MARGIN, MOST_FITTED, Canvas, Fit
from app.window.drawing_item import DrawingItem
from core.by_hand.sheets import all_sheets_of, sheets_of
from core.drawing.back import draw_back
from core.drawing.bias_plan import bias_drawings
from core.drawing.cloth import draw_sheet, frame_of
from core.drawing.edge_section import draw_edge_section
from core.drawing.enlarging import enlarged
from core.drawing.frame import Heading
from core.drawing.marks import Drawing
from core.drawing.quilt import draw_quilt
from core.fabric import Fabric
from core.language import marked, told
from core.lay.lay import Sheet
from core.lengths import typeset
from core.plan import FabricPlan, Plan

NOTHING = marked("Nothing to cut yet.\nAdd a border, a backing or a binding at the left.")
NO_BINDING = marked("No binding yet.\nAdd one at the left.")
SECTION_ENLARGED = 16.0  # times
ALONE = 2.0  # times that, where there is no bias cloth
SECTION_SHARE = 0.4  # of the width of bias cloth with its words
TITLE_PIXELS = 12  # of a title's letters, at the usual size of words
GAP = 2.0  # inches of table between two cloths, beside the room that each keeps round itself


class YardageView(HandCanvas):
    """One lane a fabric, all to one scale: pieces on hand first, then the bolt."""

    def __init__(self) -> None:
        self._rows: list[list[Lane]] = []
        super().__init__(told("Yardage"), Fit.WIDTH, told(NOTHING))

    def draw(self, plan: Plan) -> None:
        """Draw the plan's cloths."""
        rows = (self._lanes(plan, place) for place in range(len(plan.fabrics)))
        self._rows = [row for row in rows if row]
        self.lanes = [lane for row in self._rows for lane in row]
        self.show_items([lane.item for lane in self.lanes])

    def arrange(self) -> None:
        """The cloths of a fabric beside each other, those of the next below."""
        if self.gesture is not None:  # which knows where they are
            return
        self._set_titles()
        top = 0.0
        for row in self._rows:
            left, above = 0.0, max(lane.item.above for lane in row)
            for lane in row:
                lane.item.setPos(left, top + above)
                left += lane.item.boundingRect().width() + GAP
            top += above + max(lane.item.picture.drawing.height for lane in row) + GAP

    def _set_titles(self) -> None:
        """Titles as large as they read well once the widest row fills the view."""
        widths = (sum(_width(lane) + GAP for lane in row) for row in self._rows)
        widest = max(widths, default=0.0)
        room = self.maximumViewportSize().width()
        scale = min(room / (widest + 2 * MARGIN), MOST_FITTED)
        for row in self._rows:
            for lane in row:
                letters = TITLE_PIXELS * self.theme.words / scale
                lane.item.set_title(letters, widest / len(row) - GAP)

    def _lanes(self, plan: Plan, place: int) -> list[Lane]:
        """The cloths of one fabric."""
        fabric_plan = plan.fabrics[place]
        without = _without(fabric_plan.fabric, self.photos)
        lanes: list[Lane] = []
        for sheet in all_sheets_of(fabric_plan):
            drawing = draw_sheet(plan, place, sheet, Heading.RIGHT)
            title = typeset(f"{drawing.title}{_to_buy(fabric_plan, sheet)}{without}")
            item = self._item_there(place, sheet)
            if item is None or not item.shows(drawing, title):
                item = DrawingItem(drawing, title, self.theme)
            lanes.append(Lane(item, place, sheet, frame_of(fabric_plan, sheet, Heading.RIGHT)))
        return lanes

    def _item_there(self, place: int, sheet: Sheet) -> DrawingItem | None:
        """The picture there is of a sheet: if nothing changes, its pixels are kept."""
        there = (lane.item for lane in self.lanes if (lane.place, lane.sheet) == (place, sheet))
        return next(there, None)


def _width(lane: Lane) -> float:
    return lane.item.picture.drawing.width


def _without(fabric: Fabric, photos: Photos) -> str:
    """Says so where a cloth has a photo that cannot be shown; its field says why."""
    photo = fabric.real.photo if fabric.real is not None else None
    gone = photo is not None and photos.seen(photo) is None
    return told("; without its photo") if gone else ""


def _to_buy(fabric_plan: FabricPlan, sheet: Sheet) -> str:
    if sheet != Sheet():
        return "" if sheet in sheets_of(fabric_plan) else told(": not used")
    buy = fabric_plan.buy.sale_text
    if fabric_plan.lay.proved_least:
        return told(": buy {buy}, proved least", buy=buy)
    return told(": buy {buy}, not proved least", buy=buy)


class QuiltView(Canvas):
    """The finished quilt on its batting and backing, and beside it its back."""

    def __init__(self) -> None:
        super().__init__(told("Quilt"), Fit.ALL)

    def show_plan(self, plan: Plan) -> None:
        """Draw the plan's quilt from both sides."""
        front, back = draw_quilt(plan), draw_back(plan)
        items = [DrawingItem(front, "", self.theme)]
        if back is not None:
            items.append(DrawingItem(back, "", self.theme))
            items[1].setPos(front.width + GAP, 0)
        self.show_items(items)


class BindingView(Canvas):
    """The bound edge cut through, enlarged, and the marking plans of bias cloth."""

    def __init__(self) -> None:
        super().__init__(told("Binding"), Fit.ALL, told(NO_BINDING))

    def show_plan(self, plan: Plan) -> None:
        """Draw the plan's binding, one picture below the other."""
        section = draw_edge_section(plan)
        bias = _as_wide(bias_drawings(plan))
        drawings = [] if section is None else [_beside(section, bias, self.theme.words)]
        items: list[DrawingItem] = []
        top = 0.0
        for drawing in (*drawings, *bias):
            item = DrawingItem(drawing, typeset(drawing.title), self.theme)
            item.setPos(0, top + item.above)
            top += item.above + drawing.height + GAP
            items.append(item)
        self.show_items(items)


def _beside(section: Drawing, bias: Sequence[Drawing], words: float) -> Drawing:
    """The edge cut through, large enough that its words are read: beside bias cloth, or alone.

    Alone it is wider than its title, whatever the size of `words`; else that has all the room.
    """
    alone = ALONE * SECTION_ENLARGED * words
    return enlarged(section, SECTION_SHARE * bias[0].width / section.width if bias else alone)


def _as_wide(drawings: Sequence[Drawing]) -> list[Drawing]:
    """Each as wide as the widest: what is marked on a small square is seen as well."""
    widest = max((drawing.width for drawing in drawings), default=0.0)
    return [enlarged(drawing, widest / drawing.width) for drawing in drawings]
