"""A component goes out for good, and how its end is witnessed."""

from sootline.core.basis import BadInputError, ComponentId, Fault, MessageId
from sootline.core.gear import Event, EventKind
from sootline.core.ledger import Appended, EntryKind, component
from sootline.core.ledger.acts import Act
from sootline.tasks.recording import Book, refuse_unless, required


def retire(
    book: Book, act: Act, piece: ComponentId, *, by: str, reason: str
) -> tuple[Appended, ...]:
    """Take a component out of service for good.

    Raises:
        RefusedError: it is in a washer, or out already.
        BadInputError: nobody or no reason is named, or the record does not know it.
    """
    required(by=by, reason=reason)
    event = Event(kind=EventKind.RETIRED, by=by)
    return _end(book, act, piece, event=event, said={"by": by, "reason": reason})


def mark_for_training(
    book: Book, act: Act, piece: ComponentId, *, by: str, reason: str
) -> tuple[Appended, ...]:
    """Mark a component as for training without live fire only.

    Raises:
        RefusedError: it is out, or marked already.
        BadInputError: nobody or no reason is named, or the record does not know it.
    """
    required(by=by, reason=reason)
    event = Event(kind=EventKind.TRAINING_MARKED, by=by)
    return _end(book, act, piece, event=event, said={"by": by, "reason": reason})


def dispose(
    book: Book, act: Act, piece: ComponentId, *, by: str, method: str, witness: str
) -> tuple[Appended, ...]:
    """Record that a retired component was made unusable, and who saw it.

    Raises:
        RefusedError: it is not retired, on hold, or not here.
        BadInputError: somebody or the method is missing, the witness is the same person, or the
            record does not know it.
    """
    required(by=by, method=method, witness=witness)
    if by.strip().casefold() == witness.strip().casefold():
        values = (("by", by),)
        fault = Fault(place="witness", message=MessageId("tasks.same_witness"), values=values)
        raise BadInputError([fault])
    event = Event(kind=EventKind.DISPOSED, by=by)
    said = {"by": by, "method": method, "witness": witness}
    return _end(book, act, piece, event=event, said=said)


def _end(
    book: Book, act: Act, piece: ComponentId, *, event: Event, said: dict[str, str]
) -> tuple[Appended, ...]:
    (known,) = book.known(piece)
    draft = act.entry(EntryKind(event.kind.value), component(piece), said)
    if not book.answered(act, draft):
        refuse_unless([known], [event])
    return book.record([draft], [known])
