"""How does a wash plan read on a terminal: loads in order, handwork, drying, who is back when?"""

import datetime as dt
from collections.abc import Iterator, Sequence
from zoneinfo import ZoneInfo

from sootline.cli.commands.loads import apart
from sootline.cli.output import finding_lines, printable
from sootline.cli.pieces import listed, wrapped
from sootline.core.basis import ComponentId, MinuteSpan
from sootline.core.gear import Component
from sootline.core.job.jobs import Job
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.worksheet import Back, LoadSheet
from sootline.tasks.plan_wash import PlanResult
from sootline.words import name, say

_WIDTH = 56


def figures(plan: Plan, goal: Goal, lang: str) -> Iterator[str]:
    """Return objective, bound and gap of a neutral plan."""
    values = {
        "goal": goal.value,
        "objective": str(plan.objective),
        "makespan": str(plan.makespan),
        "bound": "-" if plan.bound is None else f"{plan.bound:g}",
        "gap": "-" if plan.gap is None else f"{100 * plan.gap:.1f}",
        "loads": str(len(plan.loads)),
        "seconds": str(plan.seconds),
    }
    yield say("plan.figures", values, lang=lang)


def planned_lines(job: Job, result: PlanResult, lang: str) -> Iterator[str]:
    """Return the plan as text, in the order of the work."""
    clock = Clock(result.aim.start.astimezone(ZoneInfo(job.department.zone)))
    pieces = {component.id: component for component in job.components}
    sheet = result.worksheet
    heading = {"title": printable(job.title), "start": clock.at(0), "goal": result.aim.goal.value}
    yield say("plan.heading", heading, lang=lang)
    yield from ("", say("plan.back", lang=lang))
    for back in sorted(sheet.back, key=_latest):
        yield from _back(back, clock, pieces, lang)
    yield from wrapped(say("plan.gate.touch_check", lang=lang))
    yield from ("", say("plan.loads", {"n": str(len(sheet.loads))}, lang=lang))
    for load in sheet.loads:
        yield from _load(load, clock, pieces, lang)
    if sheet.hand:
        yield from ("", say("plan.by_hand", lang=lang))
    for hand in sorted(sheet.hand, key=lambda hand: hand.start.likely):
        method = name("wash_method", hand.method, lang=lang)
        what = listed([pieces[one] for one in hand.components], lang)
        yield from wrapped(f"{clock.between(hand.start, hand.end)}  {what}: {method}")
    yield from ("", say("plan.timeline", lang=lang))
    yield from timeline(result, clock, lang)
    if result.why:
        yield from ("", say("plan.why", lang=lang))
        for one in result.why:
            yield from wrapped(say(one.message, one.values, lang=lang))
    yield from ("", *_how_good(result, lang))
    for pressure in result.pressures[:1]:
        told = {"n": str(pressure.places), "at": clock.at(pressure.until)}
        yield from wrapped(say(f"plan.pace.{pressure.resource}", told, lang=lang), indent=0)
    yield from finding_lines(result.rests_on, lang=lang)
    if result.refused or result.loads.sorting.refused:
        yield from ("", say("loads.refused", lang=lang))
        yield from finding_lines((*result.loads.sorting.refused, *result.refused), lang=lang)


class Clock:
    """Minutes of a plan as times of day."""

    def __init__(self, start: dt.datetime) -> None:
        self.start = start

    def at(self, minute: int) -> str:
        """Return the time of day, with the day when it is not the first."""
        moment = self.start + dt.timedelta(minutes=minute)
        days = (moment.date() - self.start.date()).days
        return f"{moment:%H:%M}" + (f" +{days}d" if days else "")

    def span(self, span: MinuteSpan) -> str:
        """Return earliest to latest."""
        if span.earliest == span.late:
            return self.at(span.late)
        return f"{self.at(span.earliest)}-{self.at(span.late)}"

    def between(self, start: MinuteSpan, end: MinuteSpan) -> str:
        """Return the likely start and the likely end."""
        return f"{self.at(start.likely)}-{self.at(end.likely)}"


