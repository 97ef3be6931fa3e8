"""`sootline inspect`: what came of inspections and repairs, and what is looked at on a piece?"""

import argparse
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from sootline.cli.output import deliver, finding_lines, printable, write_whole
from sootline.cli.parser import CommandParser
from sootline.cli.pieces import wrapped
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import BadInputError, ComponentId, Fault, MessageId
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.core.upkeep.inspections import DayResult, InspectionKind, Judged, Result
from sootline.tasks.inspect_gear import CheckList, InspectionResult, inspect_gear, list_checks
from sootline.tasks.inspection_sheet import type_in_inspections, with_typed
from sootline.tasks.weigh_repairs import RepairResult, weigh_repairs
from sootline.wiring.jobs import read_job, read_text
from sootline.wiring.rules import RULES
from sootline.words import name, say


@dataclass(frozen=True, kw_only=True)
class Answer:
    """What the command answers: inspections, and repairs."""

    inspections: InspectionResult
    repairs: tuple[RepairResult, ...]


def add_arguments(parser: CommandParser) -> None:
    """Add JOB, --piece, --all, --typed, --kind, --by, --at and --job-out."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument("--piece", metavar="ID", help="inspection.help.piece")
    parser.add_argument("--all", action="store_true", help="inspection.help.all")
    parser.add_argument("--typed", type=Path, metavar="SHEET", help="inspection.help.typed")
    parser.add_argument(
        "--kind", choices=[one.value for one in InspectionKind], default="advanced",
        help="inspection.help.kind",
    )  # fmt: skip
    parser.add_argument("--by", metavar="WHO", help="inspection.help.by")
    parser.add_argument("--at", metavar="MOMENT", help="inspection.help.at")
    parser.add_argument("--job-out", type=Path, metavar="FILE", help="inspection.help.job_out")


def run(options: argparse.Namespace) -> int:
    """Judge inspections and repairs; 1 when something was found or stays due."""
    job = read_job(options.job)
    if options.piece is not None:
        lists = list_checks(RULES, job, ComponentId(options.piece))
        deliver(lists, _points(lists, options.lang), options)
        return DONE
    if options.typed is not None:
        job = _typed(job, options)
    if options.job_out is not None:
        write_whole(options.job_out, encode(Job, job) + "\n")
    answer = Answer(inspections=inspect_gear(RULES, job), repairs=weigh_repairs(RULES, job))
    deliver(answer, _lines(answer, options), options)
    return DONE if answer.inspections.quiet else PROBLEM


def _typed(job: Job, options: argparse.Namespace) -> Job:
    """Take in the rows of a ticked sheet, each piece by itself."""
    if not options.by:
        raise BadInputError([Fault(place="--by", message=MessageId("inspection.cli.no_name"))])
    at = _moment(options.at) if options.at else job.now
    kind = InspectionKind(options.kind)
    text = read_text(options.typed)
    typed = type_in_inspections(RULES, job, text, kind, by=options.by, at=at)
    return with_typed(RULES, job, typed)


def _moment(text: str) -> datetime:
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        values = (("text", text),)
        fault = Fault(place="--at", message=MessageId("rebuild.moment"), values=values)
        raise BadInputError([fault]) from None


def _points(lists: Iterable[CheckList], lang: str) -> Iterator[str]:
    for one in lists:
        yield f"{printable(one.component)}: {name('inspection_kind', one.kind, lang=lang)}"
        for point in one.points:
            yield from wrapped(f"[ ] {say(point, lang=lang)}")
        for test in one.tests:
            yield from wrapped(f"[ ] {name('liner_test', test, lang=lang)}")
        yield from finding_lines(one.questions, lang=lang)
        yield ""
    yield from wrapped(say("inspection.cli.defer", lang=lang), indent=0)


def _lines(answer: Answer, options: argparse.Namespace) -> Iterator[str]:
    lang, result = options.lang, answer.inspections
    yield from finding_lines(result.findings, lang=lang)
    if not result.days and not result.single and not answer.repairs:
        yield say("inspection.cli.none", lang=lang)
    for day in result.days:
        yield from _day(day, options)
    for piece in result.single:
        yield from _piece(piece, lang)
    for one in answer.repairs:
        heading = {"component": printable(one.repair.component)}
        yield from ("", say("inspection.cli.repair", heading, lang=lang))
        yield from finding_lines(one.worth.reasons, lang=lang)
    yield ""
    yield from wrapped(say("inspection.cli.defer", lang=lang), indent=0)


def _day(day: DayResult, options: argparse.Namespace) -> Iterator[str]:
    lang = options.lang
    values = {"kind": day.day.kind.value, "on": day.day.on.isoformat()}
    yield say("inspection.cli.day", values, lang=lang)
    counts = Counter(one.result for one in day.elements)
    for result in Result:
        if counts[result]:
            yield f"  {counts[result]:>4}  {name('result', result, lang=lang)}"
    shown = (one for one in day.pieces if options.all or one.result is not Result.NOTHING_FOUND)
    for piece in shown:
        yield from _piece(piece, lang)


def _piece(piece: Judged, lang: str) -> Iterator[str]:
    yield f"{printable(piece.component)}: {name('result', piece.result, lang=lang)}"
    if piece.next_due is not None:
        values = {"first_day": str(piece.next_due)}
        yield from wrapped(say("inspection.cli.next", values, lang=lang))
    yield from finding_lines(piece.reasons, lang=lang)
