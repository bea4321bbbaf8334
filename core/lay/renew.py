"""Ruin and recreate: parts of a lay are taken up and laid again, towards a given length.

The bolt is made as long as one would like it; what finds no room stands aside.
Again and again a few neighbours are taken up, and all that is aside is laid
where it fits best, with a little chance in it. A change that leaves less area
aside, or the free area in larger pieces, is kept, a worse one at times (simulated
annealing), until nothing is aside. After J. Gardeyn and T. Wauters, "A
goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing
problem with guillotine constraints", arXiv:2508.19306.
"""

from __future__ import annotations

import math
from random import Random
from typing import Final

from core.lay.slabs import slabs
from core.lay.start import Packing
from core.lay.ticks import Laid, Strip, Task
from core.lay.tree import CUT, FREE, Node, Tree, from_slab

# So many things are taken up at most, at each step.
MOST_TAKEN: Final = 12
# How often the next to be taken up lies beside something free, and is taken with its neighbours.
BESIDE, HIGHER = 0.5, 0.6
# How often a place that fits is passed over.
BLINK: Final = 0.02
# The first and the last temperature, by the mean area of a thing.
HOT, COLD = 0.3, 0.005
# Steps of the first cooling; each is twice as long as the one before, up to the last.
FIRST_COOLING, LAST_COOLING = 500, 8000
# Ways to order what is aside, and how much chance there is in each; the first twice as often.
RANKS: Final = ((0, 0.3), (1, 0.2), (0, 0.3), (2, 0.2), (3, 0.3))
# What free area in one piece counts against area aside.
WHOLE: Final = 0.05


