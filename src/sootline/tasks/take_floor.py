"""What does a job look like after a decision, a survey, a disinfection, guests' gear, a ruling?"""

from collections.abc import Iterator
from dataclasses import replace
from typing import assert_never

from sootline.core.basis import (
    BadInputError,
    CallId,
    ComponentId,
    DateSpan,
    Fault,
    MessageId,
    PlaceId,
)
from sootline.core.exposure.calls import Answer, Call, Remark
from sootline.core.gear import Component, Hold
from sootline.core.gear.events import Event, EventKind
from sootline.core.gear.records import Deed, Record
from sootline.core.job.jobs import Job
from sootline.core.rebuild import Next
from sootline.tasks.asked_holds import found_at_check, washed_elsewhere
from sootline.tasks.decide import decide_job
from sootline.tasks.floor_deeds import (
    Disinfected,
    FloorDeed,
    GuestsCame,
    GuestsWent,
    HandedOver,
    HoldLifted,
    Ruled,
    SurveyCame,
    WashedElsewhere,
)
from sootline.tasks.happening import befall, fault, happen, pieces_of
from sootline.tasks.list_due import civil_day
from sootline.tasks.ports import Rules

RULING = {
    Next.DRY_ON: EventKind.HUNG,
    Next.REPAIR: EventKind.SENT_TO_REPAIR,
    Next.WASH_AGAIN: EventKind.RETURNED_SOILED,
    Next.HOLD: EventKind.HOLD_OPENED,
    Next.OUT: EventKind.RETIRED,
}


def take_floor(rules: Rules, job: Job, deed: FloorDeed) -> Job:
    """Return the job as it is after a deed on the floor.

    Raises:
        BadInputError: it cannot be so as things stand; every piece in the way is named.
    """
    match deed:
        case HoldLifted():
            after = _lift(rules, job, deed)
        case SurveyCame(call=name, survey=survey):
            call = _call(job, name)
            surveys = (*call.building.surveys, survey)
            after = _with_call(job, replace(call, building=replace(call.building, surveys=surveys)))
        case Disinfected():
            after = _disinfect(job, deed)
        case GuestsCame(call=name, pieces=pieces):
            after = _guests(job, _call(job, name), pieces)
        case GuestsWent(pieces=pieces, to=to, by=by):
            after = befall(job, pieces, lambda _: [
                Event(kind=EventKind.HANDED_BACK, by=by, place=PlaceId(to))
            ])  # fmt: skip
        case WashedElsewhere(pieces=pieces, by=by, said=said):
            hold = washed_elsewhere(by=by, said=said, at=job.now)
            after = _hold(job, pieces, hold)
        case Ruled():
            after = _rule(job, deed)
        case HandedOver():
            after = job
        case _:
            assert_never(deed)
    return after


def unlisted_hold(rules: Rules, job: Job, piece: ComponentId, cause: str) -> Hold | None:
    """Return the hold a decision asks for, where no entry has opened it yet."""
    (component,) = pieces_of(job, (piece,))
    if cause in [hold.cause for hold in component.state.open_holds]:
        return None
    decisions = {one.component: one for one in decide_job(rules, job).decisions}
    return next((hold for hold in decisions[piece].open_holds if hold.cause == cause), None)


def _lift(rules: Rules, job: Job, deed: HoldLifted) -> Job:
    released = Event(
        kind=EventKind.HOLD_RELEASED, by=deed.by, office=deed.office, cause=deed.cause,
        said=deed.said, at=job.now.isoformat(timespec="minutes"),
    )  # fmt: skip

    def events(component: Component) -> Iterator[Event]:
        hold = unlisted_hold(rules, job, component.id, deed.cause)
        if hold is not None:
            yield Event(kind=EventKind.HOLD_OPENED, hold=hold)
        yield released

    return befall(job, deed.pieces, events)


def refuse_contact(job: Job, deed: Disinfected) -> None:
    """Refuse a disinfection with what is not at hand, or shorter than its label asks for.

    Raises:
        BadInputError: with what its label says.
    """
    listed = {one.name: one for one in job.department.care.products}
    product = listed.get(deed.product)
    if product is None:
        values = (("product", deed.product), ("listed", ", ".join(listed)))
        message = MessageId("tasks.disinfect.not_listed")
        raise BadInputError([Fault(place="product", message=message, values=values)])
    if product.contact_min is not None and deed.minutes < product.contact_min:
        limits = (
            ("product", deed.product),
            ("minutes", str(deed.minutes)),
            ("limit", str(product.contact_min)),
        )
        message = MessageId("tasks.disinfect.too_short")
        raise BadInputError([Fault(place="minutes", message=message, values=limits)])


def _disinfect(job: Job, deed: Disinfected) -> Job:
    pieces_of(job, deed.pieces)
    refuse_contact(job, deed)
    day = DateSpan.parse(civil_day(job).isoformat())
    note = disinfection_note(deed)
    record = Record(deed=Deed.DISINFECTED, on=day, by=deed.by, note=note)
    components = tuple(
        replace(one, records=(*one.records, record)) if one.id in deed.pieces else one
        for one in job.components
    )
    return replace(job, components=components)


def disinfection_note(deed: Disinfected) -> str:
    """Return what is kept of a disinfection in one line: the product, and how long it acted."""
    return f"{deed.product}, {deed.minutes} min"


def guest_remark(component: ComponentId, by: str) -> Remark:
    """Return what is known of a guest's piece at a call: it was there, and may be soiled."""
    return Remark(component=component, soiled=Answer.YES, said_by=by or None)


def _guests(job: Job, call: Call, pieces: tuple[Component, ...]) -> Job:
    taken = {one.id for one in job.components}
    twice = [one.id for one in pieces if one.id in taken]
    if twice:
        raise BadInputError([fault(name, "tasks.registered_already") for name in twice])
    remarks = tuple(guest_remark(one.id, "") for one in pieces)
    after = replace(job, components=(*job.components, *pieces))
    return _with_call(after, replace(call, remarks=(*call.remarks, *remarks)))


def _rule(job: Job, deed: Ruled) -> Job:
    kind = RULING.get(deed.next)
    if kind is None:
        raise BadInputError([fault(deed.next, "tasks.no_such_thing")])
    if kind is EventKind.HOLD_OPENED:
        hold = found_at_check(by=deed.by, said=deed.said, at=job.now)
        return _hold(job, (deed.piece,), hold)
    return happen(job, (deed.piece,), (kind,), by=deed.by, place=PlaceId(deed.said or "-"))


def _hold(job: Job, pieces: tuple[ComponentId, ...], hold: Hold) -> Job:
    return befall(job, pieces, lambda _: [Event(kind=EventKind.HOLD_OPENED, hold=hold)])


def _call(job: Job, name: CallId) -> Call:
    found = next((call for call in job.calls if call.id == name), None)
    if found is None:
        raise BadInputError([fault(name, "tasks.no_such_thing")])
    return found


def _with_call(job: Job, call: Call) -> Job:
    return replace(job, calls=tuple(call if one.id == call.id else one for one in job.calls))
