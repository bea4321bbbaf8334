"""Python's own reader of command lines, in the language spoken.

It has its texts translated by `gettext`, but out of a catalogue of its own, which
Python does not bring. Here they are told out of ours; what of them a Python words
otherwise than below stays English.
"""

from __future__ import annotations

import argparse
from typing import Final

from core.language import marked, told, told_count

# As Python 3.11 to 3.14 have them.
TEXTS: Final = (
    marked("usage: "),
    marked("positional arguments"),
    marked("options"),
    marked("show this help message and exit"),
    marked("%(prog)s: error: %(message)s\n"),
    marked("argument %(argument_name)s: %(message)s"),
    marked("the following arguments are required: %s"),
    marked("unrecognized arguments: %s"),
    marked("not allowed with argument %s"),
    marked("ignored explicit argument %r"),
    marked("expected one argument"),
    marked("invalid choice: %(value)r (choose from %(choices)s)"),
    marked("invalid %(type)s value: %(value)r"),
    marked("unknown parser %(parser_name)r (choices: %(choices)s)"),
)


def tell_argparse() -> None:
    """Have `argparse` tell its texts out of the catalogue that is spoken."""
    argparse._ = told  # type: ignore[attr-defined]
    argparse.ngettext = told_count  # type: ignore[attr-defined]
