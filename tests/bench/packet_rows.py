"""The packet's speed: a packet in a warm process, and one for each of a class of thirty."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from statistics import median
from time import process_time

from app.packet.choice import PacketChoice
from app.packet.packet import packet_bytes, packet_pages
from core.plan import make_plan
from core.project_file import load
from tests.bench.options import Options
from tests.bench.row import Row, milliseconds

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "assets" / "harbour-lights.crossgrain"
PAGES, SECONDS = 12, 0.5  # the bar: so many pages in so long
STUDENTS, CLASS_SECONDS, CLASS_MB = 30, 5.0, 300


def packet_rows(options: Options) -> Iterator[Row]:
    """Both rows; the class in a process of its own, whose memory is its own."""
    plan = make_plan(load(DEMO))
    count, size = max(3, options.edits // 10), len(packet_pages(plan))
    taken = median(_seconds(lambda: packet_bytes(plan)) for _ in range(count))
    share = taken * PAGES / size
    yield Row(
        f"packet of {size} pages, warm, CPU, median of {count}; for {PAGES} pages",
        f"{milliseconds(taken)}; {milliseconds(share)}",
        f"at most {milliseconds(SECONDS)}",
        share <= SECONDS,
    )
    seconds, megabytes = _class()
    yield Row(
        f"packets for {STUDENTS} students, CPU with the plan / most memory",
        f"{seconds:.1f} s / {megabytes:.0f} MB",
        f"at most {CLASS_SECONDS:.0f} s / {CLASS_MB} MB",
        seconds <= CLASS_SECONDS and megabytes <= CLASS_MB,
    )


def _seconds(act: Callable[[], object]) -> float:
    start = process_time()
    act()
    return process_time() - start


def _class() -> tuple[float, float]:
    """CPU seconds and megabytes of a process that writes a packet for each student."""
    done = subprocess.run(
        [sys.executable, "-m", "tests.bench.packet_rows"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    seconds, megabytes = map(float, done.stdout.split())
    return seconds, megabytes


def _write_class() -> None:
    """In the process of its own: say how long the packets took and how much memory it all had."""
    import resource  # not on every system

    names = tuple(f"Student {number}" for number in range(1, STUDENTS + 1))
    packet_bytes(make_plan(load(DEMO)), PacketChoice(names=names))
    kilobytes = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    print(process_time(), kilobytes / (1024 * 1024 if sys.platform == "darwin" else 1024))


if __name__ == "__main__":
    _write_class()
