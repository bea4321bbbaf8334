"""Writing what a command found: to files, whole or not at all, or to standard output."""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from errno import EBADF, ENOTDIR
from pathlib import Path
from typing import Any, TextIO, TypeAlias

from core.language import told
from core.refusal import Refusal
from core.whole_file import write_whole

STANDARD_OUTPUT = "-"
Output: TypeAlias = tuple[str, bytes]


def json_bytes(document: dict[str, Any]) -> bytes:
    """The document as indented UTF-8 JSON."""
    return (json.dumps(document, indent=2, ensure_ascii=False) + "\n").encode("utf-8")


def put_out(
    outputs: Sequence[Output],
    source: str,
    *,
    folders: Sequence[str | None] = (),
    words: Callable[[], str] | None = None,
) -> None:
    """Write each output where it belongs, "-" for standard output; else `words` go there.

    Raises `Refusal`, before anything is written, where one of them would take the place of
    `source`, the file it comes from, or of another; and `OSError`.
    """
    _keep_apart([where for where, _ in outputs], source)
    for folder in filter(None, folders):
        _make_folder(Path(folder))
    for where, data in outputs:
        if where == STANDARD_OUTPUT:
            with standard_output() as out:
                out.flush()
                out.buffer.write(data)
        else:
            write_whole(Path(where), data)
    if words is not None and all(where != STANDARD_OUTPUT for where, _ in outputs):
        _print_lines(words())


def _keep_apart(places: Sequence[str], source: str) -> None:
    read, taken = _file_at(source), set[object]()
    for where in places:
        file = STANDARD_OUTPUT if where == STANDARD_OUTPUT else _file_at(where)
        if file is not None and file == read:
            raise Refusal("", told("this is the file to read; name another one to write"))
        if file in taken:
            name = told("standard output") if where == STANDARD_OUTPUT else where
            twice = told("two results would go to {file}; name a file for each", file=name)
            raise Refusal("", twice)
        taken |= {file} - {None}


def _file_at(where: str) -> object:
    """What tells a file from others, however it is named; None for a device, which takes all."""
    path = Path(where)
    try:
        found = path.stat()
    except OSError:
        return os.path.realpath(where)
    return (found.st_dev, found.st_ino) if path.is_file() else None


def _make_folder(folder: Path) -> None:
    """See that the folder is there. Raises `OSError`."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (FileExistsError, NotADirectoryError):
        raise NotADirectoryError(
            ENOTDIR, told("there is a file of that name; name a folder"), str(folder)
        ) from None


@contextmanager
def standard_output() -> Iterator[TextIO]:
    """Standard output to write on, and then all of it written. Raises `OSError`, by its name."""
    out = sys.stdout
    if out is None:
        raise OSError(EBADF, told("it is closed"), told("standard output"))
    try:
        yield out
        out.flush()
    except BrokenPipeError:
        _let_go(out)
        raise
    except OSError as error:
        _let_go(out)
        raise OSError(error.errno, error.strerror, told("standard output")) from None


def _let_go(out: TextIO) -> None:
    """Send what is left of it nowhere, lest Python try once more when it ends, and complain."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    with suppress(OSError):  # one that is no file has nothing left
        os.dup2(nowhere, out.fileno())
    os.close(nowhere)


def _print_lines(text: str) -> None:
    """Print words on any terminal; one that lacks a character gets a stand-in for it."""
    with standard_output() as out:
        encoding = out.encoding or "utf-8"
        print(text.encode(encoding, "replace").decode(encoding), file=out)


def say_aside(sentence: str) -> None:
    """One sentence on standard error, if there is one that can be written."""
    if sys.stderr is None:
        return
    try:
        print(f"crossgrain: {sentence}", file=sys.stderr, flush=True)
    except OSError:  # the exit status tells all the same
        _let_go(sys.stderr)
