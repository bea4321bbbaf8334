"""Which version this copy is."""

from __future__ import annotations

from core.language import told


def version_text() -> str:
    """The installed version, or that this is a checkout."""
    from importlib.metadata import PackageNotFoundError, version  # slow, and rarely needed

    try:
        return version("crossgrain")
    except PackageNotFoundError:
        return told("from a checkout")
