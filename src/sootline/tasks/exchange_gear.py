"""A member brings one piece back and takes another: both are recorded, or neither."""

from sootline.core.basis import Bearing, MemberId
from sootline.core.gear import Event, EventKind
from sootline.core.ledger import Appended, EntryKind, component
from sootline.core.ledger.acts import Act
from sootline.core.riding import ExchangeAnswer, ExchangeFacts
from sootline.tasks.recording import Book, RefusedError, refuse_unless, required


def exchange_gear(
    book: Book,
    act: Act,
    facts: ExchangeFacts,
    answer: ExchangeAnswer,
    *,
    by: str,
    place: str = "",
) -> tuple[Appended, ...]:
    """Record an exchange that was found possible.

    Args:
        answer: what the check of these facts said.
        place: where the returned piece goes, when it needs no wash; blank sends it to be washed.

    Raises:
        RefusedError: the check forbids it, the returned piece must be washed first, or one of
            the two cannot be moved as it stands.
        BadInputError: the record does not know one of the pieces, or nobody is named.
    """
    required(by=by)
    holder, returns, takes = facts.member, facts.returns, facts.takes
    taken, returned = book.known(takes, returns)
    kind, said = _return(by, place)
    drafts = [
        act.entry(EntryKind.EXCHANGED, component(takes), {"holder": holder, "with": returns}),
        act.entry(kind, component(returns), said),
    ]
    if not book.answered(act, drafts[0]):
        refuse_exchange(facts, answer, rack=bool(place))
        refuse_unless([taken], [Event(kind=EventKind.ISSUED, holder=MemberId(holder))])
        back = EventKind.BACK_ON_SPARE_RACK if place else EventKind.RETURNED_SOILED
        refuse_unless([returned], [Event(kind=back, by=by)])
    return book.record(drafts, [taken, returned])


def _return(by: str, place: str) -> tuple[EntryKind, dict[str, str]]:
    if place:
        return EntryKind.BACK_ON_SPARE_RACK, {"by": by, "place": place}
    return EntryKind.RETURNED, {"by": by}


def refuse_exchange(facts: ExchangeFacts, answer: ExchangeAnswer, *, rack: bool) -> None:
    """Refuse what the check forbids, and the rack for a piece that must be washed first.

    Raises:
        RefusedError: with every reason.
    """
    if not answer.moves:
        forbids = [one for one in answer.findings if one.bearing is Bearing.FORBIDS]
        raise RefusedError([(facts.takes, one) for one in forbids])
    if rack and not answer.issuable:
        first = [one for one in answer.findings if one.message == "riding.exchange.wash_first"]
        raise RefusedError([(facts.returns, one) for one in first])
