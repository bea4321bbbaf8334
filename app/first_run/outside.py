"""Other programs that the first run calls: Python's venv, pip, apt-get."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Callable, Mapping, Sequence

from app.first_run.telling import say
from core.language import told


def watch(
    command: Sequence[str],
    *,
    show: Callable[[str], str | None],
    environ: Mapping[str, str],
    inherit: tuple[int, ...] = (),
) -> tuple[int, str]:
    """Run a command to its end and return its exit status and all that it printed.

    Each line it prints is offered to `show`; what `show` makes of it is said. `environ` is added
    to this process's own. `inherit` are file descriptors that the command shares (not on Windows).
    """
    lines = []
    with subprocess.Popen(
        command,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        encoding="utf-8",
        errors="replace",
        env={**os.environ, **environ},
        pass_fds=inherit,
    ) as process:
        for line in process.stdout or ():
            lines.append(line)
            shown = show(line.strip())
            if shown:
                say(f"  {shown}")
    return process.returncode, "".join(lines)


def last_line(printed: str, *starts: str) -> str:
    """Return the last line of a command's output that starts so, else its last line.

    >>> last_line("a\\nERROR: no room left\\nbye\\n", "ERROR:")
    'ERROR: no room left'
    >>> last_line("a\\nbye\\n\\n", "ERROR:")
    'bye'
    >>> last_line("")
    'it printed nothing'
    """
    lines = [line.strip() for line in printed.splitlines() if line.strip()]
    chosen = [line for line in lines if starts and line.startswith(starts)]
    return (chosen or lines or [told("it printed nothing")])[-1]
