"""The plainest lay: rows of equally long things, cut in two stages.

It is where the search starts if the cuts may have only so many stages.
"""

from __future__ import annotations

from core.lay.slabs import Box, slabs
from core.lay.start import Packing
from core.lay.ticks import Laid, Strip, Task


def stages_of(task: Task, packing: Packing) -> int:
    """The most stages in which a sheet, as it is bought, must be cut."""
    most = 0
    for number, board in enumerate(task.boards):
        things = _on(number, packing)
        box = (0, 0, board.across, board.along)
        most = max(most, slabs(box, things, few_stages=True).stages)
    things, start = _on(task.bolt, packing), task.start
    if start:  # all before it stays in one piece, and is cut off across
        before = Laid(-1, 0, task.bolt, 0, -start, task.width, start, turned=False)
        things.append(((0, -start, task.width, start), before))
    along = start + task.room_in(task.bought(packing.used))
    if things:
        tree = slabs((0, -start, task.width, along), things, few_stages=True)
        most = max(most, tree.stages)
    return most


def _on(board: int, packing: Packing) -> list[tuple[Box, Laid]]:
    return [
        ((one.x, one.y, one.across, one.along), one) for one in packing.laid if one.board == board
    ]


def plain_lay(task: Task) -> Packing:
    """All things in rows, on the cloth on hand as far as it goes."""
    rows = _Rows(task)
    missing = []
    for item in range(len(task.sizes)):
        if left := rows.lay_pieces(item):
            missing.append((item, left))
    for place, strip in enumerate(task.strips):
        for copy in range(1, strip.copies + 1):
            if not rows.lay_run(len(task.sizes) + place, strip, copy):
                missing.append((len(task.sizes) + place, 1))
    used = max((one.y + one.along for one in rows.laid if one.board == task.bolt), default=0)
    return Packing(tuple(rows.laid), used, tuple(missing))


class _Rows:
    """The sheets, each filled up to its `top`."""

    def __init__(self, task: Task) -> None:
        self.sizes = [(board.across, board.along) for board in task.boards]
        if task.cloth.buy_more:
            self.sizes.append((task.width, task.plenty))
        self.tops = [0] * len(self.sizes)
        self.task = task
        self.laid: list[Laid] = []

    def lay_pieces(self, item: int) -> int:
        """Lay all pieces of a size; how many found no room."""
        size = self.task.sizes[item]
        left = size.copies
        for sheet, (width, end) in enumerate(self.sizes):
            for across, along in size.shapes:
                turned = across != size.across
                while left and across <= width and along <= end - self.tops[sheet]:
                    abreast = min(left, width // across)
                    for place in range(abreast):
                        self._put(item, 0, sheet, (place * across, across, along), turned)
                    self.tops[sheet] += along
                    left -= abreast
        return left

    def lay_run(self, item: int, strip: Strip, copy: int) -> bool:
        """Lay one run, a row for each segment; False if it could not be finished."""
        before, tops = len(self.laid), list(self.tops)
        demand = strip.demand
        while demand > 0 or len(self.laid) == before:
            wanted = demand + strip.loss
            if len(self.laid) > before:
                wanted = max(wanted, strip.shortest)
            length = self._lay_segment(item, strip, copy, wanted)
            if not length:
                del self.laid[before:]
                self.tops = tops
                return False
            demand -= length - strip.loss
        return True

    def _lay_segment(self, item: int, strip: Strip, copy: int, wanted: int) -> int:
        """Lay a segment in a row of its own; its length, or 0."""
        for sheet, (width, end) in enumerate(self.sizes):
            room = end - self.tops[sheet]
            for turned, longest, wide in ((False, width, room), (True, room, width)):
                allowed = strip.lengthwise if turned else strip.crosswise
                length = min(longest, wanted)
                if allowed and strip.strip <= wide and length >= min(wanted, strip.joined):
                    sides = (strip.strip, length) if turned else (length, strip.strip)
                    self._put(item, copy, sheet, (0, *sides), turned)
                    self.tops[sheet] += sides[1]
                    return length
        return 0

    def _put(
        self, item: int, copy: int, sheet: int, place: tuple[int, int, int], turned: bool
    ) -> None:
        x, across, along = place
        self.laid.append(Laid(item, copy, sheet, x, self.tops[sheet], across, along, turned))
