"""Which event of the gear does an entry report, if any?"""

from collections.abc import Mapping
from dataclasses import replace
from enum import StrEnum
from functools import cache
from types import MappingProxyType
from typing import TypeVar

from sootline.core.basis import MemberId, MessageId, PlaceId
from sootline.core.gear.events import Event, EventKind
from sootline.core.gear.state import Assembly, CareStage, Custody, Hold, Life, State
from sootline.core.gear.table import TRANSITIONS
from sootline.core.ledger.correcting import Settled
from sootline.core.ledger.facts import Fact
from sootline.core.ledger.forms import Payload
from sootline.core.ledger.kinds import EntryKind
from sootline.core.rulebook.contaminants import Decider

W = TypeVar("W", bound=StrEnum)

_ESCALATE_AFTER_H = 24
_OTHER = {
    EntryKind.RETURNED: EventKind.RETURNED_SOILED,
    EntryKind.EXCHANGED: EventKind.ISSUED,
    EntryKind.LOAD_ENDED: EventKind.WASHER_ENDED,
    EntryKind.LOAD_FAILED: EventKind.WASHER_FAILED,
}
EVENT_OF: Mapping[EntryKind, EventKind] = MappingProxyType(
    {EntryKind(event.value): event for event in EventKind} | _OTHER
)
OF_A_LOAD = frozenset({EntryKind.LOAD_STARTED, EntryKind.LOAD_ENDED, EntryKind.LOAD_FAILED})

# What is not registered, or registered without its state: nobody has said it may be used.
START = State(stage=CareStage.TO_CHECK, assembly=Assembly.UNKNOWN)


def event_of(settled: Settled) -> Event | None:
    """Return the event a fact reports; None where it changes no state by itself.

    An erased payload leaves what its header says: that it happened. A hold stays a hold, for the
    safety officer to end; a name that was erased counts for nobody.
    """
    fact = settled.fact
    kind = EVENT_OF.get(fact.kind)
    if kind is None:
        return None
    payload = fact.payload
    if not payload:
        hold = _hold(fact) if kind is EventKind.HOLD_OPENED else None
        return Event(kind=kind, hold=hold)
    holder, place = payload.get("holder") or payload.get("member"), payload.get("place")
    return Event(
        kind=kind,
        by=fact.text("by"),
        office=_word(Decider, payload, "office"),
        holder=MemberId(str(holder)) if holder else None,
        place=PlaceId(str(place)) if place else None,
        hold=_hold(fact) if kind is EventKind.HOLD_OPENED else None,
        cause=fact.text("cause"),
        assembly=_word(Assembly, payload, "assembly"),
        said=fact.text("said"),
        at=fact.occurred.earliest.isoformat() if kind is EventKind.HOLD_RELEASED else None,
    )


def outcomes(state: State, settled: Settled) -> list[State]:
    """Return every state a fact could lead to from some state like this one.

    Of the place and the holder nothing is said; a release counts for nothing here.
    """
    fact = settled.fact
    if fact.kind is EntryKind.REGISTERED:
        return [replace(registered_state(fact), holds=state.holds)]
    event = event_of(settled)
    if event is None:
        return []
    opened = (event.hold,) if event.hold is not None else ()
    return [
        replace(
            state,
            stage=row.stage or state.stage,
            custody=row.custody or state.custody,
            life=row.life or state.life,
            assembly=event.assembly or state.assembly,
            holds=(*state.holds, *opened),
        )
        for row in TRANSITIONS
        if row.event is event.kind
    ]


def registered_state(fact: Fact) -> State:
    """Return the state a component is registered in, as far as it is said."""
    said = fact.payload.get("state")
    if not isinstance(said, dict):
        return START
    holder, place = said.get("holder"), said.get("place")
    return State(
        custody=_word(Custody, said, "custody") or START.custody,
        place=PlaceId(str(place)) if place else None,
        holder=MemberId(str(holder)) if holder else None,
        stage=_word(CareStage, said, "stage") or START.stage,
        assembly=_word(Assembly, said, "assembly") or START.assembly,
        life=_word(Life, said, "life") or START.life,
    )


def _hold(fact: Fact) -> Hold:
    payload = fact.payload
    hours = payload.get("escalate_after_h")
    return Hold(
        cause=fact.text("cause") or f"entry {fact.seq}",
        question=MessageId(fact.text("question") or "ledger.ask.erased_hold"),
        decider=_word(Decider, payload, "decider") or Decider.SAFETY_OFFICER,
        deputy=_word(Decider, payload, "deputy") or Decider.CHIEF,
        escalate_after_h=hours if isinstance(hours, int) else _ESCALATE_AFTER_H,
    )


@cache
def _words(words: type[StrEnum]) -> frozenset[str]:
    return frozenset(word.value for word in words)


def _word(words: type[W], payload: Payload, name: str) -> W | None:
    """Return a word of a fixed list; one that is on no list is as good as not said."""
    value = payload.get(name)
    return words(value) if isinstance(value, str) and value in _words(words) else None
