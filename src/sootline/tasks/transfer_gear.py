"""Gear moves to another station or owner: offered by one, and theirs once somebody accepts."""

from sootline.core.basis import BadInputError, ComponentId, Fault, MessageId
from sootline.core.ledger import Appended, EntryKind, component
from sootline.core.ledger.acts import Act
from sootline.tasks.recording import Book, also, required


def offer(book: Book, act: Act, piece: ComponentId, *, to: str, by: str) -> tuple[Appended, ...]:
    """Offer a component to a station; it stays where it is until somebody there accepts.

    Raises:
        BadInputError: it is theirs or offered already, or nobody is named.
    """
    required(to=to, by=by)
    (known,) = book.known(piece)
    draft = act.entry(EntryKind.TRANSFER_OFFERED, component(piece), {"to": to, "by": by})
    if not book.answered(act, draft):
        if known.station == to:
            raise _refused("tasks.transfer.theirs", piece, to)
        if known.offered_to is not None:
            raise _refused("tasks.transfer.offered_already", piece, known.offered_to)
    return book.record([draft], [known])


def accept(
    book: Book, act: Act, piece: ComponentId, *, station: str, by: str
) -> tuple[Appended, ...]:
    """Accept a component that was offered to a station: from now on it belongs there.

    Raises:
        BadInputError: it was not offered to this station, or nobody is named.
    """
    required(station=station, by=by)
    (known,) = book.known(piece)
    thing = component(piece)
    drafts = [
        act.entry(EntryKind.TRANSFER_ACCEPTED, thing, {"by": by, "station": station}),
        also(
            act, "station", EntryKind.FACTS_CHANGED, thing, {"station": station, "changed_by": by}
        ),
    ]
    if not book.answered(act, drafts[0]) and known.offered_to != station:
        raise _refused("tasks.transfer.not_offered", piece, station)
    return book.record(drafts, [known])


def decline(
    book: Book, act: Act, piece: ComponentId, *, by: str, said: str
) -> tuple[Appended, ...]:
    """Decline a component that was offered; it stays where it was.

    Raises:
        BadInputError: nobody offered it, nobody is named, or no reason is given.
    """
    required(by=by, said=said)
    (known,) = book.known(piece)
    draft = act.entry(EntryKind.TRANSFER_DECLINED, component(piece), {"by": by, "said": said})
    if not book.answered(act, draft) and known.offered_to is None:
        raise _refused("tasks.transfer.not_offered", piece, "-")
    return book.record([draft], [known])


def _refused(message: str, piece: ComponentId, station: str) -> BadInputError:
    values = (("id", piece), ("station", station))
    return BadInputError([Fault(place="component", message=MessageId(message), values=values)])
