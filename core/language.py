"""The language the program speaks: every text for a person is told through here.

A text is written in English where it is used, and looked up in the catalogue of
the language that was chosen (`speak`); what a catalogue does not know stays
English. The catalogue is of the GNU gettext kind, and comes from outside: this
package reads no files.

* `told("Cut {count} strips", count=3)`: a text, its values put in afterwards, so
  that a language can order them as it likes.
* `told_count("{count} join", "{count} joins", 3)`: one that depends on a number.
* `told_as("measuring", "left")`: one whose English word means two things.
* `marked("Backing")`: a text kept in a table, to be told when it is shown.

Whole sentences are told, not parts of one: no two languages join them alike.
"""

from __future__ import annotations

from collections.abc import Sequence
from gettext import NullTranslations

_catalogue = NullTranslations()


def speak(catalogue: NullTranslations) -> None:
    """Tell every text out of this catalogue from now on; an empty one speaks English."""
    global _catalogue
    _catalogue = catalogue


def told(text: str, /, **values: object) -> str:
    """The text in the language spoken, its values put in.

    >>> told("Cut {count} from {cloth}.", count="3 strips", cloth="{Tide}")
    'Cut 3 strips from {Tide}.'
    >>> told("no values, so {braces} stay"), told("")
    ('no values, so {braces} stay', '')
    """
    return _filled(_catalogue.gettext(text) if text else text, values)


def told_as(meaning: str, text: str, /, **values: object) -> str:
    """As `told`, for a text with more than one meaning in English.

    >>> told_as("what remains", "left")
    'left'
    """
    return _filled(_catalogue.pgettext(meaning, text), values)


def told_count(one: str, many: str, count: int, /, **values: object) -> str:
    """As `told`, in the form that goes with a number, which may be told as `{count}`.

    >>> told_count("{count} join", "{count} joins", 1), told_count("a join", "{count} joins", 3)
    ('1 join', '3 joins')
    """
    return _filled(_catalogue.ngettext(one, many, count), {"count": count, **values})


def marked(text: str) -> str:
    """The text as it is: it stands in a table, and is told when it is shown."""
    return text


def told_list(texts: Sequence[str]) -> str:
    """Texts one after the other, "and" before the last.

    >>> told_list(["A1"]), told_list(["A1", "B2"]), told_list(["A1", "B2", "C3"])
    ('A1', 'A1 and B2', 'A1, B2 and C3')
    """
    if len(texts) < 2:
        return "".join(texts)
    return told("{first} and {last}", first=", ".join(texts[:-1]), last=texts[-1])


def _filled(text: str, values: dict[str, object]) -> str:
    return text.format(**values) if values else text
