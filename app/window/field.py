"""What a field of the project is to the window: its words and its kind, no widget.

Each `PartKind` is a part of the project file and lists its `Field`s by their
key in that file. A field's words teach the trade term it stands for. Paths are
those of the file ("borders[1].width"), so that a refusal's path finds its field.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum, auto
from typing import Any, TypeAlias

from core.language import told
from core.numerals import told_to_edit
from core.part_names import told_part

# A project in the file's JSON form, as `core.project_file.to_document` gives it.
FileForm: TypeAlias = dict[str, Any]


class Kind(Enum):
    """What a field holds, and so which editor it gets."""

    TEXT = auto()
    PIECE = auto()
    LAID = auto()  # a piece, or a joined length
    LENGTH = auto()
    MONEY = auto()
    SHARE = auto()
    COUNT = auto()
    FLAG = auto()
    CHOICE = auto()
    FABRIC = auto()
    FABRICS = auto()
    POINTS = auto()
    COLOUR = auto()
    PHOTO = auto()
    SHEET = auto()


COARSE = ("1/8 in", "5 mm")
FINE = ("1/16 in", "1 mm")
SALE = ("1/8 yd", "10 cm")


class Called(str):
    """A label's or a title's words; a text that has them amid a sentence may want them small.

    That is up to the language: "{field:small}" in English, "{field}" where nouns are capital.

    >>> f"Change {Called('Finished width'):small}"
    'Change finished width'
    """

    __slots__ = ()

    def __format__(self, form: str) -> str:
        return self[:1].lower() + self[1:] if form == "small" else super().__format__(form)


@dataclass(frozen=True, slots=True)
class Field:
    """One field of a part. Its words are marked, and told where they are shown.

    `none_words` is set where the value may be absent, and says what that means.
    `rare` fields are folded away until asked for. `only_if` names a sibling and
    the values of it for which this field matters. `steps` is what the arrow keys add
    to a length, in a project in inches and in a metric one.
    """

    key: str
    label: str
    kind: Kind
    help: str
    choices: tuple[tuple[str | None, str], ...] = ()
    none_words: str = ""
    rare: bool = False
    steps: tuple[str, str] = COARSE
    only_if: tuple[str, ...] = ()

    @property
    def called(self) -> Called:
        """The label, told."""
        return Called(told(self.label))


@dataclass(frozen=True, slots=True)
class PartKind:
    """A part of the project; `summary` is what its heading says while folded.

    `inner` are the kinds of the parts in lists within it, such as a fabric's pieces on hand;
    those that come only by hand, on the pictures, have no button that `adds` one.
    """

    key: str
    title: str
    plural: str
    help: str
    summary: str
    fields: tuple[Field, ...]
    many: bool = False
    inner: tuple[PartKind, ...] = ()
    adds: bool = True

    @property
    def called(self) -> Called:
        """The title, told."""
        return Called(told(self.title))


_STEP = re.compile(r"(\w+)|\[(\d+)\]")


def value_at(form: FileForm, path: str) -> Any:  # noqa: ANN401 - JSON holds anything
    """The value at a file path; None where an optional part or key is absent.

    >>> value_at({"borders": [{"width": "3 1/2"}]}, "borders[0].width")
    '3 1/2'
    """
    value: Any = form
    for key, index in _STEP.findall(path):
        if value is None:
            return None
        value = value[int(index)] if index else value.get(key)
    return value


# How a heading shows values of the kinds that it does not show as they are; lengths apart.
_SHOWN: dict[Kind, Callable[[str], str]] = {
    Kind.CHOICE: told,
    Kind.PIECE: told_part,
    Kind.LAID: told_part,
    Kind.SHARE: told_to_edit,
}


def summary(kind: PartKind, values: FileForm, units: str) -> str:
    """What the folded heading of a part says, in plain words.

    >>> width = Field("width", "Finished width", Kind.LENGTH, "")
    >>> border = PartKind("borders", "Border", "Borders", "", "{width} {fabric}", (width,))
    >>> summary(border, {"width": "3 1/2", "fabric": "plum"}, "in")
    '3 1/2 in plum'
    """
    shown = {**values}
    for field in kind.fields:
        value = values.get(field.key)
        if field.kind is Kind.LENGTH:
            shown[field.key] = with_unit(value, units)
        elif field.kind in _SHOWN and value:
            shown[field.key] = _SHOWN[field.kind](value)
    return told(kind.summary, **shown).strip()


def with_unit(text: str | None, units: str) -> str:
    """A length's text as a person reads it, with its unit; a bare number takes the project's.

    >>> with_unit("50 1/2", "in"), with_unit("128 cm", "in")
    ('50 1/2 in', '128 cm')
    """
    if text is None:
        return ""
    shown = told_to_edit(text)
    return f"{shown} {units}" if text[-1:].isdigit() else shown
