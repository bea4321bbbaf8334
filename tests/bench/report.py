"""The table as text, JSON and Markdown, with what it was measured on."""

from __future__ import annotations

import argparse
import json
import os
import platform
import sys
from collections.abc import Sequence
from dataclasses import asdict
from datetime import date
from pathlib import Path

from core.whole_file import write_whole
from tests.bench.rivals import versions
from tests.bench.row import Row

ABOUT = (
    "Written by the command, not by hand. All times and time limits are CPU seconds of one "
    "process (CP-SAT: of all its workers together), so that other work on the machine does not "
    "distort them. Every lay passed the checker. “Met” speaks of the bar beside it; a row "
    "without a bar is there to know. `--json` also writes out the problems worth a look."
)


def conditions(command: str) -> dict[str, str]:
    """What was run, when, on what."""
    return {
        "command": command,
        "date": date.today().isoformat(),
        "machine": f"{_processor()}, {os.cpu_count()} cores, {platform.system()}",
        "versions": f"Python {platform.python_version()}, {versions()}",
    }


def _processor() -> str:
    """The processor's name, as far as the system tells it."""
    cpuinfo = Path("/proc/cpuinfo")
    if cpuinfo.exists():
        for line in cpuinfo.read_text(encoding="utf-8").splitlines():
            if line.startswith("model name"):
                return line.partition(":")[2].strip()
    return platform.processor() or platform.machine()


def line(row: Row) -> str:
    """One row for the terminal."""
    bar = f"   [{row.verdict}: {row.bar}]" if row.bar else ""
    problem = f"\n    {row.problem}" if row.problem else ""
    return f"{row.title:<72} {row.measured}{bar}{problem}"


def markdown(about: dict[str, str], rows: Sequence[Row]) -> str:
    """The whole table, as it is kept."""
    head = ["# Measured", "", ABOUT, ""]
    head += [f"* {key}: {value}" for key, value in about.items()]
    table = ["", "| what | measured | bar | is it met | CPU s |", "|---|---|---|---|---|"]
    for row in rows:
        seconds = "" if row.seconds is None else f"{row.seconds:.0f}"
        cells = (row.title, row.measured, row.bar, row.verdict, seconds)
        table.append(f"| {' | '.join(cell.replace('|', '/') for cell in cells)} |")
    return "\n".join([*head, *table, ""])


def write(path_json: str | None, path_markdown: str | None, rows: Sequence[Row]) -> None:
    """Write what is known so far, each file whole."""
    about = conditions(command(sys.argv[1:]))
    if path_json:
        document = {**about, "rows": [asdict(row) for row in rows]}
        text = json.dumps(document, indent=1, ensure_ascii=False)
        write_whole(Path(path_json), text.encode())
    if path_markdown:
        write_whole(Path(path_markdown), markdown(about, rows).encode())


def command(words: Sequence[str]) -> str:
    """The command line without the places it writes to.

    >>> command(["--jobs", "2", "--json", "out.json", "--markdown=out.md"])
    'python3 -m tests.bench --jobs 2'
    """
    parser = argparse.ArgumentParser(allow_abbrev=False, add_help=False)
    parser.add_argument("--json")
    parser.add_argument("--markdown")
    _, kept = parser.parse_known_args(words)
    return " ".join(["python3 -m tests.bench", *kept])
