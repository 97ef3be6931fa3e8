"""Is an exported record whole, what does it add up to, and what is the life of one thing?"""

import datetime as dt
from collections.abc import Iterable

from sootline.core.basis import BadInputError, Fault, ItemId, MessageId
from sootline.core.ledger import Anchor, Entry, Verification, verify_chain
from sootline.core.ledger.check_words import words_at
from sootline.core.ledger.exports import about
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold_facts
from sootline.core.ledger.lives import Folded, PieceLife
from sootline.core.ledger.proving import verify_item
from sootline.tasks.ports import LedgerExport


def verify_export(export: LedgerExport, anchors: Iterable[Anchor] = ()) -> Verification:
    """Verify a whole record, or the export of one thing by its proofs.

    Args:
        anchors: kept elsewhere; without one, a tail cut off or a record written anew as a whole
            cannot show.

    Raises:
        BadInputError: the export of one thing carries no anchor, so that nothing can be proven.
    """
    head = export.head
    if head.item is None:
        return verify_chain((one.entry for one in export.entries()), anchors)
    if head.anchor is None:
        raise BadInputError([Fault(place="line 1", message=MessageId("ledger.export.no_anchor"))])
    return verify_item(export.entries(), head.anchor, anchors)


def words_of(export: LedgerExport, n: int) -> str | None:
    """Return the check words a whole record had at so many entries; None if it never had.

    Raises:
        BadInputError: it is the export of one thing, whose other entries are not there.
    """
    if export.head.item is not None:
        raise BadInputError([Fault(place="printed", message=MessageId("ledger.printed.one_item"))])
    return words_at((one.entry.hash for one in export.entries()), n)


def replay_export(
    export: LedgerExport,
    *,
    as_of: dt.datetime | None = None,
    known_at: dt.datetime | int | None = None,
    item: ItemId | None = None,
) -> Folded:
    """Fold an exported record from its first entry.

    Args:
        as_of: the state at a moment; None is now.
        known_at: what the record said at a moment, or up to an entry; None is everything.
        item: only what concerns one thing.

    Raises:
        BadInputError: an entry cannot be read; `verify_export` says what is damaged.
    """
    facts = read_facts(_entries(export))
    if item is not None:
        wanted = set(about(facts, item))
        if not wanted:
            raise _absent(item)
        facts = tuple(fact for fact in facts if fact.seq in wanted)
    return fold_facts(facts, as_of=as_of, known_at=known_at)


def life_in(folded: Folded, item: ItemId) -> PieceLife:
    """Return one component's life.

    Raises:
        BadInputError: the record says nothing of such a component.
    """
    try:
        return folded.piece(item)
    except KeyError:
        raise _absent(item) from None


def _absent(item: ItemId) -> BadInputError:
    message, values = MessageId("ledger.show.absent"), (("item", item),)
    return BadInputError([Fault(place="--item", message=message, values=values)])


def _entries(export: LedgerExport) -> Iterable[Entry]:
    return (one.entry for one in export.entries())
