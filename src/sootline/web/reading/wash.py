"""How does the wash room read: how good the plan is, its loads in order, who is back when?"""

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from sootline.core.basis import ComponentId, Finding
from sootline.core.gear import CareStage, Component, WashMethod
from sootline.core.washplan.plan import Goal
from sootline.paper.page import Page
from sootline.paper.plan_rows import rows_of
from sootline.paper.speaking import Speaker
from sootline.paper.timeline import draw_timeline
from sootline.tasks.desk import Desk
from sootline.tasks.load_cards import LoadCard
from sootline.tasks.plan_wash import PlanResult
from sootline.web.reading.clock import Clock
from sootline.web.reading.marks import Mark
from sootline.web.reading.saying import Said, said

_STAGES = (
    (CareStage.IN_WASHER, Mark.WASHER),
    (CareStage.WASHED, Mark.WET),
    (CareStage.DRYING, Mark.DRY),
    (CareStage.TO_CHECK, Mark.CHECK),
)


@dataclass(frozen=True, kw_only=True)
class Load:
    """One load or batch by hand, and how far it has come.

    Args:
        mark: where its pieces stand.
        todo: what may be reported of it next.
    """

    card: LoadCard
    start: str
    end: str
    mark: Mark
    todo: tuple[str, ...]
    what: Said
    apart: Said | None

    @property
    def in_drum(self) -> bool:
        """Whether it is washed in a drum."""
        return self.card.method is WashMethod.MACHINE


@dataclass(frozen=True, kw_only=True)
class Return:
    """When one member's gear is back on the hook."""

    member: str
    line: Said


@dataclass(frozen=True, kw_only=True)
class WashRoom:
    """Everything on the screen of the wash room.

    Args:
        timeline: SVG.
        held_up_by: what holds the plan up most.
        order: why each load comes before the next one of its washer.
    """

    goal: str
    start: str
    how_good: Said
    loads: tuple[Load, ...]
    returns: tuple[Return, ...]
    timeline: str
    held_up_by: Said | None
    order: tuple[Said, ...]
    rests_on: tuple[Finding, ...]
    refused: tuple[Finding, ...]


def read_wash_room(
    desk: Desk, plan: PlanResult, cards: Iterable[LoadCard], clock: Clock, lang: str
) -> WashRoom:
    """Lay the plan out."""
    pieces = {component.id: component for component in desk.job.components}
    return WashRoom(
        goal=plan.aim.goal.value,
        start=clock.at(plan.aim.start),
        how_good=how_good(plan),
        loads=tuple(read_load(card, plan, pieces, clock) for card in cards),
        returns=tuple(_returns(plan, clock)),
        timeline=_timeline(desk, plan, clock, lang),
        held_up_by=_held_up(plan, clock),
        order=tuple(said(one.message, **one.values) for one in plan.why),
        rests_on=plan.rests_on,
        refused=(*plan.loads.sorting.refused, *plan.refused),
    )


def how_good(plan: PlanResult) -> Said:
    """Say how much better any plan could be."""
    if plan.plan.bound is None:
        return said("plan.no_bound")
    weight = sum(member.priority for member in plan.instance.members) or 1
    gaps = {
        Goal.SOONEST: (plan.plan.objective - plan.plan.bound) / weight,
        Goal.ALL_DONE: plan.plan.makespan - plan.plan.bound,
        Goal.DEADLINE: plan.plan.bound,
    }
    better = max(0, round(gaps[plan.aim.goal]))
    if better == 0 and plan.aim.goal is not Goal.DEADLINE:
        return said("web.wash.best")
    return said(f"web.wash.at_most.{plan.aim.goal.value}", n=better)


def read_load(
    card: LoadCard, plan: PlanResult, pieces: Mapping[ComponentId, Component], clock: Clock
) -> Load:
    """Lay one load out with what is reported of it so far."""
    stages = [pieces[one.id].state.stage for one in card.contents.components]
    mark = _mark(stages)
    sheet = next((one for one in plan.worksheet.loads if one.number == card.number), None)
    return Load(
        card=card,
        start=clock.at(card.start),
        end=clock.likely(plan.aim.start, sheet.end) if sheet else "",
        mark=mark,
        todo=_todo(mark, card),
        what=_what(card),
        apart=_apart(card),
    )


def _mark(stages: Iterable[CareStage]) -> Mark:
    """Take the stage that is furthest behind of what has begun."""
    found = set(stages)
    for stage, mark in _STAGES:
        if stage in found:
            return mark
    waits = found & {CareStage.TO_WASH, CareStage.WORN} or CareStage.CHECKED in found
    return Mark.WASH if waits else Mark.HOOK


def _todo(mark: Mark, card: LoadCard) -> tuple[str, ...]:
    if mark is Mark.WASH:
        return ("start",) if card.method is WashMethod.MACHINE else ("by-hand",)
    return {Mark.WASHER: ("end", "fail"), Mark.WET: ("hang",)}.get(mark, ())


def _what(card: LoadCard) -> Said:
    if card.method is not WashMethod.MACHINE:
        return said(f"paper.load.way.{card.method}")
    return said(f"paper.load.company.{card.company}")


def _apart(card: LoadCard) -> Said | None:
    if card.separation.alone:
        return said("paper.load.alone")
    if card.separation.hazards:
        return said("web.wash.apart", contaminant=", ".join(card.separation.hazards))
    return None


def _returns(plan: PlanResult, clock: Clock) -> Iterable[Return]:
    backs = sorted(
        plan.worksheet.back,
        key=lambda one: (bool(one.waiting), one.at is None, one.at.late if one.at else 0),
    )
    for back in backs:
        span = clock.span(plan.aim.start, back.at) if back.at else ""
        values = {"span": span, "n": len(back.waiting)}
        which = "complete" if back.complete else "part" if back.at else "waits"
        yield Return(member=back.member, line=said(f"web.wash.back.{which}", **values))


def _held_up(plan: PlanResult, clock: Clock) -> Said | None:
    """Name what alone keeps the plan going longest."""
    if not plan.pressures:
        return None
    worst = plan.pressures[0]
    known = worst.resource in ("washers", "rack", "cabinets", "helpers")
    until = clock.at(plan.aim.start + dt.timedelta(minutes=worst.until))
    values = {"time": until, "resource": worst.resource}
    return said(f"web.wash.held_up.{worst.resource if known else 'hand'}", **values)


def _timeline(desk: Desk, plan: PlanResult, clock: Clock, lang: str) -> str:
    speaker = Speaker(
        page=Page(printed_at=clock.now, zone=str(clock.now.tzinfo), languages=(lang,))
    )
    return draw_timeline(
        rows_of(plan, speaker),
        plan.aim.start.astimezone(clock.now.tzinfo),
        now=desk.job.now,
        title=speaker.say("web.wash.timeline")[0],
        name_day=speaker.day,
    )
