"""Common quilt sizes to start from: a table that the person can change.

One list for those who measure in inches and one for those who measure in centimetres,
since round figures of the one are odd figures of the other. A size is that of the
top before borders, and only ever a proposal; `source` says where it is from.
"""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from typing import Any, Final

from core.language import marked, told
from core.lengths import Inches, Units, exact_text, show_size
from core.reading import Fields, json_object

FORMAT, VERSION = "crossgrain-sizes", 1
MOST_SIZES = 40
# What `assets/quilt-sizes.json` says in words: names, and where sizes are from.
_USUAL: Final = (
    marked("Wall quilt"),
    marked("Crib"),
    marked("Baby"),
    marked("Lap"),
    marked("Throw"),
    marked("Twin bed"),
    marked("Full bed"),
    marked("Queen bed"),
    marked("King bed"),
    marked("Single bed"),
    marked("Double bed"),
    marked("common practice, no source"),
    marked("a magazine's editors, quoted 2011"),
)


def told_usual(words: str) -> str:
    """A name or a source as a person reads it; the person's own as they are."""
    return told(words) if words in _USUAL else words


@dataclass(frozen=True, slots=True)
class QuiltSize:
    """A size that quilts often have."""

    name: str
    width: Inches
    length: Inches
    source: str = ""

    def words(self, units: Units) -> str:
        """What a menu calls it.

        >>> from fractions import Fraction
        >>> QuiltSize("Lap", Fraction(50), Fraction(60)).words(Units.INCHES)
        'Lap, 50 × 60 in'
        """
        return f"{told_usual(self.name)}, {show_size(self.width, self.length, units)}"


@dataclass(frozen=True, slots=True)
class QuiltSizes:
    """Both lists."""

    inches: tuple[QuiltSize, ...]
    metric: tuple[QuiltSize, ...]

    def of(self, units: Units) -> tuple[QuiltSize, ...]:
        """The list for a project in these units."""
        return self.inches if units is Units.INCHES else self.metric

    def having(self, units: Units, sizes: tuple[QuiltSize, ...]) -> QuiltSizes:
        """The same with another list for projects in these units."""
        if units is Units.INCHES:
            return replace(self, inches=sizes)
        return replace(self, metric=sizes)


def loads(text: str) -> QuiltSizes:
    """The table that `text` holds; raises `Refusal`."""
    fields = Fields(json_object(text, FORMAT, VERSION), "")
    fields.raw("format"), fields.raw("version")
    table = QuiltSizes(
        read_list(fields, "inches", Units.INCHES), read_list(fields, "metric", Units.CENTIMETRES)
    )
    fields.done()
    return table


def read_list(fields: Fields, key: str, units: Units) -> tuple[QuiltSize, ...]:
    """The list at `key`, its bare numbers in `units`."""
    return fields.each(key, lambda data, path: _size(Fields(data, path, units)), most=MOST_SIZES)


def _size(fields: Fields) -> QuiltSize:
    size = QuiltSize(
        fields.text("name"),
        fields.length("width"),
        fields.length("length"),
        fields.text("source", "", empty=True),
    )
    fields.done()
    return size


def dumps(table: QuiltSizes) -> str:
    """The table as text that `loads` reads back equal."""
    document = {
        "format": FORMAT,
        "version": VERSION,
        "inches": [_document(size, Units.INCHES) for size in table.inches],
        "metric": [_document(size, Units.CENTIMETRES) for size in table.metric],
    }
    return json.dumps(document, ensure_ascii=False)


def _document(size: QuiltSize, units: Units) -> dict[str, Any]:
    return {
        "name": size.name,
        "width": exact_text(size.width, units),
        "length": exact_text(size.length, units),
        "source": size.source,
    }
