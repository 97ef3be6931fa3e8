"""What does a job look like once somebody reported something: a call, a load, a check?

What is back on its hook after a wash leaves the call that soiled it: a job's calls name the gear
that is still to be seen to.
"""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from sootline.core.basis import BadInputError, CallId, ComponentId, DateSpan
from sootline.core.exposure.calls import Call, Presence
from sootline.core.gear.events import Event, EventKind
from sootline.core.gear.records import Deed, Record
from sootline.core.gear.state import Assembly, CareStage
from sootline.core.job.jobs import Job
from sootline.core.rebuild import AfterWashCheck, Built, Next
from sootline.core.rulebook import Level
from sootline.tasks.answer_question import Answered
from sootline.tasks.asked_holds import found_at_check
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
from sootline.tasks.floor_deeds import FLOOR, FloorDeed
from sootline.tasks.happening import befall, fault, happen, pieces_of
from sootline.tasks.hold_said import HoldSaid, take_hold
from sootline.tasks.list_due import civil_day
from sootline.tasks.people_deeds import PeopleDeed
from sootline.tasks.ports import Rules
from sootline.tasks.reading_deeds import ReadingTaken
from sootline.tasks.rebuild_gear import rebuild_gear
from sootline.tasks.take_floor import take_floor
from sootline.tasks.take_people import take_people
from sootline.tasks.take_readings import take_reading
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
            after = happen(job, deed.pieces, _STEPS[deed.step], by=by, place=deed.place)
            if deed.step in _WASHED:
                after = _cleaned(rules, after, deed.pieces, by=by)
        case LookedOver(pieces=pieces):
            looked = happen(job, pieces, (EventKind.WORN, EventKind.LOOKED_OVER), by=by)
            after = _seen_to(looked, pieces)
        case Checked(check=check):
            after = _check(rules, job, check)
        case PutTogether(built=built):
            after = _build(rules, job, built, by=deed.by)
        case Planned() | Answered():
            after = job
        case HoldSaid():
            after = take_hold(job, deed)
        case _:
            after = _beyond(rules, job, deed)
    return after


def _beyond(rules: Rules, job: Job, deed: FloorDeed | PeopleDeed | YearFact | ReadingTaken) -> Job:
    """Take in what is no step of a call, a load or a check."""
    if isinstance(deed, YearFact):
        return take_year(rules, job, deed.fact)
    if isinstance(deed, ReadingTaken):
        return take_reading(job, deed.reading)
    if isinstance(deed, FLOOR):
        return take_floor(rules, job, deed)
    return take_people(rules, job, deed)


def _call(job: Job, name: CallId) -> Call:
    found = next((call for call in job.calls if call.id == name), None)
    if found is None:
        raise BadInputError([fault(name, "tasks.no_such_thing")])
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
    """Write an advanced cleaning into the life of each piece that was to have one.

    What no call asks to be washed is washed because its cleaning comes due.
    """
    decisions = decide_job(rules, job).decisions
    wanted = {one.component for one in decisions if one.level is not Level.ROUTINE}
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
    if pieces_of(job, names)[0].state.stage in _UNHUNG:
        job = happen(job, names, (EventKind.HUNG, EventKind.DRIED), by=check.by)
    others = tuple(one for one in job.checks if one.component != check.component)
    job = replace(job, checks=(*others, check))
    verdicts = {one.component: one.next for one in rebuild_gear(rules, job).pieces}
    then = verdicts[check.component]
    if then is Next.WASH_AGAIN:
        return happen(job, names, (EventKind.RETURNED_SOILED,), by=check.by)
    if then is Next.HOLD and not pieces_of(job, names)[0].state.open_holds:
        seen = ", ".join(one.flaw for one in check.flaws)
        hold = found_at_check(by=check.by, said=seen, at=check.at)
        return befall(job, names, lambda _: [Event(kind=EventKind.HOLD_OPENED, hold=hold)])
    if then is not Next.BACK:
        return job
    checked = happen(job, names, (EventKind.TOUCH_CHECKED,), by=check.by)
    if pieces_of(checked, names)[0].state.assembly is Assembly.ASSEMBLED:
        checked = happen(checked, names, (EventKind.BACK_ON_HOOK,), by=check.by)
    return _seen_to(checked, names)


def _build(rules: Rules, job: Job, built: Built, *, by: str) -> Job:
    """Take in which parts were fitted together; a whole element goes back on its hook."""
    pieces_of(job, built.parts)
    others = tuple(one for one in job.builds if not set(one.parts) & set(built.parts))
    job = replace(job, builds=(*others, built))
    if not rebuild_gear(rules, job).elements[-1].ready:
        return job
    return happen(job, built.parts, (EventKind.REBUILT, EventKind.BACK_ON_HOOK), by=by)


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
