"""`sootline plan`: in which loads, in which order, and when is each member's gear back?"""

import argparse
import time
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from sootline.cli.commands.plan_text import figures, planned_lines
from sootline.cli.output import deliver
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.jobs import Job
from sootline.core.verify import verify
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.search import solve
from sootline.tasks.plan_wash import Aim, PlanResult, UnsoundPlanError, aim_of, plan_wash
from sootline.wiring.beside import helps_for
from sootline.wiring.plans import load_planning_times, read_question, stop_after
from sootline.wiring.rules import RULES

_SECONDS = 5.0
_MOST_SECONDS = 3600.0


def add_arguments(parser: CommandParser) -> None:
    """Add FILE, --seconds, --goal, --by and --seed."""
    parser.add_argument("file", type=Path, metavar="FILE", help="plan.help.file")
    parser.add_argument("--seconds", type=float, default=_SECONDS, help="plan.help.seconds")
    parser.add_argument("--goal", choices=[goal.value for goal in Goal], help="plan.help.goal")
    parser.add_argument("--by", metavar="MIN", help="plan.help.by")
    parser.add_argument("--seed", type=int, default=0, help="plan.help.seed")


def run(options: argparse.Namespace) -> int:
    """Plan a job, or a neutral instance; 1 when something is held, refused or out of the plan."""
    within_limits(options.seconds)
    question = read_question(options.file)
    if isinstance(question, Instance):
        plan = _neutral(question, options)
        deliver(plan, figures(plan, Goal(options.goal or Goal.SOONEST), options.lang), options)
        return DONE
    result = _planned(question, options)
    deliver(result, planned_lines(question, result, options.lang), options)
    return DONE if all(back.complete for back in result.worksheet.back) else PROBLEM


def within_limits(seconds: float) -> None:
    """Refuse times to plan in that are below nothing or beyond an hour.

    Raises:
        BadInputError: they are.
    """
    if not 0 <= seconds <= _MOST_SECONDS:
        values = (("value", str(seconds)), ("limit", str(_MOST_SECONDS)))
        fault = Fault(place="--seconds", message=MessageId("plan.seconds"), values=values)
        raise BadInputError([fault])


def _neutral(instance: Instance, options: argparse.Namespace) -> Plan:
    goal = Goal(options.goal or Goal.SOONEST)
    began = time.perf_counter()
    by = None if options.by is None else _minute(options.by)
    stop = stop_after(options.seconds)
    helps = helps_for(options.seconds)
    plan = solve(instance, goal=goal, by=by, stop=stop, seed=options.seed, helps=helps)
    if faults := verify(instance, plan):
        raise UnsoundPlanError(faults)
    return replace(plan, seconds=round(time.perf_counter() - began, 3))


def _planned(job: Job, options: argparse.Namespace) -> PlanResult:
    asked = aim_of(job)
    goal = Goal(options.goal) if options.goal else asked.goal
    by = asked.by if options.by is None else _from_start(options.by, asked)
    return plan_wash(
        RULES,
        job,
        planning=load_planning_times(),
        stop=stop_after(options.seconds),
        helps=helps_for(options.seconds),
        seed=options.seed,
        aim=Aim(start=asked.start, goal=goal, by=by),
    )


def _minute(text: str) -> int:
    if not text.isdecimal():
        raise _unreadable(text)
    return int(text)


def _from_start(text: str, aim: Aim) -> int:
    """Read a deadline in minutes from the start, or as a moment."""
    minutes = int(text) if text.isdecimal() else _until(text, aim)
    if minutes <= 0:
        values = (("text", text), ("start", aim.start.isoformat(timespec="minutes")))
        fault = Fault(place="--by", message=MessageId("plan.by_past"), values=values)
        raise BadInputError([fault])
    return minutes


def _until(text: str, aim: Aim) -> int:
    try:
        moment = datetime.fromisoformat(text)
    except ValueError:
        raise _unreadable(text) from None
    if moment.tzinfo is None:
        moment = moment.replace(tzinfo=aim.start.tzinfo)
    return int((moment - aim.start).total_seconds() // 60)


def _unreadable(text: str) -> BadInputError:
    values = (("text", text),)
    return BadInputError([Fault(place="--by", message=MessageId("plan.by"), values=values)])
