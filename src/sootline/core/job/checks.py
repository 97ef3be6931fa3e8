"""Does a job hold together: is everything it names there, once, and in a possible order?"""

from collections import Counter
from collections.abc import Iterable, Iterator

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.exposure.calls import Call
from sootline.core.job.jobs import JOB_VERSION, Goal, Job
from sootline.core.upkeep.references import (
    named_components,
    named_members,
    named_notices,
    named_shipments,
)


def check_job(job: Job) -> Job:
    """Return the job if it holds together.

    Raises:
        BadInputError: with every fault: unknown version, ids given twice, ids that name nothing,
            a deadline goal without its moment, a deadline before the start.
    """
    faults = [*_version(job), *_twice(job), *_dangling(job), *_upkeep(job), *_request(job)]
    if faults:
        raise BadInputError(faults)
    return job


def _version(job: Job) -> Iterator[Fault]:
    if job.version != JOB_VERSION:
        yield _fault("version", "job.version", value=job.version, limit=JOB_VERSION)


def _twice(job: Job) -> Iterator[Fault]:
    lists: dict[str, Iterable[str]] = {
        "members": (member.id for member in job.members),
        "guides": (guide.id for guide in job.guides),
        "components": (component.id for component in job.components),
        "calls": (call.id for call in job.calls),
        "wash_room.washers": (washer.id for washer in job.wash_room.washers),
        "wash_room.sinks": (sink.id for sink in job.wash_room.sinks),
        "wash_room.drying": (place.id for place in job.wash_room.drying),
        "upkeep.notices": (notice.id for notice in job.upkeep.notices),
        "upkeep.manifests": (manifest.id for manifest in job.upkeep.manifests),
        "upkeep.supplies": (supply.id for supply in job.upkeep.supplies),
    }
    for place, ids in lists.items():
        for given, count in Counter(ids).items():
            if count > 1:
                yield _fault(place, "job.twice", value=given, count=count)


def _dangling(job: Job) -> Iterator[Fault]:
    members = {member.id for member in job.members}
    guides = {guide.id for guide in job.guides}
    for index, component in enumerate(job.components):
        place = f"components[{index}]"
        if component.owner is not None and component.owner not in members:
            yield _fault(f"{place}.owner", "job.no_such_member", value=component.owner)
        if component.guide is not None and component.guide not in guides:
            yield _fault(f"{place}.guide", "job.no_such_guide", value=component.guide)
    components = {component.id for component in job.components}
    for index, call in enumerate(job.calls):
        for place, given in _named_components(call):
            if given not in components:
                yield _fault(f"calls[{index}].{place}", "job.no_such_component", value=given)
        for place, given in _named_members(call):
            if given not in members:
                yield _fault(f"calls[{index}].{place}", "job.no_such_member", value=given)
    for place, given in _rebuilt(job):
        if given not in components:
            yield _fault(place, "job.no_such_component", value=given)
    yield from _readings(job)
    drying = {place.id for place in job.wash_room.drying}
    for index, row in enumerate(job.wash_room.drying_times):
        if row.place not in drying:
            place = f"wash_room.drying_times[{index}].place"
            yield _fault(place, "job.no_such_place", value=row.place)


def _readings(job: Job) -> Iterator[Fault]:
    """Find readings of washers and places that the wash room does not have.

    A load logged at a place that is gone stays: it was true when it was logged.
    """
    washers = {washer.id for washer in job.wash_room.washers}
    read = job.readings
    named = {
        "drums": [drum.washer for drum in read.drums],
        "baths": [bath.washer for bath in read.baths],
        "scales": [weighed.washer for weighed in read.scales],
    }
    for name, rows in named.items():
        for index, washer in enumerate(rows):
            if washer not in washers:
                place = f"readings.{name}[{index}].washer"
                yield _fault(place, "job.no_such_washer", value=washer)
    places = {place.id for place in job.wash_room.drying}
    for index, fan in enumerate(read.fans):
        if fan.place not in places:
            yield _fault(f"readings.fans[{index}].place", "job.no_such_place", value=fan.place)


def _upkeep(job: Job) -> Iterator[Fault]:
    facts = job.upkeep
    known = (
        (named_components(facts), {one.id for one in job.components}, "job.no_such_component"),
        (named_members(facts), {one.id for one in job.members}, "job.no_such_member"),
        (named_shipments(facts), {one.id for one in facts.manifests}, "job.no_such_shipment"),
        (named_notices(facts), {one.id for one in facts.notices}, "job.no_such_notice"),
    )
    for named, there, message in known:
        for place, given in named:
            if given not in there:
                yield _fault(f"upkeep.{place}", message, value=given)


def _named_components(call: Call) -> Iterator[tuple[str, str]]:
    for index, person in enumerate(call.people):
        for worn in person.worn or ():
            yield f"people[{index}].worn", worn
    for index, remark in enumerate(call.remarks):
        yield f"remarks[{index}].component", remark.component
    for secured in call.evidence:
        yield "evidence", secured


def _rebuilt(job: Job) -> Iterator[tuple[str, str]]:
    for index, check in enumerate(job.checks):
        yield f"checks[{index}].component", check.component
    for index, built in enumerate(job.builds):
        for part in built.parts:
            yield f"builds[{index}].parts", part


def _named_members(call: Call) -> Iterator[tuple[str, str]]:
    for index, person in enumerate(call.people):
        yield f"people[{index}].member", person.member
    for hurt in call.casualties:
        yield "casualties", hurt


def _request(job: Job) -> Iterator[Fault]:
    request = job.request
    if request is None:
        return
    if request.goal is Goal.DEADLINE and request.by is None:
        yield _fault("request.by", "job.no_deadline")
    if request.by is not None and request.by <= request.start:
        yield _fault("request.by", "job.deadline_passed", value=request.by, limit=request.start)


def _fault(place: str, message: str, **values: object) -> Fault:
    named = tuple((name, str(value)) for name, value in values.items())
    return Fault(place=place, message=MessageId(message), values=named)
