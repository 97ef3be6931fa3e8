"""In which form is a thing registered, kind by kind? The same forms a job is made of."""

import json
from collections.abc import Mapping
from dataclasses import MISSING, dataclass, fields
from decimal import Decimal
from types import MappingProxyType
from typing import Any

from sootline.core.basis import BadInputError, BagId, DateSpan, Fault, MessageId, PlaceId
from sootline.core.gear.labels import Guide
from sootline.core.job.codec import decode, encode
from sootline.core.job.jobs import Department, Member
from sootline.core.laundry.rooms import DryingPlace, Sink, Washer, WashRoom
from sootline.core.ledger import ItemKind
from sootline.core.ledger.canonical import Json
from sootline.core.riding import RidingFacts
from sootline.core.upkeep.facts import UpkeepFacts


@dataclass(frozen=True, kw_only=True)
class Place:
    """A station, a room, a locker, a hook.

    Args:
        within: the place it is in; None is a place by itself, such as a station.
        of: whose it is, of a locker or a hook.
    """

    id: PlaceId
    title: str = ""
    within: PlaceId | None = None
    of: str | None = None


@dataclass(frozen=True, kw_only=True)
class Bag:
    """A numbered bag for soiled gear.

    Args:
        since: in use since; a bag ages.
    """

    id: BagId
    place: PlaceId | None = None
    since: DateSpan = DateSpan()


@dataclass(frozen=True, kw_only=True)
class Supply:
    """Something the wash room uses up.

    Args:
        minimum: below so much it must be ordered, in its own unit.
        stock: how much there is, as last counted.
        expires: the first day on which it may not be used.
    """

    id: str
    title: str = ""
    unit: str = ""
    minimum: Decimal | None = None
    stock: Decimal | None = None
    expires: DateSpan = DateSpan()


@dataclass(frozen=True, kw_only=True)
class Contractor:
    """Somebody outside who washes, inspects or mends.

    Args:
        does: what they are used for ("cleaning", "repair").
        verified: what they showed for it, and until when it holds.
    """

    id: str
    title: str = ""
    does: tuple[str, ...] = ()
    verified: str = ""
    until: DateSpan = DateSpan()


@dataclass(frozen=True, kw_only=True)
class DepartmentFacts:
    """What a department says of itself, beyond people, gear and machines one by one.

    Args:
        wash_room: washers, sinks and drying places stand in it or are registered one by one.
        upkeep: who is entitled to what, routines, lead times, and what came before the record.
    """

    department: Department
    guides: tuple[Guide, ...] = ()
    wash_room: WashRoom = WashRoom()
    riding: RidingFacts = RidingFacts()
    upkeep: UpkeepFacts = UpkeepFacts()


FORMS: Mapping[ItemKind, type[Any]] = MappingProxyType(
    {
        ItemKind.MEMBER: Member,
        ItemKind.MACHINE: Washer,
        ItemKind.SINK: Sink,
        ItemKind.RACK: DryingPlace,
        ItemKind.PLACE: Place,
        ItemKind.BAG: Bag,
        ItemKind.SUPPLY: Supply,
        ItemKind.CONTRACTOR: Contractor,
    }
)


def thing_of(kind: ItemKind, identity: str, facts: Mapping[str, Json]) -> object:
    """Return a thing from what the record says of it; what its form does not hold is left out.

    Raises:
        BadInputError: its kind has no form of its own, or the facts do not fill it.
    """
    form = FORMS.get(kind)
    if form is None:
        values = (("kind", kind.value), ("known", ", ".join(FORMS)))
        raise BadInputError([Fault(place="kind", message=MessageId("job.no_form"), values=values)])
    said: dict[str, Json] = {"id": identity}
    for field in fields(form):
        value = facts.get(field.name)
        # A fact taken back is the form's usual one; where there is none, it is not known.
        if value is not None or (field.name in facts and field.default is MISSING):
            said.setdefault(field.name, value)
    return decode(form, json.dumps(said))


def facts_of(thing: object) -> dict[str, Json]:
    """Return what an entry says of a thing that is registered, without its name."""
    document: dict[str, Json] = json.loads(encode(type(thing), thing, indent=None))
    document.pop("id")
    return document
