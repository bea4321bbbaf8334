"""The order of a start: what it needs, the system's part, the environment, and on.

The system comes first: without Qt's libraries 80 MB of Qt are fetched for nothing.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Mapping, Sequence
from typing import NoReturn

from app.first_run import needs
from app.first_run.telling import Stop, say
from app.languages import of_terminal, speak_language
from core.language import told

AGAIN = "CROSSGRAIN_IN_PRIVATE_ENVIRONMENT"


def travel(module: str, argv: Sequence[str]) -> None:
    """Return when this process can go on; otherwise end it (see `app.first_run.ready`)."""
    speak_language(of_terminal())
    try:
        _travel(module, argv, again=os.environ.pop(AGAIN, None) is not None)
    except Stop as stop:
        say(str(stop))
        sys.exit(2)
    except KeyboardInterrupt:
        say(told("Stopped; the next start takes it up again."))
        sys.exit(130)


def _travel(module: str, argv: Sequence[str], *, again: bool) -> None:
    wanted = needs.needs_of(module, argv, os.environ)
    if wanted == needs.Needs():
        return
    # Not imported above: a plan without paper would wait for them and not use them.
    from app.first_run import system
    from app.first_run.environment import Environment

    lacking = needs.missing(wanted.requirements)
    environment = Environment(needs.ROOT)
    if lacking and again:
        environment.forget()
        raise Stop(
            told(
                "The private environment in {folder} lacks {packages}: start once more, and it is "
                "made anew.",
                folder=environment.folder,
                packages=", ".join(lacking),
            )
        )
    if sys.platform.startswith("linux"):
        make = bool(lacking) and not environment.holds(wanted.requirements)
        system.provide({**wanted.system, **(system.venv_parts() if make else {})})
    if lacking:
        environment.provide(wanted.requirements)
        _go_on(str(environment.python), module, argv)


def _go_on(python: str, module: str, argv: Sequence[str]) -> NoReturn:
    command: list[str] = [python, "-m", module, *argv]
    environ: Mapping[str, str] = {**os.environ, AGAIN: "1"}
    if sys.platform == "win32":  # exec there returns to the prompt before the program has ended
        import subprocess

        sys.exit(subprocess.call(command, env=environ))
    os.execve(python, command, environ)
