"""What the first run tells the person, always on standard error.

Standard output stays free: a plan's JSON goes there.
"""

from __future__ import annotations

import sys


class Stop(Exception):
    """The start cannot go on: one sentence that says why and what to do."""


def say(line: str) -> None:
    """Print one line to standard error, at once."""
    print(line, file=sys.stderr, flush=True)
