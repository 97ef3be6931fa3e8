"""What does the record say after one more entry?

All chance and every clock is handed in. Whoever keeps the record calls this while nobody else
can write, and keeps what comes back in the same transaction.
"""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from typing import cast

from sootline.core.basis import (
    BadInputError,
    Fault,
    InstallationId,
    ItemId,
    MessageId,
    SootlineError,
    require_offset,
)
from sootline.core.ledger.drafts import Draft, read_payload
from sootline.core.ledger.entries import Entry, Head, Header, write_header
from sootline.core.ledger.forms import FORMS, Payload, check_payload
from sootline.core.ledger.hashing import SALT_BYTES, entry_hash, payload_digest
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.times import DOUBTED, clock_flags


class KeyReusedError(BadInputError):
    """A key came back with other words: two different things cannot be one request.

    Args:
        entry: what was recorded under the key.
    """

    def __init__(self, entry: Entry, draft: Draft) -> None:
        self.entry = entry
        values = (("key", draft.idem), ("seq", str(entry.seq)))
        super().__init__(
            [Fault(place="idem", message=MessageId("ledger.append.key"), values=values)]
        )


class OvertakenError(SootlineError):
    """Somebody else wrote about the same thing first; the asker should see it and ask again.

    Args:
        entry: the last entry about the thing.
    """

    def __init__(self, entry: Entry) -> None:
        self.entry = entry
        self.message = MessageId("ledger.append.overtaken")
        super().__init__(f"overtaken by entry {entry.seq}")


@dataclass(frozen=True, kw_only=True)
class Appended:
    """The entry that stands in the record now, and where the record ends.

    Args:
        repeated: the request had been answered before; nothing was added.
    """

    entry: Entry
    head: Head
    repeated: bool = False


def append(
    head: Head,
    draft: Draft,
    *,
    now: dt.datetime,
    salt: bytes,
    same_key: Entry | None = None,
    last_of_item: Entry | None = None,
    target: Entry | None = None,
    seen: dt.datetime | None = None,
) -> Appended:
    """Put a draft in its place at the end of the record.

    A doubtful clock refuses nothing: the entry is flagged and stands where it was written.

    Args:
        now: what the recording machine's clock reads.
        salt: 16 random bytes.
        same_key: the entry recorded for this actor under this key, if there is one.
        last_of_item: the last entry about the same thing; looked at when the draft says `after`.
        target: the entry that the draft corrects or erases.
        seen: the latest moment another clock vouches for.

    Raises:
        KeyReusedError: the key stands for other words.
        OvertakenError: an entry about the same thing came in that the asker had not seen.
        BadInputError: nothing can be corrected or erased there.
    """
    require_offset(now)
    if len(salt) != SALT_BYTES:
        raise ValueError(f"a salt has {SALT_BYTES} bytes, not {len(salt)}")
    if same_key is not None:
        if not says_the_same(same_key, draft):
            raise KeyReusedError(same_key, draft)
        return Appended(entry=same_key, head=head, repeated=True)
    _check_target(head, draft, target)
    if draft.after is not None and last_of_item is not None and last_of_item.seq > draft.after:
        raise OvertakenError(last_of_item)
    header = _header(head, draft, now, salt, seen)
    text = write_header(header)
    entry = Entry(
        seq=header.seq, header=text, hash=entry_hash(text), salt=salt, payload=draft.payload
    )
    return Appended(entry=entry, head=head_after(head, entry, header))


def append_all(
    head: Head,
    drafts: Sequence[Draft],
    *,
    now: dt.datetime,
    salts: Sequence[bytes],
    seen: dt.datetime | None = None,
) -> tuple[Appended, ...]:
    """Append several new drafts that belong together: all of them, or none.

    For one act over several components: an exchange, a load, a transfer. The keeper looks up
    keys and targets first; none of these drafts may need one.

    Raises:
        BadInputError: as `append`.
    """
    done: list[Appended] = []
    for draft, salt in zip(drafts, salts, strict=True):
        done.append(append(head, draft, now=now, salt=salt, seen=seen))
        head = done[-1].head
    return tuple(done)


def head_after(head: Head, entry: Entry, header: Header | None = None) -> Head:
    """Return where a record ends once an entry stands in it.

    Args:
        header: the entry's own, where it is read already.
    """
    read = header or entry.read_header()
    doubtful = not DOUBTED.isdisjoint(read.flags)
    # A person who says the clock is right ends the doubt, also where it jumped.
    confirmed = read.kind is EntryKind.CLOCK_CONFIRMED
    trusted = read.recorded_at if confirmed or not doubtful else head.trusted_at
    return Head(installation=head.installation, seq=entry.seq, hash=entry.hash, trusted_at=trusted)


def says_the_same(entry: Entry, draft: Draft) -> bool:
    """Whether an entry was made from a draft of these very words.

    The words of an erased payload cannot be compared any more; its header decides alone.
    """
    header = entry.read_header()
    names = ("idem", "item", "kind", "occurred", "device", "actor", "established", "corrects",
             "erases", "second")  # fmt: skip
    if any(getattr(header, name) != getattr(draft, name) for name in names):
        return False
    return entry.salt is None or payload_digest(entry.salt, draft.payload) == header.payload_digest


def begin(installation: InstallationId) -> Head:
    """Return the head of an empty record.

    Raises:
        BadInputError: the installation has no name.
    """
    if not installation.strip():
        fault = Fault(place="installation", message=MessageId("ledger.append.installation"))
        raise BadInputError([fault])
    return Head(installation=installation)


def _check_target(head: Head, draft: Draft, target: Entry | None) -> None:
    """Refuse to correct or erase what is not there, and to erase what must stay."""
    at = draft.corrects if draft.erases is None else draft.erases
    if at is None:
        return
    if target is None or target.seq != at or not 0 < at <= head.seq:
        raise _refused("ledger.append.no_target", at, head)
    header = target.read_header()
    if header.kind is EntryKind.ERASED:
        raise _refused("ledger.append.erasure_stays", at, head)
    if draft.erases is not None and target.erased:
        raise _refused("ledger.append.erased_already", at, head)
    if header.item != draft.item:
        raise _refused("ledger.append.other_item", at, head)
    said = read_payload(draft.payload)
    if draft.corrects is not None and header.kind is not EntryKind.CORRECTED and "payload" in said:
        kind = EntryKind(str(said.get("kind", header.kind)))
        thing = ItemId(str(said.get("item", header.item)))
        check_payload(kind, thing, cast("Payload", said["payload"]))


def _refused(message: str, at: int, head: Head) -> BadInputError:
    values = (("seq", str(at)), ("last", str(head.seq)))
    return BadInputError([Fault(place="target", message=MessageId(message), values=values)])


def _header(
    head: Head, draft: Draft, now: dt.datetime, salt: bytes, seen: dt.datetime | None
) -> Header:
    flags = clock_flags(now, draft.occurred, trusted=head.trusted_at, seen=seen)
    return Header(
        installation=head.installation,
        seq=head.seq + 1,
        prev=head.hash,
        recorded_at=now,
        idem=draft.idem,
        item=draft.item,
        kind=draft.kind,
        form=draft.form or FORMS[draft.kind],
        occurred=draft.occurred,
        device=draft.device,
        actor=draft.actor,
        established=draft.established,
        payload_digest=payload_digest(salt, draft.payload),
        flags=flags,
        trusted_at=None if DOUBTED.isdisjoint(flags) else head.trusted_at,
        corrects=draft.corrects,
        erases=draft.erases,
        second=draft.second,
    )
