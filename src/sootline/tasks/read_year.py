"""Which facts of the year does the record hold, as far as what they speak of is there?

A fact stays in the record whatever becomes of what it names; in a job it stands while that is
there: a delivery whose shipment was taken back is none of this job's.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any, cast

from sootline.core.basis import BadInputError, ComponentId, SetId
from sootline.core.gear import Component
from sootline.core.job.codec import decode
from sootline.core.job.jobs import Job
from sootline.core.ledger import ItemKind, canonical
from sootline.core.ledger.things import ThingLife
from sootline.core.rebuild import Built
from sootline.core.upkeep.contractor import Invoice, Manifest, Receipt
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.core.upkeep.inspections import Inspection, InspectionDay
from sootline.core.upkeep.people import Changed, Measured
from sootline.core.upkeep.recalls import Action, Notice, NoticeClosed, Sighting
from sootline.core.upkeep.references import (
    named_components,
    named_members,
    named_notices,
    named_shipments,
)
from sootline.core.upkeep.repairs import Repair
from sootline.core.upkeep.stores import LogEntry, Supply
from sootline.tasks.ports import Register
from sootline.tasks.year_deeds import Confirmed, Fact
from sootline.tasks.year_facts import with_fact

# Parts that were fitted together; they say into which shell a liner went.
BUILT = "built"
# Under which word each form of fact is written down.
FACT_FORMS: Mapping[str, type[Any]] = MappingProxyType(
    {
        "inspection": Inspection,
        "inspection-day": InspectionDay,
        "repair": Repair,
        "shipment": Manifest,
        "delivery": Receipt,
        "confirmed": Confirmed,
        "invoice": Invoice,
        "notice": Notice,
        "sighting": Sighting,
        "action": Action,
        "notice-closed": NoticeClosed,
        "measured": Measured,
        "changed": Changed,
        "supply": Supply,
        "machine-log": LogEntry,
    }
)


@dataclass(frozen=True, kw_only=True)
class _Here:
    components: frozenset[str]
    members: frozenset[str]


def read_year(register: Register, before: UpkeepFacts, job: Job) -> UpkeepFacts:
    """Return the facts of the year in the order they were written down.

    Args:
        before: what the department said of the time before the record.
        job: with the components and members that are there.
    """
    here = _Here(
        components=frozenset(one.id for one in job.components),
        members=frozenset(one.id for one in job.members),
    )
    facts = before
    for life in _in_order(register):
        if life.facts["form"] == BUILT:
            continue
        fact = _whole(_fact_of(life), here)
        try:
            after = with_fact(facts, fact)
        except BadInputError:
            continue
        facts = after if _holds(after, facts, here) else facts
    return facts


def read_builds(register: Register, components: Iterable[Component]) -> tuple[Built, ...]:
    """Return which parts of different sets are together now, as they were fitted last."""
    sets = {one.id: one.set for one in components}
    latest: dict[ComponentId, Built] = {}
    for life in _in_order(register):
        if life.facts["form"] == BUILT:
            built = decode(Built, canonical(life.facts["fact"]))
            latest |= dict.fromkeys(built.parts, built)
    whole = (one for one in dict.fromkeys(latest.values()) if _is_whole(one, latest, sets))
    return tuple(one for one in whole if len({sets[part] for part in one.parts}) > 1)


def _is_whole(
    built: Built, latest: Mapping[ComponentId, Built], sets: Mapping[ComponentId, SetId | None]
) -> bool:
    """Whether every part is here and still where this build put it."""
    return all(part in sets and latest[part] == built for part in built.parts)


def _in_order(register: Register) -> list[ThingLife]:
    return sorted(register.things(ItemKind.YEAR_FACT), key=lambda one: one.last_seq)


def _fact_of(life: ThingLife) -> Fact:
    form = FACT_FORMS[str(life.facts["form"])]
    return cast("Fact", decode(form, canonical(life.facts["fact"])))


def _whole(fact: Fact, here: _Here) -> Fact:
    """Leave out of a list the components that are not there."""
    if isinstance(fact, Manifest):
        pieces = tuple(one for one in fact.pieces if one.component in here.components)
        hazards = tuple(
            replace(one, components=tuple(c for c in one.components if c in here.components))
            for one in fact.hazards
        )
        return replace(fact, pieces=pieces, hazards=hazards)
    if isinstance(fact, InspectionDay):
        planned = tuple(one for one in fact.planned if one in here.components)
        absent = tuple(one for one in fact.absent if one.component in here.components)
        return replace(fact, planned=planned, absent=absent)
    return fact


def _holds(after: UpkeepFacts, before: UpkeepFacts, here: _Here) -> bool:
    """Whether everything the newest fact names is there; the others were looked at before."""
    shipments = frozenset(one.id for one in after.manifests)
    notices = frozenset(one.id for one in after.notices)
    every = (
        (named_components(after), here.components, named_components(before)),
        (named_members(after), here.members, named_members(before)),
        (named_shipments(after), shipments, named_shipments(before)),
        (named_notices(after), notices, named_notices(before)),
    )
    return all(
        not set(_names(after_names)) - there - set(_names(before_names))
        for after_names, there, before_names in every
    )


def _names(named: Iterable[tuple[str, str]]) -> Iterator[str]:
    return (name for _, name in named)
