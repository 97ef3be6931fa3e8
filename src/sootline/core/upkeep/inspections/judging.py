"""What follows from an inspection: next time, wash, repair, a closer look, a hold, giving up?

The program proposes; a person decides. A component that was not there, or was looked at only in
part, or by somebody who may not, stays due.
"""

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from sootline.core.basis import (
    Bearing,
    ComponentId,
    DateSpan,
    Finding,
    MessageId,
    finding,
)
from sootline.core.gear import CareStage, Component, Guide, Hold, Layer, find_kind
from sootline.core.gear.records import Deed, Record
from sootline.core.intervals import Due, Matter, list_due
from sootline.core.rebuild import LEADS_TO, Flaw, FlawFound, Next
from sootline.core.rulebook import Decider, Rulebook
from sootline.core.upkeep.inspections.checklists import list_points
from sootline.core.upkeep.inspections.facts import SCOPE_OF, Inspection, InspectionKind
from sootline.core.upkeep.inspections.testing import Tested, hold_tests
from sootline.core.upkeep.qualified import PRACTICE, Qualified, Scope, ask_leave
from sootline.core.upkeep.repairs.works import place_work, work_of

_NOT_WASHED = (CareStage.WORN, CareStage.TO_WASH, CareStage.IN_WASHER)
_THROUGH = (Flaw.LIGHT_THROUGH, Flaw.LEAK, Flaw.LINER_PULLED)
_SOIL = (Next.WASH_AGAIN, Next.DRY_ON)
_ESCALATE_AFTER_H = 24
MATTER_OF = {
    InspectionKind.ADVANCED: (Matter.ADVANCED_INSPECTION, Deed.ADVANCED_INSPECTION),
    InspectionKind.LINER: (Matter.LINER_INSPECTION, Deed.LINER_INSPECTION),
}


class Result(StrEnum):
    """What happens to a component after its inspection, the gravest last."""

    NOTHING_FOUND = "nothing-found"
    STILL_DUE = "still-due"
    WASH_FIRST = "wash-first"
    BASIC_REPAIR = "basic-repair"
    ADVANCED_INSPECTION = "advanced-inspection"
    ADVANCED_REPAIR = "advanced-repair"
    LINER_INSPECTION = "liner-inspection"
    HOLD = "hold"
    RETIRE_PROPOSED = "retire-proposed"


_RANK = list(Result)


@dataclass(frozen=True, kw_only=True)
class Bench:
    """What an inspection is judged by.

    Args:
        guides: makers' guides by id, as far as a component names one.
        people: who is trained or verified for what.
        today: the civil day.
    """

    rulebook: Rulebook
    guides: tuple[Guide, ...] = ()
    people: tuple[Qualified, ...] = ()
    today: dt.date

    def dues(self, component: Component) -> tuple[Due, ...]:
        """List what is due on a component."""
        guide = next((one for one in self.guides if one.id == component.guide), None)
        return list_due(component, guide, self.rulebook, self.today)


@dataclass(frozen=True, kw_only=True)
class Judged:
    """What follows for one component.

    Args:
        counts: whether the inspection counts as made; if not, the component stays due.
        next_due: when this inspection is due next, counted from this one; None where it does not
            count or is of no fixed day.
        to_look: points nobody has looked at yet.
        holds: to be opened; a person ends them.
    """

    component: ComponentId
    result: Result
    counts: bool
    next_due: DateSpan | None
    to_look: tuple[MessageId, ...]
    holds: tuple[Hold, ...]
    reasons: tuple[Finding, ...]


