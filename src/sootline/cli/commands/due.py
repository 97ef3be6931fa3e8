"""`sootline due`: what is due today, and which dates nobody knows?"""

import argparse
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from sootline.cli.days import day_said
from sootline.cli.output import deliver, finding_lines
from sootline.cli.parser import CommandParser
from sootline.cli.pieces import listed, whose, wrapped
from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.intervals import Standing
from sootline.tasks.list_due import DueItem, DueList, due_gear
from sootline.wiring.jobs import read_job
from sootline.wiring.rules import RULES
from sootline.words import name, say

_QUIET = (Standing.LATER, Standing.WAITS)


def add_arguments(parser: CommandParser) -> None:
    """Add JOB, --today and --all."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument("--today", metavar="DATE", help="due.help.today")
    parser.add_argument("--all", action="store_true", help="due.help.all")
    parser.add_argument("--why", action="store_true", help="due.help.why")


def run(options: argparse.Namespace) -> int:
    """List what is due; 1 when something is out or overdue."""
    result = due_gear(RULES, read_job(options.job), today=_day(options.today))
    deliver(result, _lines(result, options), options)
    late = (Standing.OUT, Standing.OVERDUE)
    return int(any(item.due.standing in late for item in result.items))


def _day(text: str | None) -> date | None:
    if text is None:
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        values = (("text", text),)
        fault = Fault(place="--today", message=MessageId("due.day_unreadable"), values=values)
        raise BadInputError([fault]) from None


def _lines(result: DueList, options: argparse.Namespace) -> Iterator[str]:
    lang = options.lang
    shown = [one for one in result.items if options.all or one.due.standing not in _QUIET]
    yield say("due.heading", {"today": result.today.isoformat(), "n": str(len(shown))}, lang=lang)
    yield from finding_lines(result.findings, lang=lang)
    groups: dict[tuple[Standing, str, str, str], list[DueItem]] = {}
    for item in shown:
        owner, day = whose(item.component, options.lang), str(item.due.first_day)
        groups.setdefault((item.due.standing, owner, item.due.matter, day), []).append(item)
    heading: Standing | None = None
    for (standing, *_), items in groups.items():
        if standing is not heading:
            heading = standing
            yield from ("", name("standing", standing.value, lang=lang).upper())
        yield from _group(items, result, lang)
        if options.why:
            yield from finding_lines(items[0].due.reasons, lang=lang)


def _group(items: list[DueItem], result: DueList, lang: str) -> list[str]:
    """Say what one member's components have due on one day, in as few lines as possible."""
    first = items[0]
    over, span = first.due.days_over, first.due.first_day
    values = {
        "owner": whose(first.component, lang),
        "matter": first.due.matter.value,
        "first_day": day_said(span, result.today, lang),
        "n": str(over or 0),
    }
    message = "due.line.over" if over else "due.line"
    if span.earliest is None and span.latest is None:
        message = "due.line.unknown"
    whole = {one.component.id: one.component for one in result.items if one.component.owner}
    what = listed([one.component for one in items], lang, among=whole.values())
    return wrapped(f"{say(message, values, lang=lang)}: {what}")
