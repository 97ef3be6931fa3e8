"""What does a job look like once somebody reported something: a call, a load, a check?

What is back on its hook after a wash leaves the call that soiled it: a job's calls name the gear
that is still to be seen to.
"""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import replace

from sootline.core.basis import BadInputError, ComponentId, Fault, Finding, MessageId, PlaceId
from sootline.core.exposure.calls import Call, Presence
from sootline.core.gear import Component, Element, Refusal, apply, find_kind
from sootline.core.gear.events import Event, EventKind
from sootline.core.gear.state import Assembly, CareStage, State
from sootline.core.job.jobs import Job
from sootline.core.rebuild import AfterWashCheck, Built, Next
from sootline.tasks.ports import Rules
from sootline.tasks.rebuild_gear import rebuild_gear

_TO_DRUM = (EventKind.RETURNED_SOILED, EventKind.SORTED, EventKind.PUT_IN_WASHER)
_BY_HAND = (EventKind.RETURNED_SOILED, EventKind.SORTED, EventKind.WASHED_BY_HAND)
_TAKEN_APART = (Element.COAT, Element.TROUSERS, Element.COVERALL)
_UNHUNG = (CareStage.WASHED, CareStage.DRYING)


def take_call(job: Job, call: Call) -> Job:
    """Put a call into a job, or what is newly known of it in its place."""
    others = tuple(one for one in job.calls if one.id != call.id)
    return replace(job, calls=(*others, call))


def take_presence(call: Call, presence: Presence) -> Call:
    """Put into a call where one person was, in place of what was known of that person."""
    known = [one.member for one in call.people]
    if presence.member not in known:
        return replace(call, people=(*call.people, presence))
    people = tuple(presence if one.member == presence.member else one for one in call.people)
    return replace(call, people=people)


def start_load(job: Job, names: Collection[ComponentId], *, washer: str, by: str) -> Job:
    """Put pieces into a drum, all of them or none.

    Raises:
        BadInputError: a piece may not go in; each is named with its reason.
    """
    return _happen(job, names, _TO_DRUM, by=by, place=PlaceId(washer))


def end_load(job: Job, names: Collection[ComponentId], *, by: str) -> Job:
    """Record that a drum ended its programme: the pieces are washed and wet.

    Raises:
        BadInputError: a piece is not in a drum.
    """
    return _happen(job, names, (EventKind.WASHER_ENDED,), by=by)


def fail_load(job: Job, names: Collection[ComponentId], *, by: str) -> Job:
    """Record that a drum stopped before its end: the pieces need their wash again.

    Raises:
        BadInputError: a piece is not in a drum.
    """
    return _happen(job, names, (EventKind.WASHER_FAILED,), by=by)


def wash_by_hand(job: Job, names: Collection[ComponentId], *, by: str) -> Job:
    """Record that pieces were washed by hand.

    Raises:
        BadInputError: a piece may not be washed now.
    """
    return _happen(job, names, _BY_HAND, by=by)


def hang(job: Job, names: Collection[ComponentId], *, by: str) -> Job:
    """Record that washed pieces hang to dry.

    Raises:
        BadInputError: a piece was not washed.
    """
    return _happen(job, names, (EventKind.HUNG,), by=by)


def take_look(job: Job, names: Collection[ComponentId], *, by: str) -> Job:
    """Record that their wearer looked pieces over after a call, and nothing was found.

    Raises:
        BadInputError: a piece may not go back on its hook.
    """
    looked = _happen(job, names, (EventKind.WORN, EventKind.LOOKED_OVER), by=by)
    return _seen_to(looked, names)


