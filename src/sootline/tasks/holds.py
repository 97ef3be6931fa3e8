"""A hold opens, goes up to somebody else, or is ended by somebody entitled: how is it recorded?"""

import json

from sootline.core.basis import ComponentId, Finding
from sootline.core.gear import Event, EventKind, Hold
from sootline.core.job.codec import encode
from sootline.core.ledger import Appended, Draft, EntryKind, component
from sootline.core.ledger.acts import Act
from sootline.core.rulebook.contaminants import Decider
from sootline.tasks.recording import Book, also, refuse_unless, required


def open_hold(act: Act, piece: ComponentId, hold: Hold, *, mark: str = "hold") -> Draft:
    """Return the draft that opens a hold, with the reason it has."""
    said: dict[str, object] = {
        "cause": hold.cause,
        "question": hold.question,
        "decider": hold.decider.value,
        "deputy": hold.deputy.value,
        "escalate_after_h": hold.escalate_after_h,
    }
    if hold.reason is not None:
        said["finding"] = json.loads(encode(Finding, hold.reason, indent=None))
    return also(act, mark, EntryKind.HOLD_OPENED, component(piece), said)


def hold_by_hand(book: Book, act: Act, piece: ComponentId, hold: Hold) -> tuple[Appended, ...]:
    """Open a hold on a component because somebody says so.

    Raises:
        RefusedError: it is held for that cause already, or disposed of.
        BadInputError: the record does not know it.
    """
    (known,) = book.known(piece)
    draft = open_hold(act, piece, hold)
    if not book.answered(act, draft):
        refuse_unless([known], [Event(kind=EventKind.HOLD_OPENED, hold=hold)])
    return book.record([draft], [known])


def release_hold(
    book: Book, act: Act, piece: ComponentId, *, cause: str, by: str, office: Decider, said: str
) -> tuple[Appended, ...]:
    """End a hold by the decision of somebody entitled.

    Args:
        by: who decided.
        office: in which office.
        said: what was decided, in that person's words.

    Raises:
        RefusedError: no such hold is open, or the office is neither its decider nor deputy.
        BadInputError: nobody is named, nothing is said, or the record does not know the piece.
    """
    required(by=by, said=said)
    (known,) = book.known(piece)
    words = {"cause": cause, "by": by, "office": office.value, "said": said}
    draft = act.entry(EntryKind.HOLD_RELEASED, component(piece), words)
    if not book.answered(act, draft):
        released = Event(kind=EventKind.HOLD_RELEASED, by=by, office=office, cause=cause, said=said)
        refuse_unless([known], [released])
    return book.record([draft], [known])
