"""`python3 -m tests.languages`: bring every catalogue up to the texts in the code.

Texts are found where they are told (`core.language`). A text that is new stands in
the catalogue without a translation until somebody writes it; one that is gone is
dropped. What is in the catalogue is then compiled for the program.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po

from app.languages import ENGLISH, LANGUAGES
from tests.checks import ROOT

FOLDER = ROOT / "assets" / "languages"
ROOMS = ("app", "core")
KEYWORDS = {"told": None, "told_as": ((1, "c"), 2), "told_count": (1, 2), "marked": None}


def texts() -> Catalog:
    """Every text the code tells, without translations, in the order of the rooms."""
    catalogue = Catalog(fuzzy=False)
    for room in ROOMS:
        found = extract_from_dir(str(ROOT / room), [("**.py", "python")], keywords=KEYWORDS)
        for name, _line, message, _comments, context in found:
            place = f"{room}/{Path(name).as_posix()}"
            catalogue.add(message, locations=[(place, 0)], context=context)
    return catalogue


def translated(language: str) -> Catalog:
    """The catalogue of a language, as it was written."""
    with path_of(language).open("rb") as file:
        return read_po(file, locale=language)


def path_of(language: str, kind: str = "po") -> Path:
    """Where a language's catalogue is: `po` as people write it, `mo` as the program reads it."""
    return FOLDER / f"{language}.{kind}"


def others() -> Iterator[str]:
    """The languages that have a catalogue."""
    return (language for language in LANGUAGES if language != ENGLISH)


def renew(language: str) -> int:
    """Bring a catalogue up to the code, and compile it; return how many texts it lacks."""
    catalogue = translated(language)
    begun = catalogue.creation_date  # else every renewal would change the file
    catalogue.update(texts(), no_fuzzy_matching=True)
    catalogue.creation_date = begun
    catalogue.obsolete.clear()
    with path_of(language).open("wb") as file:
        write_po(file, catalogue, width=98, include_lineno=False, sort_by_file=True)
    with path_of(language, "mo").open("wb") as file:
        write_mo(file, catalogue)
    return sum(not message.string or not any(message.string) for message in catalogue if message.id)


def main() -> int:
    """Renew every catalogue; return 0 if none lacks a text."""
    lacking = {language: renew(language) for language in others()}
    for language, count in lacking.items():
        print(f"{path_of(language).name}: {count} texts without a translation")
    return 1 if any(lacking.values()) else 0


if __name__ == "__main__":
    sys.exit(main())
