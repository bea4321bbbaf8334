"""Letters of other scripts in Latin ones, as the Unicode names of the letters sound.

For names of cloth in a script that the typeface lacks: not a scholar's
transliteration, but one that a reader of the script recognises. Consonants of
Indian scripts carry an "a" until a vowel sign or a virama takes it away. A
pictogram gives its name, a fullwidth letter or a digit its plain twin. Of what has
no sound in its name, such as an ideograph, nothing is known.
"""

from __future__ import annotations

import re
import unicodedata
from typing import Final

_SOUNDED: Final = re.compile(
    r"(?:LETTER|SYLLABLE)(?: SMALL| FINAL| VOCALIC| AU LENGTH)* ([A-Z]{1,7})$"
)
_VOWEL: Final = re.compile(r"VOWEL SIGN(?: VOCALIC| CANDRA| SHORT)* ([A-Z]{1,3})$")
_SIGNS: Final = {"ANUSVARA": "n", "CANDRABINDU": "n", "BINDI": "n", "TIPPI": "n", "VISARGA": "h"}
_MUTE: Final = ("SIGN VIRAMA", "SIGN AL-LAKUNA", "SIGN PULLI")


def in_latin(run: str) -> str | None:
    """`run` as it sounds; None where one of its letters tells nothing.

    >>> in_latin("नीला"), in_latin("みず"), in_latin("ブルー"), in_latin("🧵"), in_latin("花")
    ('niilaa', 'mizu', 'buruu', '(spool of thread)', None)
    """
    sounds = ""
    for char in unicodedata.normalize("NFKC", run):
        name = unicodedata.name(char, "")
        if name.endswith("PROLONGED SOUND MARK"):
            sounds += sounds[-1:]
            continue
        vowel = _VOWEL.search(name)
        if vowel or name.endswith(_MUTE):
            sounds = sounds.removesuffix("a") + (vowel[1].lower() if vowel else "")
            continue
        sound = _sound(char, name)
        if sound is None:
            return None
        sounds += sound
    return sounds


def _sound(char: str, name: str) -> str | None:
    """What one character adds, "" for a mark; None where it says nothing."""
    if char.isascii():
        return char
    if (digit := unicodedata.decimal(char, None)) is not None:
        return str(digit)
    if (sounded := _SOUNDED.search(name)) is not None:
        return sounded[1].lower()
    if unicodedata.category(char) == "So" and name:
        return f"({name.lower()})"
    if unicodedata.category(char).startswith("M"):
        return _SIGNS.get(name.rpartition(" ")[2], "")
    return None
