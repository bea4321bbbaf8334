"""Reading JSON with care: every value checked, every fault named by its path.

`Fields` wraps one JSON object. Each getter takes a key, checks the type and the
range, and raises a `Refusal` whose path (`fabrics[0].on_hand[1].across`) leads
to the value. `done` refuses keys that nobody asked for.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from enum import StrEnum
from fractions import Fraction
from pathlib import Path
from typing import Any, Final, TypeVar

from core.language import marked, told
from core.lengths import Inches, LengthError, Units, parse
from core.refusal import Refusal

LARGEST: Final = Fraction(1000)  # inches; beyond this a length is a slip of the pen
LONGEST_NAME: Final = 80
LONGEST_NAMED: Final = 36  # characters of a value that is pointed at
LARGEST_FILE: Final = 2_000_000  # bytes; a project is a few thousand
_REQUIRED: Final = object()
_PERCENT: Final = re.compile(r"(\d{1,2}(?:[.,]\d{1,2})?)\s*%", re.ASCII)
# What Python's own reader says is wrong with a JSON text; anything else stays English.
JSON_FAULTS: Final = (
    marked("Expecting value"),
    marked("Expecting property name enclosed in double quotes"),
    marked("Expecting ',' delimiter"),
    marked("Expecting ':' delimiter"),
    marked("Extra data"),
    marked("Illegal trailing comma before end of object"),
    marked("Illegal trailing comma before end of array"),
    marked("Invalid control character at"),
    marked("Unterminated string starting at"),
)
Choice = TypeVar("Choice", bound=StrEnum)
Item = TypeVar("Item")


def text_of(path: Path) -> str:
    """The text of the file at `path`; raises `OSError` if it cannot be read."""
    if path.stat().st_size > LARGEST_FILE:
        raise Refusal("", told("the file is far too large; open a file that this program wrote"))
    try:
        return path.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        raise Refusal(
            "", told("the file is not text (UTF-8); open a file of this program")
        ) from None


def json_object(text: str, kind: str, version: int) -> dict[str, Any]:
    """The JSON object in `text`, if it is a `kind` file of a version known here."""
    if not text.strip():
        raise Refusal("", told("the file is empty; it should hold a {kind} as JSON", kind=kind))
    try:
        data = json.loads(text, object_pairs_hook=_refuse_repeats)
    except Refusal:
        raise
    except RecursionError:
        raise Refusal("", told("the file is nested too deeply to be a {kind}", kind=kind)) from None
    except json.JSONDecodeError as error:
        raise Refusal(
            "",
            told(
                "the file is not JSON (line {line}: {fault}); open a {kind} file",
                line=error.lineno,
                fault=told(error.msg),
                kind=kind,
            ),
        ) from None
    except ValueError:
        raise Refusal("", told("the file holds a number that is far too long")) from None
    if not isinstance(data, dict):
        raise Refusal("", told("the file holds no JSON object; open a {kind} file", kind=kind))
    if data.get("format") != kind:
        raise Refusal("format", told('write "{kind}"; this file is of another kind', kind=kind))
    found = data.get("version")
    if not isinstance(found, int) or isinstance(found, bool) or found < 1:
        raise Refusal(
            "version", told("write {version}, the version of the format", version=version)
        )
    if found > version:
        raise Refusal(
            "version",
            told(
                "the file is of version {found}, written by a newer program; update yours",
                found=found,
            ),
        )
    return data


def _refuse_repeats(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """An object whose keys are all different; JSON itself lets the last one win."""
    data = dict(pairs)
    if len(data) < len(pairs):
        again = next(key for i, (key, _) in enumerate(pairs) if key in dict(pairs[:i]))
        raise Refusal(again, told("this key is written twice in one object; keep one of them"))
    return data


class Fields:
    """One JSON object being read, at `path` in its file; bare lengths count in `units`."""

    def __init__(self, data: object, path: str, units: Units = Units.INCHES) -> None:
        if not isinstance(data, dict):
            raise Refusal(path, told("write an object {{…}} here, not {value}", value=_named(data)))
        self.data: dict[str, Any] = data
        self.path = path
        self.units = units
        self.asked: set[str] = set()

    def at(self, key: str) -> str:
        """The path of `key` in the file."""
        return f"{self.path}.{key}" if self.path else key

    def has(self, key: str) -> bool:
        """Whether `key` is there and not null; asking makes it a known key."""
        self.asked.add(key)
        return self.data.get(key) is not None

    def raw(self, key: str, default: object = _REQUIRED) -> Any:  # noqa: ANN401 - JSON is any
        """The value at `key`, unchecked; refuses if it is missing and has no default."""
        self.asked.add(key)
        if key in self.data:
            return self.data[key]
        if default is _REQUIRED:
            raise Refusal(self.at(key), told("this is missing; write a value for it"))
        return default

    def text(self, key: str, default: object = _REQUIRED, *, empty: bool = False) -> str:
        value = self.raw(key, default)
        if not isinstance(value, str):
            raise Refusal(
                self.at(key),
                told('write text in quotes, such as "plum", not {value}', value=_named(value)),
            )
        if not empty and not value.strip():
            raise Refusal(self.at(key), told("this is empty; write a name"))
        if len(value) > LONGEST_NAME:
            raise Refusal(
                self.at(key),
                told("write at most {most} characters", most=LONGEST_NAME),
            )
        if not value.isprintable():
            raise Refusal(
                self.at(key), told("write one line of plain text, without control characters")
            )
        return value

    def length(self, key: str, default: object = _REQUIRED, *, zero: bool = False) -> Inches:
        """A length in inches, above 0 (`zero`: or 0) and at most `LARGEST`."""
        value = self.raw(key, default)
        if isinstance(value, Fraction):
            return value
        if not isinstance(value, str):
            raise Refusal(
                self.at(key),
                told(
                    'write the length as text in quotes, such as "50 1/2", not {value}',
                    value=_named(value),
                ),
            )
        try:
            length = parse(value, self.units)
        except LengthError as error:
            raise Refusal(self.at(key), str(error)) from None
        if length == 0 and not zero:
            raise Refusal(self.at(key), told("this cannot be 0; write a length above 0"))
        if length > LARGEST:
            raise Refusal(
                self.at(key),
                told("that is over {largest}; write a smaller length"),
                self.units,
                largest=LARGEST,
            )
        return length

    def choice(self, key: str, options: type[Choice], default: object = _REQUIRED) -> Choice:
        value = self.raw(key, default)
        known = [option.value for option in options]
        if not isinstance(value, str) or value not in known:
            raise Refusal(
                self.at(key),
                told(
                    "write one of {known}, not {value}", known=", ".join(known), value=_named(value)
                ),
            )
        return options(value)

    def flag(self, key: str, default: object = _REQUIRED) -> bool:
        value = self.raw(key, default)
        if not isinstance(value, bool):
            raise Refusal(
                self.at(key), told("write true or false, not {value}", value=_named(value))
            )
        return value

    def count(self, key: str, default: object = _REQUIRED, *, most: int) -> int:
        value = self.raw(key, default)
        if isinstance(value, bool) or not isinstance(value, int):
            raise Refusal(
                self.at(key),
                told("write a whole number, such as 2, not {value}", value=_named(value)),
            )
        if not 1 <= value <= most:
            raise Refusal(self.at(key), told("write a whole number from 1 to {most}", most=most))
        return value

    def whole(self, key: str, default: object = _REQUIRED, *, most: int) -> int:
        """A whole number from 0 to `most`."""
        value = self.raw(key, default)
        if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= most:
            raise Refusal(self.at(key), told("write a whole number from 0 to {most}", most=most))
        return value

    def each(self, key: str, read: Callable[[object, str], Item], *, most: int) -> tuple[Item, ...]:
        """Every item of the list at `key` (absent: none), read with its own path."""
        value = self.raw(key, [])
        if not isinstance(value, list):
            raise Refusal(
                self.at(key), told("write a list [...] here, not {value}", value=_named(value))
            )
        if len(value) > most:
            raise Refusal(
                self.at(key),
                told("that is {count} items; write at most {most}", count=len(value), most=most),
            )
        return tuple(read(item, f"{self.at(key)}[{i}]") for i, item in enumerate(value))

    def done(self) -> None:
        """Refuse the first key that nobody asked for."""
        for key in self.data:
            if key not in self.asked:
                known = ", ".join(sorted(self.asked))
                raise Refusal(
                    self.at(str(key)),
                    told("this key is not known here; known are {known}", known=known),
                )


def share(fields: Fields, key: str, default: object = _REQUIRED) -> Fraction:
    """A share written in percent: "3%" is 3/100."""
    text = fields.raw(key, default)
    if not isinstance(text, str):
        raise Refusal(fields.at(key), told('write a share of 0 % to 99 % as text, such as "3%"'))
    found = _PERCENT.fullmatch(text.strip())
    if found is None:
        raise Refusal(fields.at(key), told('write a share of 0 % to 99 %, such as "3%"'))
    return Fraction(found[1].replace(",", ".")) / 100


def _named(value: object) -> str:
    """A value as a person would point at it."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, dict | list):
        return told("an object") if isinstance(value, dict) else told("a list")
    text = value if isinstance(value, str) else json.dumps(value)
    short = text if len(text) <= LONGEST_NAMED else f"{text[:LONGEST_NAMED]}…"
    return f'"{short}"' if isinstance(value, str) else short
