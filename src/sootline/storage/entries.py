"""How does an entry stand in the tables, and how is it read back as the very texts it was?"""

from collections.abc import Iterable, Iterator
from itertools import islice

from django.db.models import QuerySet

from sootline.core.basis import InstallationId, MemberId
from sootline.core.ledger import Entry, Head, Header, ItemKind, head_after, parse_item
from sootline.storage.models import EntryRow, PayloadRow
from sootline.storage.statements import installation_name, last_entry, put, seq_of_key

_AT_ONCE = 2000


def insert(entry: Entry, header: Header, head: Head, alias: str) -> None:
    """Add one entry and its payload; the database refuses one that does not join on.

    Args:
        head: where the record ends with this entry in it.

    Raises:
        IntegrityError: it does not join on, or its key is used.
    """
    put(_row(entry, header, head), alias)
    if entry.payload is not None and entry.salt is not None:
        put(_payload(entry), alias)


def insert_many(found: Iterable[Entry], installation: InstallationId, alias: str) -> None:
    """Add entries of a whole record to an empty one, as they are, under the same guards.

    Raises:
        IntegrityError: one of them does not join on.
    """
    head, rest = Head(installation=installation), iter(found)
    while some := list(islice(rest, _AT_ONCE // 10)):
        rows = []
        for entry in some:
            header = entry.read_header()
            head = head_after(head, entry, header)
            rows.append(_row(entry, header, head))
        EntryRow.objects.using(alias).bulk_create(rows)
        PayloadRow.objects.using(alias).bulk_create(
            [_payload(entry) for entry in some if not entry.erased]
        )


def _row(entry: Entry, header: Header, head: Head) -> EntryRow:
    return EntryRow(
        seq=entry.seq,
        header=entry.header,
        prev=header.prev,
        hash=entry.hash,
        idem=header.idem,
        actor=header.actor,
        item=header.item,
        kind=header.kind.value,
        recorded_at=header.recorded_at,
        trusted_at=head.trusted_at,
        corrects=header.corrects,
        erases=header.erases,
    )


def _payload(entry: Entry) -> PayloadRow:
    assert entry.salt is not None  # whoever calls has looked
    return PayloadRow(seq_id=entry.seq, salt=entry.salt.hex(), body=entry.payload or "")


def erase_payload(seq: int, alias: str) -> None:
    """Take away the payload that an erasure just added names.

    Raises:
        IntegrityError: no erasure by two people names it.
    """
    PayloadRow.objects.using(alias).filter(seq_id=seq).delete()


def read_head(alias: str) -> Head:
    """Return where the record ends.

    Raises:
        Installation.DoesNotExist: the record was never begun.
    """
    name = InstallationId(installation_name(alias))
    last = last_entry(alias)
    if last is None:
        return Head(installation=name)
    seq, digest, trusted = last
    return Head(installation=name, seq=seq, hash=digest, trusted_at=trusted)


def find_key(actor: MemberId, idem: str, alias: str) -> Entry | None:
    """Return what an actor recorded under a key."""
    return find_seq(seq_of_key(actor, idem, alias), alias)


def has_begun(actor: MemberId, act: str, alias: str) -> bool:
    """Whether an actor has recorded any entry of an act: their keys begin with the act's."""
    # "0" is the sign after "/": this way the index of keys is used.
    keys = EntryRow.objects.using(alias).filter(
        actor=actor, idem__gte=f"{act}/", idem__lt=f"{act}0"
    )
    return keys.exists()


def of_act(actor: MemberId, act: str, alias: str) -> Iterator[Entry]:
    """Return what an actor recorded under the keys of an act, in the record's order."""
    # "0" is the sign after "/": this way the index of keys is used.
    keys = {"idem__gte": f"{act}/", "idem__lt": f"{act}0"}
    return in_order(EntryRow.objects.using(alias).filter(actor=actor, **keys))


def find_seq(seq: int | None, alias: str) -> Entry | None:
    """Return the entry at a place of the record."""
    return None if seq is None else _one(alias, seq=seq)


def read_entries(
    alias: str, *, after: int = 0, item: str | None = None, kind: ItemKind | None = None
) -> Iterator[Entry]:
    """Read entries in their order, a few thousand at a time.

    Args:
        after: begin behind this place.
        item: only those about this thing.
        kind: only those about things of this kind.
    """
    rows = EntryRow.objects.using(alias)
    if item is not None:
        rows = rows.filter(item=parse_item(item))
    if kind is not None:
        rows = rows.filter(item__startswith=f"{kind.value}:")
    return in_order(rows, after=after)


def in_order(rows: QuerySet[EntryRow], *, after: int = 0) -> Iterator[Entry]:
    """Read chosen entries in their order, a few thousand at a time.

    Args:
        after: begin behind this place.
    """
    columns = ("seq", "header", "hash", "payload__salt", "payload__body")
    ordered = rows.order_by("seq").values_list(*columns)
    while chunk := list(ordered.filter(seq__gt=after)[:_AT_ONCE]):
        for seq, header, digest, salt, body in chunk:
            kept = None if salt is None else bytes.fromhex(salt)
            yield Entry(seq=seq, header=header, hash=digest, salt=kept, payload=body)
        after = chunk[-1][0]


def last_about(item: str, alias: str) -> Entry | None:
    """Return the last entry about a thing."""
    last = EntryRow.objects.using(alias).filter(item=item).order_by("-seq").first()
    return None if last is None else find_seq(last.seq, alias)


def _one(alias: str, **which: object) -> Entry | None:
    return next(in_order(EntryRow.objects.using(alias).filter(**which)), None)
