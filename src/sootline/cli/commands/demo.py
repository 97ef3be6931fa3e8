"""`sootline demo`: how does last night's call at an invented department come out?"""

import argparse
from itertools import count
from pathlib import Path

from sootline.cli.commands.decide_text import decided_lines
from sootline.cli.commands.plan_text import planned_lines
from sootline.cli.output import deliver, write_whole
from sootline.cli.parser import CommandParser
from sootline.cli.pieces import wrapped
from sootline.cli.registry import DONE
from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.tasks.plan_wash import plan_wash
from sootline.wiring.demo import demo_files, demo_job
from sootline.wiring.plans import load_planning_times
from sootline.wiring.rules import RULES
from sootline.words import say

# Counted, not timed, so that everybody sees the same night.
_TRIES = 1500


def add_arguments(parser: CommandParser) -> None:
    """Add --files."""
    parser.add_argument("--files", type=Path, metavar="DIR", help="demo.help.files")


def run(options: argparse.Namespace) -> int:
    """Work the demo department's night through, or copy its files to look at and change."""
    if options.files:
        _make_folder(options.files)
        for name, text in demo_files():
            write_whole(options.files / name, text)
        copied = {"folder": str(options.files)}
        print("\n".join(wrapped(say("demo.copied", copied, lang=options.lang), indent=0)))
        return DONE
    job = demo_job()
    planning = load_planning_times()
    asked = count()
    result = plan_wash(RULES, job, planning=planning, stop=lambda: next(asked) >= _TRIES)
    lines = [
        *wrapped(say("demo.heading", lang=options.lang), indent=0),
        "",
        *decided_lines(job, result.loads.decided, options.lang, why=(), every=False),
        "",
        *planned_lines(job, result, options.lang),
        "",
        *wrapped(say("demo.next", lang=options.lang), indent=0),
    ]
    deliver(result, lines, options)
    return DONE


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        values = (("folder", str(folder)), ("reason", error.strerror or str(error)))
        fault = Fault(place="--files", message=MessageId("demo.no_folder"), values=values)
        raise BadInputError([fault]) from None
