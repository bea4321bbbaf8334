"""The words of the commands that say how something is printed, and for whom."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from core.language import told
from core.lengths import Units

if TYPE_CHECKING:
    from app.packet.choice import PacketChoice
    from app.packet.paper import Format


def add_format(parser: argparse.ArgumentParser) -> None:
    """Paper, colour, size of type, and a printer's own measure."""
    parser.add_argument(
        "--paper", choices=("letter", "a4"), default="letter", help=told("what to print on; letter")
    )
    parser.add_argument("--grey", action="store_true", help=told("print without colour"))
    parser.add_argument(
        "--large", action="store_true", help=told("large print: words of 18 pt and up")
    )
    parser.add_argument(
        "--bar",
        metavar=told("LENGTH"),
        help=told("how long your printer makes the 100 mm bar, such as 98mm"),
    )


def add_packet(parser: argparse.ArgumentParser) -> None:
    """Which pages, and for whom."""
    parser.add_argument(
        "--pages", metavar=told("LIST"), help=told("pages of the packet, such as quilt,cloths,cuts")
    )
    parser.add_argument(
        "--for",
        dest="names",
        metavar=told("NAMES"),
        help=told("a packet for each name of this list"),
    )
    parser.add_argument("--copies", metavar=told("N"), help=told("how many of each packet"))


def format_of(arguments: argparse.Namespace, units: Units) -> Format:
    """The format asked for. Raises `Refusal`."""
    from app.packet.choice import correction_of
    from app.packet.paper import USUAL, Format, Paper

    correction = USUAL.correction if arguments.bar is None else correction_of(arguments.bar, units)
    paper = Paper[arguments.paper.upper()]
    return Format(paper, arguments.grey, arguments.large, correction)


def packet_choice_of(arguments: argparse.Namespace, units: Units) -> PacketChoice:
    """The packet asked for. Raises `Refusal`."""
    from app.packet.choice import (
        USUAL_PAGES,
        PacketChoice,
        copies_counted,
        names_listed,
        pages_named,
    )

    return PacketChoice(
        pages=USUAL_PAGES if arguments.pages is None else pages_named(arguments.pages),
        names=() if arguments.names is None else names_listed(arguments.names),
        copies=1 if arguments.copies is None else copies_counted(arguments.copies),
        form=format_of(arguments, units),
    )