def judge_inspection(component: Component, inspection: Inspection, bench: Bench) -> Judged:
    """Judge one component by what a named person looked at and found.

    Raises:
        BadInputError: the component's kind is unknown.
    """
    points = list_points(component.kind, inspection.kind)
    looked = (*inspection.looked, *(flaw.place for flaw in inspection.flaws))
    to_look = tuple(point for point in points if point not in looked)
    tested = hold_tests(component, inspection, bench.rulebook)
    steps = [
        *_whether_counts(component, inspection, bench, to_look, tested),
        *_found(component, inspection, tested, bench),
    ]
    result = max((one for one, _ in steps), key=_RANK.index, default=Result.NOTHING_FOUND)
    counts = bool(points) and not any(one is Result.STILL_DUE for one, _ in steps)
    counts = counts and not any(one is Result.WASH_FIRST for one, _ in steps)
    reasons = [reason for _, reason in steps] + list(tested.reasons)
    if result is Result.NOTHING_FOUND:
        nothing = "inspection.nothing_found"
        reasons.append(finding(Bearing.NOTES, nothing, inspection.ground, by=inspection.by))
    return Judged(
        component=component.id,
        result=result,
        counts=counts,
        next_due=_next_due(component, inspection, bench) if counts else None,
        to_look=to_look,
        holds=tuple(_holds(result, reasons)),
        reasons=tuple(dict.fromkeys(reasons)),
    )


def judge_absent(component: Component, kind: InspectionKind, why: str, bench: Bench) -> Judged:
    """Judge one component that was not there, or nobody got to: it stays due as it was."""
    due = _due_of(component, kind, bench)
    day = due.first_day if due else DateSpan()
    said = finding(
        Bearing.REQUIRES, "inspection.still_due", PRACTICE, why=why or "-", first_day=day
    )
    return Judged(
        component=component.id,
        result=Result.STILL_DUE,
        counts=False,
        next_due=None,
        to_look=list_points(component.kind, kind),
        holds=(),
        reasons=(said,),
    )


def _whether_counts(
    component: Component,
    inspection: Inspection,
    bench: Bench,
    to_look: tuple[MessageId, ...],
    tested: Tested,
) -> Iterator[tuple[Result, Finding]]:
    """Yield whatever keeps the inspection from counting."""
    day = DateSpan.day(inspection.at.date())
    scope = SCOPE_OF[inspection.kind]
    leave = ask_leave(scope, inspection.by, component, bench.rulebook, people=bench.people, day=day)
    if not leave.may:
        yield from ((Result.STILL_DUE, reason) for reason in leave.reasons)
    if to_look:
        named = ", ".join(to_look)
        yield (
            Result.STILL_DUE,
            finding(Bearing.REQUIRES, "inspection.to_look", PRACTICE, points=named),
        )
    if tested.lacking:
        named = ", ".join(tested.lacking)
        yield (
            Result.STILL_DUE,
            finding(Bearing.REQUIRES, "inspection.to_test", inspection.ground, tests=named),
        )
    if inspection.kind is not InspectionKind.ROUTINE and component.state.stage in _NOT_WASHED:
        stage = component.state.stage
        yield (
            Result.WASH_FIRST,
            finding(Bearing.REQUIRES, "inspection.wash_first", PRACTICE, stage=stage),
        )


def _found(
    component: Component, inspection: Inspection, tested: Tested, bench: Bench
) -> Iterator[tuple[Result, Finding]]:
    """Yield what each flaw, each failed test and the component's years lead to."""
    for flaw in inspection.flaws:
        yield from _flaw(component, inspection, flaw, bench)
    for failed in tested.failed:
        flaw = FlawFound(flaw=_FAILED[failed.test], place=failed.place)
        yield from _flaw(component, inspection, flaw, bench)
    retirement = _retirement(bench.dues(component))
    if retirement is not None and _reached(retirement.first_day, bench.today):
        day = retirement.first_day
        said = finding(Bearing.FORBIDS, "inspection.out", PRACTICE, first_day=day)
        yield Result.RETIRE_PROPOSED, said
    if inspection.retire:
        said = finding(
            Bearing.ASKS,
            "inspection.retire_proposed",
            inspection.ground,
            by=inspection.by,
            why=inspection.retire,
        )
        yield Result.RETIRE_PROPOSED, said


_FAILED = {
    "light": Flaw.LIGHT_THROUGH,
    "leakage": Flaw.LEAK,
    "hydrostatic": Flaw.LEAK,
}


