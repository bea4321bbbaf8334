"""The Qt that is installed works with this Python."""

from __future__ import annotations

import subprocess
import sys

# PySide6-Essentials 6.12.0 for Linux on Python 3.10 and 3.11: each call that returns nothing
# loses one reference to None, and after some thousands Python aborts with "none_dealloc".
# Measured: 1,000 lost in 1,000 calls with 6.12.0; none with 6.8.3 to 6.11.3.
THOUSAND_CALLS = """
import sys
from PySide6.QtGui import QPen
pen = QPen()
before = sys.getrefcount(None)
for _ in range(1000):
    pen.setWidthF(1.0)
print(before - sys.getrefcount(None))
"""


def test_calls_into_qt_lose_no_reference_to_none() -> None:
    command = [sys.executable, "-c", THOUSAND_CALLS]
    lost = subprocess.run(command, check=True, capture_output=True, text=True).stdout
    assert int(lost) < 500
