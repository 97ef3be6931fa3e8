"""What does the person at the washer need to know of each load, and of what is washed by hand?"""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from sootline.core.basis import (
    ComponentId,
    ContaminantId,
    Finding,
    Limit,
    MessageId,
    Moment,
    Quantity,
)
from sootline.core.care.decisions import Decision, Separation
from sootline.core.gear import Act, Component, WashMethod
from sootline.core.job.jobs import Job
from sootline.core.laundry.rooms import Company
from sootline.core.washplan.worksheet import HandSheet, LoadSheet, Worksheet
from sootline.tasks.hazards import WetBag, hazards_on, list_wet_bags
from sootline.tasks.plan_wash import PlanResult

_BATH = "wash.bath_temp"


@dataclass(frozen=True, kw_only=True)
class Contents:
    """What goes in, and what follows from that.

    Args:
        water: the strictest limit of anything in it; None when no source gives a number.
        water_unknown: how many components have no number from any source.
        never: what any label, maker, edition or policy of it forbids.
        preparation: what to do before, in order, each once.
        drying: the places it dries at, with the components for each.
        hazards: what may be on it.
        first: what to do before anybody touches it.
    """

    components: tuple[Component, ...]
    water: Limit | None
    water_unknown: int
    never: tuple[Act, ...]
    preparation: tuple[MessageId, ...]
    drying: tuple[tuple[str, tuple[ComponentId, ...]], ...]
    hazards: tuple[ContaminantId, ...]
    first: tuple[Finding, ...]
    cautions: tuple[Finding, ...]
    wet_bags: tuple[WetBag, ...]


@dataclass(frozen=True, kw_only=True)
class LoadCard:
    """One load on one card.

    Args:
        of: how many cards there are.
        where: the washer, or the sink or bench.
        programme, mass, weight_limit: None for what is washed by hand.
        unweighed: how many were counted as the heaviest of their kind.
        start: when work on it likely begins.
    """

    number: int
    of: int
    where: str
    method: WashMethod
    company: Company
    separation: Separation
    programme: str | None = None
    mass: Quantity | None = None
    weight_limit: Quantity | None = None
    unweighed: int = 0
    bagged: tuple[ComponentId, ...] = ()
    start: Moment
    contents: Contents


@dataclass(frozen=True, kw_only=True)
class _Lookup:
    """What a card is put together from."""

    job: Job
    start: dt.datetime
    components: Mapping[ComponentId, Component]
    decisions: Mapping[ComponentId, Decision]
    sheet: Worksheet
    companies: Mapping[ComponentId, Company]
    separations: Mapping[ComponentId, Separation]

    def of(self, names: Iterable[ComponentId]) -> list[Decision]:
        """Return the decisions on some components."""
        return [self.decisions[name] for name in names]

    def at(self, minute: int) -> dt.datetime:
        """Return the moment of a minute of the plan."""
        return self.start + dt.timedelta(minutes=minute)


def list_load_cards(job: Job, result: PlanResult) -> tuple[LoadCard, ...]:
    """Return one card per load in the order of the plan, then one per place and way by hand."""
    sorts = result.loads.sorting.sorts
    lookup = _Lookup(
        job=job,
        start=result.aim.start,
        components={component.id: component for component in job.components},
        decisions={one.component: one for one in result.loads.decided.decisions},
        sheet=result.worksheet,
        companies={name: sort.company for sort in sorts for name in sort.components},
        separations={name: sort.separation for sort in sorts for name in sort.components},
    )
    by_hand = list(_batches(result.worksheet.hand, lookup))
    total = len(result.worksheet.loads) + len(by_hand)
    cards = [_load_card(load, total, lookup) for load in result.worksheet.loads]
    cards += [
        _hand_card(number, total, batch, lookup)
        for number, batch in enumerate(by_hand, start=len(cards) + 1)
    ]
    return tuple(cards)


def _batches(hand: Iterable[HandSheet], lookup: _Lookup) -> Iterator[list[HandSheet]]:
    """Put together what is washed by hand at one place in one way, apart from the same things."""
    batches: dict[tuple[object, ...], list[HandSheet]] = defaultdict(list)
    for sheet in sorted(hand, key=lambda one: one.start.likely):
        apart = lookup.separations[sheet.components[0]]
        batches[sheet.station, sheet.method, apart].append(sheet)
    yield from batches.values()


def _load_card(load: LoadSheet, total: int, lookup: _Lookup) -> LoadCard:
    return LoadCard(
        number=load.number,
        of=total,
        where=load.washer,
        method=load.sort.method,
        company=load.sort.company,
        separation=load.sort.separation,
        programme=load.programme,
        mass=load.mass,
        weight_limit=load.limit,
        unweighed=len(load.unweighed),
        bagged=load.bagged,
        start=lookup.at(load.start.likely),
        contents=_contents(load.components, lookup),
    )


def _hand_card(number: int, total: int, batch: list[HandSheet], lookup: _Lookup) -> LoadCard:
    names = tuple(name for sheet in batch for name in sheet.components)
    return LoadCard(
        number=number,
        of=total,
        where=batch[0].station,
        method=batch[0].method,
        company=lookup.companies[names[0]],
        separation=lookup.separations[names[0]],
        start=lookup.at(batch[0].start.likely),
        contents=_contents(names, lookup),
    )


def _contents(names: Sequence[ComponentId], lookup: _Lookup) -> Contents:
    decisions = lookup.of(names)
    components = tuple(lookup.components[name] for name in names)
    waters = [one.terms.limit(_BATH).binding for one in decisions]
    known = [binding[0] for binding in waters if binding]
    owners = [component.owner for component in components if component.owner]
    return Contents(
        components=components,
        water=_strictest(known),
        water_unknown=len(waters) - len(known),
        never=tuple(dict.fromkeys(ban.act for one in decisions for ban in one.terms.bans)),
        preparation=_in_order([[step.act for step in one.preparation] for one in decisions]),
        drying=_drying(names, lookup),
        hazards=hazards_on(decisions),
        first=tuple(dict.fromkeys(first for one in decisions for first in one.first)),
        cautions=tuple(dict.fromkeys(caution for one in decisions for caution in one.cautions)),
        wet_bags=list_wet_bags(lookup.job, owners),
    )


def _strictest(limits: Iterable[Limit]) -> Limit | None:
    strictest: Limit | None = None
    for limit in limits:
        if strictest is None or limit.stricter(strictest):
            strictest = limit
    return strictest


def _in_order(lists: Iterable[Sequence[MessageId]]) -> tuple[MessageId, ...]:
    """Join lists of steps into one, each step after the one it follows in its own list."""
    joined: list[MessageId] = []
    for steps in lists:
        place = 0
        for step in steps:
            if step not in joined:
                joined.insert(place, step)
            place = joined.index(step) + 1
    return tuple(joined)


def _drying(
    names: Iterable[ComponentId], lookup: _Lookup
) -> tuple[tuple[str, tuple[ComponentId, ...]], ...]:
    wanted = frozenset(names)
    places: dict[str, list[ComponentId]] = defaultdict(list)
    for sheet in lookup.sheet.drying:
        places[sheet.where] += [name for name in sheet.components if name in wanted]
    return tuple((place, tuple(there)) for place, there in places.items() if there)
