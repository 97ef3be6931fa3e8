"""`sootline due`: what is due today, and which dates nobody knows?"""

import argparse
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from sootline.cli.days import day_said
from sootline.cli.output import deliver, finding_lines
from sootline.cli.parser import CommandParser
from sootline.cli.pieces import listed, whose, wrapped
from sootline.core.basis import BadInputError, ComponentId, Fault, MessageId
from sootline.core.intervals import Matter, Standing
from sootline.tasks.list_due import DueItem, DueList, due_gear
from sootline.tasks.ports import DueKey
from sootline.wiring.framework import start
from sootline.wiring.jobs import read_job
from sootline.wiring.rules import RULES
from sootline.words import name, say

_QUIET = (Standing.LATER, Standing.WAITS)


def add_arguments(parser: CommandParser) -> None:
    """Add JOB, --today, --all, and which page of the record's list."""
    parser.add_argument("job", type=Path, nargs="?", metavar="JOB", help="due.help.job")
    parser.add_argument("--today", metavar="DATE", help="due.help.today")
    parser.add_argument("--all", action="store_true", help="due.help.all")
    parser.add_argument("--why", action="store_true", help="due.help.why")
    parser.add_argument("--until", metavar="DATE", help="due.help.until")
    parser.add_argument("--station", metavar="STATION", help="due.help.station")
    parser.add_argument("--most", type=int, default=50, metavar="N", help="due.help.most")
    parser.add_argument("--after", metavar="KEY", help="due.help.after")


def run(options: argparse.Namespace) -> int:
    """List what is due; 1 when something is out or overdue."""
    if options.job is None:
        return _of_record(options)
    result = due_gear(RULES, read_job(options.job), today=_day(options.today))
    deliver(result, _lines(result, options), options)
    late = (Standing.OUT, Standing.OVERDUE)
    return int(any(item.due.standing in late for item in result.items))


def _of_record(options: argparse.Namespace) -> int:
    """List a page of what is due by the store's own record, from the earliest day on."""
    start()
    from sootline.wiring.own_record import due_of_record  # noqa: PLC0415

    page = due_of_record(
        options.station,
        today=_day(options.today),
        until=_day(options.until, "--until"),
        after=_key(options.after),
        most=options.most,
    )
    shown = DueList(today=page.today, items=page.items, sets=(), findings=())
    lines = list(_lines(shown, options))
    if page.following is not None:
        key = "/".join(map(str, page.following))
        lines += ["", say("due.more", {"key": key}, lang=options.lang)]
    deliver(page, lines, options)
    late = (Standing.OUT, Standing.OVERDUE)
    return int(any(item.due.standing in late for item in page.items))


def _key(text: str | None) -> DueKey | None:
    """Read where the page before ended: day, piece and matter, as it was said."""
    if text is None:
        return None
    first, _, rest = text.partition("/")
    piece, _, matter = rest.rpartition("/")
    try:
        return DueKey(date.fromisoformat(first), ComponentId(piece), Matter(matter))
    except ValueError:
        values = (("text", text),)
        fault = Fault(place="--after", message=MessageId("due.key_unreadable"), values=values)
        raise BadInputError([fault]) from None


def _day(text: str | None, place: str = "--today") -> date | None:
    if text is None:
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        values = (("text", text),)
        fault = Fault(place=place, message=MessageId("due.day_unreadable"), values=values)
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