class Renewal:
    """One lay under change; pieces are counted by size, then every run for itself."""

    def __init__(self, task: Task, rng: Random) -> None:
        self.task, self.rng = task, rng
        self.shapes = [size.shapes for size in task.sizes]
        self.runs = [
            (item, copy, strip)
            for item, strip in enumerate(task.strips, len(task.sizes))
            for copy in range(1, strip.copies + 1)
        ]
        self.joined = [strip.joined for _, _, strip in self.runs]
        self.areas = [size.across * size.along for size in task.sizes]
        boxes = [size.shapes[0] for size in task.sizes]
        boxes += [(min(task.width, strip.needs), strip.strip) for _, _, strip in self.runs]
        self.ranks = (
            [across * along for across, along in boxes],
            [along for _, along in boxes],
            [across for across, _ in boxes],
            [across + along for across, along in boxes],
        )
        area = sum(size.across * size.along * size.copies for size in task.sizes)
        area += sum(strip.strip * strip.needs for _, _, strip in self.runs)
        rows = sum(1 + strip.needs // task.width for _, _, strip in self.runs)
        self.mean = area / max(1, rows + sum(size.copies for size in task.sizes))
        self.tree = Tree([Node(task.width, 1, None)])
        self.aside: list[int] = []
        self.owed: list[int] = []
        self.step, self.cooling, self.now = 0, FIRST_COOLING, 0.0

    def start_from(self, packing: Packing) -> None:
        """Begin with a complete lay."""
        things = {(item, copy): n for n, (item, copy, _) in enumerate(self.runs)}
        first = len(self.shapes)
        codes = [
            one.item if one.item < first else first + things[one.item, one.run_copy]
            for one in packing.laid
        ]
        roots = []
        sizes = [(board.across, board.along) for board in self.task.boards]
        for board, (across, along) in enumerate([*sizes, (self.task.width, packing.used)]):
            laid = [
                ((one.x, one.y, one.across, one.along), code)
                for one, code in zip(packing.laid, codes, strict=True)
                if one.board == board
            ]
            roots.append(from_slab(slabs((0, 0, across, along), laid)))
        self.tree, self.aside = Tree(roots), []
        self.owed = [strip.demand for _, _, strip in self.runs]
        for leaf in self.tree.leaves:
            if leaf.thing >= first:
                self.owed[leaf.thing - first] -= self._gain(leaf.thing, leaf.across, leaf.along)

    def aim(self, room: int) -> None:
        """Try for a bolt so long from now on."""
        self._put_aside(self.tree.resize_bolt(room))
        self._lay_aside(0.0)
        self.now = self._cost()
        self.step, self.cooling = 0, FIRST_COOLING

    @property
    def done(self) -> bool:
        """Whether everything is laid."""
        return not self.aside and all(owed <= 0 for owed in self.owed)

    @property
    def room(self) -> int:
        """The length that is aimed at."""
        return self.tree.bolt.along

    def steps(self, count: int) -> bool:
        """Make up to so many changes; whether everything is laid."""
        random = self.rng.random
        for _ in range(count):
            if not self.aside and self.done:
                return True
            mark = self.tree.mark()
            aside, owed = self.aside[:], self.owed[:]
            self._take_up(1 + int(random() * MOST_TAKEN))
            self._lay_aside(BLINK)
            cost = self._cost()
            if cost <= self.now or cost < self.now - self._heat() * math.log(random() or 0.5):
                self.now = cost
            else:
                self.tree.take_back(mark)
                self.aside, self.owed = aside, owed
            self.step += 1
            if self.step == self.cooling:
                self.step, self.cooling = 0, min(2 * self.cooling, LAST_COOLING)
        return self.done

    def packing(self) -> Packing:
        """The lay as it is."""
        laid: list[Laid] = []
        for board, root in enumerate(self.tree.roots):
            self._lay_out(root, board, 0, 0, laid)
        bolt = self.task.bolt
        used = max((one.y + one.along for one in laid if one.board == bolt), default=0)
        return Packing(tuple(laid), used, ())

    def _heat(self) -> float:
        share = self.step / self.cooling
        return self.mean * HOT * math.pow(COLD / HOT, share)

    def _cost(self) -> float:
        """Area aside, a little less where the free area lies in large pieces."""
        areas, runs = self.areas, self.runs
        cost = sum([areas[thing] for thing in self.aside])
        cost += sum(
            [r[2].strip * owed for r, owed in zip(runs, self.owed, strict=True) if owed > 0]
        )
        whole = sum([(cell.across * cell.along) ** 2 for cell in self.tree.free])
        sheet = self.tree.bolt.across * self.tree.bolt.along
        return cost - WHOLE * self.mean * whole * (sheet / self.mean) / sheet**2

    def _gain(self, thing: int, across: int, along: int) -> int:
        """What a segment adds to its run."""
        strip = self.runs[thing - len(self.shapes)][2]
        return (across if along == strip.strip and strip.crosswise else along) - strip.loss

    def _put_aside(self, removed: list[tuple[int, int, int]]) -> None:
        first = len(self.shapes)
        for thing, across, along in removed:
            if thing < first:
                self.aside.append(thing)
            else:
                self.owed[thing - first] += self._gain(thing, across, along)

    def _take_up(self, count: int) -> None:
        """Free nodes until so many things are taken up."""
        random, tree = self.rng.random, self.tree
        left = len(tree.leaves) - count
        while len(tree.leaves) > max(left, 0):
            if tree.free and random() < BESIDE:
                node = self._beside_free()
            else:
                node = list(tree.leaves)[int(random() * len(tree.leaves))]
                while node.up is not None and node.up.up is not None and random() < HIGHER:
                    node = node.up
            if node is not None:
                self._put_aside(tree.clear(node))

    def _beside_free(self) -> Node | None:
        """Something beside a free cell, whole or in part."""
        random = self.rng.random
        cell = list(self.tree.free)[int(random() * len(self.tree.free))]
        if cell.up is None:
            return None
        parts = [part for part in cell.up.parts if part is not cell]
        node = parts[int(random() * len(parts))]
        while node.thing == CUT and random() < 0.5:
            node = node.parts[int(random() * len(node.parts))]
        return None if node.thing == FREE else node

    def _lay_aside(self, blink: float) -> None:
        """Lay all that is aside where it fits best; the large first, by and large."""
        random = self.rng.random
        fit, left, failed = random(), [], set()
        for thing in self._order():
            if thing >= len(self.shapes):
                self._lay_run(thing, blink)
            elif thing in failed or not self._lay_piece(thing, fit, blink):
                failed.add(thing)
                left.append(thing)
        self.aside = left

    def _order(self) -> list[int]:
        """All that is aside by area, length, width or girth, with a little chance."""
        random, first = self.rng.random, len(self.shapes)
        kind, slip = RANKS[int(random() * len(RANKS))]
        ranks, least, waiting = self.ranks[kind], 1 - slip, self.aside
        if self.owed:
            waiting = waiting + [first + n for n, owed in enumerate(self.owed) if owed > 0]
        slip *= -2
        keyed = [(ranks[thing] * (slip * random() - least), thing) for thing in waiting]
        keyed.sort()
        return [thing for _, thing in keyed]

    def _lay_piece(self, thing: int, fit: float, blink: float) -> bool:
        random = self.rng.random
        best, found = 0.0, None
        for shape in self.shapes[thing]:
            across, along = shape
            for cell in self.tree.free:
                aside = cell.across - across
                if aside < 0:
                    continue
                behind = cell.along - along
                if behind < 0 or random() < blink:
                    continue
                if fit < 0.6:
                    cost: float = min(behind, aside)
                elif fit < 0.9:
                    cost = cell.across * cell.along
                else:
                    cost = aside + behind
                if not aside or not behind:
                    cost *= 0.5
                if found is None or cost < best:
                    best, found, laid = cost, cell, shape
        if found is None:
            return False
        across, along = laid
        wide, long = found.across, found.along
        crosswise = wide * (long - along) >= (wide - across) * long
        if random() < 0.1:
            crosswise = not crosswise
        self.tree.lay(found, thing, across, along, crosswise=crosswise)
        return True

    def _lay_run(self, thing: int, blink: float) -> None:
        """Lay segments until the run is whole or nothing free is any use."""
        run = thing - len(self.shapes)
        strip = self.runs[run][2]
        joined = self.joined[run]
        while (owed := self.owed[run]) > 0:
            wanted = owed + strip.loss
            least = min(joined, wanted)
            if owed < strip.demand:
                wanted, least = max(wanted, joined), joined
            slot = self._slot(strip, wanted, least, blink)
            if slot is None:
                return
            cell, lengthwise = slot
            length = min(wanted, cell.along if lengthwise else cell.across)
            across, along = (strip.strip, length) if lengthwise else (length, strip.strip)
            self.tree.lay(cell, thing, across, along, crosswise=not lengthwise)
            self.owed[run] -= length - strip.loss

    def _slot(
        self, strip: Strip, wanted: int, least: int, blink: float
    ) -> tuple[Node, bool] | None:
        """The free cell that a segment leaves least of, by its width and its length."""
        random, width = self.rng.random, strip.strip
        weight = (0.0, 0.1, 1.0)[int(3 * random())]
        best, found = math.inf, None
        for turned in (False,) * strip.crosswise + (True,) * strip.lengthwise:
            for cell in self.tree.free:
                spare, length = cell.along - width, cell.across
                if turned:
                    spare, length = cell.across - width, cell.along
                if spare >= 0 and length >= least and random() >= blink:
                    cost = spare + weight * abs(length - wanted)
                    if cost < best:
                        best, found = cost, (cell, turned)
        return found

    def _lay_out(self, node: Node, board: int, x: int, y: int, laid: list[Laid]) -> None:
        first = len(self.shapes)
        if node.thing >= first:
            item, copy, strip = self.runs[node.thing - first]
            turned = not (node.along == strip.strip and strip.crosswise)
            laid.append(Laid(item, copy, board, x, y, node.across, node.along, turned))
        elif node.thing >= 0:
            turned = node.across != self.task.sizes[node.thing].across
            laid.append(Laid(node.thing, 0, board, x, y, node.across, node.along, turned))
        for part in sorted(node.parts, key=lambda part: part.thing == FREE):
            self._lay_out(part, board, x, y, laid)
            if node.crosswise:
                y += part.along
            else:
                x += part.across
