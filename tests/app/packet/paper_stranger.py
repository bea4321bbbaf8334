"""A stranger who has the paper alone: the cut order as a PDF reader finds it, cut with rectangles.

She knows the words of the cut order and arithmetic with fractions, and nothing of
the program. What she reads is the text of the pages: the title of each cloth, the
numbered lines, the lists of what should lie there in the end; and of the page on
what to cut, how large each letter is.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from tests.app.packet.pdf_reader import Seen

Size = tuple[Fraction, Fraction]  # across, along, in the unit of the page
_LENGTH = r"≈?[\d./ ]+?"
_STRAIGHTEN = re.compile(rf"Straighten the cut end: trim about ({_LENGTH}) (?:in|cm|mm) off")
_CUT = re.compile(
    rf"Cut (?:the )?(cloth|section \d+) \(({_LENGTH}) × ({_LENGTH}) (?:in|cm|mm)\)"
    rf"(?:, folded (?:once|twice),)? (across|along the grain), ({_LENGTH})(?: (?:in|cm|mm))? from "
    r"its (?:straight end|near edge)(?:, (\d+) times, each from the fresh edge)?\."
)
_MARK = Fraction(1, 8)
_GIVES = re.compile(r"Gives ([^.]*)\.")


@dataclass
class Table:
    """What lies on the table: sections by name, and the pieces that are done."""

    hand: dict[str, Size] = field(default_factory=dict)
    pieces: dict[str, Size] = field(default_factory=dict)
    done: list[str] = field(default_factory=list)


def read_number(text: str) -> Fraction:
    """ "42 1/16" as a number; she takes "about" for what it says."""
    return sum((Fraction(part) for part in _plain(text).replace("≈", "").split()), Fraction(0))


def cut_lines(pages: list[Seen]) -> Iterator[str]:
    """The lines of the cut order, each as one text; headings and words of pictures are no lines."""
    line = ""
    for page in pages:
        for text in page.texts:
            left, words = text.box[0] - _frame_left(page), text.words
            starts = re.fullmatch(r"\d+\.", words) is not None
            if words.endswith(", continued"):
                continue
            if starts or "is all cut when" in words or (text.size > 11 and left < 1):
                if line:
                    yield line
                line = words if "is all cut when" in words else ""
                if starts:
                    line = f"{words} "
            elif line and abs(left - 46) < 1 and text.size > 10:
                line += f" {words}"
    if line:
        yield line


def _frame_left(page: Seen) -> float:
    return min(text.box[0] for text in page.texts)


def follow(table: Table, line: str) -> None:
    """Do what one line says."""
    said = re.sub(r"\s+", " ", _plain(line))
    if "you have: " in said:
        # A long name of a cloth may stand on a line before, and so behind the last cut.
        said, _, labels = said.partition("you have: ")
        table.done += _labels(labels.rstrip("."))
    if _STRAIGHTEN.search(said):
        return
    found = _CUT.search(said)
    if found is None and said.endswith("is all cut when "):
        return
    if found is None:
        raise AssertionError(f"she does not understand: {said}")
    if found[1] == "cloth" and "cloth" in table.hand and not _near(table.hand["cloth"], found):
        table.hand.clear()  # the next cloth
    name, across, along, way, measure, times = found.groups()
    stated = (read_number(across), read_number(along))
    size = table.hand.pop(name, stated if name == "cloth" else None)
    assert size is not None, f"there is no {name}: {said}"
    assert _near(size, found), f"{name} measures {size}: {said}"
    _cut(table, name, stated, way == "across", read_number(measure), int(times or 1), said)


def _near(size: Size, found: re.Match[str]) -> bool:
    """Whether a size is the one that the line states; "≈" gives or takes a mark of the ruler."""
    return all(
        abs(have - read_number(said)) <= (_MARK if "≈" in said else 0)
        for have, said in zip(size, (found[2], found[3]), strict=True)
    )


def _cut(
    table: Table, name: str, size: Size, across: bool, by: Fraction, times: int, said: str
) -> None:
    gives = _labels(found[1]) if (found := _GIVES.search(said)) else []
    rests = said.count("Keep the offcut") + ("waste" in said)
    for _ in range(times):
        off, size = _split(size, across, by)
        if gives:
            _lay_down(table, gives.pop(0), off)
        else:
            rests -= 1
    if gives:
        _lay_down(table, gives.pop(0), size)
    elif rests <= 0:
        table.hand[name] = size
    assert not gives, f"{gives} do not come off: {said}"


def _split(size: Size, across: bool, by: Fraction) -> tuple[Size, Size]:
    wide, long = size
    assert 0 < by < (long if across else wide), (size, by)
    return ((wide, by), (wide, long - by)) if across else ((by, long), (wide - by, long))


def _lay_down(table: Table, label: str, size: Size) -> None:
    if label.startswith("section"):
        assert label not in table.hand, label
        table.hand[label] = size
    else:
        assert label not in table.pieces, label
        table.pieces[label] = size


def _labels(text: str) -> list[str]:
    """ "A1 to A3, B" is four labels."""
    found: list[str] = []
    for word in text.split(", "):
        stretch = re.fullmatch(r"([A-Z]+|section )(\d+) to (?:[A-Z]+|section )(\d+)", word)
        if stretch is None:
            found.append(word)
        else:
            name, low, high = stretch.groups()
            found += [f"{name}{number}" for number in range(int(low), int(high) + 1)]
    return found


def _plain(text: str) -> str:
    """Raised and lowered figures on the line, apart from a whole number before them."""
    apart = re.sub(r"(?<=[0-9])(?=[⁰¹²³⁴-⁹])", " ", text.replace("\u00a0", " "))
    apart = re.sub(r"(?<=[⁰¹²³⁴-⁹]) (?=[⁰¹²³⁴-⁹])", "", apart)
    return unicodedata.normalize("NFKC", apart).replace("\u2044", "/")
