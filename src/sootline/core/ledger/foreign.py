"""How does an entry of another installation stand in this record, untouched?

It is appended as the payload of an entry of ours, with its origin, its place there, its hash and
its very texts, so that whoever holds the other record can find it there.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import (
    BadInputError,
    DeviceId,
    Fault,
    InstallationId,
    ItemId,
    MemberId,
    MessageId,
)
from sootline.core.ledger.canonical import canonical, read_strictly
from sootline.core.ledger.drafts import Draft, read_payload
from sootline.core.ledger.entries import Entry, Header
from sootline.core.ledger.forms import Payload
from sootline.core.ledger.hashing import entry_hash, payload_digest
from sootline.core.ledger.items import kind_of, name_of
from sootline.core.ledger.kinds import EntryKind, Established


@dataclass(frozen=True, kw_only=True, slots=True)
class Taken:
    """An entry of another installation as it was taken in.

    Args:
        entry: with the very texts it has there.
        origin: the installation that says it wrote it.
    """

    origin: InstallationId
    entry: Entry


def foreign_draft(
    entry: Entry,
    *,
    device: DeviceId,
    actor: MemberId,
    established: Established,
    about: ItemId | None = None,
) -> Draft:
    """Return the draft that takes in an entry of another installation.

    The same entry taken in twice has the same key, and stands here once.

    Args:
        device, actor, established: who takes it in, and where.
        about: our own name of the thing; None leaves the name with its origin before it, so that
            two departments' number 12 are not taken for one.

    Raises:
        BadInputError: the entry is damaged, or in a format this program does not know.
    """
    header = entry.read_header()
    taken = Taken(origin=header.installation, entry=entry)
    place = f"entry {entry.seq}"
    faults = [
        Fault(place=place, message=MessageId("ledger.foreign.damaged"), values=(("what", what),))
        for what in _wrong_with(taken, read_payload(entry.header))
    ]
    if faults:
        raise BadInputError(faults)
    return Draft(
        idem=f"foreign:{header.installation}:{header.seq}",
        item=about or abroad(header),
        kind=EntryKind.FOREIGN,
        occurred=header.occurred,
        device=device,
        actor=actor,
        established=established,
        # Not composed: these are somebody else's bytes.
        payload=canonical(_document(header, entry), place="payload"),
    )


def _document(header: Header, entry: Entry) -> dict[str, object]:
    return {
        "origin": header.installation,
        "seq": header.seq,
        "hash": entry.hash,
        "header": entry.header,
        "salt": entry.salt.hex() if entry.salt is not None else None,
        "payload": entry.payload,
    }


def abroad(header: Header) -> ItemId:
    """Return what a thing of another installation is called here until somebody names it."""
    return ItemId(f"{kind_of(header.item)}:{header.installation}/{name_of(header.item)}")


def taken_entry(payload: Payload) -> Taken:
    """Return the entry that stands in a foreign entry's payload.

    Raises:
        BadInputError: the payload holds none.
    """
    salt, text = payload.get("salt"), payload.get("payload")
    try:
        return Taken(
            origin=InstallationId(str(payload["origin"])),
            entry=Entry(
                seq=int(str(payload["seq"])),
                header=str(payload["header"]),
                hash=str(payload["hash"]),
                salt=bytes.fromhex(salt) if isinstance(salt, str) else None,
                payload=text if isinstance(text, str) else None,
            ),
        )
    except (KeyError, ValueError):
        fault = Fault(place="payload", message=MessageId("ledger.foreign.unreadable"))
        raise BadInputError([fault]) from None


def foreign_faults(payload: str) -> Iterator[str]:
    """Say what is wrong inside a foreign entry of ours, in one word each.

    Whether this program knows the kinds and fields of the other one is not asked here.

    Args:
        payload: of the entry of ours.
    """
    try:
        taken = taken_entry(read_strictly(payload) or {})
    except BadInputError:
        yield "unreadable"
        return
    header = read_strictly(taken.entry.header)
    yield from ("unreadable",) if header is None else _wrong_with(taken, header)


def _wrong_with(taken: Taken, header: Payload) -> Iterator[str]:
    entry = taken.entry
    if entry_hash(entry.header) != entry.hash:
        yield "hash"
    if header.get("installation") != taken.origin:
        yield "origin"
    if header.get("seq") != entry.seq:
        yield "seq"
    if entry.payload is not None and (
        entry.salt is None
        or payload_digest(entry.salt, entry.payload) != header.get("payload_digest")
    ):
        yield "payload"
