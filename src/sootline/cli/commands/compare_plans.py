"""`sootline compare-plans`: hand rules, plan and bound side by side."""

import argparse
import datetime as dt
from collections.abc import Iterator
from pathlib import Path

from sootline.cli.commands.plan import within_limits
from sootline.cli.output import deliver, write_whole
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.steps import RACK
from sootline.paper.timeline import Bar, Row, draw_timeline
from sootline.tasks.compare_plans import Comparison, compare_plans, instance_of
from sootline.wiring.beside import helps_for
from sootline.wiring.plans import load_planning_times, read_question, stop_after
from sootline.wiring.rules import RULES
from sootline.words import say

_SECONDS = 5.0
# A neutral plan counts minutes from nought; the picture's hours then do the same.
_MIDNIGHT = dt.datetime(2000, 1, 1, tzinfo=dt.UTC)


def add_arguments(parser: CommandParser) -> None:
    """Add FILE, --seconds, --seed and --picture."""
    parser.add_argument("file", type=Path, metavar="FILE", help="plan.help.file")
    parser.add_argument("--seconds", type=float, default=_SECONDS, help="plan.help.seconds")
    parser.add_argument("--seed", type=int, default=0, help="plan.help.seed")
    parser.add_argument("--picture", type=Path, metavar="SVG", help="plan.help.picture")


def run(options: argparse.Namespace) -> int:
    """Compare for a job, or a neutral instance."""
    within_limits(options.seconds)
    question = read_question(options.file)
    if isinstance(question, Instance):
        instance = question
    else:
        instance = instance_of(RULES, question, load_planning_times())
    compared = compare_plans(
        instance,
        stop=stop_after(options.seconds),
        seed=options.seed,
        helps=helps_for(options.seconds),
    )
    if options.picture:
        write_whole(options.picture, _picture(compared.plan))
    deliver(compared, _lines(compared, options.lang), options)
    return DONE


def _lines(compared: Comparison, lang: str) -> Iterator[str]:
    plan = compared.plan
    yield say("plan.compare.heading", {"instance": compared.instance}, lang=lang)
    for one in sorted(compared.by_hand, key=lambda one: -one.plan.objective):
        by_hand = say(f"plan.rule.{one.rule.value.replace(' ', '_')}", lang=lang)
        yield _row(by_hand, one.plan, f"{one.ratio:.3f}", lang)
    yield _row(say("plan.compare.plan", lang=lang), plan, "1.000", lang)
    if plan.bound is not None and plan.gap is not None:
        values = {"bound": f"{plan.bound:.0f}", "gap": f"{100 * plan.gap:.1f}"}
        yield say("plan.compare.bound", values, lang=lang)


def _row(label: str, plan: Plan, ratio: str, lang: str) -> str:
    numbers = {
        "objective": f"{plan.objective:>9}",
        "makespan": f"{plan.makespan:>6}",
        "loads": f"{len(plan.loads):>4}",
        "ratio": ratio,
    }
    return f"  {label:<24}" + say("plan.compare.row", numbers, lang=lang)


def _picture(plan: Plan) -> str:
    """Draw drums and cabinets; the rack holds too much at once to be one row."""
    drums: dict[str, list[Bar]] = {}
    for number, load in enumerate(sorted(plan.loads, key=lambda one: one.load_start), start=1):
        end = load.unload_end
        bar = Bar(label=f"{number} {load.family}", short=str(number), start=load.load_start,
                  likely=end, late=end)  # fmt: skip
        drums.setdefault(str(load.washer), []).append(bar)
    boxes: dict[str, dict[tuple[int, int], int]] = {}
    for step in plan.dry:
        if step.where != RACK:
            runs = boxes.setdefault(str(step.where), {})
            runs[step.start, step.end] = runs.get((step.start, step.end), 0) + 1
    rows = [Row(name=name, bars=tuple(bars)) for name, bars in sorted(drums.items())]
    rows += [
        Row(
            name=name,
            bars=tuple(
                Bar(label=f"{count}x", start=start, likely=end, late=end)
                for (start, end), count in sorted(runs.items())
            ),
        )
        for name, runs in sorted(boxes.items())
    ]
    return draw_timeline(rows, _MIDNIGHT, title=plan.instance, name_day=lambda day: str(day.day))
