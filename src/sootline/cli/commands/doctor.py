"""`sootline doctor`: is everything as it must be for a record that is evidence?"""

import argparse
from collections.abc import Iterator
from typing import TYPE_CHECKING

from sootline.cli.output import deliver, printable
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.wiring.framework import start
from sootline.words import say

if TYPE_CHECKING:
    from sootline.wiring.store import Checked


def add_arguments(parser: CommandParser) -> None:
    """Add --deep."""
    parser.add_argument("--deep", action="store_true", help="store.help.deep")


def run(options: argparse.Namespace) -> int:
    """Look at everything and say what is amiss; 1 when anything is."""
    start()
    from sootline.wiring.store import check_up, open_store  # noqa: PLC0415

    checks = check_up(open_store(), deep=options.deep)
    lines = (line for one in checks for line in _lines(one, options.lang))
    deliver(checks, lines, options)
    return PROBLEM if any(one.faults for one in checks) else DONE


def _lines(check: "Checked", lang: str) -> Iterator[str]:
    called = say(f"store.check.name.{check.name}", lang=lang)
    if not check.faults:
        yield say("store.check.line", {"check": called}, lang=lang)
    for fault in check.faults:
        values = {key: printable(value) for key, value in fault.values}
        what = say(fault.message, values, lang=lang)
        yield say("store.check.amiss", {"check": called, "what": what}, lang=lang)
