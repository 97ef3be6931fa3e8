"""An entry is wrong, or must go: how is it put right without being changed?"""

from collections.abc import Mapping

from sootline.core.basis import BadInputError, Fault, ItemId, MessageId
from sootline.core.ledger import Appended, Draft, Entry, EntryKind, Second, write_payload
from sootline.core.ledger.acts import Act
from sootline.core.ledger.canonical import Json
from sootline.tasks.recording import Book, required


def correct(
    book: Book,
    act: Act,
    seq: int,
    *,
    reason: str,
    says: Mapping[str, Json] | None = None,
    about: ItemId | None = None,
    withdrawn: bool = False,
) -> tuple[Appended, ...]:
    """Put an entry right by a new one; the old one stays and is shown with it.

    Args:
        seq: the entry's place.
        says: what it says instead, in full; None leaves it.
        about: the thing it was about, where another was named by mistake.
        withdrawn: it never happened.

    Raises:
        BadInputError: there is no such entry, no reason, or nothing to put right.
    """
    required(reason=reason)
    if says is None and about is None and not withdrawn:
        raise BadInputError([Fault(place="says", message=MessageId("tasks.nothing"))])
    payload = {"reason": reason, "payload": says, "item": about, "withdrawn": withdrawn or None}
    target = _entry(book, seq)
    return book.ledger.append([_draft(act, EntryKind.CORRECTED, target, payload, corrects=seq)])


def erase(book: Book, act: Act, seq: int, *, second: Second, reason: str) -> tuple[Appended, ...]:
    """Take away what an entry says, for a reason in law; that it was there stays visible.

    Args:
        second: the other person, established for this very act.

    Raises:
        BadInputError: there is no such entry, no reason, the two are one person, or it is erased
            already.
    """
    required(reason=reason)
    target = _entry(book, seq)
    draft = _draft(act, EntryKind.ERASED, target, {"reason": reason}, erases=seq, second=second)
    return book.ledger.append([draft])


def _draft(
    act: Act,
    kind: EntryKind,
    target: Entry,
    payload: Mapping[str, object],
    *,
    corrects: int | None = None,
    erases: int | None = None,
    second: Second | None = None,
) -> Draft:
    return Draft(
        idem=f"{act.idem}/entry-{target.seq}",
        item=target.read_header().item,
        kind=kind,
        occurred=act.occurred,
        device=act.device,
        actor=act.actor,
        established=act.established,
        payload=write_payload(**payload),
        corrects=corrects,
        erases=erases,
        second=second,
    )


def _entry(book: Book, seq: int) -> Entry:
    found = next(iter(book.ledger.entries(seq - 1)), None) if seq > 0 else None
    if found is None:
        values = (("seq", str(seq)),)
        fault = Fault(place="seq", message=MessageId("tasks.no_such_entry"), values=values)
        raise BadInputError([fault])
    return found
