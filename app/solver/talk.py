"""What the window and the solver say to each other, and how it crosses a pipe.

A message is a pickle with its length before it. Both ends are this program on
this machine, started by the same person, so a pickle is as safe as an import.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from struct import Struct
from typing import TYPE_CHECKING, Protocol, TypeAlias

if TYPE_CHECKING:
    from core.plan import Plan
    from core.quilt import Project

_HEAD = Struct("!I")


class Question(Protocol):
    """Something other than a plan that is worked out from a project."""

    def answer(self) -> object:
        """What came of it. Raises `Refusal`."""


Job: TypeAlias = "Project | Question"


@dataclass(frozen=True, slots=True)
class Ask:
    """Plan this project, or answer this question; a later ask makes it void.

    A plan is made as like the `previous` one as costs nothing.
    """

    number: int
    job: Job
    previous: Plan | None = None


@dataclass(frozen=True, slots=True)
class Fault:
    """The program failed at a project; `sentence` names the error."""

    sentence: str


class AsDrafted:
    """In place of a plan: it is the draft that was sent before."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What came of the ask of that number: a plan or an answer, a `Refusal`, or a `Fault`.

    After a `draft`, a plan made in a moment, the answer itself is still to come; it is
    `AsDrafted` if it is no other.
    """

    number: int
    result: object
    draft: bool = False


def packed(message: Ask | Answer) -> bytes:
    """The bytes of a message."""
    from app.solver.pickling import pickled  # only now, as below: the window is seen sooner

    body = pickled(message)
    return _HEAD.pack(len(body)) + body


class Unpacker:
    """Messages out of bytes that come in pieces of any size."""

    def __init__(self) -> None:
        self._bytes = bytearray()

    def take(self, data: bytes) -> Iterator[Ask | Answer]:
        """Each message that `data` completes."""
        import pickle

        self._bytes += data
        while (end := self._end()) <= len(self._bytes):
            body = bytes(self._bytes[_HEAD.size : end])
            del self._bytes[:end]
            yield pickle.loads(body)

    def _end(self) -> int:
        """Where the first message ends; beyond all there is while its head is not whole."""
        if len(self._bytes) < _HEAD.size:
            return _HEAD.size
        [size] = _HEAD.unpack_from(self._bytes)
        return _HEAD.size + int(size)
