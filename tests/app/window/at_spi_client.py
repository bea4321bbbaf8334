"""A screen reader's view of a running program, as JSON; run by the system's own Python.

Python's binding of AT-SPI comes with the system and not from an index, so it is
imported only when this file is run, and nothing of the project's is. Called with the
program's name and the seconds to wait.
"""

from __future__ import annotations

import json
import sys
import time
from collections.abc import Iterator
from typing import Any

DEEPEST = 40
SETTLED = 2.0  # seconds between two looks that must find as many things


class Reader:
    """Walks a program's tree with the binding, `spi`."""

    def __init__(self, spi: Any) -> None:  # noqa: ANN401 - the binding has no types
        self.spi = spi

    def program(self, name: str, deadline: float) -> Any:  # noqa: ANN401
        """The program's root, once it has a window; None if it has none in time."""
        while time.monotonic() < deadline:
            for root in self.spi.Registry.getDesktop(0):
                if root is not None and root.name == name and root.childCount:
                    return root
            time.sleep(0.3)
        return None

    def walk(self, node: Any, depth: int = 0) -> Iterator[dict[str, object]]:  # noqa: ANN401
        """Everything that is not hidden, from the outside in."""
        state = node.getState()
        if depth > DEEPEST or not state.contains(self.spi.STATE_VISIBLE):
            return
        yield {
            "role": node.getRoleName(),
            "name": node.name or self.label(node),
            "focusable": state.contains(self.spi.STATE_FOCUSABLE),
            "text": self.text(node),
        }
        for place in range(node.childCount):
            child = node.getChildAtIndex(place)
            if child is not None:
                yield from self.walk(child, depth + 1)

    def label(self, node: Any) -> str:  # noqa: ANN401
        """The words of the label that a thing is told to have."""
        for relation in node.getRelationSet():
            if relation.getRelationType() == self.spi.RELATION_LABELLED_BY:
                return str(relation.getTarget(0).name)
        return ""

    def text(self, node: Any) -> str | None:  # noqa: ANN401
        """What is written in a field; None where nothing is."""
        try:
            return str(node.queryText().getText(0, -1))
        except NotImplementedError:
            return None


def main(name: str, seconds: float) -> None:
    import pyatspi  # type: ignore[import-not-found]

    reader, deadline = Reader(pyatspi), time.monotonic() + seconds
    root = reader.program(name, deadline)
    found: list[dict[str, object]] = []
    before = -1
    while root is not None and len(found) != before and time.monotonic() < deadline:
        before = len(found)
        time.sleep(SETTLED)
        found = [one for window in root for one in reader.walk(window)]
    print(json.dumps(found))


if __name__ == "__main__":
    main(sys.argv[1], float(sys.argv[2]))
