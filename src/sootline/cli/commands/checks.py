"""`sootline checks`: which checks does a ticked sheet hold, typed in row by row?"""

import argparse
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from sootline.cli.output import write_whole
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE
from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.codec import encode
from sootline.core.rebuild import AfterWashCheck
from sootline.tasks.type_in_checks import type_in_checks
from sootline.wiring.jobs import read_job, read_text
from sootline.wiring.rules import RULES
from sootline.words import say


@dataclass(frozen=True, kw_only=True)
class CheckPart:
    """The part of a job that holds checks."""

    checks: tuple[AfterWashCheck, ...]


def add_arguments(parser: CommandParser) -> None:
    """Add JOB, SHEET, --by and --at."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument("sheet", type=Path, metavar="SHEET", help="rebuild.help.sheet")
    parser.add_argument("--by", required=True, metavar="WHO", help="rebuild.help.by")
    parser.add_argument("--at", metavar="MOMENT", help="rebuild.help.at")


def run(options: argparse.Namespace) -> int:
    """Read the sheet whole or refuse it whole, and write the checks as a part of a job."""
    job = read_job(options.job)
    at = _moment(options.at) if options.at else job.now
    text = read_text(options.sheet)
    checks = type_in_checks(RULES, job, text, by=options.by, at=at)
    document = encode(CheckPart, CheckPart(checks=checks))
    if options.out:
        write_whole(options.out, document + "\n")
        counted = {"n": str(len(checks)), "by": options.by}
        print(say("rebuild.rows.read", counted, lang=options.lang))
    else:
        print(document)
    return DONE


def _moment(text: str) -> datetime:
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        values = (("text", text),)
        fault = Fault(place="--at", message=MessageId("rebuild.moment"), values=values)
        raise BadInputError([fault]) from None
