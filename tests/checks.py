"""Every check, one after the other: an early failure hides none of the later ones."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
CHECKS = {
    "ruff format": ("ruff", "format", "--check", "."),
    "ruff check": ("ruff", "check", "."),
    "mypy --strict": ("mypy", "--strict"),
    # A worker a core up to four: more of them wait for each other's Qt.
    "pytest": ("pytest", "--numprocesses=auto", "--maxprocesses=4", "--dist=worksteal"),
}


def run_all(pytest_arguments: Sequence[str]) -> int:
    """Run every check in the checkout; return 0 if all passed, else 1."""
    extra = {"pytest": tuple(pytest_arguments)}
    failed = [
        name
        for name, command in CHECKS.items()
        if not _passes(name, *command, *extra.get(name, ()))
    ]
    print(f"\nFailed: {', '.join(failed)}" if failed else f"\nAll pass: {', '.join(CHECKS)}")
    return 1 if failed else 0


def _passes(name: str, *command: str) -> bool:
    print(f"\n--- {name}", flush=True)
    return subprocess.run((sys.executable, "-m", *command), cwd=ROOT, check=False).returncode == 0
