"""Qt's libraries and other parts of a Linux system that no Python package brings.

As root on a machine with apt-get they are installed; otherwise the person is told the one line
to run. Windows and macOS have what Qt needs.
"""

from __future__ import annotations

import ctypes
import importlib
import importlib.util
import os
import shutil
import sys
from collections.abc import Callable, Mapping, Sequence

from app.first_run.outside import last_line, watch
from app.first_run.telling import Stop, say
from core.language import told

INSTALL = ("apt-get", "install", "-y", "--no-install-recommends")
QUIET = {"DEBIAN_FRONTEND": "noninteractive", "LC_ALL": "C.UTF-8"}
NO_NETWORK = ("Temporary failure resolving", "Could not resolve", "Could not connect")


def venv_parts() -> Mapping[str, str]:
    """Return what making an environment needs: Debian packs `ensurepip` apart from Python."""
    return {"ensurepip": f"python3.{sys.version_info.minor}-venv"}


def is_present(part: str) -> bool:
    """Whether a library loads (`libGL.so.1`), Python has `ensurepip`, or a program is found."""
    if part == "ensurepip":
        importlib.invalidate_caches()
        return importlib.util.find_spec(part) is not None
    if ".so." not in part:
        return shutil.which(part) is not None
    try:
        ctypes.CDLL(part)
    except OSError:
        return False
    return True


def provide(
    wanted: Mapping[str, str],
    *,
    present: Callable[[str], bool] = is_present,
    root: bool | None = None,
    apt: bool | None = None,
) -> None:
    """Make the wanted parts present: part -> Debian package.

    Raises `Stop` if that takes a line the person must run, or cannot be done.
    """
    absent = [part for part in wanted if not present(part)]
    if not absent:
        return
    packages = sorted({wanted[part] for part in absent})
    if not (shutil.which("apt-get") if apt is None else apt):
        raise Stop(
            told(
                "This Linux lacks {parts}: install the packages that hold them (on Debian they are "
                "{packages}) and start again.",
                parts=", ".join(absent),
                packages=" ".join(packages),
            )
        )
    if not (os.geteuid() == 0 if root is None else root):
        line = f"sudo apt-get update && sudo {' '.join((*INSTALL, *packages))}"
        raise Stop(
            told(
                "This Linux lacks {parts}. Run this line, then start again:\n{line}",
                parts=some(absent),
                line=line,
            )
        )
    install(packages)
    still = [part for part in absent if not present(part)]
    if still:
        raise Stop(
            told(
                "apt-get installed {packages}, and yet {parts} is missing.",
                packages=" ".join(packages),
                parts=", ".join(still),
            )
        )


def some(names: Sequence[str]) -> str:
    """Return a list for a sentence: the first three names, and how many more there are.

    >>> some(["libEGL.so.1", "libGL.so.1"])
    'libEGL.so.1, libGL.so.1'
    >>> some(["libEGL.so.1", "libGL.so.1", "pdftotext", "pdftoppm", "ensurepip"])
    'libEGL.so.1, libGL.so.1, pdftotext and 2 more'
    """
    first = ", ".join(names[:3])
    if len(names) <= 3:
        return first
    return told("{names} and {count} more", names=first, count=len(names) - 3)


def install(packages: Sequence[str]) -> None:
    """Install Debian packages, telling how far it is. Raises `Stop` if apt-get fails."""
    say(
        told(
            "Installing system packages with apt-get, once: {packages}", packages=" ".join(packages)
        )
    )
    _, updated = watch(("apt-get", "update"), show=lambda line: None, environ=QUIET)
    wait = ("-o", "DPkg::Lock::Timeout=120")
    status, installed = watch((*INSTALL, *wait, *packages), show=_progress, environ=QUIET)
    if status == 0:
        return
    if any(words in updated + installed for words in NO_NETWORK):
        raise Stop(told("apt-get reached no network: connect this machine and start again."))
    raise Stop(
        told(
            "apt-get could not install {packages}, and you may have to: it said '{said}'.",
            packages=" ".join(packages),
            said=last_line(installed, "E:"),
        )
    )


def _progress(line: str) -> str | None:
    return line if line.startswith(("Need to get", "After this operation")) else None