def timeline(result: PlanResult, clock: Clock, lang: str) -> Iterator[str]:
    """Draw drums, drying places and checks as rows: = likely, . until the latest end."""
    sheet = result.worksheet
    rows: list[tuple[str, MinuteSpan, MinuteSpan]] = [
        (_row(load, lang), load.start, load.end) for load in sheet.loads
    ]
    for place in dict.fromkeys(dry.where for dry in sheet.drying):
        runs = [dry for dry in sheet.drying if dry.where == place]
        first = min((run.start for run in runs), key=lambda span: span.likely)
        last = max((run.end for run in runs), key=lambda span: span.late)
        rows.append((f"{place} ({len(runs)})", first, last))
    until = max((end.late for _, _, end in rows), default=1)
    step = max(1, -(-until // _WIDTH))
    yield f"  {'':20} {clock.at(0)}{clock.at(until):>{_WIDTH - 5}}"
    for label, start, end in rows:
        cells = "".join(_cell(minute * step, step, start, end) for minute in range(_WIDTH))
        yield f"  {printable(label)[:20]:20} {cells.rstrip()}"


def _row(load: LoadSheet, lang: str) -> str:
    values = {"washer": load.washer, "place": str(load.number)}
    return say("plan.row", values, lang=lang)


def _cell(minute: int, step: int, start: MinuteSpan, end: MinuteSpan) -> str:
    if start.likely < minute + step and minute < end.likely:
        return "="
    return "." if end.likely <= minute < end.late else " "


def _latest(back: Back) -> tuple[bool, bool, int]:
    return bool(back.waiting), back.at is None, back.at.late if back.at else 0


def _back(
    back: Back, clock: Clock, pieces: dict[ComponentId, Component], lang: str
) -> Iterator[str]:
    values = {
        "member": printable(back.member),
        "span": clock.span(back.at) if back.at else "-",
        "likely": clock.at(back.at.likely) if back.at else "-",
        "n": str(len(back.waiting)),
        "pieces": listed([pieces[one] for one in back.waiting], lang, among=pieces.values()),
    }
    waits = "plan.back.waits" if back.at else "plan.back.none"
    message = "plan.back.complete" if back.complete else waits
    yield from wrapped(say(message, values, lang=lang))


def _load(
    load: LoadSheet, clock: Clock, pieces: dict[ComponentId, Component], lang: str
) -> Iterator[str]:
    values = {
        "place": str(load.number),
        "washer": printable(load.washer),
        "programme": printable(load.programme),
        "what": name("company", load.sort.company, lang=lang),
        "apart": apart(load.sort, lang),
        "mass": f"{load.mass.amount:.1f} {load.mass.unit}",
        "limit": str(load.limit),
        "times": clock.between(load.start, load.end),
    }
    yield from wrapped(say("plan.load", values, lang=lang))
    yield from wrapped(listed([pieces[one] for one in load.components], lang), indent=6)
    if load.bagged:
        bagged = listed([pieces[one] for one in load.bagged], lang)
        yield from wrapped(say("loads.bagged", {"pieces": bagged}, lang=lang), indent=6)
    if load.unweighed:
        counted = {"n": str(len(load.unweighed))}
        yield from wrapped(say("plan.unweighed", counted, lang=lang), indent=6)


def _how_good(result: PlanResult, lang: str) -> Sequence[str]:
    """Say how much better any plan could be, in minutes or members."""
    plan, goal = result.plan, result.aim.goal
    if plan.bound is None:
        return wrapped(say("plan.no_bound", lang=lang), indent=0)
    weight = sum(member.priority for member in result.instance.members) or 1
    if goal is Goal.SOONEST:
        better = (plan.objective - plan.bound) / weight
    elif goal is Goal.ALL_DONE:
        better = plan.makespan - plan.bound
    else:
        better = plan.bound
    return wrapped(say(f"plan.at_most.{goal.value}", {"n": f"{better:.0f}"}, lang=lang), indent=0)
