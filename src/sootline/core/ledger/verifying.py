"""Is this record the one that was written, entry for entry?

Every entry is hashed anew; nothing the record says of itself is believed. What the chain cannot
show by itself, a tail cut off or everything written anew, shows against anchors kept elsewhere.
"""

import json
from collections import defaultdict
from collections.abc import Iterable
from hashlib import sha256

from sootline.core.basis import BadInputError
from sootline.core.ledger.anchors import Anchor
from sootline.core.ledger.damage import Damage, DamageKind, ErasedPayload, Verification
from sootline.core.ledger.entries import Entry, header_of
from sootline.core.ledger.foreign import foreign_faults
from sootline.core.ledger.hashing import ALGORITHM, BEGINNING, FORMAT
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.merkle import Frontier

MOST_LISTED = 200
_Fields = dict[str, object]

_write = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"), sort_keys=True).encode
_read = json.JSONDecoder().decode


def verify_chain(entries: Iterable[Entry], anchors: Iterable[Anchor] = ()) -> Verification:
    """Read a whole record from its first entry and say what is damaged.

    Memory does not grow with the record, only with what was erased.

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
        self._anchors = tuple(anchors)
        self._awaited: dict[int, list[Anchor]] = defaultdict(list)
        for anchor in self._anchors:
            self._awaited[anchor.n].append(anchor)
        self._frontier = Frontier()
        self._installation: object = None
        self._head = BEGINNING
        self._damages: list[Damage] = []
        self._more = 0
        self._agreed: list[Anchor] = []
        self._gone: set[int] = set()
        self._erasures: dict[int, tuple[int, tuple[str, str]]] = {}
        self._foreign = 0

    def take(self, entry: Entry) -> None:
        """Check the next entry and join it on to what was read."""
        place = self._frontier.size + 1
        leaf = sha256(b"\x00" + entry.header.encode(errors="surrogatepass")).digest()
        computed = leaf.hex()
        if computed != entry.hash:
            self._damage(place, DamageKind.HASH, entry.hash, computed)
        fields = _fields(entry.header)
        if fields is None:
            self._damage(place, DamageKind.UNREADABLE)
        else:
            self._check_header(entry, fields, place)
        self._head = computed
        self._frontier.add(leaf)
        if place in self._awaited:
            self._meet(place)

    def _check_header(self, entry: Entry, fields: _Fields, place: int) -> None:
        if fields.get("v") != FORMAT or fields.get("alg") != ALGORITHM:
            self._damage(place, DamageKind.VERSION, str(fields.get("v")), str(FORMAT))
        if fields.get("seq") != place or entry.seq != place:
            self._damage(place, DamageKind.SEQUENCE, str(fields.get("seq")), str(place))
        if fields.get("prev") != self._head:
            self._damage(place, DamageKind.PREVIOUS, str(fields.get("prev")), self._head)
        if place == 1:
            self._installation = fields.get("installation")
        elif fields.get("installation") != self._installation:
            self._damage(
                place,
                DamageKind.INSTALLATION,
                str(fields.get("installation")),
                str(self._installation),
            )
        if entry.payload is None or entry.salt is None:
            self._gone.add(place)
        elif sha256(entry.salt + entry.payload.encode(errors="surrogatepass")).hexdigest() != (
            fields.get("payload_digest")
        ):
            self._damage(place, DamageKind.PAYLOAD, str(fields.get("payload_digest")))
        kind = fields.get("kind")
        if kind == EntryKind.ERASED:
            self._note_erasure(fields, place)
        elif kind == EntryKind.FOREIGN:
            self._foreign += 1
            for fault in foreign_faults(entry):
                self._damage(place, DamageKind.FOREIGN, fault)

    def _note_erasure(self, fields: _Fields, place: int) -> None:
        """Take an erasure for one only when it is well formed and two people stand for it."""
        try:
            header = header_of(fields)  # type: ignore[arg-type]  # read from JSON
        except BadInputError:
            self._damage(place, DamageKind.ERASURE)
            return
        second = header.second
        if header.erases is None or second is None or second.person == header.actor:
            self._damage(place, DamageKind.ERASURE, str(header.erases))
        elif not 0 < header.erases < place:
            self._damage(place, DamageKind.ERASURE, str(header.erases), str(place))
        else:
            self._erasures[header.erases] = (place, (header.actor, second.person))

    def _meet(self, place: int) -> None:
        """Hold the record against the anchors that were taken when it was this long."""
        root = self._frontier.root().hex()
        for anchor in self._awaited.pop(place):
            before = len(self._damages) + self._more
            if anchor.installation != self._installation:
                said, found = anchor.installation, str(self._installation)
                self._damage(place, DamageKind.ANCHOR_INSTALLATION, said, found)
            if anchor.hash != self._head:
                self._damage(place, DamageKind.ANCHOR_HASH, anchor.hash, self._head)
            if anchor.root != root:
                self._damage(place, DamageKind.ANCHOR_ROOT, anchor.root, root)
            if len(self._damages) + self._more == before:
                self._agreed.append(anchor)

    def finish(self) -> Verification:
        """Say what came out, once every entry was read."""
        size = self._frontier.size
        for n in sorted(self._awaited):
            self._damage(size + 1, DamageKind.ANCHOR_SHORT, str(n), str(size))
        for seq in sorted(self._gone - self._erasures.keys()):
            self._damage(seq, DamageKind.PAYLOAD_MISSING)
        told = [
            ErasedPayload(seq=seq, under=under, people=people)
            for seq, (under, people) in sorted(self._erasures.items())
        ]
        return Verification(
            entries=size,
            head=self._head,
            root=self._frontier.root().hex(),
            damages=tuple(sorted(self._damages, key=lambda damage: damage.seq)),
            more=self._more,
            erased=tuple(one for one in told if one.seq in self._gone),
            not_carried_out=tuple(
                (one.seq, one.under) for one in told if one.seq not in self._gone
            ),
            anchors=tuple(self._agreed),
            foreign=self._foreign,
        )

    def _damage(self, seq: int, kind: DamageKind, said: str = "", found: str = "") -> None:
        if len(self._damages) >= MOST_LISTED:
            self._more += 1
        else:
            self._damages.append(Damage(seq=seq, kind=kind, said=said, found=found))


def _fields(header: str) -> _Fields | None:
    """Return what a header says, or None where it is not the one text of it.

    Headers have names of ASCII letters only, so that the plain order of names is that of UTF-16.
    """
    try:
        fields = _read(header)
        same = _write(fields) == header
    except (ValueError, RecursionError):
        return None
    return fields if same and isinstance(fields, dict) else None
