"""Is one entry by itself the one that was written?"""

from hashlib import sha256

from sootline.core.ledger.canonical import Json, read_strictly
from sootline.core.ledger.damage import Damage, DamageKind, ErasedPayload
from sootline.core.ledger.entries import Entry
from sootline.core.ledger.foreign import foreign_faults
from sootline.core.ledger.hashing import ALGORITHM, FORMAT
from sootline.core.ledger.kinds import EntryKind

MOST_LISTED = 200
Fields = dict[str, Json]


class Checks:
    """Looks at entries one after another, and remembers what is wrong.

    Only what was erased is remembered entry by entry: memory does not grow with the record.
    """

    def __init__(self) -> None:
        self.foreign = 0
        self.gone: set[int] = set()
        self._damages: list[Damage] = []
        self._count = 0
        self._erasures: dict[int, tuple[int, tuple[str, str]]] = {}

    def damage(self, seq: int, kind: DamageKind, said: str = "", found: str = "") -> None:
        """Remember a damage; after the first few hundred only their number."""
        self._count += 1
        if len(self._damages) < MOST_LISTED:
            self._damages.append(Damage(seq=seq, kind=kind, said=said, found=found))

    def check_header(self, entry: Entry, place: int) -> tuple[bytes, Fields | None]:
        """Hash a header anew and read it.

        Args:
            place: where in the record the entry must stand.

        Returns: the computed hash, and the fields; None where the header is not the one text of
            them.
        """
        leaf = sha256(b"\x00" + entry.header.encode(errors="surrogatepass")).digest()
        if leaf.hex() != entry.hash:
            self.damage(place, DamageKind.HASH, entry.hash, leaf.hex())
        fields = read_strictly(entry.header)
        if fields is None:
            self.damage(place, DamageKind.UNREADABLE)
        else:
            self._check_fields(entry, fields, place)
        return leaf, fields

    def _check_fields(self, entry: Entry, fields: Fields, place: int) -> None:
        if not is_number(fields.get("v"), FORMAT) or fields.get("alg") != ALGORITHM:
            self.damage(place, DamageKind.VERSION, str(fields.get("v")), str(FORMAT))
        if not is_number(fields.get("seq"), place):
            self.damage(place, DamageKind.SEQUENCE, str(fields.get("seq")), str(place))
        digest = _digest(entry)
        if digest is None:
            self.gone.add(place)
        elif digest != fields.get("payload_digest"):
            self.damage(place, DamageKind.PAYLOAD, str(fields.get("payload_digest")), digest)
        kind = fields.get("kind")
        if kind == EntryKind.ERASED:
            self._note_erasure(fields, place)
        elif kind == EntryKind.FOREIGN:
            self.foreign += 1
            for fault in foreign_faults(entry.payload) if entry.payload is not None else ():
                self.damage(place, DamageKind.FOREIGN, fault)

    def _note_erasure(self, fields: Fields, place: int) -> None:
        """Take an erasure for one only when two different people stand for it."""
        erases, actor, second = fields.get("erases"), fields.get("actor"), fields.get("second")
        other = second.get("person") if isinstance(second, dict) else None
        if type(erases) is not int or not 0 < erases < place:
            self.damage(place, DamageKind.ERASURE, str(erases), str(place))
        elif not isinstance(actor, str) or not isinstance(other, str) or actor == other:
            self.damage(place, DamageKind.ERASURE, str(actor), str(other))
        else:
            self._erasures.setdefault(erases, (place, (actor, other)))

    def told(self) -> tuple[ErasedPayload, ...]:
        """Return the erasures that two people stand for, carried out or not."""
        return tuple(
            ErasedPayload(seq=seq, under=under, people=people)
            for seq, (under, people) in sorted(self._erasures.items())
        )

    def damages(self) -> tuple[tuple[Damage, ...], int]:
        """Return the damages in order, a payload missing without an erasure among them.

        Returns: those that are listed, and how many more there are.
        """
        missing = [
            Damage(seq=seq, kind=DamageKind.PAYLOAD_MISSING)
            for seq in sorted(self.gone - self._erasures.keys())
        ]
        every = sorted([*self._damages, *missing], key=lambda damage: damage.seq)
        listed = tuple(every[:MOST_LISTED])
        return listed, self._count + len(missing) - len(listed)


def _digest(entry: Entry) -> str | None:
    """Return the digest of what an entry says, None where it is gone.

    A payload without its salt, or a salt that was left behind, has a digest that fits nothing.
    """
    if entry.payload is None and entry.salt is None:
        return None
    if entry.payload is None or entry.salt is None:
        return "-"
    return sha256(entry.salt + entry.payload.encode(errors="surrogatepass")).hexdigest()


def is_number(value: object, number: int) -> bool:
    """Whether a value is this whole number; true is no 1."""
    return type(value) is int and value == number
