"""A whole act was a mistake: how is it taken back as one, without a line being lost?

Every entry of it is withdrawn by a correction, all at once; the entries stay and are shown with
what withdrew them.
"""

from collections.abc import Iterable, Sequence

from sootline.core.basis import BadInputError, Fault, ItemId, MemberId, MessageId
from sootline.core.ledger import Appended, Draft, Entry, EntryKind, write_payload
from sootline.core.ledger.acts import Act
from sootline.core.ledger.correcting import Amended, settle
from sootline.core.ledger.facts import read_facts
from sootline.tasks.recording import Book, required


def undo_act(book: Book, act: Act, key: str, *, of: MemberId, reason: str) -> tuple[Appended, ...]:
    """Withdraw everything one person recorded as one act.

    Args:
        key: the act's, as it was said when it was recorded.
        of: who recorded it.

    Raises:
        BadInputError: there is no such act, it was taken back before, no reason is given, or
            something happened since to what it is about: each thing is listed.
    """
    required(reason=reason)
    found = book.ledger.of_act(of, key)
    if not found:
        raise BadInputError([_fault("key", "tasks.undo.no_act", key=key)])
    before = {one.read_header().corrects for one in book.ledger.of_act(act.actor, act.idem)}
    if before:  # asked for before
        again = [one for one in found if one.seq in before]
        return withdraw_all(book, act, again, reason=reason)
    later = list(book.ledger.entries(found[0].seq - 1))
    settled = settle(read_facts(later))
    counted = {one.written.seq for one in settled if one.amended is not Amended.WITHDRAWN}
    standing = [one for one in found if one.seq in counted]
    if not standing:
        raise BadInputError([_fault("key", "tasks.undo.undone", key=key)])
    mine = {one.seq for one in found}
    used = _used(later, {one.read_header().item for one in found}, mine, counted)
    if used:
        raise BadInputError([_fault(thing, "tasks.undo.used", seq=str(seq)) for thing, seq in used])
    return withdraw_all(book, act, standing, reason=reason)


def withdraw_all(
    book: Book, act: Act, found: Sequence[Entry], *, reason: str
) -> tuple[Appended, ...]:
    """Withdraw entries by corrections of one act: all of them, or none.

    The last one goes first, as a hand takes them back.
    """
    return book.ledger.append([_withdrawal(act, one, reason) for one in reversed(found)])


def _withdrawal(act: Act, target: Entry, reason: str) -> Draft:
    return Draft(
        idem=f"{act.idem}/entry-{target.seq}",
        item=target.read_header().item,
        kind=EntryKind.CORRECTED,
        occurred=act.occurred,
        device=act.device,
        actor=act.actor,
        established=act.established,
        payload=write_payload(reason=reason, withdrawn=True),
        corrects=target.seq,
    )


def _used(
    later: Iterable[Entry], things: set[ItemId], mine: set[int], counted: set[int]
) -> list[tuple[ItemId, int]]:
    """Return what happened since to the things of an act, and was not taken back itself."""
    return [
        (header.item, entry.seq)
        for entry, header in ((one, one.read_header()) for one in later)
        if header.item in things
        and entry.seq not in mine
        and entry.seq in counted
        and header.kind is not EntryKind.CORRECTED
    ]


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))
