"""What others make of the same problems: development packages that may be absent."""

from __future__ import annotations

from importlib import import_module
from importlib.util import find_spec
from time import perf_counter
from typing import Any

from tests.bench.published import Published

RULES = tuple(
    f"Guillotine{fit}{split}"
    for fit in ("Baf", "Blsf", "Bssf")
    for split in ("Sas", "Las", "Slas", "Llas", "Maxas", "Minas")
)
# None keeps the order in which the pieces come: the longest along first.
ORDERS = ("NONE", "AREA", "PERI", "DIFF", "SSIDE", "LSIDE", "RATIO")


def installed(name: str) -> bool:
    return find_spec(name) is not None


def rectpack_best(instance: Published) -> tuple[int, float]:
    """The shortest of all guillotine rules and orders of rectpack, and the time it took."""
    rectpack: Any = import_module("rectpack")
    start = perf_counter()
    tall = sum(along * copies for _, along, copies in instance.items)
    best = tall
    for rule in RULES:
        for order in ORDERS:
            packer = rectpack.newPacker(
                mode=rectpack.PackingMode.Offline,
                bin_algo=rectpack.PackingBin.BNF,
                pack_algo=getattr(rectpack, rule),
                sort_algo=getattr(rectpack, f"SORT_{order}"),
                rotation=False,
            )
            packer.add_bin(instance.width, tall)
            for across, along, copies in sorted(instance.items, key=lambda item: -item[1]):
                for _ in range(copies):
                    packer.add_rect(across, along)
            packer.pack()
            rects = packer.rect_list()
            if len(rects) == instance.pieces:
                best = min(best, max(y + height for _, _, y, _, height, _ in rects))
    return best, perf_counter() - start
