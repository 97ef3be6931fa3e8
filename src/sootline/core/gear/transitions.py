"""What does an event make of a component's state, or why does it change nothing?"""

from collections.abc import Callable
from dataclasses import replace
from functools import cache

from sootline.core.basis import Bearing, Confidence, Ground, RuleId, finding
from sootline.core.gear.events import Event, EventKind, Refusal
from sootline.core.gear.kinds import COMMON_PRACTICE, KIND_EDITION
from sootline.core.gear.state import Assembly, CareStage, Custody, Hold, Life, State
from sootline.core.gear.table import TRANSITIONS, Obstacle, Transition
from sootline.core.rulebook.contaminants import Decider

_ROWS = {kind: tuple(row for row in TRANSITIONS if row.event is kind) for kind in EventKind}
_NEEDS_CHECKED = frozenset(
    kind for kind, rows in _ROWS.items() if all(row.stages == {CareStage.CHECKED} for row in rows)
)


def apply(state: State, event: Event) -> State | Refusal:
    """Return the state after an event, or a refusal with its reason.

    Holds outlive every event but their own release by somebody entitled. Only an event that
    says so changes the care stage; nothing is checked without a named person.
    """
    row = _row_for(event.kind, state.stage, state.custody, state.life)
    if row is None:
        return _refuse(state, event, _why_not_from_here(state, event.kind))
    for obstacle in row.obstacles:
        if not _ABSENT[obstacle](state, event):
            return _refuse(state, event, obstacle)
    return _changed(state, event, row)


@cache
def _row_for(kind: EventKind, stage: CareStage, custody: Custody, life: Life) -> Transition | None:
    """Return the table's row for an event from such a state; there are only so many."""
    return next((row for row in _ROWS[kind] if row.starts(stage, custody, life)), None)


def _changed(state: State, event: Event, row: Transition) -> State:
    """Carry out a row that counts."""
    custody = row.custody or state.custody
    stays = custody is state.custody
    return State(
        custody=custody,
        place=event.place or (state.place if stays else None),
        holder=event.holder or (state.holder if stays else None),
        stage=row.stage or state.stage,
        holds=_holds_after(state, event),
        assembly=_assembly_after(state, event),
        life=row.life or state.life,
    )


def _holds_after(state: State, event: Event) -> tuple[Hold, ...]:
    """Add the hold that opens, close the one that is released; the others stay."""
    if event.kind is EventKind.HOLD_OPENED and event.hold:
        return (*state.holds, event.hold)
    if event.kind is EventKind.HOLD_RELEASED:
        who = f"{event.by}: {event.said}" if event.said else event.by
        return tuple(
            replace(hold, released_by=who, released_at=event.at)
            if hold.open and hold.cause == event.cause
            else hold
            for hold in state.holds
        )
    return state.holds


def _assembly_after(state: State, event: Event) -> Assembly:
    """Take what sorting or rebuilding reports; anything else leaves it as it was."""
    if event.kind is EventKind.REBUILT:
        return event.assembly or Assembly.ASSEMBLED
    if event.kind is EventKind.SORTED:
        return event.assembly or state.assembly
    return state.assembly


def _released(state: State, event: Event) -> Hold | None:
    """Return the open hold an event wants to release."""
    return next((hold for hold in state.open_holds if hold.cause == event.cause), None)


def _entitled(state: State, event: Event) -> bool:
    """Whether the office that releases is the hold's decider or deputy."""
    hold = _released(state, event)
    return hold is not None and event.office in (hold.decider, hold.deputy)


def _opens_new(state: State, event: Event) -> bool:
    """Whether the event brings a hold, open, for a cause that none is open for."""
    causes = {hold.cause for hold in state.open_holds}
    return event.hold is not None and event.hold.open and event.hold.cause not in causes


_ABSENT: dict[Obstacle, Callable[[State, Event], bool]] = {
    Obstacle.OPEN_HOLD: lambda state, _: not state.open_holds,
    Obstacle.NO_NAME: lambda _, event: bool(event.by and event.by.strip()),
    Obstacle.NOT_ENTITLED: _entitled,
    Obstacle.HOLD_ALREADY: _opens_new,
    Obstacle.NOT_INVESTIGATOR: lambda _, event: event.office is Decider.INVESTIGATOR,
    Obstacle.NOT_TOGETHER: lambda state, _: state.assembly is Assembly.ASSEMBLED,
}


def _why_not_from_here(state: State, kind: EventKind) -> Obstacle:
    """Name what about the state rules the event out, the gravest first."""
    if state.life is Life.DISPOSED:
        return Obstacle.DISPOSED
    if state.custody is Custody.EVIDENCE:
        return Obstacle.EVIDENCE
    if state.life is Life.RETIRED and kind is not EventKind.DISPOSED:
        return Obstacle.RETIRED
    if kind is EventKind.DISPOSED and state.life is not Life.RETIRED:
        return Obstacle.NOT_RETIRED
    if kind in _NEEDS_CHECKED and state.stage is not CareStage.CHECKED:
        return Obstacle.NOT_CHECKED
    return Obstacle.NOT_FROM_HERE


def _refuse(state: State, event: Event, why: Obstacle) -> Refusal:
    """Say why an event changes nothing, with what a reader needs to do about it."""
    ground = Ground(
        rule=RuleId(f"state.{why.value}"),
        edition=KIND_EDITION,
        source=COMMON_PRACTICE,
        confidence=Confidence.PRACTICE,
    )
    reason = finding(
        Bearing.FORBIDS,
        f"gear.refused.{why.value}",
        ground,
        event=event.kind,
        stage=state.stage,
        custody=state.custody,
        life=state.life,
        causes=", ".join(hold.cause for hold in state.open_holds),
        deciders=", ".join(dict.fromkeys(hold.decider for hold in state.open_holds)),
        assembly=state.assembly,
    )
    return Refusal(event=event, reason=reason)
