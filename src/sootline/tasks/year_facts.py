"""Where among the facts of the year does a new one go, and whose place does it take?"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Any, TypeVar

from sootline.core.basis import BadInputError, DateSpan, Fault, MemberId, MessageId
from sootline.core.job.jobs import Member
from sootline.core.upkeep.contractor import Invoice, Manifest, Receipt
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.core.upkeep.inspections import Inspection, InspectionDay
from sootline.core.upkeep.people import Changed, Measured
from sootline.core.upkeep.recalls import Action, Notice, NoticeClosed, Sighting
from sootline.core.upkeep.repairs import Choice, Repair
from sootline.core.upkeep.stores import LogEntry, Supply
from sootline.tasks.year_deeds import Confirmed, Fact

T = TypeVar("T")
_LISTS: Mapping[type[Any], str] = MappingProxyType(
    {
        Inspection: "inspections",
        InspectionDay: "inspection_days",
        Repair: "repairs",
        Manifest: "manifests",
        Receipt: "receipts",
        Invoice: "invoices",
        Notice: "notices",
        Sighting: "sightings",
        Action: "actions",
        NoticeClosed: "closed",
        Measured: "measured",
        Changed: "changed",
        Supply: "supplies",
        LogEntry: "machine_log",
    }
)


def with_fact(facts: UpkeepFacts, fact: Fact) -> UpkeepFacts:
    """Return the facts of the year with one more.

    Raises:
        BadInputError: a shipment or a notice of this name was written down before, or the
            delivery a person speaks of is not there.
    """
    if isinstance(fact, Confirmed):
        return replace(facts, receipts=_with_word(facts.receipts, fact))
    field = _LISTS[type(fact)]
    there: tuple[Any, ...] = getattr(facts, field)
    put: tuple[Any, ...]
    if isinstance(fact, Repair):
        put = _with_repair(there, fact)
    elif isinstance(fact, InspectionDay | Supply):
        put = _put(there, fact)
    else:
        if isinstance(fact, Manifest | Notice):
            _new(fact.id, [one.id for one in there])
        put = (*there, fact)
    changes: dict[str, Any] = {field: put}
    return replace(facts, **changes)


def confirmed(word: Confirmed) -> Receipt:
    """Return a delivery in which a named person's word stands beside the piece."""
    said = replace(word.receipt.pieces[word.line], confirmed=word.component, confirmed_by=word.by)
    pieces = tuple(
        said if place == word.line else piece for place, piece in enumerate(word.receipt.pieces)
    )
    return replace(word.receipt, pieces=pieces)


def list_facts(facts: UpkeepFacts) -> tuple[Fact, ...]:
    """List facts of the year one by one, each after those it names."""
    return (
        *facts.notices,
        *facts.sightings,
        *facts.actions,
        *facts.closed,
        *facts.inspection_days,
        *facts.inspections,
        *facts.repairs,
        *facts.manifests,
        *facts.receipts,
        *facts.invoices,
        *facts.measured,
        *facts.changed,
        *facts.supplies,
        *facts.machine_log,
    )


def with_measures(members: tuple[Member, ...], measured: Iterable[Measured]) -> tuple[Member, ...]:
    """Return the members with what was measured on them, the last word on each dimension."""
    said: dict[MemberId, dict[str, str]] = {}
    for one in measured:
        said.setdefault(one.member, {}).update(one.measures)
    return tuple(
        replace(one, measures=tuple({**dict(one.measures), **said[one.id]}.items()))
        if said.get(one.id)
        else one
        for one in members
    )


def is_over(repair: Repair) -> bool:
    """Whether nothing of a repair is still to come."""
    given_up = repair.decided is not None and repair.decided.choice is not Choice.REPAIR
    return given_up or repair.back != DateSpan()


def _put(things: tuple[T, ...], thing: T) -> tuple[T, ...]:
    """Put a thing in the place of the one of its name, or at the end."""
    if _name(thing) not in [_name(one) for one in things]:
        return (*things, thing)
    return tuple(thing if _name(one) == _name(thing) else one for one in things)


def _name(thing: object) -> object:
    return (thing.kind, thing.on) if isinstance(thing, InspectionDay) else getattr(thing, "id", "")


def _with_repair(repairs: tuple[Repair, ...], repair: Repair) -> tuple[Repair, ...]:
    going = [
        place
        for place, one in enumerate(repairs)
        if one.component == repair.component and not is_over(one)
    ]
    if not going:
        return (*repairs, repair)
    return tuple(repair if place == going[-1] else one for place, one in enumerate(repairs))


def _with_word(receipts: tuple[Receipt, ...], word: Confirmed) -> tuple[Receipt, ...]:
    if word.receipt not in receipts or not 0 <= word.line < len(word.receipt.pieces):
        raise BadInputError([_fault("tasks.no_such_thing", word.receipt.manifest)])
    said = confirmed(word)
    return tuple(said if one == word.receipt else one for one in receipts)


def _new(name: str, names: list[str]) -> None:
    if name in names:
        raise BadInputError([_fault("tasks.registered_already", name)])


def _fault(message: str, name: str) -> Fault:
    return Fault(place=name, message=MessageId(message), values=(("id", name),))
