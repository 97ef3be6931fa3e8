"""What does a job look like after somebody came, got gear, tried it on, exchanged it, or left?"""

from collections.abc import Iterator
from dataclasses import replace
from typing import assert_never

from sootline.core.basis import BadInputError, ComponentId, MemberId
from sootline.core.gear import CareStage, Component
from sootline.core.gear.events import Event, EventKind
from sootline.core.job.jobs import Job
from sootline.core.riding import ExchangeAnswer, ExchangeFacts, TryOn
from sootline.tasks.exchange_gear import refuse_exchange
from sootline.tasks.happening import befall, fault, pieces_of
from sootline.tasks.people_deeds import (
    GearExchanged,
    GearGiven,
    MemberCame,
    MemberLeft,
    PeopleDeed,
    TriedOn,
)
from sootline.tasks.ports import Rules
from sootline.tasks.recording import RefusedError
from sootline.tasks.who_can_ride import who_can_ride


def take_people(rules: Rules, job: Job, deed: PeopleDeed) -> Job:
    """Return the job as it is after a deed about people and their gear.

    Raises:
        BadInputError: it cannot be so as things stand; every piece in the way is named.
    """
    match deed:
        case MemberCame(member=member):
            if member.id in [one.id for one in job.members]:
                raise BadInputError([fault(member.id, "tasks.registered_already")])
            after = replace(job, members=(*job.members, member))
        case GearGiven(pieces=pieces, member=member, by=by):
            after = _give(job, pieces, member, by)
        case TriedOn():
            after = _tried(job, deed)
        case GearExchanged():
            after = _exchange(rules, job, deed)
        case MemberLeft():
            after = _leave(job, deed)
        case _:
            assert_never(deed)
    return after


def answer_exchange(rules: Rules, job: Job, facts: ExchangeFacts) -> ExchangeAnswer:
    """Answer whether an exchange may be, from the job as it stands.

    Raises:
        BadInputError: a piece or the member is not there.
    """
    asked = replace(job, riding=replace(job.riding, exchanges=(facts,)))
    return who_can_ride(rules, asked).exchanges[0]


def _give(job: Job, pieces: tuple[ComponentId, ...], member: MemberId, by: str) -> Job:
    if member not in [one.id for one in job.members]:
        raise BadInputError([fault(member, "tasks.no_such_member")])
    issued = Event(kind=EventKind.ISSUED, holder=member, by=by)
    given = befall(job, pieces, lambda _: [issued])
    return _with_try_ons(given, pieces, member, signed_by=None)


def _tried(job: Job, deed: TriedOn) -> Job:
    pieces_of(job, deed.pieces)
    signed = deed.by if deed.fits else None
    return _with_try_ons(job, deed.pieces, deed.member, signed_by=signed)


def _with_try_ons(
    job: Job, pieces: tuple[ComponentId, ...], member: MemberId, *, signed_by: str | None
) -> Job:
    others = tuple(one for one in job.riding.try_ons if one.component not in pieces)
    tried = tuple(TryOn(component=one, member=member, signed_by=signed_by) for one in pieces)
    return replace(job, riding=replace(job.riding, try_ons=(*others, *tried)))


def _exchange(rules: Rules, job: Job, deed: GearExchanged) -> Job:
    facts = deed.facts
    pieces_of(job, (facts.returns, facts.takes))
    answer = answer_exchange(rules, job, facts)
    try:
        refuse_exchange(facts, answer, rack=bool(deed.place))
    except RefusedError as error:
        raise BadInputError(error.faults) from error
    back = EventKind.BACK_ON_SPARE_RACK if deed.place else EventKind.RETURNED_SOILED
    events = {
        facts.takes: Event(kind=EventKind.ISSUED, holder=facts.member, by=deed.by),
        facts.returns: Event(kind=back, by=deed.by),
    }
    moved = befall(job, tuple(events), lambda one: [events[one.id]])
    signed = _signed(job, facts.takes, facts.member)
    return _with_try_ons(moved, (facts.takes,), facts.member, signed_by=signed)


def _signed(job: Job, piece: ComponentId, member: MemberId) -> str | None:
    tried = ((one.component, one.member, one.signed_by) for one in job.riding.try_ons)
    return next((by for name, who, by in tried if (name, who) == (piece, member)), None)


def _leave(job: Job, deed: MemberLeft) -> Job:
    if deed.member not in [one.id for one in job.members]:
        raise BadInputError([fault(deed.member, "tasks.no_such_member")])

    def events(component: Component) -> Iterator[Event]:
        if component.state.stage is not CareStage.TO_WASH:
            yield Event(kind=EventKind.RETURNED_SOILED, by=deed.by)

    back = befall(job, deed.returned, events)
    components = tuple(
        replace(one, owner=None) if one.id in deed.returned else one for one in back.components
    )
    return without_leaver(replace(back, components=components), deed.member)


def without_leaver(job: Job, member: MemberId) -> Job:
    """Take somebody who left off the list; whoever still has gear stays on it, on no crew."""
    if any(member in (one.owner, one.state.holder) for one in job.components):
        return replace(job, members=tuple(
            replace(one, crew="", role="") if one.id == member else one for one in job.members
        ))  # fmt: skip
    return replace(
        job,
        members=tuple(one for one in job.members if one.id != member),
        calls=tuple(
            replace(call, people=tuple(one for one in call.people if one.member != member))
            for call in job.calls
        ),
        riding=replace(
            job.riding,
            duties=tuple(one for one in job.riding.duties if one.member != member),
            try_ons=tuple(one for one in job.riding.try_ons if one.member != member),
        ),
    )
