"""The commands that need no window, by name. None of them imports Qt."""

from __future__ import annotations

import argparse
from typing import Protocol

from app.commands import compare, lay, plan, reverse, staircase


class Command(Protocol):
    """A command's module: a line of help, its arguments, and what it does."""

    HELP: str

    def add_arguments(self, parser: argparse.ArgumentParser) -> None: ...

    def run(self, arguments: argparse.Namespace) -> int: ...


COMMANDS: dict[str, Command] = {
    "plan": plan,
    "lay": lay,
    "compare": compare,
    "staircase": staircase,
    "reverse": reverse,
}
