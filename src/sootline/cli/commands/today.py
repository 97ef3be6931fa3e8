"""`sootline today`: what to take today, who wears what meanwhile, what else is due?"""

import argparse
from collections.abc import Iterator
from pathlib import Path

from sootline.cli.commands.today_text import today_lines
from sootline.cli.output import deliver, write_whole
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.job.jobs import Job
from sootline.tasks.plan_day import AHEAD_DAYS, Today, plan_today
from sootline.wiring.calendars import CalendarEntry, calendar_text
from sootline.wiring.jobs import read_job
from sootline.wiring.rules import RULES
from sootline.words import say


def add_arguments(parser: CommandParser) -> None:
    """Add JOB, --ahead, --overdue and --calendar."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument(
        "--ahead", type=int, default=AHEAD_DAYS, metavar="DAYS", help="upkeep.help.ahead"
    )
    parser.add_argument("--overdue", action="store_true", help="upkeep.help.overdue")
    parser.add_argument("--calendar", type=Path, metavar="FILE", help="upkeep.help.calendar")


def run(options: argparse.Namespace) -> int:
    """Plan the job's day; 1 when something is overdue."""
    job = read_job(options.job)
    today = plan_today(RULES, job, ahead_days=options.ahead)
    if options.calendar is not None:
        write_whole(options.calendar, _feed(today, job, options.lang))
    deliver(today, today_lines(today, options), options)
    return PROBLEM if today.overdue.rows else DONE


def _feed(today: Today, job: Job, lang: str) -> str:
    title = say("upkeep.calendar.name", {"department": job.department.name}, lang=lang)
    return calendar_text(_entries(today, lang), name=title, stamp=job.now)


def _entries(today: Today, lang: str) -> Iterator[CalendarEntry]:
    for one in today.calendar:
        values = {
            "matter": one.matter.value,
            "kind": one.kind,
            "component": one.component,
            "owner": one.owner or "-",
        }
        yield CalendarEntry(
            uid=f"{one.id}@sootline",
            day=one.day,
            summary=say("upkeep.calendar.entry", values, lang=lang),
            description=say("upkeep.calendar.defer", lang=lang),
        )
