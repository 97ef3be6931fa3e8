"""`sootline paper`: print a sheet of a job as PDF."""

import argparse
import datetime as dt
import json
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from sootline.cli.output import printable, write_whole
from sootline.cli.parser import CommandParser
from sootline.cli.plain import plain
from sootline.cli.registry import DONE
from sootline.core.basis import BadInputError, ComponentId, Fault, MessageId
from sootline.core.job.jobs import Job
from sootline.core.upkeep.inspections import InspectionKind
from sootline.paper.check_sheets import print_check_sheets
from sootline.paper.handover import print_handover
from sootline.paper.hold_labels import print_hold_labels
from sootline.paper.inspection_sheet import print_inspection_sheet
from sootline.paper.load_cards import print_load_cards
from sootline.paper.manifest import print_manifests
from sootline.paper.month import print_month
from sootline.paper.page import Page, PaperSize
from sootline.paper.radio import print_radio_sheet
from sootline.paper.recall_list import print_recall_list
from sootline.paper.tags import print_tags, without_tag
from sootline.tasks.check_contractor import check_contractor
from sootline.tasks.check_sheets import list_after_wash, list_routine_look
from sootline.tasks.decide import decide_job
from sootline.tasks.hand_over import hand_over
from sootline.tasks.hold_labels import list_hold_labels
from sootline.tasks.inspection_sheet import list_inspections
from sootline.tasks.load_cards import list_load_cards
from sootline.tasks.match_recall import match_recalls
from sootline.tasks.plan_day import plan_today
from sootline.tasks.plan_wash import PlanResult, plan_wash
from sootline.tasks.who_can_ride import backs_of, who_can_ride
from sootline.wiring.jobs import read_job
from sootline.wiring.plans import clock_now, load_planning_times, stop_after
from sootline.wiring.rules import RULES
from sootline.words import languages, say

_SECONDS = 3.0


@dataclass(frozen=True, kw_only=True)
class Printed:
    """What was printed where.

    Args:
        left_out: pieces whose id makes no tag.
    """

    sheet: str
    file: str
    size: int
    left_out: tuple[ComponentId, ...] = ()


def add_arguments(parser: CommandParser) -> None:
    """Add JOB, --sheet, --second-lang, --size, --seconds and --printed-at."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument("--sheet", required=True, choices=list(_SHEETS), help="paper.help.sheet")
    parser.add_argument("--second-lang", metavar="LANG", help="paper.help.second_lang")
    parser.add_argument(
        "--size", choices=[size.value for size in PaperSize], default="a4", help="paper.help.size"
    )
    parser.add_argument("--seconds", type=float, default=_SECONDS, help="paper.help.seconds")
    parser.add_argument("--printed-at", metavar="MOMENT", help="paper.help.printed_at")


def run(options: argparse.Namespace) -> int:
    """Print the sheet to the file named with --out."""
    if options.out is None:
        raise BadInputError([Fault(place="--out", message=MessageId("paper.no_out"))])
    job = read_job(options.job)
    pdf = _SHEETS[options.sheet](job, _page(job, options), options.seconds)
    write_whole(options.out, pdf)
    left_out = without_tag(job.components) if options.sheet == "tags" else ()
    printed = Printed(
        sheet=options.sheet,
        file=str(options.out),
        size=len(pdf),
        left_out=tuple(component.id for component in left_out),
    )
    if options.json:
        print(json.dumps(plain(printed, lang=options.lang), ensure_ascii=False, indent=2))
        return DONE
    print(say("paper.done", {"file": printable(printed.file)}, lang=options.lang))
    if printed.left_out:
        named = ", ".join(printable(one) for one in printed.left_out)
        values = {"n": str(len(printed.left_out)), "pieces": named}
        print(say("paper.left_out", values, lang=options.lang))
    return DONE


def _page(job: Job, options: argparse.Namespace) -> Page:
    first, second = options.lang, options.second_lang
    if second is not None and second not in languages():
        values = (("lang", second), ("known", ", ".join(languages())))
        message = MessageId("paper.no_such_language")
        raise BadInputError([Fault(place="--second-lang", message=message, values=values)])
    return Page(
        printed_at=_moment(options.printed_at),
        zone=job.department.zone,
        department=job.department.name,
        size=PaperSize(options.size),
        languages=(first,) if second in (None, first) else (first, second),
    )


def _moment(text: str | None) -> dt.datetime:
    if text is None:
        return clock_now()
    try:
        moment = dt.datetime.fromisoformat(text)
    except ValueError:
        moment = None
    if moment is None or moment.utcoffset() is None:
        fault = Fault(
            place="--printed-at", message=MessageId("paper.no_moment"), values=(("text", text),)
        )
        raise BadInputError([fault])
    return moment


def _plan(job: Job, seconds: float) -> PlanResult:
    return plan_wash(RULES, job, planning=load_planning_times(), stop=stop_after(seconds))


def _load_cards(job: Job, page: Page, seconds: float) -> bytes:
    return print_load_cards(list_load_cards(job, _plan(job, seconds)), page)


def _hold_labels(job: Job, page: Page, _: float) -> bytes:
    return print_hold_labels(list_hold_labels(job, decide_job(RULES, job)), page)


def _handover(job: Job, page: Page, seconds: float) -> bytes:
    plan = _plan(job, seconds)
    return print_handover(hand_over(job, plan.loads.decided), page, plan=plan, now=job.now)


def _check_sheets(job: Job, page: Page, _: float) -> bytes:
    decided = decide_job(RULES, job)
    after_wash, routine = list_after_wash(job, decided), list_routine_look(job, decided)
    return print_check_sheets(after_wash, routine, page)


def _radio(job: Job, page: Page, seconds: float) -> bytes:
    answer = who_can_ride(RULES, job, backs=backs_of(_plan(job, seconds), job))
    return print_radio_sheet(answer.riding.now, answer.now, page)


def _tags(job: Job, page: Page, _: float) -> bytes:
    return print_tags(job.components, page)


def _inspection(kind: InspectionKind) -> Callable[[Job, Page, float], bytes]:
    return lambda job, page, _: print_inspection_sheet(
        kind, list_inspections(RULES, job, kind), page
    )


def _manifests(job: Job, page: Page, _: float) -> bytes:
    return print_manifests([one.sheet for one in check_contractor(job).shipments], page)


def _month(job: Job, page: Page, _: float) -> bytes:
    return print_month(plan_today(RULES, job).overdue, page)


def _recall(job: Job, page: Page, _: float) -> bytes:
    return print_recall_list(match_recalls(job), page)


_SHEETS: dict[str, Callable[[Job, Page, float], bytes]] = {
    "load-cards": _load_cards,
    "hold-labels": _hold_labels,
    "handover": _handover,
    "check-sheets": _check_sheets,
    "radio": _radio,
    "tags": _tags,
    "inspection-routine": _inspection(InspectionKind.ROUTINE),
    "inspection-advanced": _inspection(InspectionKind.ADVANCED),
    "inspection-liner": _inspection(InspectionKind.LINER),
    "manifests": _manifests,
    "month": _month,
    "recall": _recall,
}
