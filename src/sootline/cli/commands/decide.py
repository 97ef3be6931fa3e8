"""`sootline decide`: what must each component undergo, who must decide, and why?"""

import argparse
from pathlib import Path

from sootline.cli.commands.decide_text import decided_lines
from sootline.cli.output import deliver
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.jobs import Job
from sootline.tasks.decide import decide_job
from sootline.wiring.jobs import read_job
from sootline.wiring.rules import RULES


def add_arguments(parser: CommandParser) -> None:
    """Add JOB, --why and --all."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument("--why", nargs="+", default=(), metavar="ID", help="decide.help.why")
    parser.add_argument("--all", action="store_true", help="decide.help.all")


def run(options: argparse.Namespace) -> int:
    """Decide on every component; 1 when something waits for a decision."""
    job = read_job(options.job)
    _check_named(job, options.why)
    decided = decide_job(RULES, job)
    deliver(
        decided,
        decided_lines(job, decided, options.lang, why=options.why, every=options.all),
        options,
    )
    return PROBLEM if any(one.open_holds for one in decided.decisions) else DONE


def _check_named(job: Job, ids: tuple[str, ...]) -> None:
    known = {component.id for component in job.components}
    faults = [
        Fault(place="--why", message=MessageId("job.no_such_component"), values=(("value", given),))
        for given in ids
        if given not in known
    ]
    if faults:
        raise BadInputError(faults)
