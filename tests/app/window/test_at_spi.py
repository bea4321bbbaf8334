"""The running window as a screen reader on Linux finds it, over the desktop's own bus.

Runs where AT-SPI is to be had: a bus, a virtual screen, the registry and the system's
Python with its binding (Debian: dbus, xvfb, at-spi2-core, python3-pyatspi).
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[3]
CLIENT = Path(__file__).with_name("at_spi_client.py")
SYSTEM_PYTHON = "/usr/bin/python3"
SECONDS = 60
# The program in the background, the client in front; the program ends with the bus.
SESSION = '"$0" -m app & "$1" "$2" Crossgrain "$3"; kill %1; wait'
CONTROLS = {
    "push button", "check box", "combo box", "spin button", "text", "table", "page tab",
    "page tab list", "menu item",
}  # fmt: skip


def lacking() -> str:
    """What is not there for this test, or nothing."""
    if not sys.platform.startswith("linux"):
        return "AT-SPI is Linux's"
    for tool in ("dbus-run-session", "xvfb-run"):
        if shutil.which(tool) is None:
            return f"{tool} is not installed"
    asked = [SYSTEM_PYTHON, "-c", "import pyatspi"]
    if not Path(SYSTEM_PYTHON).exists() or subprocess.run(asked, capture_output=True).returncode:
        return "the system's Python has no pyatspi"
    return ""


@pytest.fixture(scope="module")
def tree(tmp_path_factory: pytest.TempPathFactory) -> list[dict[str, object]]:
    """The things in the window on the demo, as the bus tells them."""
    if reason := lacking():
        pytest.skip(reason)
    home = str(tmp_path_factory.mktemp("home"))
    settings = {"XDG_CONFIG_HOME": home, "XDG_DATA_HOME": home, "QT_QPA_PLATFORM": "xcb"}
    asked = {"QT_ACCESSIBILITY": "1", "QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1"}
    bus = ("xvfb-run", "-a", "-s", "-screen 0 1280x800x24", "dbus-run-session", "--")
    said = (sys.executable, SYSTEM_PYTHON, str(CLIENT), str(SECONDS))
    run = subprocess.run(
        [*bus, "bash", "-c", SESSION, *said],
        env={**os.environ, **settings, **asked},
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=3 * SECONDS,
        check=False,
    )
    found: list[dict[str, object]] = json.loads(run.stdout.strip().splitlines()[-1])
    assert found, run.stderr
    return found


def test_the_window_is_on_the_bus_with_all_its_controls(tree: list[dict[str, object]]) -> None:
    controls = [one for one in tree if one["role"] in CONTROLS]
    assert len(controls) > 30
    assert [one for one in controls if not one["name"]] == []


def test_what_may_have_the_focus_has_a_name(tree: list[dict[str, object]]) -> None:
    reached = [one for one in tree if one["focusable"] and one["role"] != "table cell"]
    assert [one for one in reached if not one["name"] and one["role"] != "filler"] == []


def test_a_field_is_heard_with_its_value(tree: list[dict[str, object]]) -> None:
    values = {one["name"]: one["text"] for one in tree if one["role"] in ("spin button", "text")}
    assert values["Quilt: Width"] == "48 1/2 in"
    assert values["Quilt: Name"] == "Harbour Lights"


def test_the_plan_is_heard_with_every_part_to_cut(tree: list[dict[str, object]]) -> None:
    cells = {one["name"] for one in tree if one["role"] == "table cell"}
    assert {"A", "B", "C", "D", "E", "F", "G", "H", "J"} <= cells
    assert {"night sky", "lamp gold", "tide stripe"} <= cells
