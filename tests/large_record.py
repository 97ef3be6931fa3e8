"""A record of any size: the demo department again and again, one copy for each station.

Everything in it is invented. `fill` writes it into the store the framework is set up for.
"""

import datetime as dt
import json
from collections.abc import Iterator
from dataclasses import replace

from django.db import transaction

from sootline.core.basis import ComponentId, DateSpan, DeviceId, InstallationId, MemberId, SetId
from sootline.core.gear import Component
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.core.job.things import DepartmentFacts, facts_of
from sootline.core.ledger import (
    ClockSource,
    Draft,
    Entry,
    EntryKind,
    Established,
    ItemKind,
    Occurred,
    append,
    begin,
    component,
    item,
)
from sootline.core.ledger.acts import Act
from sootline.core.riding import RidingFacts
from sootline.storage.entries import insert_many
from sootline.storage.models import Installation
from sootline.storage.projecting import replay
from sootline.tasks.register_gear import register_payload
from sootline.tasks.register_things import HERE
from sootline.wiring.demo import demo_job

K = EntryKind
NAME = InstallationId("bench")
_START = dt.datetime(2026, 1, 1, 12, tzinfo=dt.UTC)
_IN_A_LOAD = 6
# One wash, from the call to the hook; a load's own entries come between.
_ROUND: tuple[tuple[EntryKind, dict[str, object]], ...] = (
    (K.WORN, {"member": "211", "call": "c-31"}),
    (K.RETURNED_SOILED, {"by": "118"}),
    (K.SORTED, {"by": "131"}),
    (K.PUT_IN_WASHER, {"place": "W1", "by": "131"}),
    (K.HUNG, {"place": "cabinet", "by": "131"}),
    (K.DRIED, {"by": "118"}),
    (K.TOUCH_CHECKED, {"by": "118"}),
    (K.REBUILT, {"by": "118"}),
    (K.BACK_ON_HOOK, {"place": "hook", "by": "118"}),
)


def fill(pieces: int, entries: int) -> int:
    """Write a record about so many components into an empty store; return how many entries.

    Args:
        pieces: rounded up to whole stations.
        entries: the last round of washing is cut off here; everything is washed once at least.
    """
    Installation.objects.create(name=NAME, since=_START)
    with transaction.atomic():
        insert_many(_chained(_drafts(stations(pieces), entries)), NAME, "default")
        return replay("default")


def stations(pieces: int) -> tuple[Job, ...]:
    """Return so many copies of the demo department that they have so many components."""
    job = demo_job()
    copies = -(-pieces // len(job.components))
    return tuple(_copy(job, n) for n in range(1, copies + 1))


def _copy(job: Job, n: int) -> Job:
    riding, gear = job.riding, job.components
    return replace(
        job,
        members=tuple(
            replace(one, id=_whose(one.id, n), crew=f"{one.crew} St {n}") for one in job.members
        ),
        components=tuple(_piece(one, n) for one in gear),
        riding=replace(
            riding,
            crews=tuple(replace(one, crew=f"{one.crew} St {n}") for one in riding.crews),
            duties=tuple(replace(one, member=_whose(one.member, n)) for one in riding.duties),
            masks=tuple(
                replace(
                    one, id=ComponentId(f"{one.id}-{n}"), owner=one.owner and _whose(one.owner, n)
                )
                for one in riding.masks
            ),
        ),
        calls=(),
    )


def _whose(member: MemberId, n: int) -> MemberId:
    return MemberId(f"{member}-{n}")


def _piece(one: Component, n: int) -> Component:
    # The record reads the machine's clock, and so does what is due.
    came = DateSpan.parse(str(dt.datetime.now(dt.UTC).date().replace(day=1)))
    return replace(
        one,
        id=ComponentId(f"{one.id}-{n}"),
        owner=one.owner and _whose(one.owner, n),
        set=one.set and SetId(f"{one.set}-{n}"),
        state=replace(one.state, holder=one.state.holder and _whose(one.state.holder, n)),
        made=came, in_service=came, records=(),
    )  # fmt: skip


def _drafts(copies: tuple[Job, ...], entries: int) -> Iterator[Draft]:
    yield _act("department").entry(K.FACTS_CHANGED, HERE, _described(copies))
    written = 1
    for n, job in enumerate(copies, start=1):
        said = {"station": f"station-{n}"}
        for member in job.members:
            thing = item(ItemKind.MEMBER, member.id)
            yield _act("members").entry(K.REGISTERED, thing, {**facts_of(member), **said})
        for one in job.components:
            payload = {**register_payload(one), **said}
            yield _act("gear").entry(K.REGISTERED, component(one.id), payload)
        written += len(job.members) + len(job.components)
    gear = [one.id for job in copies for one in job.components]
    for number in range(1000):
        for draft in _round(gear, number):
            if written >= entries and number:
                return
            yield draft
            written += 1


def _round(gear: list[ComponentId], number: int) -> Iterator[Draft]:
    """Wash everything once, load by load, each piece to its end."""
    for at in range(0, len(gear), _IN_A_LOAD):
        load = f"W{number}-{at}"
        some = gear[at : at + _IN_A_LOAD]
        act = _act(load)
        for step, (kind, said) in enumerate(_ROUND):
            for piece in some:
                also = {"load": load} if kind is K.PUT_IN_WASHER else {}
                draft = act.entry(kind, component(piece), {**said, **also})
                yield replace(draft, idem=f"{draft.idem}/{step}")
            if kind is K.PUT_IN_WASHER:
                thing = item(ItemKind.LOAD, load)
                yield act.entry(K.LOAD_STARTED, thing, {"machine": "W1", "by": "131",
                                                        "level": "advanced"})  # fmt: skip
                ended = act.entry(K.LOAD_ENDED, thing, {"by": "131"})
                yield replace(ended, idem=f"{ended.idem}/end")


def _described(copies: tuple[Job, ...]) -> dict[str, object]:
    first = copies[0]
    riding: RidingFacts = replace(
        first.riding,
        crews=tuple(one for job in copies for one in job.riding.crews),
        duties=tuple(one for job in copies for one in job.riding.duties),
        masks=tuple(one for job in copies for one in job.riding.masks),
    )
    facts = DepartmentFacts(department=first.department, guides=first.guides,
                            wash_room=first.wash_room, riding=riding)  # fmt: skip
    said: dict[str, object] = json.loads(encode(DepartmentFacts, facts, indent=None))
    return said


def _act(key: str) -> Act:
    return Act(
        idem=key, occurred=Occurred.at(_START, ClockSource.SERVER), device=DeviceId("bench"),
        actor=MemberId("118"), established=Established.SIGNED_IN,
    )  # fmt: skip


def _chained(drafts: Iterator[Draft]) -> Iterator[Entry]:
    head = begin(NAME)
    for order, draft in enumerate(drafts):
        now = _START + dt.timedelta(seconds=order)
        occurred = Occurred.at(now, ClockSource.SERVER)
        done = append(head, replace(draft, occurred=occurred), now=now,
                      salt=order.to_bytes(16, "big"), seen=now)  # fmt: skip
        head = done.head
        yield done.entry
