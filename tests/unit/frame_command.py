"""A command that only exists to show how the frame treats what a command does."""

import argparse
import sys
from pathlib import Path

from sootline.cli.output import deliver
from sootline.cli.parser import CommandParser
from sootline.core.basis import BadInputError, DateSpan, Fault, MessageId
from sootline.files.reading import read_json


def add_arguments(parser: CommandParser) -> None:
    """Take what to do, and perhaps a file."""
    actions = parser.add_sub_commands("action")
    for action in ("deliver", "faults", "value", "fail", "stop", "flood"):
        actions.add_parser(action, help="cli.help.demo")
    actions.add_parser("read", help="cli.help.job").add_argument("file", type=Path)


def run(options: argparse.Namespace) -> int:
    """Do it."""
    if options.action == "fail":
        raise ValueError("drum\x1b[2J")
    if options.action == "stop":
        raise KeyboardInterrupt
    if options.action == "value":
        DateSpan.parse("sometime")
    if options.action == "faults":
        message = MessageId("basis.quantity.unreadable")
        raise BadInputError(
            [Fault(place=f"row {n}", message=message, values=(("text", "\x1b[2J" + "x" * 9999),))
             for n in range(60)]
        )  # fmt: skip
    if options.action == "read":
        deliver(read_json(options.file), ["read"], options)
    if options.action == "flood":
        for _ in range(100_000):
            sys.stdout.write("line\n")
    if options.action == "deliver":
        deliver({"when": DateSpan.parse("2019-05")}, ["plain text"], options)
    return 1
