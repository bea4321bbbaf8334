"""The first run: from a bare `python3` to a program that can start.

`python3 -m app` and `python3 -m tests` call `ready` before they import anything else. In
reading order: `needs` (what this start needs), `system` (Qt's libraries on Linux),
`environment` (the private environment in the checkout), `road` (the order of it all).

This file, app/__init__.py and the two __main__.py keep to what every Python 3 can read: an old
one is told so in a sentence, not by a syntax error.
"""

import sys

OLDEST = (3, 11)


def ready(module: str, argv: "list[str]") -> None:
    """Return when `python3 -m module argv` can go on in this process.

    Otherwise go on in the private environment, made first if need be, or end with one
    sentence and exit status 2.
    """
    sentence = too_old(module, tuple(sys.version_info[:3]))
    if sentence:
        sys.stderr.write(sentence + "\n")
        sys.exit(2)
    from app.first_run import road

    road.travel(module, argv)


def too_old(module: str, version: "tuple[int, ...]") -> str:
    """Return the sentence for a Python below the oldest that will do, else nothing.

    >>> too_old("app", (3, 11, 0))
    ''
    """
    if version >= OLDEST:
        return ""
    return (
        "Crossgrain needs Python {}.{} or newer, and this is Python {}.{}.{}: "
        "start it with a newer one, for example python3.13 -m {}."
    ).format(*OLDEST, *version, module)
