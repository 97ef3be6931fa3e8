"""A call is written down: who was where, in what? Facts are taken as they are said."""

import json
from collections.abc import Iterator
from dataclasses import replace

from sootline.core.basis import BadInputError, ComponentId, Fault, ItemId, MemberId, MessageId
from sootline.core.exposure import Call
from sootline.core.job.codec import decode, encode
from sootline.core.ledger import Appended, Draft, EntryKind, ItemKind, canonical, component, item
from sootline.core.ledger.acts import Act
from sootline.tasks.recording import Book, also

_Worn = dict[MemberId, tuple[ComponentId, ...]]


def record_call(book: Book, act: Act, call: Call) -> tuple[Appended, ...]:
    """Record a call, and that every component named in it was worn.

    Wear is a fact, also of gear on hold or wet: it is recorded without blame and nothing is
    refused for it. "Everything the person owns" is written out, so that it stays true when gear
    changes hands.

    Raises:
        BadInputError: a member or a component in it is not known, or the call is recorded already.
    """
    thing = item(ItemKind.CALL, call.id)
    answered = book.ledger.known(act.actor, f"{act.idem}/{thing}")
    spelled = _spelled(call, _as_recorded(book, thing) if answered else _as_owned(book, call))
    if not answered:
        faults = tuple(_faults(book, spelled, thing))
        if faults:
            raise BadInputError(faults)
    said = json.loads(encode(Call, spelled, indent=None))
    return book.ledger.append(
        [act.entry(EntryKind.CALL_RECORDED, thing, said), *_worn(act, spelled)]
    )


def call_of(facts: object) -> Call:
    """Return the call of what the record holds of it.

    Raises:
        BadInputError: the facts make no call.
    """
    return decode(Call, canonical(facts))


def _spelled(call: Call, worn: _Worn) -> Call:
    """Write out what was worn by those of whom nobody said it."""
    people = tuple(
        replace(one, worn=worn.get(one.member, ())) if one.worn is None else one
        for one in call.people
    )
    return replace(call, people=people)


def _as_owned(book: Book, call: Call) -> _Worn:
    """Return what each person owns now, and nothing that has been given up."""
    found: _Worn = {}
    for person in call.people:
        own = [known.component for known in book.register.components_of(person.member)]
        found[person.member] = tuple(one.id for one in own if one.owner == person.member)
    return found


def _as_recorded(book: Book, thing: ItemId) -> _Worn:
    life = book.register.thing(thing)
    people = call_of(life.facts).people if life else ()
    return {one.member: one.worn or () for one in people}


def _worn(act: Act, call: Call) -> Iterator[Draft]:
    """Draft one entry for each component, for each who wore it; a piece may be handed on."""
    for person in call.people:
        for piece in person.worn or ():
            said = {"member": person.member, "call": call.id}
            yield also(act, f"worn-{person.member}", EntryKind.WORN, component(piece), said)


def _faults(book: Book, call: Call, thing: ItemId) -> Iterator[Fault]:
    if book.registered(thing):
        yield _fault("id", "tasks.registered_already", call.id)
    for at, person in enumerate(call.people):
        place = f"people[{at}]"
        if not book.registered(item(ItemKind.MEMBER, person.member)):
            yield _fault(f"{place}.member", "tasks.no_such_member", person.member)
        for piece in person.worn or ():
            if book.register.component(piece) is None:
                yield _fault(f"{place}.worn", "tasks.no_such_component", piece)


def _fault(place: str, message: str, identity: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=(("id", identity),))
