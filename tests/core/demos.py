"""The demo projects."""

from __future__ import annotations

from pathlib import Path

from core.project_file import load
from core.quilt import Project

ASSETS = Path(__file__).resolve().parents[2] / "assets"
DEMOS = ("harbour-lights", "tide-pool-runner")


def demo_path(name: str) -> Path:
    return ASSETS / f"{name}.crossgrain"


def demo(name: str) -> Project:
    return load(demo_path(name))
