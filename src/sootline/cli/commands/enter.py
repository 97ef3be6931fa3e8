"""`sootline enter`: a job file becomes the beginning of the record."""

import argparse
import hashlib
import platform
from pathlib import Path

from sootline.cli.output import deliver
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE
from sootline.core.basis import DeviceId, MemberId
from sootline.core.ledger import ClockSource, Established, Occurred
from sootline.core.ledger.acts import Act
from sootline.wiring.framework import start
from sootline.wiring.jobs import read_job
from sootline.words import say


def add_arguments(parser: CommandParser) -> None:
    """Add JOB and --by."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument("--by", required=True, metavar="MEMBER", help="store.help.by")


def run(options: argparse.Namespace) -> int:
    """Record what the job says; the same file entered again adds nothing."""
    job = read_job(options.job)
    start()
    from sootline.tasks.take_in_job import take_in_job  # noqa: PLC0415
    from sootline.wiring.store import open_book, open_store, prepare  # noqa: PLC0415

    prepare(open_store())
    digest = hashlib.sha256(options.job.read_bytes()).hexdigest()
    act = Act(
        idem=f"enter-{digest[:24]}",
        # The job's own moment, so that the same file makes the same words.
        occurred=Occurred.at(job.now, ClockSource.DOCUMENT),
        device=DeviceId(platform.node() or "console"),
        actor=MemberId(options.by),
        established=Established.IMPORTED,
    )
    taken = take_in_job(open_book(), act, job)
    values = {
        "members": str(taken.members),
        "components": str(taken.components),
        "calls": str(taken.calls),
        "n": str(taken.entries),
    }
    deliver(taken, [say("store.enter.done", values, lang=options.lang)], options)
    return DONE
