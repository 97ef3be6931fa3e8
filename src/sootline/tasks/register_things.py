"""Members, places, bags, machines, racks, sinks, supplies and contractors come into the record."""

import json
from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.codec import encode
from sootline.core.job.things import FORMS, DepartmentFacts, facts_of, thing_of
from sootline.core.ledger import Appended, Draft, EntryKind, ItemKind, item
from sootline.core.ledger.acts import Act
from sootline.core.ledger.canonical import Json
from sootline.tasks.recording import Book, required

# The department this record belongs to; there is one.
HERE = item(ItemKind.DEPARTMENT, "here")
_KIND_OF = MappingProxyType({form: kind for kind, form in FORMS.items()})


def register_things(
    book: Book, act: Act, things: Sequence[object], *, station: str = ""
) -> tuple[Appended, ...]:
    """Register things of any of the forms there are; all of them, or none.

    Args:
        things: a Member, Washer, Sink, DryingPlace, Place, Bag, Supply or Contractor each.
        station: to which they belong; blank is not said.

    Raises:
        BadInputError: one is registered already, or there is none.
    """
    return book.ledger.append(draft_things(book, act, things, station=station))


def draft_things(
    book: Book, act: Act, things: Sequence[object], *, station: str = ""
) -> list[Draft]:
    """Return the entries that register things; arguments and faults as there."""
    if not things:
        raise BadInputError([Fault(place="things", message=MessageId("tasks.nothing"))])
    extra = {"station": station} if station else {}
    drafts = [_draft(act, thing, extra) for thing in things]
    if not book.answered(act, drafts[0]):
        faults = tuple(_registered(book, drafts))
        if faults:
            raise BadInputError(faults)
    return drafts


def change_thing(
    book: Book, act: Act, kind: ItemKind, identity: str, changes: Mapping[str, Json], *, by: str
) -> tuple[Appended, ...]:
    """Change what the register says of a thing.

    Args:
        changes: fields as a job file writes them; None takes a fact back.

    Raises:
        BadInputError: the record does not know it, or what it would be does not fit its form.
    """
    required(by=by)
    thing = item(kind, identity)
    life = book.register.thing(thing)
    if life is None:
        raise BadInputError([_fault(identity, "tasks.no_such_thing")])
    thing_of(kind, identity, {**life.facts, **changes})
    said = {**changes, "changed_by": by}
    return book.ledger.append([act.entry(EntryKind.FACTS_CHANGED, thing, said)])


def describe_department(book: Book, act: Act, facts: DepartmentFacts) -> tuple[Appended, ...]:
    """Write down by which texts the department works, its rules, guides and wash room."""
    said = json.loads(encode(DepartmentFacts, facts, indent=None))
    return book.ledger.append([act.entry(EntryKind.FACTS_CHANGED, HERE, said)])


def _draft(act: Act, thing: object, extra: Mapping[str, Json]) -> Draft:
    kind = _KIND_OF[type(thing)]
    identity = str(getattr(thing, "id", ""))
    return act.entry(EntryKind.REGISTERED, item(kind, identity), {**facts_of(thing), **extra})


def _registered(book: Book, drafts: Iterable[Draft]) -> list[Fault]:
    return [
        _fault(draft.item, "tasks.registered_already")
        for draft in drafts
        if book.registered(draft.item)
    ]


def _fault(identity: str, message: str) -> Fault:
    return Fault(place="things", message=MessageId(message), values=(("id", identity),))
