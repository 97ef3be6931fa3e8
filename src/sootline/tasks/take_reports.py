"""What does a job look like once somebody reported something: a call, a load, a check?

What is back on its hook after a wash leaves the call that soiled it: a job's calls name the gear
that is still to be seen to.
"""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import replace
from typing import assert_never

from sootline.core.basis import (
    BadInputError,
    CallId,
    ComponentId,
    DateSpan,
    Fault,
    Finding,
    MessageId,
    PlaceId,
)
from sootline.core.exposure.calls import Call, Presence
from sootline.core.gear import Component, Element, Refusal, apply, find_kind
from sootline.core.gear.events import Event, EventKind
from sootline.core.gear.records import Deed, Record
from sootline.core.gear.state import Assembly, CareStage, State
from sootline.core.job.jobs import Job
from sootline.core.rebuild import AfterWashCheck, Built, Next
from sootline.core.rulebook import Level
from sootline.tasks.decide import decide_job
from sootline.tasks.deeds import (
    CallCame,
    Checked,
    HazardsSaid,
    LookedOver,
    PersonSaid,
    Planned,
    PutTogether,
    Washed,
    WashStep,
)
from sootline.tasks.deeds import (
    Deed as Reported,
)
from sootline.tasks.list_due import civil_day
from sootline.tasks.ports import Rules
from sootline.tasks.rebuild_gear import rebuild_gear
from sootline.tasks.take_year import take_year
from sootline.tasks.year_deeds import YearFact

_STEPS = {
    WashStep.STARTED: (EventKind.RETURNED_SOILED, EventKind.SORTED, EventKind.PUT_IN_WASHER),
    WashStep.ENDED: (EventKind.WASHER_ENDED,),
    WashStep.FAILED: (EventKind.WASHER_FAILED,),
    WashStep.BY_HAND: (EventKind.RETURNED_SOILED, EventKind.SORTED, EventKind.WASHED_BY_HAND),
    WashStep.HUNG: (EventKind.HUNG,),
}
_WASHED = (WashStep.ENDED, WashStep.BY_HAND)
_ADVANCED = (Level.ADVANCED, Level.SPECIALISED)
_PLACED = (EventKind.PUT_IN_WASHER, EventKind.HUNG)
_TAKEN_APART = (Element.COAT, Element.TROUSERS, Element.COVERALL)
_UNHUNG = (CareStage.WASHED, CareStage.DRYING)


def take(rules: Rules, job: Job, deed: Reported, *, by: str) -> Job:
    """Return the job as it is after a deed.

    Args:
        by: who reports it.

    Raises:
        BadInputError: it cannot be so as things stand; every piece in the way is named.
    """
    match deed:
        case CallCame(call=call):
            after = _with_call(job, call)
        case PersonSaid(call=name, presence=presence):
            after = _with_call(job, _with_person(_call(job, name), presence))
        case HazardsSaid(call=name, hazards=hazards):
            after = _with_call(job, replace(_call(job, name), hazards=hazards))
        case Washed():
            after = _happen(job, deed.pieces, _STEPS[deed.step], by=by, place=deed.place)
            if deed.step in _WASHED:
                after = _cleaned(rules, after, deed.pieces, by=by)
        case LookedOver(pieces=pieces):
            looked = _happen(job, pieces, (EventKind.WORN, EventKind.LOOKED_OVER), by=by)
            after = _seen_to(looked, pieces)
        case Checked(check=check):
            after = _check(rules, job, check)
        case PutTogether(built=built):
            after = _build(rules, job, built, by=deed.by)
        case YearFact(fact=fact):
            after = take_year(rules, job, fact)
        case Planned():
            after = job
        case _:
            assert_never(deed)
    return after


def _call(job: Job, name: CallId) -> Call:
    found = next((call for call in job.calls if call.id == name), None)
    if found is None:
        raise BadInputError([_fault(name, "tasks.no_such_thing")])
    return found


def _with_call(job: Job, call: Call) -> Job:
    others = tuple(one for one in job.calls if one.id != call.id)
    return replace(job, calls=(*others, call))


def _with_person(call: Call, presence: Presence) -> Call:
    """Put where one person was in place of what was known of that person."""
    if presence.member not in [one.member for one in call.people]:
        return replace(call, people=(*call.people, presence))
    people = tuple(presence if one.member == presence.member else one for one in call.people)
    return replace(call, people=people)


def _cleaned(rules: Rules, job: Job, names: Collection[ComponentId], *, by: str) -> Job:
    """Write an advanced cleaning into the life of each piece that was to have one."""
    wanted = {one.component for one in decide_job(rules, job).decisions if one.level in _ADVANCED}
    day = DateSpan.parse(civil_day(job).isoformat())
    record = Record(deed=Deed.ADVANCED_CLEANING, on=day, by=by)
    return replace(
        job,
        components=tuple(
            replace(one, records=(*one.records, record))
            if one.id in names and one.id in wanted
            else one
            for one in job.components
        ),
    )


def _check(rules: Rules, job: Job, check: AfterWashCheck) -> Job:
    """Take in what a named person felt and saw.

    What passes and belongs to nothing that was taken apart goes back on its hook; the rest of what
    passes waits to be put together again.
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


def _build(rules: Rules, job: Job, built: Built, *, by: str) -> Job:
    """Take in which parts were fitted together; a whole element goes back on its hook."""
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
        raise BadInputError([_fault(name, "tasks.no_such_component") for name in strangers])
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
        place=place if kind in _PLACED else None,
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
