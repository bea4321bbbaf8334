"""Rows for the whole program: planning a demo, cold and warm, and what it needs."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from statistics import median
from time import process_time

from core.plan import make_plan
from core.project_file import load
from tests.bench.options import Options
from tests.bench.row import Row, milliseconds

ROOT = Path(__file__).resolve().parents[2]
DEMO = Path("assets") / "harbour-lights.crossgrain"
TIMES = 5


def program_rows(options: Options) -> Iterator[Row]:
    """The command as a person runs it, each time a new process; then plans in this one."""
    del options  # always the same demo
    yield from _command_rows()
    warm = [_planned() for _ in range(TIMES)]
    yield Row(
        f"{DEMO.name} planned in this process: first / median of {TIMES}",
        f"{milliseconds(warm[0])} / {milliseconds(median(warm))}",
        seconds=sum(warm),
    )


def _planned() -> float:
    start = process_time()
    make_plan(load(ROOT / DEMO))
    return process_time() - start


def _command_rows() -> Iterator[Row]:
    plan = ["app", "plan", str(DEMO), "--json", "-"]
    runs, bare = ([_run(words) for _ in range(TIMES)] for words in (plan, []))
    cold, start = (median(seconds for seconds, _ in some) for some in (runs, bare))
    yield Row(
        f"`python3 -m {' '.join(plan)}`, cold: median of {TIMES} / a bare Python",
        f"{milliseconds(cold)} / {milliseconds(start)}: {cold / start:.1f} times",
        seconds=sum(seconds for seconds, _ in runs + bare),
    )
    most, little = (max(memory for _, memory in some) for some in (runs, bare))
    yield Row(
        "… memory at its peak / a bare Python's",
        f"{most / 1024:.0f} MiB / {little / 1024:.0f} MiB" if most else "not told by this system",
    )


# Run a module as `python3 -m` does, then say what the process used: CPU seconds, peak memory.
# The peak is the kernel's own figure for this program alone, which only Linux gives.
SCRIPT = """
import sys
del sys.argv[0]
if sys.argv:
    import runpy
    try:
        runpy.run_module(sys.argv[0], run_name="__main__", alter_sys=True)
    except SystemExit as end:
        if end.code:
            raise
import time
used = time.process_time()
peak = "0"
if sys.platform == "linux":
    with open("/proc/self/status") as status:
        [peak] = [line.split()[1] for line in status if line.startswith("VmHWM")]
print(used, peak, file=sys.stderr)
"""


def _run(words: list[str]) -> tuple[float, int]:
    """CPU seconds and peak memory (KiB, 0 if not known) of a new Python; raises if it fails."""
    ended = subprocess.run(
        [sys.executable, "-c", SCRIPT, *words], cwd=ROOT, capture_output=True, check=True
    )
    seconds, peak = ended.stderr.split()[-2:]
    return float(seconds), int(peak)
