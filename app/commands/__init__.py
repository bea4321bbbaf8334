"""The commands that need no window, by name. None of them imports Qt."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Protocol, cast

if TYPE_CHECKING:
    import argparse

NAMES = ("plan", "lay", "compare", "staircase", "reverse")


class Command(Protocol):
    """A command's module: a line of help, its arguments, and what it does."""

    HELP: str

    def add_arguments(self, parser: argparse.ArgumentParser) -> None: ...

    def run(self, arguments: argparse.Namespace) -> int: ...


def command(name: str) -> Command:
    """The command of that name, one of `NAMES`; its module is imported only now."""
    return cast(Command, import_module(f"app.commands.{name}"))
