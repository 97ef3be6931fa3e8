"""Somebody died or was badly hurt: how is everything of theirs secured in one act?"""

from collections.abc import Sequence

from sootline.core.basis import BadInputError, ComponentId, Fault, MemberId, MessageId
from sootline.core.gear import Life
from sootline.core.ledger import Appended, ItemKind, item
from sootline.core.ledger.acts import Act, lock_member
from sootline.tasks.recording import Book, required


def secure_member(
    book: Book,
    act: Act,
    member: MemberId,
    *,
    by: str,
    reason: str,
    also: Sequence[ComponentId] = (),
) -> tuple[Appended, ...]:
    """Secure every component a member owns, has or wore, unwashed and unopened.

    Nothing is looked at but whether it exists: what is held, worn, in the washer or retired is
    secured too. Only an investigator gives it back.

    Args:
        also: components of others or of the pool that the member wore.

    Raises:
        BadInputError: nobody or no reason is named, a component is not known, or there is nothing
            to secure.
    """
    required(by=by, reason=reason)
    book.known(*also)
    pieces = _answered(book, act, member) or _theirs(book, member, also)
    if not pieces:
        values = (("id", member),)
        fault = Fault(place="member", message=MessageId("tasks.secure.nothing"), values=values)
        raise BadInputError([fault])
    return book.ledger.append(lock_member(act, member, pieces, by=by, reason=reason))


def _theirs(book: Book, member: MemberId, also: Sequence[ComponentId]) -> tuple[ComponentId, ...]:
    own = book.register.components_of(member)
    kept = (known.component for known in own if known.component.state.life is not Life.DISPOSED)
    return tuple(dict.fromkeys([*(one.id for one in kept), *also]))


def _answered(book: Book, act: Act, member: MemberId) -> tuple[ComponentId, ...]:
    """Return what this very act secured when it was asked for before."""
    thing = item(ItemKind.MEMBER, member)
    if not book.ledger.known(act.actor, f"{act.idem}/{thing}"):
        return ()
    life = book.register.thing(thing)
    said = life.facts.get("member-locked") if life else None
    pieces = said.get("pieces") if isinstance(said, dict) else None
    return tuple(ComponentId(str(piece)) for piece in pieces) if isinstance(pieces, list) else ()
