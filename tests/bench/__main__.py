"""`python3 -m tests.bench`: measures the lays and prints the table.

`--quick` runs in seconds; `--part quilts` (perfect, sets, doubling) one part only.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from time import perf_counter

from tests.bench import tables

QUICK_SETS = frozenset(
    [
        "SCP1",
        "SCP3",
        "SCP12",
        "C1P1",
        "C1P2",
        "C2P3",
        "N1",
        "N2",
        "ngcut1",
        "ngcut3",
        "gcut1",
        "KR01",
        "C4P1",
        "cs_ampl_book",
    ]
)
PARTS = ("quilts", "perfect", "sets", "doubling")


def rows(part: str, options: argparse.Namespace) -> Iterator[tables.Row]:
    quick, seed = options.quick, options.seed
    if part == "quilts":
        yield from tables.quilts(40 if quick else options.quilts, seed)
    elif part == "perfect":
        yield from tables.perfect(27 if quick else 135, seed, 0.5 if quick else 5.0)
    elif part == "sets":
        names = QUICK_SETS if quick else None
        for seconds in (0.1,) if quick else (0.1, options.seconds):
            yield from tables.sets(seconds, names)
    else:
        yield from tables.doubling(seed)


def main() -> None:
    parser = argparse.ArgumentParser(prog="python3 -m tests.bench", description=__doc__)
    parser.add_argument("--quick", action="store_true", help="a small choice, in seconds")
    parser.add_argument("--part", choices=PARTS, action="append", help="only this part")
    parser.add_argument("--quilts", type=int, default=300, help="how many real quilts")
    parser.add_argument("--seconds", type=float, default=10.0, help="for each published set")
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    start = perf_counter()
    for part in options.part or PARTS:
        for title, value in rows(part, options):
            print(f"{title:<72} {value}", flush=True)
    print(f"{'all of it':<72} {perf_counter() - start:.0f} s")


if __name__ == "__main__":
    main()
