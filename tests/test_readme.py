"""The README's worked example is what the program says."""

from __future__ import annotations

import re
from pathlib import Path

from app.assets import asset
from app.commands.summary import summary
from core.plan import make_plan
from core.project_file import load

ROOT = Path(__file__).resolve().parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_worked_example_is_the_demo_s_summary() -> None:
    example = README.split("## A worked example")[1].split("```")[1].strip()
    assert example == summary(make_plan(load(asset("harbour-lights.crossgrain"))))


def test_every_file_that_the_readme_names_is_there() -> None:
    named = re.findall(r"`?(assets/[\w./-]+)", README)
    assert named
    assert [name for name in named if not (ROOT / name).exists()] == []
