"""A lay as a tree of cuts that can be changed in place, and every change taken back.

A node is a rectangle of cloth: free, one thing (a piece or segment), or cut one
way into parts. The parts of a node may lie in any order, so all that is free
among them is one part. Whatever is done here, the lay stays guillotine.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from core.lay.lay import Direction
from core.lay.slabs import Slab

FREE: Final = -1
CUT: Final = -2
Removed = tuple[int, int, int]  # thing, across, along


class Node:
    """A rectangle; `thing` counts what lies on it, or is `FREE` or `CUT` (crosswise or not)."""

    __slots__ = ("across", "along", "crosswise", "parts", "thing", "up")

    def __init__(self, across: int, along: int, up: Node | None, thing: int = FREE) -> None:
        self.across, self.along, self.up, self.thing = across, along, up, thing
        self.crosswise = False
        self.parts: tuple[Node, ...] = ()


class Mark(NamedTuple):
    """What was free and laid at some moment."""

    free: dict[Node, None]
    leaves: dict[Node, None]


class Tree:
    """The sheets, each a tree, the bolt last; dictionaries without values keep the order."""

    def __init__(self, roots: Sequence[Node]) -> None:
        self.roots = list(roots)
        self.free: dict[Node, None] = {}
        self.leaves: dict[Node, None] = {}
        for root in roots:
            for node in _ends(root):
                (self.free if node.thing == FREE else self.leaves)[node] = None
        self._log: list[tuple[Node, int, int, Node | None, bool, tuple[Node, ...], int]] = []

    @property
    def bolt(self) -> Node:
        return self.roots[-1]

    def mark(self) -> Mark:
        """From here on every change can be taken back."""
        self._log.clear()
        return Mark(dict(self.free), dict(self.leaves))

    def take_back(self, mark: Mark) -> None:
        """All changes since the last mark."""
        for node, across, along, up, crosswise, parts, thing in reversed(self._log):
            node.across, node.along, node.up = across, along, up
            node.crosswise, node.parts, node.thing = crosswise, parts, thing
        self._log.clear()
        self.free, self.leaves = mark

    def _save(self, node: Node) -> None:
        now = node.across, node.along, node.up, node.crosswise, node.parts, node.thing
        self._log.append((node, *now))

    def clear(self, node: Node) -> list[Removed]:
        """Free a node, with what is free beside it; what lay there."""
        removed = []
        for end in _ends(node):
            if end.thing == FREE:
                self.free.pop(end, None)
            else:
                removed.append((end.thing, end.across, end.along))
                del self.leaves[end]
        while True:
            self._save(node)
            node.thing, node.parts = FREE, ()
            up = node.up
            mate = None if up is None else _free_beside(up, node)
            if up is None or mate is None:
                self.free[node] = None
                return removed
            rest = tuple([part for part in up.parts if part is not node])
            if len(rest) > 1:
                self._save(up)
                self._save(mate)
                up.parts = rest
                if up.crosswise:
                    mate.along += node.along
                else:
                    mate.across += node.across
                return removed
            del self.free[mate]
            node = up

    def lay(self, cell: Node, thing: int, across: int, along: int, *, crosswise: bool) -> None:
        """Lay a thing in a free cell's corner; the first of two cuts goes `crosswise` or not."""
        self._save(cell)
        if along == cell.along and across == cell.across:
            del self.free[cell]
            cell.thing = thing
            self.leaves[cell] = None
        elif across == cell.across:
            self.leaves[self._cut_off(cell, along, thing, crosswise=True)] = None
        elif along == cell.along:
            self.leaves[self._cut_off(cell, across, thing, crosswise=False)] = None
        elif crosswise:
            row = self._cut_off(cell, along, CUT, crosswise=True)
            self._two(row, Node(across, along, row, thing), Node(row.across - across, along, row))
        else:
            row = self._cut_off(cell, across, CUT, crosswise=False)
            self._two(row, Node(across, along, row, thing), Node(across, row.along - along, row))

    def _two(self, node: Node, leaf: Node, rest: Node) -> None:
        node.crosswise = leaf.across == rest.across == node.across
        node.parts = leaf, rest
        self.leaves[leaf] = None
        self.free[rest] = None

    def _cut_off(self, cell: Node, size: int, thing: int, *, crosswise: bool) -> Node:
        """A new node of a cell's near end; the rest of it stays free."""
        up = cell.up
        if up is not None and up.crosswise == crosswise:
            self._save(up)
            new, rest = Node(cell.across, cell.along, up, thing), cell
            up.parts = (*up.parts, new)
        else:
            new = Node(cell.across, cell.along, cell, thing)
            rest = Node(cell.across, cell.along, cell)
            cell.thing, cell.crosswise, cell.parts = CUT, crosswise, (new, rest)
            del self.free[cell]
            self.free[rest] = None
        if crosswise:
            new.along = size
            rest.along -= size
        else:
            new.across = size
            rest.across -= size
        return new

    def resize_bolt(self, along: int) -> list[Removed]:
        """Make the bolt so long; what had to go, the shortest rows first. Cannot be taken back."""
        removed: list[Removed] = []
        while along < self.bolt.along:
            removed += self._shorten(self.bolt.along - along)
        if along > self.bolt.along:
            self._lengthen(along - self.bolt.along)
        self._log.clear()
        return removed

    def _shorten(self, less: int) -> list[Removed]:
        root = self.bolt
        spare = next((part for part in root.parts if part.thing == FREE), None)
        if root.thing == FREE:
            root.along -= less
        elif not root.crosswise:
            return self.clear(root)
        elif spare is None or spare.along <= less:
            laid = [part for part in root.parts if part is not spare]
            return self.clear(min(laid, key=lambda part: part.along))
        else:
            spare.along -= less
            root.along -= less
        return []

    def _lengthen(self, more: int) -> None:
        root = self.bolt
        if root.thing == FREE:
            root.along += more
            return
        if not root.crosswise:
            whole = Node(root.across, root.along, None, CUT)
            whole.crosswise, whole.parts, root.up = True, (root,), whole
            self.roots[-1] = root = whole
        spare = next((part for part in root.parts if part.thing == FREE), None)
        if spare is None:
            spare = Node(root.across, 0, root)
            root.parts = (*root.parts, spare)
            self.free[spare] = None
        spare.along += more
        root.along += more


def _ends(node: Node) -> list[Node]:
    """The nodes that are not cut any further, in order."""
    if node.thing != CUT:
        return [node]
    ends: list[Node] = []
    for part in node.parts:
        if part.thing == CUT:
            ends += _ends(part)
        else:
            ends.append(part)
    return ends


def _free_beside(up: Node, node: Node) -> Node | None:
    for part in up.parts:
        if part.thing == FREE and part is not node:
            return part
    return None


def from_slab(slab: Slab[int], up: Node | None = None) -> Node:
    """The tree of a finished lay; all waste among the parts of a slab becomes one."""
    node = Node(int(slab.box[2]), int(slab.box[3]), up, FREE if slab.thing is None else slab.thing)
    laid = [part for part in slab.parts if not part.waste]
    if laid:
        node.thing, node.crosswise = CUT, slab.direction is Direction.CROSSWISE
        node.parts = tuple(from_slab(part, node) for part in laid)
        sides = [part.along if node.crosswise else part.across for part in node.parts]
        spare = (node.along if node.crosswise else node.across) - sum(sides)
        if spare:
            size = (node.across, spare) if node.crosswise else (spare, node.along)
            node.parts = (*node.parts, Node(*size, node))
    return node
