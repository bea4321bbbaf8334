"""What one start needs, read off its command line: Python packages and, on Linux, libraries.

A headless command needs nothing but Python itself, and reportlab if it writes a PDF. The window
needs everything and a screen. The tests need everything, the `test` extra, and no screen.
"""

from __future__ import annotations

import operator
import re
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from app.first_run.telling import Stop
from core.language import told

ROOT = Path(__file__).resolve().parents[2]
HEADLESS = (
    "plan",
    "lay",
    "compare",
    "staircase",
    "reverse",
)  # as in app.commands, which is not read yet

# The libraries that Qt opens, each with the Debian and Ubuntu package that holds it. Found by
# adding one package at a time to a bare Debian 12 until Qt 6.11 started; the list it must agree
# with is https://doc.qt.io/qt-6/linux-requirements.html.
QT = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libxkbcommon.so.0": "libxkbcommon0",
}
QT_ON_X11 = {
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-shape.so.0": "libxcb-shape0",
}
QT_ON_WAYLAND = {
    "libwayland-client.so.0": "libwayland-client0",
    "libwayland-cursor.so.0": "libwayland-cursor0",
}
PDF_READERS = {"pdftotext": "poppler-utils", "pdftoppm": "poppler-utils"}


@dataclass(frozen=True, slots=True)
class Needs:
    """What a start needs: requirements as in pyproject.toml, and system parts with packages."""

    requirements: tuple[str, ...] = ()
    system: Mapping[str, str] = field(default_factory=dict)


def needs_of(module: str, argv: Sequence[str], environ: Mapping[str, str]) -> Needs:
    """Return what `python3 -m module argv` needs.

    Raises `Stop` for a window where there is no screen.
    """
    if module == "tests":
        return Needs(requirements("test"), {**QT, **PDF_READERS})
    if wants_window(argv):
        return Needs(requirements(), {**QT, **_screen_libraries(environ)})
    if draws(argv):
        return Needs(tuple(text for text in requirements() if text.startswith("reportlab")))
    return Needs()


def wants_window(argv: Sequence[str]) -> bool:
    """Whether a command line opens the window.

    >>> wants_window([]), wants_window(["harbour.crossgrain"])
    (True, True)
    >>> wants_window(["plan", "harbour.crossgrain"]), wants_window(["--help"])
    (False, False)
    """
    return not argv or argv[0] not in (*HEADLESS, "-h", "--help", "--version")


def draws(argv: Sequence[str]) -> bool:
    """Whether a headless command line draws, and so measures type: `--pdf OUT`, `--svg=DIR`."""
    return any(word.partition("=")[0] in ("--pdf", "--svg", "--png") for word in argv)


def in_checkout() -> bool:
    """Whether this is a checkout; what pip has installed has no pyproject.toml beside it."""
    return (ROOT / "pyproject.toml").is_file()


def requirements(extra: str = "", *, root: Path = ROOT) -> tuple[str, ...]:
    """Return pyproject.toml's dependencies, and an extra's; none outside a checkout."""
    path = root / "pyproject.toml"
    if not path.is_file():
        return ()
    import tomllib  # here and not above: most starts get by without

    project = tomllib.loads(path.read_text(encoding="utf-8"))["project"]
    extras = project["optional-dependencies"][extra] if extra else []
    return (*project["dependencies"], *extras)


def missing(wanted: Sequence[str]) -> tuple[str, ...]:
    """Return the requirements that the running Python does not meet."""
    return tuple(text for text in wanted if not _met(text))


def within(version: str, limits: str) -> bool:
    """Whether a version keeps to limits of the three kinds that pyproject.toml uses.

    >>> within("6.11.3", ">=6.8.3,<6.12"), within("6.12.0", ">=6.8.3,<6.12")
    (True, False)
    >>> within("9.2.0", "")
    True
    """
    tests = {">=": operator.ge, "<": operator.lt, "==": operator.eq}
    return all(
        tests[sign](_numbers(version), _numbers(limit))
        for sign, limit in re.findall(r"(>=|<|==)([\d.]+)", limits)
    )


def _met(requirement: str) -> bool:
    from importlib import metadata  # 20 ms that a plan without paper is spared

    name = re.split("[<>=]", requirement, maxsplit=1)[0]
    try:
        version = metadata.version(name)
    except metadata.PackageNotFoundError:
        return False
    return within(version, requirement[len(name) :])


def _numbers(version: str) -> tuple[int, ...]:
    return tuple(int(number) for number in re.findall(r"\d+", version))


def _screen_libraries(environ: Mapping[str, str]) -> Mapping[str, str]:
    if not sys.platform.startswith("linux"):
        return {}
    chosen = environ.get("QT_QPA_PLATFORM", "").partition(":")[0].partition(";")[0]
    if chosen.startswith("wayland"):
        return QT_ON_WAYLAND
    if chosen:
        return QT_ON_X11 if chosen == "xcb" else {}
    if environ.get("DISPLAY"):
        return QT_ON_X11
    if environ.get("WAYLAND_DISPLAY"):
        return QT_ON_WAYLAND
    program = "python3 -m app" if in_checkout() else "crossgrain"
    raise Stop(
        told(
            "There is no screen here for the window (neither DISPLAY nor WAYLAND_DISPLAY is set); "
            "for the plan without a window, run: {program} plan FILE --pdf OUT.pdf",
            program=program,
        )
    )
