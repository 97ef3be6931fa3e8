"""What must somebody else keep, so that nobody can rewrite the record behind their back?

A chain shows any change inside it, but not a tail cut off, nor a record written anew from the
beginning. An anchor held outside does: how many entries there were, the last hash, and the root.
"""

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.basis import (
    BadInputError,
    Fault,
    InstallationId,
    MessageId,
    Moment,
    require_offset,
)
from sootline.core.ledger.canonical import canonical, read_canonical
from sootline.core.ledger.hashing import FORMAT
from sootline.core.ledger.merkle import Frontier

_HEX = frozenset("0123456789abcdef")
_HASH_LENGTH = 64


@dataclass(frozen=True, kw_only=True)
class Anchor:
    """How far a record reached at one moment.

    Args:
        n: how many entries it had.
        hash: of the last of them.
        root: of the tree over all of them.
        at: when it was taken.
    """

    installation: InstallationId
    n: int
    hash: str
    root: str
    at: Moment

    def __post_init__(self) -> None:
        require_offset(self.at)
        for value in (self.hash, self.root):
            if len(value) != _HASH_LENGTH or not _HEX.issuperset(value):
                raise _unreadable(value)
        if self.n < 1:
            raise _unreadable(str(self.n))


def take_anchor(
    installation: InstallationId, hashes: Iterable[str], at: dt.datetime
) -> Anchor | None:
    """Take the anchor of a record as it stands; None of an empty one.

    Args:
        hashes: of all its entries, in order.
        at: now.
    """
    frontier, last = Frontier(), ""
    for last in hashes:  # the last one is wanted after the loop
        frontier.add(bytes.fromhex(last))
    if not frontier.size:
        return None
    root = frontier.root().hex()
    return Anchor(installation=installation, n=frontier.size, hash=last, root=root, at=at)


def write_anchor(anchor: Anchor) -> str:
    """Return an anchor's one text, as it stands on a printed report and in a daily file."""
    return canonical(
        {
            "v": FORMAT,
            "installation": anchor.installation,
            "n": anchor.n,
            "hash": anchor.hash,
            "root": anchor.root,
            "at": anchor.at.isoformat(),
        },
        place="anchor",
    )


def read_anchor(text: str) -> Anchor:
    """Return an anchor from its text.

    Raises:
        BadInputError: it is none, or of a version this program does not know.
    """
    fields = read_canonical(text.strip(), place="anchor")
    if not isinstance(fields, dict) or fields.pop("v", None) != FORMAT:
        raise _unreadable(text)
    try:
        fields["at"] = dt.datetime.fromisoformat(fields["at"])  # type: ignore[assignment,arg-type]
        anchor = Anchor(**fields)  # type: ignore[arg-type]  # what does not fit raises here
    except (KeyError, TypeError, ValueError) as error:
        raise _unreadable(text) from error
    if not all(isinstance(value, str) for value in (anchor.installation, anchor.hash)):
        raise _unreadable(text)
    return anchor


def read_anchors(text: str) -> tuple[Anchor, ...]:
    """Return every anchor of a text that has one a line: a printed one, or the daily file.

    Raises:
        BadInputError: a line is none, or there is no line.
    """
    lines = [line for line in text.splitlines() if line.strip()]
    return tuple(map(read_anchor, lines or [text]))


def _unreadable(text: str) -> BadInputError:
    values = (("text", text),)
    return BadInputError([Fault(place="anchor", message=MessageId("ledger.anchor.unreadable"),
                                values=values)])  # fmt: skip
