"""What Qt says in words of its own, heard while something is done, and kept off the terminal."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TypeAlias

from PySide6.QtCore import QMessageLogContext, QtMsgType, qFormatLogMessage, qInstallMessageHandler

_Handler: TypeAlias = Callable[[QtMsgType, QMessageLogContext, str], None]


@contextmanager
def heard(*starts: str) -> Iterator[list[str]]:
    """The messages meanwhile whose category, or whose text, starts so; others are handed on."""
    words: list[str] = []

    def hear(kind: QtMsgType, context: QMessageLogContext, message: str) -> None:
        if str(context.category).startswith(starts) or message.startswith(starts):
            words.append(message)
        elif before is not None:
            before(kind, context, message)
        elif sys.stderr is not None:
            print(qFormatLogMessage(kind, context, message), file=sys.stderr)

    before: _Handler | None = qInstallMessageHandler(hear)
    try:
        yield words
    finally:
        qInstallMessageHandler(before)
