"""The command line: a window by default, or one of the commands without one.

Bad input ends in one sentence on standard error and exit status 2; nothing is
written then. The commands import no Qt.
"""

from __future__ import annotations

from collections.abc import Sequence
from os import stat
from os.path import isfile
from pathlib import Path
from typing import TYPE_CHECKING

from app.commands import NAMES, command

if TYPE_CHECKING:
    import argparse

# What a command needs is imported only for it: the window, too, is seen sooner without it.
BAD_INPUT = 2
NOBODY_READS = 141  # as a shell has it for what is ended by a pipe that nobody reads any more


def main(argv: Sequence[str]) -> int:
    """Run what the words after the program's name ask for; return the exit status."""
    if not argv or argv[0] not in (*NAMES, "-h", "--help", "--version"):
        return _window(argv)
    from app.os_words import said_of
    from core.refusal import Refusal

    _speak(argv)
    file = ""
    try:
        arguments = _understood(argv)
        file = arguments.file
        status: int = arguments.run(arguments)
        return status
    except Refusal as refusal:
        # What is wrong with an option is not wrong with the file.
        where = "" if refusal.path.startswith("--") else f"{file}: "
        return complain(f"{where}{refusal}")
    except BrokenPipeError:
        return NOBODY_READS
    except OSError as error:
        return complain(f"{error.filename or file}: {said_of(error)}")


def _understood(argv: Sequence[str]) -> argparse.Namespace:
    """The words of a command, read; help that is asked for is printed, and ends the program."""
    from app.commands.output import standard_output

    try:
        return _parser([argv[0]] if argv[0] in NAMES else NAMES).parse_args(argv)
    except SystemExit as ended:
        if not ended.code:
            with standard_output():
                pass  # all of it is written, or it is told why not
        raise


def _speak(argv: Sequence[str]) -> None:
    """Tell everything in the language asked for, its help too; else in the terminal's."""
    from app.languages import LANGUAGES, of_terminal, speak_language

    words = " ".join(argv).replace("--language ", "--language=").split()
    asked = [word.removeprefix("--language=") for word in words if word.startswith("--language=")]
    known = [language for language in asked if language in LANGUAGES]
    speak_language(known[-1] if known else of_terminal())


def complain(sentence: str) -> int:
    """One sentence on standard error; the status that says so to a script."""
    from app.commands.output import say_aside

    say_aside(sentence)
    return BAD_INPUT


def _parser(names: Sequence[str]) -> argparse.ArgumentParser:
    """What reads the words of these commands."""
    import argparse

    from app.commands.argparse_told import tell_argparse
    from app.languages import LANGUAGES
    from app.version import version_text
    from core.language import told

    tell_argparse()
    parser = argparse.ArgumentParser(
        prog="crossgrain",
        description=told(
            "Plan the finishing of a quilt: what to buy, what to cut, and from where."
        ),
        epilog=told("Without a command the window opens, on FILE if one is given."),
    )
    parser.add_argument(
        "--version",
        action="version",
        version=f"crossgrain {version_text()}",
        help=told("show program's version number and exit"),
    )
    commands = parser.add_subparsers(metavar=told("COMMAND"), required=True)
    for name in names:
        chosen = command(name)
        # The first run looks for the words as they are: no "--pd" for "--pdf".
        sub = commands.add_parser(
            name, help=told(chosen.HELP), description=told(chosen.HELP), allow_abbrev=False
        )
        sub.set_defaults(run=chosen.run)
        sub.add_argument(
            "--language",
            choices=LANGUAGES,
            help=told("the language of its words; as the terminal's"),
        )
        chosen.add_arguments(sub)
    return parser


def _window(argv: Sequence[str]) -> int:
    if argv and (len(argv) > 1 or argv[0].startswith("-") or not isfile(argv[0])):
        return _no_window(argv)
    path = Path(argv[0]) if argv else None
    from app.window.main import run

    return run([], path)


def _no_window(argv: Sequence[str]) -> int:
    """Say why no window opens."""
    from app.os_words import said_of
    from core.language import told

    _speak(())
    if len(argv) > 1 or argv[0].startswith("-"):
        return complain(
            told(
                '"{word}" is no command; give one project file to open, or see --help',
                word=argv[0],
            )
        )
    try:
        stat(argv[0])
    except (FileNotFoundError, ValueError):
        pass
    except OSError as error:
        return complain(f"{argv[0]}: {said_of(error)}")
    return complain(
        told("{file}: there is no such file; give a .crossgrain file, or none", file=argv[0])
    )
