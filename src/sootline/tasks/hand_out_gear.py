"""Gear goes to a member or comes back, goes on loan or comes home: may it, as it stands?"""

from collections.abc import Mapping, Sequence

from sootline.core.basis import BadInputError, ComponentId, Fault, MemberId, MessageId
from sootline.core.gear import Event, EventKind
from sootline.core.ledger import Appended, EntryKind, ItemKind, component, item
from sootline.core.ledger.acts import Act
from sootline.tasks.recording import Book, refuse_unless, required


def issue(
    book: Book, act: Act, pieces: Sequence[ComponentId], *, holder: MemberId
) -> tuple[Appended, ...]:
    """Issue components to a member: all of them, or none.

    Raises:
        RefusedError: with every one that is on hold, not checked, or out.
        BadInputError: the record does not know a component or the member.
    """
    if not book.registered(item(ItemKind.MEMBER, holder)):
        values = (("id", holder),)
        fault = Fault(place="holder", message=MessageId("tasks.no_such_member"), values=values)
        raise BadInputError([fault])
    event = Event(kind=EventKind.ISSUED, holder=holder)
    said = {"holder": holder}
    return _each(book, act, pieces, kind=EntryKind.ISSUED, event=event, said=said)


def return_soiled(
    book: Book, act: Act, pieces: Sequence[ComponentId], *, by: str
) -> tuple[Appended, ...]:
    """Take components back for washing.

    Raises:
        RefusedError: with every one that cannot come back from where it is.
        BadInputError: the record does not know one, or nobody is named.
    """
    required(by=by)
    event = Event(kind=EventKind.RETURNED_SOILED, by=by)
    return _each(book, act, pieces, kind=EntryKind.RETURNED, event=event, said={"by": by})


def return_to_rack(
    book: Book, act: Act, pieces: Sequence[ComponentId], *, by: str, place: str
) -> tuple[Appended, ...]:
    """Take checked components that nobody wore since back onto the spare rack.

    Raises:
        RefusedError: with every one that is not checked, not whole or on hold.
        BadInputError: the record does not know one, or nobody or no place is named.
    """
    required(by=by, place=place)
    event = Event(kind=EventKind.BACK_ON_SPARE_RACK, by=by)
    said = {"by": by, "place": place}
    return _each(book, act, pieces, kind=EntryKind.BACK_ON_SPARE_RACK, event=event, said=said)


def lend(
    book: Book, act: Act, pieces: Sequence[ComponentId], *, holder: str, by: str
) -> tuple[Appended, ...]:
    """Lend components to somebody outside; the entry's own time is the loan's first day.

    Raises:
        RefusedError: with every one that is on hold or not checked.
        BadInputError: the record does not know one, or nobody is named.
    """
    required(holder=holder, by=by)
    event = Event(kind=EventKind.LENT, by=by, holder=MemberId(holder))
    said = {"holder": holder, "by": by}
    return _each(book, act, pieces, kind=EntryKind.LENT, event=event, said=said)


def take_back(
    book: Book, act: Act, pieces: Sequence[ComponentId], *, by: str
) -> tuple[Appended, ...]:
    """Take lent components back: nobody knows where they were, so each is looked over.

    Raises:
        RefusedError: with every one that was not lent.
        BadInputError: the record does not know one, or nobody is named.
    """
    required(by=by)
    event = Event(kind=EventKind.CAME_BACK, by=by)
    return _each(book, act, pieces, kind=EntryKind.CAME_BACK, event=event, said={"by": by})


def _each(
    book: Book,
    act: Act,
    pieces: Sequence[ComponentId],
    *,
    kind: EntryKind,
    event: Event,
    said: Mapping[str, str],
) -> tuple[Appended, ...]:
    chosen = tuple(dict.fromkeys(pieces))
    if not chosen:
        raise BadInputError([Fault(place="components", message=MessageId("tasks.nothing"))])
    known = book.known(*chosen)
    drafts = [act.entry(kind, component(piece), said) for piece in chosen]
    if not book.answered(act, drafts[0]):
        refuse_unless(known, [event])
    return book.record(drafts, known)
