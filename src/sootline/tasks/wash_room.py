"""Gear goes through the wash room: into a load, out of it, onto a rack. May it, step by step?"""

from collections.abc import Sequence

from sootline.core.basis import BadInputError, ComponentId, Fault, MessageId, PlaceId
from sootline.core.gear import Event, EventKind
from sootline.core.ledger import Appended, EntryKind, ItemKind, component, item
from sootline.core.ledger.acts import Act, start_load
from sootline.core.rulebook.contaminants import Level
from sootline.tasks.recording import Book, refuse_unless, required


def begin_load(
    book: Book,
    act: Act,
    load: str,
    pieces: Sequence[ComponentId],
    *,
    machine: str,
    by: str,
    level: Level,
) -> tuple[Appended, ...]:
    """Put components into a machine and start it: all of them, or none.

    Args:
        load: its number; one that stopped is started again under a number of its own.

    Raises:
        RefusedError: with every component that may not go in (a hold, not in the wash room).
        BadInputError: the number was used, nobody is named, or a component is not known.
    """
    required(load=load, machine=machine, by=by)
    known = book.known(*pieces)
    drafts = start_load(act, load, pieces, machine=machine, by=by, level=level.value)
    if not book.answered(act, drafts[0]):
        if book.register.thing(item(ItemKind.LOAD, load)) is not None:
            raise _refused("load", "tasks.load.number_used", load)
        event = Event(kind=EventKind.PUT_IN_WASHER, by=by, place=PlaceId(machine))
        refuse_unless(known, [event])
    return book.record(drafts, known)


def end_load(book: Book, act: Act, load: str, *, by: str, said: str = "") -> tuple[Appended, ...]:
    """Record that a load ran to its end.

    Raises:
        BadInputError: no such load was started, it ended already, or nobody is named.
    """
    return _load_over(book, act, load, EntryKind.LOAD_ENDED, by=by, said=said)


def fail_load(book: Book, act: Act, load: str, *, by: str, said: str) -> tuple[Appended, ...]:
    """Record that a load stopped before its end: all its pieces still need washing.

    Raises:
        BadInputError: no such load was started, it ended already, or nobody or no reason is named.
    """
    required(said=said)
    return _load_over(book, act, load, EntryKind.LOAD_FAILED, by=by, said=said)


def wash_by_hand(
    book: Book, act: Act, pieces: Sequence[ComponentId], *, by: str, level: Level
) -> tuple[Appended, ...]:
    """Record that components were washed by hand.

    Raises:
        RefusedError: with every one that may not be washed as it stands.
        BadInputError: a component is not known, or nobody is named.
    """
    said = {"by": by, "level": level.value}
    return _each(book, act, pieces, event=EventKind.WASHED_BY_HAND, said=said)


def hang(
    book: Book, act: Act, pieces: Sequence[ComponentId], *, by: str, place: str
) -> tuple[Appended, ...]:
    """Record that washed components hang or lie to dry.

    Raises:
        RefusedError: with every one that is not washed, or held.
        BadInputError: a component is not known, or nobody or no place is named.
    """
    said = {"by": by, "place": place}
    return _each(book, act, pieces, event=EventKind.HUNG, said=said)


def take_down(
    book: Book, act: Act, pieces: Sequence[ComponentId], *, by: str
) -> tuple[Appended, ...]:
    """Record that components were taken from drying, to be felt by somebody.

    Raises:
        RefusedError: with every one that was not drying, or is held.
        BadInputError: a component is not known, or nobody is named.
    """
    return _each(book, act, pieces, event=EventKind.DRIED, said={"by": by})


def _load_over(
    book: Book, act: Act, load: str, kind: EntryKind, *, by: str, said: str
) -> tuple[Appended, ...]:
    required(load=load, by=by)
    thing = item(ItemKind.LOAD, load)
    draft = act.entry(kind, thing, {"by": by} | ({"said": said} if said else {}))
    if not book.answered(act, draft):
        life = book.register.thing(thing)
        if life is None:
            raise _refused("load", "tasks.load.not_started", load)
        if "load-ended" in life.facts or "load-failed" in life.facts:
            raise _refused("load", "tasks.load.over", load)
    return book.ledger.append([draft])


def _each(
    book: Book,
    act: Act,
    pieces: Sequence[ComponentId],
    *,
    event: EventKind,
    said: dict[str, str],
) -> tuple[Appended, ...]:
    required(**said)
    chosen = tuple(dict.fromkeys(pieces))
    if not chosen:
        raise BadInputError([Fault(place="components", message=MessageId("tasks.nothing"))])
    known = book.known(*chosen)
    drafts = [act.entry(EntryKind(event.value), component(piece), said) for piece in chosen]
    if not book.answered(act, drafts[0]):
        refuse_unless(known, [Event(kind=event, by=said["by"])])
    return book.record(drafts, known)


def _refused(place: str, message: str, identity: str) -> BadInputError:
    values = (("id", identity),)
    return BadInputError([Fault(place=place, message=MessageId(message), values=values)])