def _flaw(
    component: Component, inspection: Inspection, found: FlawFound, bench: Bench
) -> Iterator[tuple[Result, Finding]]:
    """Yield what one flaw leads to."""
    leads = LEADS_TO[found.flaw]
    named = {"flaw": found.flaw.value, "place": found.place or "-", "note": found.note or "-"}
    ground = inspection.ground
    if leads in _SOIL:
        yield Result.WASH_FIRST, finding(Bearing.REQUIRES, "inspection.flaw.soil", ground, **named)
    elif inspection.kind is InspectionKind.ROUTINE:
        closer = finding(Bearing.REQUIRES, "inspection.flaw.closer", ground, **named)
        yield Result.ADVANCED_INSPECTION, closer
    elif _on_liner(component) and found.flaw in _THROUGH:
        yield from _through(inspection, named)
    elif leads is Next.HOLD:
        yield Result.HOLD, finding(Bearing.HOLDS, "inspection.flaw.hold", ground, **named)
    else:
        yield from _work(component, found, named, inspection, bench)


def _through(inspection: Inspection, named: dict[str, str]) -> Iterator[tuple[Result, Finding]]:
    """Open a liner that lets something through; once opened, it is mended or given up."""
    if inspection.kind is InspectionKind.LINER:
        said = finding(Bearing.ASKS, "inspection.flaw.barrier", inspection.ground, **named)
        yield Result.ADVANCED_REPAIR, said
    else:
        said = finding(Bearing.HOLDS, "inspection.flaw.open_liner", inspection.ground, **named)
        yield Result.LINER_INSPECTION, said


def _work(
    component: Component,
    found: FlawFound,
    named: dict[str, str],
    inspection: Inspection,
    bench: Bench,
) -> Iterator[tuple[Result, Finding]]:
    placed = place_work(work_of(found.flaw, component), component, bench.rulebook)
    basic = placed.scope is Scope.BASIC_REPAIR
    result = Result.BASIC_REPAIR if basic else Result.ADVANCED_REPAIR
    message = "inspection.flaw.basic" if basic else "inspection.flaw.advanced"
    yield result, finding(Bearing.REQUIRES, message, inspection.ground, **named)
    yield from ((result, reason) for reason in placed.reasons)


def _on_liner(component: Component) -> bool:
    return find_kind(component.kind).layer is Layer.LINER


def _next_due(component: Component, inspection: Inspection, bench: Bench) -> DateSpan | None:
    """Count when this inspection is due next, from this one on."""
    if inspection.kind not in MATTER_OF:
        return None
    matter, deed = MATTER_OF[inspection.kind]
    made = Record(deed=deed, on=DateSpan.day(inspection.at.date()), by=inspection.by)
    after = replace(component, records=(*component.records, made))
    return next((due.first_day for due in bench.dues(after) if due.matter is matter), None)


def _due_of(component: Component, kind: InspectionKind, bench: Bench) -> Due | None:
    matter = MATTER_OF[kind][0] if kind in MATTER_OF else None
    return next((due for due in bench.dues(component) if due.matter is matter), None)


def _retirement(dues: Iterable[Due]) -> Due | None:
    return next((due for due in dues if due.matter is Matter.RETIREMENT), None)


def _reached(first_day: DateSpan, today: dt.date) -> bool:
    day = first_day.earliest or first_day.latest
    return day is not None and day <= today


def _holds(result: Result, reasons: list[Finding]) -> Iterator[Hold]:
    if result not in (Result.LINER_INSPECTION, Result.HOLD, Result.RETIRE_PROPOSED):
        return
    yield Hold(
        cause=f"inspect.{result}",
        question=MessageId(f"inspection.ask.{result}"),
        decider=Decider.GEAR_OFFICER,
        deputy=Decider.SAFETY_OFFICER,
        escalate_after_h=_ESCALATE_AFTER_H,
        reason=reasons[0] if reasons else None,
    )
