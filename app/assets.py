"""Where the files of `assets/` lie: demo projects, fonts, icon."""

from __future__ import annotations

from pathlib import Path

from core.language import told

_HERE = Path(__file__).resolve().parent
_FOLDERS = (_HERE / "_assets", _HERE.parent / "assets")  # as installed by pip; in a checkout


def asset(name: str) -> Path:
    """Return the path of one file of `assets/`, such as `fonts/DejaVuSans.ttf`.

    >>> asset("fonts/DejaVuSans.ttf").suffix
    '.ttf'

    Raises:
        FileNotFoundError: there is no such file.
    """
    for folder in _FOLDERS:
        path = folder / name
        if path.exists():
            return path
    raise FileNotFoundError(
        told("assets/{name} is missing from this copy of Crossgrain", name=name)
    )
