"""Which job is it that the record holds, as things stand now?

The same document a job file holds: every deciding task takes it and nothing else.
"""

import datetime as dt
import json
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TypeVar

from sootline.core.basis import BadInputError, ComponentId, Fault, MessageId
from sootline.core.exposure import Call
from sootline.core.gear import CareStage, Component, Custody
from sootline.core.job.checks import check_job
from sootline.core.job.codec import decode
from sootline.core.job.jobs import JOB_VERSION, Job, Member, Request
from sootline.core.job.things import DepartmentFacts, thing_of
from sootline.core.laundry.rooms import DryingPlace, Sink, Washer, WashRoom
from sootline.core.ledger import ItemKind, name_of
from sootline.tasks.ports import Register
from sootline.tasks.read_people import read_try_ons, without_leavers
from sootline.tasks.read_year import read_builds, read_year
from sootline.tasks.record_call import call_of
from sootline.tasks.register_things import HERE
from sootline.tasks.take_readings import read_readings
from sootline.tasks.year_facts import with_measures

T = TypeVar("T")
# What was worn at a call counts until it is washed, looked over or given back by an investigator.
_STILL_SOILED = (CareStage.WORN, CareStage.TO_WASH, CareStage.IN_WASHER)


def assemble_job(register: Register, *, now: dt.datetime, request: Request | None = None) -> Job:
    """Put together a job from what the record adds up to.

    Calls stand in it while gear worn at them is still soiled, with that gear alone; what was
    disposed of, while a notice speaks of its kind.

    Args:
        now: the moment the decisions are made for.
        request: when a plan begins and what it is for.

    Raises:
        BadInputError: the department was never described, or what the record holds does not make
            a job; every fault is listed.
    """
    facts = read_department(register)
    components = tuple(known.component for known in register.components())
    people = register.things(ItemKind.MEMBER)
    job = Job(
        version=JOB_VERSION,
        title=facts.department.name,
        now=now,
        department=facts.department,
        members=_all(register, ItemKind.MEMBER, Member),
        guides=facts.guides,
        components=components,
        calls=tuple(_calls(register, components)),
        wash_room=_wash_room(register, facts.wash_room),
        request=request,
        riding=replace(facts.riding, try_ons=(*facts.riding.try_ons, *read_try_ons(people))),
    )
    job = without_leavers(job, people)
    year = read_year(register, facts.upkeep, job)
    recalled = frozenset(kind for notice in year.notices for kind in notice.kinds)
    gone = (known.component for known in (register.disposed() if recalled else ()))
    return check_job(
        replace(
            job,
            members=with_measures(job.members, year.measured),
            components=(*components, *(one for one in gone if one.kind in recalled)),
            builds=read_builds(register, components),
            upkeep=year,
            readings=read_readings(register, job.wash_room),
        )
    )


def read_department(register: Register) -> DepartmentFacts:
    """Return by which texts the department works, its rules, guides and wash room.

    Raises:
        BadInputError: it was never described.
    """
    life = register.thing(HERE)
    if life is None:
        raise BadInputError([Fault(place="department", message=MessageId("tasks.no_department"))])
    names = ("department", "guides", "wash_room", "riding", "upkeep")
    said = {name: life.facts[name] for name in names if name in life.facts}
    return decode(DepartmentFacts, json.dumps(said))


def _wash_room(register: Register, room: WashRoom) -> WashRoom:
    return replace(
        room,
        washers=(*room.washers, *_all(register, ItemKind.MACHINE, Washer)),
        sinks=(*room.sinks, *_all(register, ItemKind.SINK, Sink)),
        drying=(*room.drying, *_all(register, ItemKind.RACK, DryingPlace)),
    )


def _all(register: Register, kind: ItemKind, form: type[T]) -> tuple[T, ...]:
    lives = register.things(kind)
    made = (thing_of(kind, name_of(life.item), life.facts) for life in lives)
    return tuple(one for one in made if isinstance(one, form))


def _calls(register: Register, components: Sequence[Component]) -> Iterator[Call]:
    soiled = frozenset(one.id for one in components if _is_soiled(one))
    here = frozenset(one.id for one in components)
    for life in register.things(ItemKind.CALL):
        call = call_of({**life.facts, "id": name_of(life.item)})
        left = _left(call, soiled, here)
        if any(person.worn for person in left.people) or left.remarks:
            yield left


def _left(call: Call, soiled: frozenset[ComponentId], here: frozenset[ComponentId]) -> Call:
    """Return a call with the gear alone that is still soiled from it."""
    people = tuple(
        replace(person, worn=tuple(piece for piece in person.worn or () if piece in soiled))
        for person in call.people
    )
    remarks = tuple(one for one in call.remarks if one.component in soiled)
    evidence = tuple(piece for piece in call.evidence if piece in here)
    return replace(call, people=people, remarks=remarks, evidence=evidence)


def _is_soiled(component: Component) -> bool:
    state = component.state
    return state.stage in _STILL_SOILED or state.custody is Custody.EVIDENCE
