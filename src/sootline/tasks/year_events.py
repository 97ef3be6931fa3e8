"""What happens to gear when a fact of the year is written down?

An inspection that counts moves the next one; what lets something through is held; what leaves for
a contractor is away until it is back by its own number or a named person's word; what a notice
means and somebody pulled is held until somebody says otherwise.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import (
    BadInputError,
    Bearing,
    ComponentId,
    DateSpan,
    Fault,
    MessageId,
    PlaceId,
)
from sootline.core.exposure.calls import Answer
from sootline.core.gear import CareStage, Component, Custody, Event, EventKind, Hold
from sootline.core.gear.records import Deed, Record
from sootline.core.job.jobs import Job
from sootline.core.rulebook import Decider
from sootline.core.upkeep.contractor import (
    Manifest,
    Receipt,
    Service,
    reconcile,
    write_manifest,
)
from sootline.core.upkeep.inspections import Inspection, InspectionKind, Judged, Result
from sootline.core.upkeep.inspections.judging import MATTER_OF
from sootline.core.upkeep.recalls import Action, Notice, NoticeClosed, Sighting, Step
from sootline.core.upkeep.repairs import Choice, Repair
from sootline.tasks.inspect_gear import judge_one
from sootline.tasks.match_recall import match_recalls
from sootline.tasks.ports import Rules
from sootline.tasks.year_deeds import Confirmed, Fact
from sootline.tasks.year_facts import is_over

_CLEANING = (Service.ADVANCED_CLEANING, Service.SPECIALISED_CLEANING)
_ESCALATE_AFTER_H = 24
_DONE_WITH = (Step.CORRECTED, Step.REPLACED)


@dataclass(frozen=True, kw_only=True)
class Follows:
    """What follows for one component.

    Args:
        record: what its dates count from now on; None where nothing counts.
        mended: what a repair did, newly known, in the repairer's words.
    """

    component: ComponentId
    events: tuple[Event, ...] = ()
    record: Record | None = None
    mended: str = ""


def follows(rules: Rules, before: Job, after: Job, fact: Fact) -> tuple[Follows, ...]:
    """List what follows from a fact, component by component.

    Args:
        before, after: the job without and with the fact.

    Raises:
        BadInputError: something on a shipment may not leave as it is.
    """
    found: Iterator[Follows] = iter(())
    match fact:
        case Inspection():
            found = _inspected(rules, after, fact)
        case Manifest():
            found = _sent(after, fact)
        case Receipt():
            found = _back(before, after, fact.manifest, fact.by)
        case Confirmed():
            found = _back(before, after, fact.receipt.manifest, fact.by)
        case Repair():
            found = _repaired(before, after, fact)
        case Sighting():
            found = _sighted(after, fact)
        case Action():
            found = _acted(after, fact)
        case NoticeClosed():
            _close(before, fact)
        case _:
            pass
    return tuple(found)


def _inspected(rules: Rules, job: Job, inspection: Inspection) -> Iterator[Follows]:
    component = _of(job, inspection.component)
    judged = judge_one(rules, job, inspection)
    by, at = inspection.by, inspection.at.isoformat(timespec="minutes")
    yield Follows(
        component=component.id,
        events=tuple(_found(component, judged, by, at)),
        record=_record(inspection, judged),
    )


def _found(component: Component, judged: Judged, by: str, at: str) -> Iterator[Event]:
    here = component.state.custody in (Custody.HOOK, Custody.MEMBER, Custody.SPARE_RACK)
    checked = component.state.stage is CareStage.CHECKED
    if judged.result is Result.WASH_FIRST and here and checked:
        yield Event(kind=EventKind.RETURNED_SOILED, by=by, at=at)
    for hold in judged.holds:
        if not _held(component, hold.cause):
            yield Event(kind=EventKind.HOLD_OPENED, by=by, at=at, hold=hold)


def _record(inspection: Inspection, judged: Judged) -> Record | None:
    if not judged.counts or inspection.kind is InspectionKind.ROUTINE:
        return None
    deed: Deed = MATTER_OF[inspection.kind][1]
    return Record(deed=deed, on=DateSpan.day(inspection.at.date()), by=inspection.by)


def _sent(job: Job, manifest: Manifest) -> Iterator[Follows]:
    pieces = {one.id: one for one in job.components}
    sheet = write_manifest(manifest, pieces)
    against = [one for one in sheet.against if one.bearing is Bearing.FORBIDS]
    if against:
        raise BadInputError(
            [Fault(place=manifest.id, message=one.message, values=one.values) for one in against]
        )
    for sent in manifest.pieces:
        leaves = Event(
            kind=EventKind.SENT_TO_CONTRACTOR,
            by=manifest.by,
            at=manifest.at.isoformat(timespec="minutes"),
            place=PlaceId(manifest.provider),
        )
        yield Follows(component=sent.component, events=(leaves,))


def _back(before: Job, after: Job, name: str, by: str) -> Iterator[Follows]:
    """List what is back now and was not before; a piece nobody is sure of stays away."""
    manifest = next(one for one in after.upkeep.manifests if one.id == name)
    known = reconcile(manifest, before.upkeep.receipts, before.components).back
    services = {one.component: one.services for one in manifest.pieces}
    for piece in reconcile(manifest, after.upkeep.receipts, after.components).back:
        if piece in known or _of(after, piece).state.custody is not Custody.CONTRACTOR:
            continue
        washed = any(one in _CLEANING for one in services[piece])
        kind = EventKind.RECEIVED_WASHED if washed else EventKind.RECEIVED_UNWASHED
        at = after.now.isoformat(timespec="minutes")
        yield Follows(component=piece, events=(Event(kind=kind, by=by, at=at),))


def _repaired(before: Job, after: Job, repair: Repair) -> Iterator[Follows]:
    component = _of(after, repair.component)
    going = [one for one in before.upkeep.repairs if one.component == component.id]
    was = next((one for one in reversed(going) if not is_over(one)), None)
    at = after.now.isoformat(timespec="minutes")
    events = []
    if repair.decided and not (was and was.decided) and repair.decided.choice is Choice.RETIRE:
        said = repair.decided.why or None
        events.append(Event(kind=EventKind.RETIRED, by=repair.decided.by, at=at, said=said))
    if _newly(repair.sent, was.sent if was else DateSpan()):
        place = PlaceId(repair.by) if repair.by else None
        events.append(Event(kind=EventKind.SENT_TO_REPAIR, by=repair.by or None, at=at,
                            place=place))  # fmt: skip
    if repair.sent != DateSpan() and _newly(repair.back, was.back if was else DateSpan()):
        events.append(Event(kind=EventKind.BACK_FROM_REPAIR, by=repair.by or None, at=at))
    mended = repair.result if repair.result != (was.result if was else "") else ""
    yield Follows(component=component.id, events=tuple(events), mended=mended)


def _newly(now: DateSpan, before: DateSpan) -> bool:
    return now != DateSpan() and before == DateSpan()


def _sighted(job: Job, sighting: Sighting) -> Iterator[Follows]:
    notice = next(one for one in job.upkeep.notices if one.id == sighting.notice)
    component, at = _of(job, sighting.component), sighting.at.isoformat(timespec="minutes")
    if sighting.affected is Answer.NO:
        events = tuple(_released(notice.id, component, sighting.by, at))
    else:
        events = tuple(_pulled(notice, component, sighting.by, at)) if notice.stop_use else ()
    yield Follows(component=component.id, events=events)


def _acted(job: Job, action: Action) -> Iterator[Follows]:
    notice = next(one for one in job.upkeep.notices if one.id == action.notice)
    component, at = _of(job, action.component), action.at.isoformat(timespec="minutes")
    events: tuple[Event, ...]
    if action.step is Step.GIVEN_UP:
        events = (Event(kind=EventKind.RETIRED, by=action.by, at=at, said=notice.title),)
    elif action.step in _DONE_WITH:
        events = tuple(_released(notice.id, component, action.by, at))
    else:
        events = tuple(_pulled(notice, component, action.by, at))
    yield Follows(component=component.id, events=events)


def _close(job: Job, closed: NoticeClosed) -> None:
    """Refuse to close a notice while anything is left to see or to do."""
    (result,) = match_recalls(job, only=closed.notice).notices
    left = (*result.closure.unseen, *result.closure.waiting)
    if left:
        values = (("notice", closed.notice), ("pieces", ", ".join(left)))
        message = MessageId("tasks.notice_open")
        raise BadInputError([Fault(place=closed.notice, message=message, values=values)])


def _pulled(notice: Notice, component: Component, by: str, at: str) -> Iterator[Event]:
    """Hold a component for a notice, once."""
    cause = _cause(notice.id)
    if not _held(component, cause):
        hold = Hold(
            cause=cause,
            question=MessageId("recall.ask"),
            decider=Decider.GEAR_OFFICER,
            deputy=Decider.SAFETY_OFFICER,
            escalate_after_h=_ESCALATE_AFTER_H,
        )
        yield Event(kind=EventKind.HOLD_OPENED, by=by, at=at, hold=hold)


def _released(name: str, component: Component, by: str, at: str) -> Iterator[Event]:
    if _held(component, _cause(name)):
        office = Decider.GEAR_OFFICER
        yield Event(kind=EventKind.HOLD_RELEASED, by=by, at=at, cause=_cause(name), office=office)


def _cause(notice: str) -> str:
    return f"recall.{notice}"


def _held(component: Component, cause: str) -> bool:
    return cause in {hold.cause for hold in component.state.open_holds}


def _of(job: Job, name: ComponentId) -> Component:
    """Return a component of a job that holds together: what is named is there."""
    return next(one for one in job.components if one.id == name)
