"""The private environment: `.venv` in the checkout, made once and mended when it must be.

Its stamp, a file in it, tells three states apart. No stamp: a folder that is somebody else's and
is left alone. A stamp that does not fit: work that was interrupted, or an older wish; it is made
anew. A stamp that fits names what has been installed, and is written last.
"""

from __future__ import annotations

import hashlib
import re
import shutil
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import IO

from app.first_run.outside import last_line, watch
from app.first_run.telling import Stop, say
from core.language import told

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

UNFINISHED = "unfinished\n"
PIP = ("-m", "pip", "--no-input", "--disable-pip-version-check", "install")
# Wheels only: building Qt from its source is nothing that a first run should try.
PIP_OPTIONS = ("--only-binary=:all:", "--progress-bar=off", "--retries=2", "--timeout=30")
NO_NETWORK = ("connection broken by", "Connection aborted", "Read timed out", "ConnectionError")


class Environment:
    """The private environment of the checkout in `root`."""

    def __init__(self, root: Path) -> None:
        self.folder = root / ".venv"
        self.stamp = self.folder / "crossgrain-stamp.txt"
        self.lock = root / ".venv.lock"
        self.wishes = (root / "pyproject.toml", root / ".ci" / "constraints.txt")
        windows = sys.platform == "win32"
        self.python = self.folder / ("Scripts/python.exe" if windows else "bin/python")

    def holds(self, requirements: Sequence[str]) -> bool:
        """Whether everything wanted has been installed, to the end."""
        return self.python.exists() and set(requirements) <= set(self._installed())

    def forget(self) -> None:
        """Have the next start make the environment anew."""
        self.stamp.write_text(UNFINISHED, encoding="utf-8")

    def provide(self, requirements: Sequence[str]) -> None:
        """Make, mend or fill up the environment so that it holds what is wanted.

        Raises `Stop` without network, without room or right to write, and for a folder that
        is not ours. What it leaves then is mended by the next start.
        """
        try:
            with only_one(self.lock) as held:
                if not self.holds(requirements):  # another start may have made it meanwhile
                    self._provide(requirements, held)
        except OSError as error:
            raise Stop(
                told(
                    "The private environment in {folder} cannot be made: {error}. Put that "
                    "right, or put the checkout where you may write, and start again.",
                    folder=self.folder,
                    error=error,
                )
            ) from error

    def _provide(self, requirements: Sequence[str], held: tuple[int, ...]) -> None:
        self._leave_strangers_alone()
        started = time.monotonic()
        installed = self._installed() if self.python.exists() else ()
        self._announce(installed)
        if not installed:
            self._make(held)
        self.forget()
        wanted = sorted({*installed, *requirements})
        self._install(wanted, held)
        self.stamp.write_text("\n".join([self._fingerprint(), *wanted, ""]), encoding="utf-8")
        say(told("Ready after {seconds} s.", seconds=f"{time.monotonic() - started:.0f}"))

    def _installed(self) -> tuple[str, ...]:
        if not self.stamp.is_file():
            return ()
        lines = self.stamp.read_text(encoding="utf-8").splitlines()
        return tuple(lines[1:]) if lines[:1] == [self._fingerprint()] else ()

    def _fingerprint(self) -> str:
        return hashlib.sha256(b"\0".join(path.read_bytes() for path in self.wishes)).hexdigest()

    def _announce(self, installed: Sequence[str]) -> None:
        if installed:
            say(told("Filling up the private environment in {folder}.", folder=self.folder))
        elif not self.folder.exists():
            say(
                told(
                    "First run: making a private environment in {folder}, once. It takes a few "
                    "minutes and up to 500 MB, and touches nothing else.",
                    folder=self.folder,
                )
            )
        else:
            say(
                told(
                    "Making the private environment in {folder} anew: {reason}.",
                    folder=self.folder,
                    reason=self._what_is_wrong(),
                )
            )

    def _what_is_wrong(self) -> str:
        if not self.stamp.is_file() or self.stamp.read_text(encoding="utf-8") == UNFINISHED:
            return told("it was left unfinished")
        if self.python.exists():
            return told("other packages are wanted now")
        return told("its Python is gone")

    def _make(self, held: tuple[int, ...]) -> None:
        self._empty()
        # From the base Python: this one may live in the folder that has just been emptied.
        base = getattr(sys, "_base_executable", sys.executable)
        command = (base, "-m", "venv", str(self.folder))
        status, printed = watch(command, show=lambda line: None, environ={}, inherit=held)
        if status:
            raise Stop(
                told(
                    "Python could not make an environment: it said '{said}'.",
                    said=last_line(printed),
                )
            )

    def _leave_strangers_alone(self) -> None:
        if self.folder.exists() and not self.stamp.exists() and any(self.folder.iterdir()):
            raise Stop(
                told(
                    "{folder} is there, and Crossgrain did not make it: move it away and start "
                    "again, or activate it, install Crossgrain with 'pip install .' and start "
                    "again.",
                    folder=self.folder,
                )
            )

    def _empty(self) -> None:
        """Empty the folder but for its stamp, so that it stays known as ours throughout."""
        self.folder.mkdir(exist_ok=True)
        self.forget()
        for path in self.folder.iterdir():
            if path.is_dir() and not path.is_symlink():
                shutil.rmtree(path)
            elif path != self.stamp:
                path.unlink()

    def _install(self, wanted: Sequence[str], held: tuple[int, ...]) -> None:
        constraint = ("--constraint", str(self.wishes[1]))
        command = (str(self.python), *PIP, *PIP_OPTIONS, *constraint, *wanted)
        environ = {"PYTHONUNBUFFERED": "1", "PIP_USER": "0"}
        status, printed = watch(command, show=pip_progress, environ=environ, inherit=held)
        if status == 0:
            return
        if any(words in printed for words in NO_NETWORK):
            raise Stop(told("No network: connect this machine and start again; nothing is lost."))
        raise Stop(
            told(
                "pip could not install {packages}: it said '{said}'.",
                packages=", ".join(wanted),
                said=last_line(printed, "ERROR:"),
            )
        )


