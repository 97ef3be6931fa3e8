"""What does a job look like once something happened to pieces of it: to all of them, or none?"""

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import replace

from sootline.core.basis import BadInputError, ComponentId, Fault, Finding, MessageId, PlaceId
from sootline.core.gear import Component, Element, Refusal, apply, find_kind
from sootline.core.gear.events import Event, EventKind
from sootline.core.gear.state import Assembly, CareStage, State
from sootline.core.job.jobs import Job

_PLACED = (EventKind.PUT_IN_WASHER, EventKind.HUNG, EventKind.SENT_TO_REPAIR)
_TAKEN_APART = (Element.COAT, Element.TROUSERS, Element.COVERALL)
EventsOf = Callable[[Component], Iterable[Event]]


def pieces_of(job: Job, names: Collection[ComponentId]) -> list[Component]:
    """Return the named components.

    Raises:
        BadInputError: with every number the job does not hold.
    """
    found = [one for one in job.components if one.id in names]
    strangers = sorted(set(names) - {one.id for one in found})
    if strangers:
        raise BadInputError([fault(name, "tasks.no_such_component") for name in strangers])
    return found


def happen(
    job: Job,
    names: Collection[ComponentId],
    kinds: Sequence[EventKind],
    *,
    by: str,
    place: PlaceId | None = None,
) -> Job:
    """Let events happen to pieces one after the other, to all of them or to none.

    Raises:
        BadInputError: with every piece that may not, as it stands.
    """
    at = job.now.isoformat(timespec="minutes")
    return befall(job, names, lambda one: [
        _event(one, kind, by, at, place) for kind in _still_to_come(one.state, kinds)
    ])  # fmt: skip


def befall(job: Job, names: Collection[ComponentId], events_of: EventsOf) -> Job:
    """Let each piece undergo the events that are meant for it.

    Raises:
        BadInputError: with every piece that may not, as it stands.
    """
    states: dict[ComponentId, State] = {}
    faults: list[Fault] = []
    for component in pieces_of(job, names):
        state = component.state
        for event in events_of(component):
            after = apply(state, event)
            if isinstance(after, Refusal):
                faults.append(_refused(component.id, after.reason))
                break
            state = after
        states[component.id] = state
    if faults:
        raise BadInputError(faults)
    return replace(
        job,
        components=tuple(
            replace(one, state=states[one.id]) if one.id in states else one
            for one in job.components
        ),
    )


def fault(place: str, message: str) -> Fault:
    """Say that something named is not as it must be."""
    return Fault(place=place, message=MessageId(message), values=(("id", place),))


def _event(component: Component, kind: EventKind, by: str, at: str, place: PlaceId | None) -> Event:
    apart = kind is EventKind.SORTED and find_kind(component.kind).element in _TAKEN_APART
    return Event(
        kind=kind,
        by=by,
        at=at,
        place=place if kind in _PLACED else None,
        assembly=Assembly.APART if apart else None,
    )


def _still_to_come(state: State, kinds: Sequence[EventKind]) -> Iterator[EventKind]:
    """Leave out what lies behind a piece: coming back soiled, being sorted."""
    for kind in kinds:
        if kind is EventKind.RETURNED_SOILED and state.stage is CareStage.TO_WASH:
            continue
        yield kind


def _refused(component: ComponentId, reason: Finding) -> Fault:
    return Fault(place=component, message=reason.message, values=reason.values)
