"""Is this record the one that was written, entry for entry?

Every entry is hashed anew; nothing the record says of itself is believed. What the chain cannot
show by itself, a tail cut off or everything written anew, shows against anchors kept elsewhere.
"""

from collections import defaultdict
from collections.abc import Iterable

from sootline.core.ledger.anchors import Anchor
from sootline.core.ledger.checks import Checks
from sootline.core.ledger.damage import DamageKind, Verification
from sootline.core.ledger.entries import Entry
from sootline.core.ledger.hashing import BEGINNING
from sootline.core.ledger.merkle import Frontier


def verify_chain(entries: Iterable[Entry], anchors: Iterable[Anchor] = ()) -> Verification:
    """Read a whole record from its first entry and say what is damaged.

    An entry that was changed together with its own hash shows at the one after it, which still
    names the hash it had.

    Args:
        entries: in the order in which they are kept.
        anchors: any number, taken at any time.
    """
    reader = _Reader(anchors)
    for entry in entries:
        reader.take(entry)
    return reader.finish()


class _Reader:
    """The one pass over a record."""

    def __init__(self, anchors: Iterable[Anchor]) -> None:
        self._checks = Checks()
        self._awaited: dict[int, list[Anchor]] = defaultdict(list)
        for anchor in anchors:
            self._awaited[anchor.n].append(anchor)
        self._frontier = Frontier()
        self._installation: object = None
        self._head = BEGINNING
        self._agreed: list[Anchor] = []

    def take(self, entry: Entry) -> None:
        """Check the next entry and join it on to what was read."""
        place = self._frontier.size + 1
        leaf, fields = self._checks.check_header(entry, place)
        if fields is not None:
            if entry.seq != place:
                self._checks.damage(place, DamageKind.SEQUENCE, str(entry.seq), str(place))
            if fields.get("prev") != self._head:
                prev = str(fields.get("prev"))
                self._checks.damage(place, DamageKind.PREVIOUS, prev, self._head)
            installation = fields.get("installation")
            if place == 1:
                self._installation = installation
            elif installation != self._installation:
                said, found = str(installation), str(self._installation)
                self._checks.damage(place, DamageKind.INSTALLATION, said, found)
        self._head = leaf.hex()
        self._frontier.add(leaf)
        if place in self._awaited:
            self._meet(place)

    def _meet(self, place: int) -> None:
        """Hold the record against the anchors that were taken when it was this long."""
        root = self._frontier.root().hex()
        for anchor in self._awaited.pop(place):
            wrong = differing(anchor, str(self._installation), self._head, root)
            for kind, said, found in wrong:
                self._checks.damage(place, kind, said, found)
            if not wrong:
                self._agreed.append(anchor)

    def finish(self) -> Verification:
        """Say what came out, once every entry was read."""
        size = self._frontier.size
        for n in sorted(self._awaited):
            self._checks.damage(size + 1, DamageKind.ANCHOR_SHORT, str(n), str(size))
        return verification(
            self._checks, size, self._head, self._frontier.root().hex(), self._agreed
        )


def differing(
    anchor: Anchor, installation: str, head: str, root: str
) -> list[tuple[DamageKind, str, str]]:
    """Say in what an anchor kept elsewhere differs from what was found at its place."""
    pairs = (
        (DamageKind.ANCHOR_INSTALLATION, anchor.installation, installation),
        (DamageKind.ANCHOR_HASH, anchor.hash, head),
        (DamageKind.ANCHOR_ROOT, anchor.root, root),
    )
    return [(kind, said, found) for kind, said, found in pairs if said != found]


def verification(
    checks: Checks, entries: int, head: str, root: str, agreed: Iterable[Anchor]
) -> Verification:
    """Put together what came out."""
    listed, more = checks.damages()
    told = checks.told()
    return Verification(
        entries=entries,
        head=head,
        root=root,
        damages=listed,
        more=more,
        erased=tuple(one for one in told if one.seq in checks.gone),
        not_carried_out=tuple((one.seq, one.under) for one in told if one.seq not in checks.gone),
        anchors=tuple(agreed),
        foreign=checks.foreign,
    )
