"""Why can a component not be worn now, and when will it be?"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sootline.core.basis import (
    Bearing,
    ComponentId,
    Confidence,
    EditionId,
    Finding,
    Ground,
    MinuteSpan,
    RuleId,
    finding,
)
from sootline.core.care import Decision, Fate
from sootline.core.gear import Assembly, CareStage, Component, Custody, Life
from sootline.core.intervals import Due, Matter, Standing

_HERE = frozenset({Custody.HOOK, Custody.MEMBER, Custody.SPARE_RACK})
#: on the way through the wash room; a plan's time covers these and nothing else
_ON_ITS_WAY = frozenset({Custody.BAG, Custody.WASH_ROOM})
NOW = MinuteSpan.exactly(0)


@dataclass(frozen=True, kw_only=True)
class Known:
    """What other stages have found about components.

    Args:
        decisions: what care asks for after the calls, by component.
        out: retirement dues that have come, by component.
        backs: when the plan has a component back, in minutes from now.
        arrivals: when a lent component is here.
    """

    decisions: Mapping[ComponentId, Decision]
    out: Mapping[ComponentId, Due]
    backs: Mapping[ComponentId, MinuteSpan]
    arrivals: Mapping[ComponentId, MinuteSpan]


@dataclass(frozen=True, kw_only=True)
class Wear:
    """Whether one component can be worn.

    Args:
        back: from when; None is not known.
        reasons: why not now; none when it can.
        first: what to do before it is worn (a look over).
    """

    back: MinuteSpan | None
    reasons: tuple[Finding, ...] = ()
    first: tuple[Finding, ...] = ()


def list_out(dues: tuple[Due, ...]) -> dict[ComponentId, Due]:
    """Keep the retirement dues that have come."""
    return {
        due.component: due
        for due in dues
        if due.matter is Matter.RETIREMENT and due.standing is Standing.OUT
    }


def judge_wear(component: Component, known: Known) -> Wear:
    """Say whether a component can be worn now, why not, and from when as far as known.

    The time of a plan covers washing, drying and the check. It says nothing of a hold, a repair, a
    missing part or a date that has come; with one of those the time is not known.
    """
    arrival = known.arrivals.get(component.id)
    waits = tuple(_waits(component, known, lent=arrival is not None))
    stops = tuple(_stops(component, known, lent=arrival is not None))
    if stops:
        return Wear(back=None, reasons=(*stops, *waits))
    if not waits:
        decision = known.decisions.get(component.id)
        look = decision is not None and decision.fate is Fate.LOOK
        return Wear(
            back=arrival or NOW,
            reasons=_on_the_way(component, arrival),
            first=(_found(component, "look_first", "decision", bearing=Bearing.REQUIRES),)
            if look
            else (),
        )
    return Wear(back=known.backs.get(component.id), reasons=waits)


def _on_the_way(component: Component, arrival: MinuteSpan | None) -> tuple[Finding, ...]:
    if arrival is None or arrival.late <= 0:
        return ()
    return (_found(component, "on_loan_later", "loan"),)


def _waits(component: Component, known: Known, *, lent: bool) -> Iterator[Finding]:
    """List what washing, drying and checking will end."""
    state = component.state
    decision = known.decisions.get(component.id)
    fate = decision.fate if decision else None
    looked = fate in (Fate.HOOK, Fate.LOOK) and state.stage is CareStage.WORN
    if fate is Fate.WASH:
        yield _found(component, "needs_wash", "decision")
    elif state.stage is not CareStage.CHECKED and not looked:
        yield _found(component, "stage", "state.stage", stage=state.stage)
    elif state.custody in _ON_ITS_WAY and not lent:
        yield _found(component, "custody", "state.custody", custody=state.custody)
    if state.assembly is Assembly.APART:
        yield _found(component, "apart", "state.assembly")


def _stops(component: Component, known: Known, *, lent: bool) -> Iterator[Finding]:
    """List what only a person's decision, repair or replacement will end."""
    state = component.state
    decision = known.decisions.get(component.id)
    holds = {
        hold.cause: hold for hold in (*state.open_holds, *(decision.open_holds if decision else ()))
    }
    for hold in holds.values():
        yield _found(component, "hold", "state.hold", cause=hold.cause, decider=hold.decider)
    if decision and decision.fate in (Fate.EVIDENCE, Fate.OUT):
        yield _found(component, "fate", "decision", fate=decision.fate)
    if state.life is not Life.IN_SERVICE:
        yield _found(component, "life", "state.life", life=state.life)
    if state.custody not in _HERE | _ON_ITS_WAY and not lent:
        yield _found(component, "custody", "state.custody", custody=state.custody)
    if state.assembly not in (Assembly.ASSEMBLED, Assembly.APART):
        yield _found(component, "assembly", "state.assembly", assembly=state.assembly)
    due = known.out.get(component.id)
    if due:
        yield _found(component, "out", "retirement", first_day=due.first_day)


def record_ground(what: str, source: str) -> Ground:
    """Return the ground of what the record says."""
    return Ground(
        rule=RuleId(what),
        edition=EditionId("statement"),
        source=source,
        confidence=Confidence.STATED,
    )


def _found(
    component: Component,
    message: str,
    rule: str,
    *,
    bearing: Bearing = Bearing.FORBIDS,
    **values: object,
) -> Finding:
    return finding(
        bearing,
        f"riding.piece.{message}",
        record_ground(rule, component.id),
        component=component.id,
        kind=component.kind,
        **values,
    )
