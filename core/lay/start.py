"""A first lay in a millisecond: put one thing after another into the free rectangles.

Every free rectangle was cut free edge to edge, and a block of equal pieces laid
in its near corner leaves two more, so each lay made here can be cut by
guillotine (no free rectangles are merged: that would break the rule). What
varies is the order and a handful of `Rules`; the search tries many.

The rules of fit and split are those compared by J. Jylänki, "A thousand ways to
pack the bin" (2010), with blocks of equal pieces added and with runs, whose
segments take whatever length a free rectangle offers.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from core.lay.shares import divided, next_shared
from core.lay.ticks import Laid, Strip, Task

Free = tuple[int, int, int, int, int]  # board, x, y, across, along
Fit = Callable[[Free, int, int], int]
Split = Callable[[int, int, int, int], bool]

# How well a piece (a, b) fits a free rectangle: the least counts best.
FITS: tuple[Fit, ...] = (
    lambda free, a, b: free[3] * free[4] - a * b,
    lambda free, a, b: min(free[3] - a, free[4] - b),
    lambda free, a, b: free[4] - b,
    lambda free, a, b: free[3] - a,
    lambda free, a, b: free[2],
    lambda free, a, b: max(free[3] - a, free[4] - b),
)
# Whether the first cut beside a block (a, b) in a rectangle (w, h) goes across.
SPLITS: tuple[Split, ...] = (
    lambda w, h, a, b: True,
    lambda w, h, a, b: w * (h - b) >= (w - a) * h,
    lambda w, h, a, b: w - a <= h - b,
    lambda w, h, a, b: w - a > h - b,
    lambda w, h, a, b: False,
    lambda w, h, a, b: w * (h - b) < (w - a) * h,
    lambda w, h, a, b: w < h,
    lambda w, h, a, b: w - a < h - b,
)


class Rules(NamedTuple):
    """One way to lay: numbers into `FITS` and `SPLITS`, the block, and three choices.

    `block`: 0 full rows, 1 one row, 2 one column, 3 a single piece. `bolt_last`:
    the bolt is opened, row by row, only for what fits nowhere else. `widest`: a
    run takes the widest free rectangle first, not the narrowest. `thrifty`: a
    run takes what is left beside other things before it opens a new row.
    `hand_first`: cloth on hand is used up before the bolt. `shares`: a crosswise
    run is divided into whole rows and short segments that share rows. `plenty`: the
    bolt is as long as all could need, whatever there is to beat.
    """

    fit: int = 0
    split: int = 1
    block: int = 0
    bolt_last: bool = True
    widest: bool = True
    thrifty: bool = True
    hand_first: bool = True
    shares: bool = False
    plenty: bool = False


class Packing(NamedTuple):
    """What was laid, the length of bolt it takes, and what found no room (item, count)."""

    laid: tuple[Laid, ...]
    used: int
    missing: tuple[tuple[int, int], ...]


def pack(
    task: Task, order: Sequence[int], rules: Rules, room: int, *, partial: bool = False
) -> Packing | None:
    """Lay the items in `order` on the boards and on `room` ticks of bolt.

    Items count the task's sizes, then its runs; a run is in the order once for each of
    its equal copies. None if something found no room,
    unless `partial` asks for what does fit.
    """
    table = _Table(task, rules, room)
    missing = []
    for item in order:
        left = table.lay(item)
        if left:
            if not partial:
                return None
            missing.append((item, left))
    used = max((laid.y + laid.along for laid in table.laid if laid.board == task.bolt), default=0)
    return Packing(tuple(table.laid), used, tuple(missing))


class _Table:
    """The cloths while they are being covered."""

    def __init__(self, task: Task, rules: Rules, room: int) -> None:
        self.task, self.rules, self.room = task, rules, room
        self.fit, self.split = FITS[rules.fit], SPLITS[rules.split]
        self.laid: list[Laid] = []
        self.free: list[Free] = [
            (number, 0, 0, board.across, board.along) for number, board in enumerate(task.boards)
        ]
        self.copies: dict[int, int] = {}
        self.top = 0
        self._last = task.bolt if rules.hand_first else -1  # the board used only at last
        if not rules.bolt_last and room > 0:
            self.free.append((task.bolt, 0, 0, task.width, room))
            self.top = room

    def lay(self, item: int) -> int:
        """Lay all pieces of a size, or the next copy of a run; how many found no room."""
        if item < len(self.task.sizes):
            return self._lay_size(item)
        self.copies[item] = copy = self.copies.get(item, 0) + 1
        return 0 if self._lay_run(item, copy) else 1

    def _lay_size(self, item: int) -> int:
        size = self.task.sizes[item]
        left = size.copies
        while left:
            found = self._best_free(size.shapes) or self._open_rows(size.shapes, left)
            if found is None:
                return left
            index, across, along = found
            left -= self._lay_block(item, index, across, along, left)
        return 0

    def _best_free(self, shapes: tuple[tuple[int, int], ...]) -> tuple[int, int, int] | None:
        best, found = None, None
        bolt, fit = self._last, self.fit
        for index, free in enumerate(self.free):
            for across, along in shapes:
                if across <= free[3] and along <= free[4]:
                    key = (free[0] == bolt, fit(free, across, along))
                    if best is None or key < best:
                        best, found = key, (index, across, along)
        return found

    def _open_rows(
        self, shapes: tuple[tuple[int, int], ...], count: int
    ) -> tuple[int, int, int] | None:
        """New rows across the whole bolt, for the shape that takes the least length."""
        width, room = self.task.width, self.room - self.top
        ways = []
        for across, along in shapes:
            abreast = width // across
            if abreast and along <= room:
                rows = max(1, min(count // abreast, room // along)) if self.rules.block == 0 else 1
                ways.append((along * -(-count // abreast), rows, across, along))
        if not ways:
            return None
        _, rows, across, along = min(ways)
        self._open(rows * along)
        return len(self.free) - 1, across, along

    def _open(self, along: int) -> None:
        self.free.append((self.task.bolt, 0, self.top, self.task.width, along))
        self.top += along

    def _lay_block(self, item: int, index: int, across: int, along: int, left: int) -> int:
        """Lay a block of one size in a free rectangle; how many pieces it holds."""
        board, x, y, w, h = self.free.pop(index)
        abreast, rows = self._block(min(left, w // across), min(left, h // along), left)
        turned = across != self.task.sizes[item].across
        for row in range(rows):
            for column in range(abreast):
                self.laid.append(
                    Laid(
                        item, 0, board, x + column * across, y + row * along, across, along, turned
                    )
                )
        self._leave(board, x, y, w, h, abreast * across, rows * along)
        return abreast * rows

    def _block(self, abreast: int, rows: int, left: int) -> tuple[int, int]:
        if self.rules.block == 0:
            return abreast, max(1, min(rows, left // abreast))
        if self.rules.block == 1:
            return abreast, 1
        return 1, rows if self.rules.block == 2 else 1

    def _leave(self, board: int, x: int, y: int, w: int, h: int, a: int, b: int) -> None:
        """What a block (a, b) in the near corner of a rectangle leaves free."""
        self._cut(board, x, y, w, h, a, b, crosswise=self.split(w, h, a, b))

    def _cut(
        self, board: int, x: int, y: int, w: int, h: int, a: int, b: int, *, crosswise: bool
    ) -> None:
        if w > a:
            self.free.append((board, x + a, y, w - a, b if crosswise else h))
        if h > b:
            self.free.append((board, x, y + b, w if crosswise else a, h - b))

    def _lay_run(self, item: int, copy: int) -> bool:
        """Lay one run from segments; False if it could not be finished."""
        strip = self.task.strips[item - len(self.task.sizes)]
        start, free, top = len(self.laid), list(self.free), self.top
        demand, segments = strip.demand, 0
        if self.rules.shares and strip.crosswise and self.task.bolt == 0:
            demand, segments = self._lay_shares(item, strip, copy)
        while segments == 0 or demand > 0:
            wanted = demand + strip.loss
            if segments:
                wanted = max(wanted, strip.shortest)
            slot = self._slot(strip, wanted)
            if slot is None:
                del self.laid[start:]
                self.free, self.top = free, top
                return False
            demand -= self._lay_segment(item, strip, copy, slot, wanted) - strip.loss
            segments += 1
        return True

    def _lay_shares(self, item: int, strip: Strip, copy: int) -> tuple[int, int]:
        """Lay a divided run as far as it goes: the demand that is left, and the segments."""
        width, alone = self.task.width, self.task.alone(self.task.width)
        whole, shared, _ = divided(strip, width, alone)
        demand, segments = strip.demand, 0
        for left in range(whole + shared, 0, -1):
            joined = strip.joined if whole + shared > 1 else 0
            least = most = min(width, max(joined, demand + strip.loss))
            if left <= shared and whole + shared > 1:
                least, most = next_shared(strip, demand, left, alone)
            slots = [
                (w > most, -w if w <= most else w, index)
                for index, (_, _, _, w, h) in enumerate(self.free)
                if w >= least and h >= strip.strip
            ]
            if not slots and self.top + strip.strip > self.room:
                break
            if not slots:
                self._open(strip.strip)
            slot = min(slots)[2] if slots else len(self.free) - 1, False
            demand -= self._lay_segment(item, strip, copy, slot, most) - strip.loss
            segments += 1
        return demand, segments

    def _slot(self, strip: Strip, wanted: int) -> tuple[int, bool] | None:
        """The free rectangle for the next segment, and whether it lies lengthwise in it.

        The one that finishes the run with the least left over, else the widest
        (or narrowest) that is any use, else a new row of the bolt.
        """
        best: tuple[bool, bool, int] | None = None
        found = None
        bolt, sign = self.task.bolt, -1 if self.rules.widest else 1
        least, anywhere = strip.least, strip.joined
        joined = anywhere if self.rules.thrifty else self.task.width
        for index, (board, _, _, w, h) in enumerate(self.free):
            for lengthwise, length, width in ((False, w, h), (True, h, w)):
                allowed = strip.lengthwise if lengthwise else strip.crosswise
                if not allowed or width < strip.strip or length < least:
                    continue
                enough = length >= wanted
                if not enough and length < (joined if board == bolt else anywhere):
                    continue
                key = (board == self._last, not enough, length if enough else sign * length)
                if best is None or key < best:
                    best, found = key, (index, lengthwise)
        return found or self._open_strip(strip, wanted)

    def _open_strip(self, strip: Strip, wanted: int) -> tuple[int, bool] | None:
        if self.top >= self.room:
            return None
        width = self.task.width
        useful = width >= min(wanted, strip.joined)
        if strip.crosswise and useful and strip.strip <= self.room - self.top:
            self._open(strip.strip)
            return len(self.free) - 1, False
        length = min(wanted, self.room - self.top)
        if strip.lengthwise and strip.strip <= width and length >= min(wanted, strip.joined):
            self._open(length)
            return len(self.free) - 1, True
        return None

    def _lay_segment(
        self, item: int, strip: Strip, copy: int, slot: tuple[int, bool], wanted: int
    ) -> int:
        """Lay one segment in a free rectangle; its length."""
        index, lengthwise = slot
        board, x, y, w, h = self.free.pop(index)
        length = min(wanted, h if lengthwise else w)
        across, along = (strip.strip, length) if lengthwise else (length, strip.strip)
        self.laid.append(Laid(item, copy, board, x, y, across, along, lengthwise))
        self._cut(board, x, y, w, h, across, along, crosswise=not lengthwise)
        return length
