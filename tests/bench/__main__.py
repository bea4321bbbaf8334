"""`python3 -m tests.bench`: measures the lays against their bars and prints the table.

`--quick` runs in seconds; the whole takes three quarters of an hour with `--jobs 2`. `rectpack`
and `ortools` are asked for comparison if they are installed.
"""

from __future__ import annotations

import argparse
from collections.abc import Callable, Iterator
from dataclasses import replace
from time import perf_counter

from tests.bench import report
from tests.bench.compare_rows import compare_rows
from tests.bench.doubling_rows import doubling_rows
from tests.bench.options import QUICK, Options
from tests.bench.packet_rows import packet_rows
from tests.bench.perfect_rows import perfect_rows
from tests.bench.program_rows import program_rows
from tests.bench.quilt_rows import quilt_rows
from tests.bench.row import Row
from tests.bench.set_rows import set_rows
from tests.bench.tiny_rows import tiny_rows
from tests.bench.window_rows import window_rows

UNSEEN = 100  # added to the seed: quilts that nobody has looked at


def _unseen_rows(options: Options) -> Iterator[Row]:
    return quilt_rows(replace(options, seed=options.seed + UNSEEN))


PARTS: dict[str, Callable[[Options], Iterator[Row]]] = {
    "program": program_rows,
    "window": window_rows,
    "packet": packet_rows,
    "compare": compare_rows,
    "quilts": quilt_rows,
    "unseen": _unseen_rows,
    "perfect": perfect_rows,
    "doubling": doubling_rows,
    "tiny": tiny_rows,
    "sets": set_rows,
}


def main() -> None:
    arguments = _arguments()
    options = _options(arguments)
    start = perf_counter()
    rows: list[Row] = []
    for part in arguments.part or PARTS:
        for row in PARTS[part](options):
            rows.append(row)
            print(report.line(row), flush=True)
            report.write(arguments.json, arguments.markdown, rows)
    rows.append(Row("all of it, by the clock on the wall", f"{perf_counter() - start:.0f} s"))
    print(report.line(rows[-1]))
    report.write(arguments.json, arguments.markdown, rows)


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python3 -m tests.bench", description=__doc__)
    add = parser.add_argument
    add("--quick", action="store_true", help="a small choice, in seconds")
    add("--part", choices=list(PARTS), action="append", help="only this part; may be repeated")
    add("--jobs", type=int, default=1, help="processes at once")
    add("--seed", type=int, default=1, help="of quilts, perfect cuts and tiny problems")
    add("--quilts", type=int, help="how many real quilts")
    add("--seconds", type=float, help="CPU seconds for each published set")
    add("--cpsat-seconds", type=float, help="seconds of each CP-SAT worker for each quilt")
    add("--cpsat-all", action="store_true", help="CP-SAT on every quilt proved least, too")
    add("--json", metavar="OUT", help="write the table as JSON")
    add("--markdown", metavar="OUT", help="write the table as Markdown")
    return parser.parse_args()


def _options(arguments: argparse.Namespace) -> Options:
    given = {
        name: value
        for name in ("quilts", "seconds", "cpsat_seconds", "cpsat_all", "seed", "jobs")
        if (value := getattr(arguments, name)) is not None
    }
    return replace(QUICK if arguments.quick else Options(), **given)


if __name__ == "__main__":
    main()
