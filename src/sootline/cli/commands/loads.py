"""`sootline loads`: what may share a drum, a sink or a bench, and up to which limit?"""

import argparse
from collections.abc import Iterator
from pathlib import Path

from sootline.cli.output import deliver, finding_lines, printable
from sootline.cli.parser import CommandParser
from sootline.cli.pieces import listed, wrapped
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import ComponentId
from sootline.core.gear import Component, WashMethod
from sootline.core.job.jobs import Job
from sootline.core.laundry.sorts import Sort
from sootline.tasks.form_loads import Loads, form_loads
from sootline.wiring.jobs import read_job
from sootline.wiring.rules import RULES
from sootline.words import name, say


def add_arguments(parser: CommandParser) -> None:
    """Add JOB and --why."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument("--why", action="store_true", help="loads.help.why")


def run(options: argparse.Namespace) -> int:
    """Sort what is to be washed; 1 when something cannot be washed or dried here."""
    job = read_job(options.job)
    loads = form_loads(RULES, job)
    deliver(loads.sorting, _lines(job, loads, options.lang, why=options.why), options)
    return PROBLEM if loads.sorting.refused else DONE


def _lines(job: Job, loads: Loads, lang: str, *, why: bool) -> Iterator[str]:
    pieces = {component.id: component for component in job.components}
    sorting = loads.sorting
    yield say("loads.heading", {"n": str(len(sorting.sorts))}, lang=lang)
    for number, sort in enumerate(sorting.sorts, 1):
        yield ""
        yield from _sort(number, sort, pieces, lang)
        if why:
            yield from finding_lines(sort.reasons, lang=lang)
    if sorting.refused:
        yield from ("", say("loads.refused", lang=lang))
        yield from finding_lines(sorting.refused, lang=lang)
    if sorting.kept_out:
        yield from ("", say("loads.kept_out", {"n": str(len(sorting.kept_out))}, lang=lang))
    if why:
        for component, reason in sorting.kept_out:
            yield from wrapped(listed([pieces[component]], lang))
            yield from finding_lines([reason], lang=lang)


def _sort(
    number: int, sort: Sort, pieces: dict[ComponentId, Component], lang: str
) -> Iterator[str]:
    in_drum = sort.method is WashMethod.MACHINE
    what = name("company", sort.company, lang=lang) if in_drum else ""
    values = {
        "place": str(number),
        "method": name("wash_method", sort.method, lang=lang),
        "what": f", {what}" if what else "",
        "apart": apart(sort, lang),
    }
    yield say("loads.sort", values, lang=lang)
    yield from wrapped(listed([pieces[one] for one in sort.components], lang))
    if sort.bagged:
        bagged = listed([pieces[one] for one in sort.bagged], lang)
        yield from wrapped(say("loads.bagged", {"pieces": bagged}, lang=lang))
    for setting in sort.settings:
        values = {
            "washer": printable(setting.washer),
            "programme": printable(setting.programme),
            "limit": str(setting.limit),
            "n": str(setting.pieces),
        }
        message = "loads.setting.pieces" if setting.pieces else "loads.setting"
        yield from wrapped(say(message, values, lang=lang))
    if sort.places:
        yield from wrapped(
            say("loads.places", {"places": printable(", ".join(sort.places))}, lang=lang)
        )


def apart(sort: Sort, lang: str) -> str:
    """Say with what a sort may not share, or nothing."""
    if sort.separation.alone:
        return f", {say('decide.alone', lang=lang)}"
    if sort.separation.hazards:
        hazards = ", ".join(sort.separation.hazards)
        return f", {say('decide.apart', {'contaminant': hazards}, lang=lang)}"
    return ""
