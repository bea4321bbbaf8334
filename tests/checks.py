"""Every check: an early failure hides none of the others."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
# Runs beside those that come after it, and is told last.
BESIDE = {"mypy --strict": ("mypy", "--strict")}
CHECKS = {
    "ruff format": ("ruff", "format", "--check", "."),
    "ruff check": ("ruff", "check", "."),
    # A worker a core up to four: more of them wait for each other's Qt.
    "pytest": ("pytest", "--numprocesses=auto", "--maxprocesses=4", "--dist=worksteal"),
}


def run_all(pytest_arguments: Sequence[str]) -> int:
    """Run every check in the checkout; return 0 if all passed, else 1."""
    extra = {"pytest": tuple(pytest_arguments)}
    beside = {name: _started(*command) for name, command in BESIDE.items()}
    failed = [
        name
        for name, command in CHECKS.items()
        if not _passes(name, *command, *extra.get(name, ()))
    ]
    failed += [name for name, process in beside.items() if not _passed(name, process)]
    all_of_them = ", ".join((*CHECKS, *BESIDE))
    print(f"\nFailed: {', '.join(failed)}" if failed else f"\nAll pass: {all_of_them}")
    return 1 if failed else 0


def _passes(name: str, *command: str) -> bool:
    print(f"\n--- {name}", flush=True)
    return subprocess.run((sys.executable, "-m", *command), cwd=ROOT, check=False).returncode == 0


def _started(*command: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        (sys.executable, "-m", *command),
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )


def _passed(name: str, process: subprocess.Popen[str]) -> bool:
    """Whether it passed, once it has ended; what it said is printed."""
    said, _ = process.communicate()
    print(f"\n--- {name}\n{said}", end="", flush=True)
    return process.returncode == 0