def pip_progress(line: str) -> str | None:
    """Return what to tell of a line that pip printed, if anything.

    >>> pip_progress("Downloading reportlab-5.1.0-py3-none-any.whl (1.9 MB)")
    'fetching reportlab 5.1.0 (1.9 MB)'
    >>> pip_progress("Installing collected packages: pillow, reportlab")
    'installing pillow, reportlab'
    >>> pip_progress("Collecting reportlab>=4.2")
    """
    fetched = re.match(
        r"(Downloading|Using cached) (?:\S*/)?([^-/\s]+)-([^-]+)-\S+\.whl (.*)", line
    )
    if fetched:
        package = f"{fetched[2]} {fetched[3]} {fetched[4]}"
        if fetched[1] == "Downloading":
            return told("fetching {package}", package=package)
        return told("from the cache: {package}", package=package)
    _, found, names = line.partition("Installing collected packages: ")
    return told("installing {packages}", packages=names) if found else None


@contextmanager
def only_one(path: Path) -> Iterator[tuple[int, ...]]:
    """Hold a lock file, waiting for whoever holds it, and yield what children must inherit.

    A child that inherits holds the lock too: when this process is killed, the next start waits
    until the child has stopped writing. (Windows has no such inheritance; there a file that
    is still in use stops the next start with a sentence.)
    """
    with path.open("w", encoding="utf-8") as file:
        if not _locked(file):
            say(told("Another start is at work on the private environment; waiting for it."))
            while not _locked(file):
                time.sleep(0.2)
        yield () if sys.platform == "win32" else (file.fileno(),)


def _locked(file: IO[str]) -> bool:
    try:
        if sys.platform == "win32":
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True
