"""Does a component go back, dry on, to repair, to the washer, on hold, or out?"""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import (
    Bearing,
    CallId,
    ComponentId,
    DateSpan,
    Finding,
    MessageId,
    finding,
)
from sootline.core.exposure.calls import Answer
from sootline.core.gear import CareStage, Component, Life, find_kind
from sootline.core.intervals.dues import register_ground
from sootline.core.rebuild.checks import LEADS_TO, PRACTICE, AfterWashCheck, Next

_WASHED = (CareStage.WASHED, CareStage.DRYING, CareStage.TO_CHECK, CareStage.CHECKED)
_LEAST = list(Next)


@dataclass(frozen=True, kw_only=True)
class Verdict:
    """What happens to one component next.

    Args:
        to_feel: the touch points nobody has answered yet.
        reasons: every one of them, not only the one that decides.
    """

    component: ComponentId
    next: Next
    to_feel: tuple[MessageId, ...]
    reasons: tuple[Finding, ...]


def judge_after_wash(
    component: Component,
    check: AfterWashCheck | None,
    *,
    first_day_out: DateSpan,
    today: dt.date,
    worn_since: tuple[CallId, ...] = (),
) -> Verdict:
    """Judge one component after washing and drying; the most that any reason asks for counts.

    A wash that is not recorded as finished is no wash, whoever felt the cloth. Nothing goes back
    without a named person's touch check of every point of its kind. The program proposes; whether
    a component is mended, kept or given up is a person's decision.

    Args:
        check: None while nobody has felt it.
        first_day_out: by the component's years.
        worn_since: the calls it was worn at after the check.

    Raises:
        BadInputError: the component's kind is unknown.
    """
    points = find_kind(component.kind).touch_points
    answers = {felt.point: felt.dry for felt in check.felt} if check else {}
    to_feel = tuple(
        point for point in points if answers.get(point, Answer.UNKNOWN) is Answer.UNKNOWN
    )
    found = [
        *_state(component, first_day_out, today),
        *_felt(component, check, to_feel),
        *_worn(check, worn_since),
        *_flaws(check),
    ]
    worst = max((what for what, _ in found), key=_LEAST.index, default=Next.BACK)
    reasons = tuple(reason for _, reason in found)
    if worst is Next.BACK and check is not None:
        reasons = (finding(Bearing.NOTES, "rebuild.felt_dry", check.ground, by=check.by),)
    return Verdict(component=component.id, next=worst, to_feel=to_feel, reasons=reasons)


def _state(
    component: Component, first_day_out: DateSpan, today: dt.date
) -> Iterator[tuple[Next, Finding]]:
    register = register_ground(component.id, "state")
    life = component.state.life
    if life in (Life.RETIRED, Life.DISPOSED):
        yield Next.OUT, finding(Bearing.FORBIDS, "rebuild.retired", register, life=life)
    day = first_day_out.earliest or first_day_out.latest
    if day is not None and day <= today:
        ground = register_ground(component.id, "made")
        yield Next.OUT, finding(Bearing.FORBIDS, "rebuild.out", ground, first_day=first_day_out)
    for hold in component.state.open_holds:
        ground = hold.reason.ground if hold.reason else register
        yield (
            Next.HOLD,
            finding(Bearing.HOLDS, "rebuild.held", ground, decider=hold.decider, cause=hold.cause),
        )
    if component.state.stage not in _WASHED:
        yield (
            Next.WASH_AGAIN,
            finding(Bearing.REQUIRES, "rebuild.not_washed", register, stage=component.state.stage),
        )


def _felt(
    component: Component, check: AfterWashCheck | None, to_feel: tuple[MessageId, ...]
) -> Iterator[tuple[Next, Finding]]:
    if check is None:
        yield Next.CHECK, finding(Bearing.REQUIRES, "rebuild.no_check", PRACTICE)
        return
    if to_feel:
        listed = ", ".join(to_feel)
        yield Next.CHECK, finding(Bearing.REQUIRES, "rebuild.to_feel", PRACTICE, points=listed)
    points = find_kind(component.kind).touch_points
    for felt in check.felt:
        if felt.point not in points:
            named = finding(Bearing.ASKS, "rebuild.no_such_point", check.ground, point=felt.point)
            yield Next.CHECK, named
        elif felt.dry is Answer.NO:
            damp = finding(Bearing.REQUIRES, "rebuild.damp", check.ground, point=felt.point)
            yield Next.DRY_ON, damp


def _worn(
    check: AfterWashCheck | None, calls: tuple[CallId, ...]
) -> Iterator[tuple[Next, Finding]]:
    """Take back a check that a later call has overtaken; what the call asks for is care's."""
    if check is not None and calls:
        named = ", ".join(calls)
        yield (
            Next.CHECK,
            finding(Bearing.REQUIRES, "rebuild.worn_since", check.ground, calls=named),
        )


def _flaws(check: AfterWashCheck | None) -> Iterator[tuple[Next, Finding]]:
    for found in check.flaws if check else ():
        named = {"flaw": found.flaw, "place": found.place or "-", "note": found.note or "-"}
        leads = LEADS_TO[found.flaw]
        bearing = Bearing.HOLDS if leads is Next.HOLD else Bearing.REQUIRES
        assert check is not None  # its flaws are being read
        yield leads, finding(bearing, f"rebuild.flaw.{leads}", check.ground, **named)
