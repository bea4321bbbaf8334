"""The languages there are, and which one a person wants. No Qt.

A language is a catalogue in `assets/languages/`, compiled from the text file of
the same name beside it (`python3 -m tests.languages`); English needs none.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from gettext import GNUTranslations, NullTranslations

from app.assets import asset
from core.language import speak

ENGLISH = "en"
# Each in its own words, so that whoever needs it can read it.
LANGUAGES = {ENGLISH: "English", "de": "Deutsch"}
# Where POSIX keeps the language of messages, the strongest first
# (IEEE Std 1003.1-2017, Base Definitions, 8.2).
_PLACES = ("LC_ALL", "LC_MESSAGES", "LANG")
_spoken = ENGLISH


def speak_language(language: str) -> None:
    """Tell every text in this language, one of `LANGUAGES`, from now on."""
    global _spoken
    speak(_catalogue(language))
    _spoken = language


def language_spoken() -> str:
    """The language that texts are told in now."""
    return _spoken


def told_in(language: str, text: str) -> str:
    """The text in one of `LANGUAGES`, whichever is spoken."""
    return _catalogue(language).gettext(text)


def _catalogue(language: str) -> NullTranslations:
    if language == ENGLISH:
        return NullTranslations()
    with asset(f"languages/{language}.mo").open("rb") as file:
        return GNUTranslations(file)


def spoken(tags: Iterable[str]) -> str:
    """The first language that is spoken here, of those a person can read; else English.

    >>> spoken(["fr-CA", "de-AT", "en"]), spoken(["fr"]), spoken(["de_DE.UTF-8"])
    ('de', 'en', 'de')
    """
    known = (tag.replace("_", "-").partition("-")[0].lower() for tag in tags)
    return next((language for language in known if language in LANGUAGES), ENGLISH)


def of_terminal(environment: Mapping[str, str] = os.environ) -> str:
    """The language of whoever sits at the terminal.

    >>> of_terminal({"LANG": "de_DE.UTF-8"}), of_terminal({"LANG": "de_DE", "LC_ALL": "C"})
    ('de', 'en')
    """
    return spoken(filter(None, [next(filter(None, map(environment.get, _PLACES)), "")]))