def take_check(rules: Rules, job: Job, check: AfterWashCheck) -> Job:
    """Take in what a named person felt and saw.

    What passes and belongs to nothing that was taken apart goes back on its hook; the rest of what
    passes waits to be put together again.

    Raises:
        BadInputError: the component is not in the job, or not on its way through the wash room.
    """
    names = (check.component,)
    if _of(job, names)[0].state.stage in _UNHUNG:
        job = _happen(job, names, (EventKind.HUNG, EventKind.DRIED), by=check.by)
    others = tuple(one for one in job.checks if one.component != check.component)
    job = replace(job, checks=(*others, check))
    verdicts = {one.component: one.next for one in rebuild_gear(rules, job).pieces}
    then = verdicts[check.component]
    if then is Next.WASH_AGAIN:
        return _happen(job, names, (EventKind.RETURNED_SOILED,), by=check.by)
    if then is not Next.BACK:
        return job
    checked = _happen(job, names, (EventKind.TOUCH_CHECKED,), by=check.by)
    if _of(checked, names)[0].state.assembly is Assembly.ASSEMBLED:
        checked = _happen(checked, names, (EventKind.BACK_ON_HOOK,), by=check.by)
    return _seen_to(checked, names)


def take_build(rules: Rules, job: Job, built: Built, *, by: str) -> Job:
    """Take in which parts were fitted together; a whole element goes back on its hook.

    Raises:
        BadInputError: a part is not in the job.
    """
    _of(job, built.parts)
    others = tuple(one for one in job.builds if not set(one.parts) & set(built.parts))
    job = replace(job, builds=(*others, built))
    if not rebuild_gear(rules, job).elements[-1].ready:
        return job
    return _happen(job, built.parts, (EventKind.REBUILT, EventKind.BACK_ON_HOOK), by=by)


def _of(job: Job, names: Collection[ComponentId]) -> list[Component]:
    found = [one for one in job.components if one.id in names]
    strangers = sorted(set(names) - {one.id for one in found})
    if strangers:
        raise BadInputError([_fault(name, "report.stranger") for name in strangers])
    return found


def _happen(
    job: Job,
    names: Collection[ComponentId],
    kinds: Sequence[EventKind],
    *,
    by: str,
    place: PlaceId | None = None,
) -> Job:
    """Let events happen to pieces one after the other, to all of them or to none."""
    at = job.now.isoformat(timespec="minutes")
    states: dict[ComponentId, State] = {}
    faults: list[Fault] = []
    for component in _of(job, names):
        state = component.state
        for kind in _still_to_come(state, kinds):
            after = apply(state, _event(component, kind, by, at, place))
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


def _event(component: Component, kind: EventKind, by: str, at: str, place: PlaceId | None) -> Event:
    apart = kind is EventKind.SORTED and find_kind(component.kind).element in _TAKEN_APART
    return Event(
        kind=kind,
        by=by,
        at=at,
        place=place if kind is EventKind.PUT_IN_WASHER else None,
        assembly=Assembly.APART if apart else None,
    )


def _still_to_come(state: State, kinds: Sequence[EventKind]) -> Iterator[EventKind]:
    """Leave out what lies behind a piece: coming back soiled, being sorted."""
    for kind in kinds:
        if kind is EventKind.RETURNED_SOILED and state.stage is CareStage.TO_WASH:
            continue
        yield kind


def _seen_to(job: Job, names: Collection[ComponentId]) -> Job:
    """Take pieces that are back out of the calls they were worn at."""
    owned: dict[object, list[ComponentId]] = {}
    for component in job.components:
        owned.setdefault(component.owner, []).append(component.id)
    return replace(
        job,
        calls=tuple(
            replace(call, people=tuple(_without(call.people, names, owned))) for call in job.calls
        ),
    )


def _without(
    people: Iterable[Presence],
    names: Collection[ComponentId],
    owned: dict[object, list[ComponentId]],
) -> Iterator[Presence]:
    for person in people:
        worn = owned.get(person.member, []) if person.worn is None else person.worn
        left = tuple(name for name in worn if name not in names)
        yield person if len(left) == len(worn) else replace(person, worn=left)


def _refused(component: ComponentId, reason: Finding) -> Fault:
    return Fault(place=component, message=reason.message, values=reason.values)


def _fault(place: str, message: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=(("id", place),))
