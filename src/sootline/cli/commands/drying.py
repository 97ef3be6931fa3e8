"""`sootline drying`: how long does gear take to dry, does the room keep up, and is it dry?"""

import argparse
from dataclasses import replace
from pathlib import Path

from sootline.cli.commands.drying_text import outlook_lines
from sootline.cli.output import deliver, finding_lines, write_whole
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import Bearing, Quantity
from sootline.core.drying import RoomAir
from sootline.core.drying.ending import judge_weight
from sootline.core.job.jobs import Job
from sootline.paper.drying_plots import outlook_plots
from sootline.tasks.estimate_drying import estimate_drying_of, wettest
from sootline.wiring.jobs import read_job
from sootline.wiring.practice import load_assumptions
from sootline.wiring.rules import RULES

_ROOM = ("temp", "humidity", "altitude", "volume", "changes", "supply_temp", "supply_humidity")


def add_arguments(parser: CommandParser) -> None:
    """Add `times JOB` with what stands in for the job's readings, and `end`."""
    kinds = parser.add_sub_commands("what")
    times = kinds.add_parser("times", help="drying.help.times")
    times.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    times.add_argument("--temp", metavar="TEMP", help="drying.help.temp")
    times.add_argument("--humidity", metavar="SHARE", help="drying.help.humidity")
    times.add_argument("--altitude", metavar="HEIGHT", help="drying.help.altitude")
    times.add_argument("--volume", metavar="VOLUME", help="drying.help.volume")
    times.add_argument("--changes", type=float, metavar="N", help="drying.help.changes")
    times.add_argument("--supply-temp", metavar="TEMP", help="drying.help.supply_temp")
    times.add_argument("--supply-humidity", metavar="SHARE", help="drying.help.supply_humidity")
    times.add_argument("--dehumidifier", type=float, metavar="N", help="drying.help.dehumidifier")
    times.add_argument("--plots", type=Path, metavar="FOLDER", help="drying.help.plots")
    end = kinds.add_parser("end", help="drying.help.end")
    end.add_argument("--dry", metavar="MASS", help="drying.help.dry")
    end.add_argument("--now", metavar="MASS", help="drying.help.now")


def run(options: argparse.Namespace) -> int:
    """Estimate a job's drying, or hold a weight against the stored dry weight."""
    return _end(options) if options.what == "end" else _times(options)


def _times(options: argparse.Namespace) -> int:
    job = _with_air(read_job(options.job), options)
    table = load_assumptions()
    outlook = estimate_drying_of(RULES, job, table)
    deliver(outlook, outlook_lines(outlook, wettest(job, table), lang=options.lang), options)
    if options.plots is not None and job.readings.air is not None:
        for name, svg in outlook_plots(outlook, job.readings.air, table, lang=options.lang):
            write_whole(options.plots / f"{name}.svg", svg)
    refused = any(one.estimate is None for one in outlook.places)
    return PROBLEM if refused or outlook.room.bottleneck else DONE


def _end(options: argparse.Namespace) -> int:
    dry, now = (None if text is None else Quantity.parse(text)
                for text in (options.dry, options.now))  # fmt: skip
    found = judge_weight(dry, now, load_assumptions())
    deliver(found, finding_lines([found], lang=options.lang), options)
    return DONE if found.bearing is Bearing.NOTES else PROBLEM


def _with_air(job: Job, options: argparse.Namespace) -> Job:
    """Put what was typed in place of the job's readings of the room."""
    typed: dict[str, object] = {}
    for field in _ROOM:
        given = getattr(options, field)
        if given is not None:
            typed[field] = given if isinstance(given, float) else Quantity.parse(given)
    if options.dehumidifier is not None:
        typed["dehumidifier_kg_h"] = options.dehumidifier
    air = job.readings.air
    if air is not None:
        air = replace(air, **typed)  # type: ignore[arg-type]
    elif {"temp", "humidity"} <= typed.keys():
        air = RoomAir(**typed)  # type: ignore[arg-type]
    return replace(job, readings=replace(job.readings, air=air))
