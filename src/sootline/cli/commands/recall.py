"""`sootline recall`: whom does a notice mean, who has it, what is left to see?"""

import argparse
from collections.abc import Iterator
from pathlib import Path

from sootline.cli.output import deliver, finding_lines, printable
from sootline.cli.parser import CommandParser
from sootline.cli.pieces import wrapped
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.upkeep.recalls import Affected
from sootline.tasks.match_recall import (
    Concerned,
    NoticeResult,
    RecallResult,
    match_recalls,
    with_notice,
)
from sootline.wiring.jobs import read_job
from sootline.wiring.notices import read_notice
from sootline.words import name, say


def add_arguments(parser: CommandParser) -> None:
    """Add JOB, --notice, --notice-file and --all."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument("--notice", metavar="ID", help="recall.help.notice")
    parser.add_argument("--notice-file", type=Path, metavar="FILE", help="recall.help.notice_file")
    parser.add_argument("--all", action="store_true", help="recall.help.all")


def run(options: argparse.Namespace) -> int:
    """Match the job's notices; 1 while one of them is open."""
    job, only = read_job(options.job), options.notice
    if options.notice_file is not None:
        notice = read_notice(options.notice_file)
        job, only = with_notice(job, notice), only or notice.id
    result = match_recalls(job, only=only)
    deliver(result, _lines(result, options), options)
    return DONE if result.closed else PROBLEM


def _lines(result: RecallResult, options: argparse.Namespace) -> Iterator[str]:
    lang = options.lang
    if not result.notices:
        yield say("recall.cli.none", lang=lang)
    for one in result.notices:
        yield from _notice(one, lang)
        if options.all:
            for match in one.others:
                yield from _heading(match.affected, match.component, lang)
                yield from finding_lines(match.reasons, lang=lang)
    yield from wrapped(say("recall.cli.defer", lang=lang), indent=0)


def _notice(one: NoticeResult, lang: str) -> Iterator[str]:
    title = {"issuer": printable(one.notice.issuer), "title": printable(one.notice.title)}
    yield from wrapped(say("recall.cli.heading", title, lang=lang), indent=0)
    counts = ", ".join(f"{name('affected', which, lang=lang)} {n}" for which, n in one.counts)
    yield f"  {counts}"
    if one.tell:
        told = {"people": printable(", ".join(one.tell), most=2000)}
        yield from wrapped(say("recall.cli.tell", told, lang=lang))
    for concerned in one.concerned:
        yield from _concerned(concerned, lang)
    yield ""
    yield from finding_lines(one.closure.reasons, lang=lang)


def _concerned(one: Concerned, lang: str) -> Iterator[str]:
    yield from _heading(one.match.affected, one.match.component, lang)
    where = one.where
    values = {
        "custody": where.custody.value,
        "place": printable(str(where.place or "-")),
        "department": printable(where.department or "-"),
        "owner": printable(where.owner or "-"),
        "borrower": printable(where.borrower or "-"),
        "wearer": printable(where.wearer or "-"),
        "inside": printable(where.inside or "-"),
    }
    yield from wrapped(say("recall.cli.where", values, lang=lang), indent=4)
    if where.inside:
        yield from wrapped(say("recall.cli.inside", values, lang=lang), indent=4)
    if where.borrower:
        yield from wrapped(say("recall.cli.lent", values, lang=lang), indent=4)
    yield from finding_lines(one.match.reasons, lang=lang)


def _heading(affected: Affected, component: str, lang: str) -> list[str]:
    return ["", f"{printable(component)}: {name('affected', affected, lang=lang).upper()}"]
