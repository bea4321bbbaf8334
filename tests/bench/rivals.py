"""What others make of the same problems: development packages that may be absent.

rectpack's rules run without merging free rectangles: merged ones can lead to
lays that no edge-to-edge cuts take apart.
"""

from __future__ import annotations

from collections.abc import Iterator
from importlib import import_module
from importlib.metadata import version
from importlib.util import find_spec
from itertools import product
from time import process_time
from typing import Any

from tests.bench.guillotine import is_guillotine
from tests.bench.published import Published

RULES = tuple(
    f"Guillotine{fit}{split}"
    for fit in ("Baf", "Blsf", "Bssf")
    for split in ("Sas", "Las", "Slas", "Llas", "Maxas", "Minas")
)
# The eighth order is ours, the longest along the cloth first; NONE is the order of the file.
ORDERS = ("NONE", "AREA", "PERI", "DIFF", "SSIDE", "LSIDE", "RATIO", "ALONG")
PACKS = len(RULES) * len(ORDERS)
Rect = tuple[int, int]
Package = Any  # rectpack has no types, and may be absent


def installed(name: str) -> bool:
    return find_spec(name) is not None


def versions() -> str:
    """The rivals and their versions, in words."""
    return ", ".join(
        f"{name} {version(name)}" if installed(name) else f"{name} not installed"
        for name in ("rectpack", "ortools")
    )


def rectpack_best(instance: Published) -> tuple[int, float]:
    """The shortest of rectpack's 144 guillotine packs, and their CPU time together."""
    start = process_time()
    best = min(_packs(instance))
    return best, process_time() - start


def _packs(instance: Published) -> Iterator[int]:
    rectpack: Package = import_module("rectpack")
    rects = [(across, along) for across, along, copies in instance.items for _ in range(copies)]
    tall = sum(along for _, along in rects)
    for rule, order in product(RULES, ORDERS):
        pack = getattr(rectpack, rule)(instance.width, tall, rot=False, merge=False)
        for across, along in _sorted(rectpack, order, rects):
            pack.add_rect(across, along)
        boxes = [(one.x, one.y, one.width, one.height) for one in pack]
        if len(boxes) == len(rects) and is_guillotine(boxes):
            yield max(y + along for _, y, _, along in boxes)


def _sorted(rectpack: Package, order: str, rects: list[Rect]) -> list[Rect]:
    if order == "ALONG":
        return sorted(rects, key=lambda rect: -rect[1])
    return list(getattr(rectpack, f"SORT_{order}")(rects))
