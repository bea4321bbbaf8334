"""The key of a cloth's picture: what its letters and hatches stand for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from app.packet import swatch
from app.packet.column import BODY, LINE, Column
from app.packet.paper import Format
from app.type_fit import shortened
from app.typeface import typeface
from app.wording import part_size
from core.language import told
from core.lengths import Units
from core.part_names import told_part
from core.plan import Part

_ONE_COLUMN: Final = 4  # parts that the key lists one below the other


@dataclass(frozen=True, slots=True)
class KeyEntry:
    """One line of the key; the name gives way where the line is too long."""

    role: str
    before: str
    name: str
    after: str


def key_rows(parts: Sequence[object], form: Format) -> int:
    """The lines that the key takes."""
    return len(parts) if len(parts) <= _ONE_COLUMN or form.large else -(-len(parts) // 2)


def key_entries(
    parts: Sequence[tuple[Part, int]], units: Units, bare: frozenset[str]
) -> tuple[KeyEntry, ...]:
    """An entry a part, with the count of its pieces; it says so where one of them is bare."""
    face = typeface()
    entries = []
    for part, count in parts:
        hatched = any(part.label(copy) in bare for copy in range(1, part.count + 1))
        size = part_size(part, units)
        said = told("{size} (hatch only)", size=size) if hatched else size
        after = face.words(f", {said}")
        entries.append(
            KeyEntry(part.role, f"{part.letter} × {count}: ", told_part(part.name), after)
        )
    return tuple(entries)


def key(column: Column, entries: Sequence[KeyEntry]) -> None:
    """Hatch, letter, count, name and cut size, in one column or two."""
    face, rows = typeface(), key_rows(entries, column.form)
    width = column.width if rows == len(entries) else column.width / 2
    room = width - swatch.WIDTH - 14
    for place, entry in enumerate(entries):
        side, row = divmod(place, rows)
        left, top = side * width, column.y + row * LINE
        column.add(swatch.swatch(entry.role, left, top))
        left_over = room - face.width(entry.before + entry.after) * BODY
        name = shortened(face.words(entry.name), left_over, face.width, BODY)
        text = shortened(f"{entry.before}{name}{entry.after}", room, face.width, BODY)
        column.words(text, left + swatch.WIDTH + 6, top)
    column.y += rows * LINE
