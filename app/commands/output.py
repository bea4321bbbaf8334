"""Writing what a command found: to files, whole or not at all, or to standard output."""

from __future__ import annotations

import json
import sys
from errno import ENOTDIR
from pathlib import Path
from typing import Any

from core.language import told
from core.whole_file import write_whole

STANDARD_OUTPUT = "-"


def json_bytes(document: dict[str, Any]) -> bytes:
    """The document as indented UTF-8 JSON."""
    return (json.dumps(document, indent=2, ensure_ascii=False) + "\n").encode("utf-8")


def put_out(data: bytes, where: str) -> None:
    """Write to the file `where`, or to standard output for "-"."""
    if where == STANDARD_OUTPUT:
        sys.stdout.flush()
        sys.stdout.buffer.write(data)
        sys.stdout.buffer.flush()
    else:
        write_whole(Path(where), data)


def make_folder(folder: Path) -> None:
    """See that the folder is there. Raises `OSError`."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (FileExistsError, NotADirectoryError):
        raise NotADirectoryError(
            ENOTDIR, told("there is a file of that name; name a folder"), str(folder)
        ) from None


def print_lines(text: str) -> None:
    """Print words on any terminal; one that lacks a character gets a stand-in for it."""
    encoding = sys.stdout.encoding or "utf-8"
    print(text.encode(encoding, "replace").decode(encoding))
