"""Pickles of plans, made so that they are read quickly: the window waits for the reading.

A plan is thousands of frozen values and fractions. As `dataclasses` pickles a frozen
value with slots, reading takes three times as long as calling its class again.
"""

from __future__ import annotations

import io
import pickle
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from fractions import Fraction
from functools import cache, lru_cache


def pickled(message: object) -> bytes:
    """The bytes of a message, for `pickle.loads`."""
    written = io.BytesIO()
    _Pickler(written, pickle.HIGHEST_PROTOCOL).dump(message)
    return written.getvalue()


class _Pickler(pickle.Pickler):
    def reducer_override(self, made: object) -> tuple[Callable[..., object], tuple[object, ...]]:
        """How to make a frozen value or a fraction again; other things as always."""
        if isinstance(made, Fraction):
            return fraction, (made.numerator, made.denominator)
        kind = type(made)
        if is_dataclass(kind) and hasattr(kind, "__slots__"):
            return kind, tuple(getattr(made, name) for name in _names(kind))
        return NotImplemented  # type: ignore[no-any-return]


@lru_cache(maxsize=1 << 16)
def fraction(numerator: int, denominator: int) -> Fraction:
    """A fraction; the same one for the same numbers."""
    return Fraction(numerator, denominator)


@cache
def _names(kind: type) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind))
