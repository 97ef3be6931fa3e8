"""What is one entry, and what does its header say?

An entry is two texts. The header never changes; the payload stands apart with its salt, and two
people may have it erased. Both are kept as the very texts that were hashed.
"""

import datetime as dt
import unicodedata
from dataclasses import dataclass
from typing import cast

from sootline.core.basis import (
    BadInputError,
    DeviceId,
    Fault,
    InstallationId,
    ItemId,
    MemberId,
    MessageId,
    UnreadableValueError,
    require_offset,
)
from sootline.core.ledger.canonical import Json, canonical, read_canonical
from sootline.core.ledger.forms import read_occurred
from sootline.core.ledger.hashing import ALGORITHM, BEGINNING, FORMAT
from sootline.core.ledger.items import parse_item
from sootline.core.ledger.kinds import EntryKind, Established
from sootline.core.ledger.times import ClockFlag, Occurred


@dataclass(frozen=True, kw_only=True, slots=True)
class Second:
    """The other person an erasure needs, and how that one was established."""

    person: MemberId
    established: Established

    def __post_init__(self) -> None:
        object.__setattr__(self, "person", unicodedata.normalize("NFC", self.person))


@dataclass(frozen=True, kw_only=True, slots=True)
class Header:
    """What an entry says about itself, never to be changed.

    Args:
        seq: its place in the record, from 1, without gaps.
        prev: the hash of the entry before it.
        recorded_at: when, by the recording machine's clock.
        idem: the key by which a repeated request is known again; unique for one actor.
        form: in which form its payload is written.
        actor: who recorded it; who did the deed stands in the payload.
        flags: what is wrong with its times.
        trusted_at: of an entry whose clock is flagged: when the last entry before it was recorded
            whose clock was not.
        corrects: the entry it corrects.
        erases: the entry whose payload it has erased.
        second: the other person, of an erasure.
    """

    installation: InstallationId
    seq: int
    prev: str
    recorded_at: dt.datetime
    idem: str
    item: ItemId
    kind: EntryKind
    form: int
    occurred: Occurred
    device: DeviceId
    actor: MemberId
    established: Established
    payload_digest: str
    flags: tuple[ClockFlag, ...] = ()
    trusted_at: dt.datetime | None = None
    corrects: int | None = None
    erases: int | None = None
    second: Second | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Entry:
    """One entry as it is kept.

    Args:
        seq: its place; the header says the same.
        header: canonical JSON, exactly the bytes that were hashed.
        hash: hexadecimal.
        salt, payload: None when the payload was erased.
    """

    seq: int
    header: str
    hash: str
    salt: bytes | None
    payload: str | None

    def read_header(self) -> Header:
        """Return what the header says; faults as `read_header` names them."""
        return read_header(self.header, place=f"entry {self.seq}")

    @property
    def erased(self) -> bool:
        """Whether the payload is gone."""
        return self.payload is None


@dataclass(frozen=True, kw_only=True, slots=True)
class Head:
    """Where the record ends, and what the next entry must join on to.

    Args:
        seq: of the last entry; 0 of an empty record.
        hash: of the last entry.
        trusted_at: when the last entry whose clock was not flagged was recorded.
    """

    installation: InstallationId
    seq: int = 0
    hash: str = BEGINNING
    trusted_at: dt.datetime | None = None

    def __post_init__(self) -> None:
        require_offset(self.trusted_at)


def write_header(header: Header) -> str:
    """Return a header's one text."""
    occurred = header.occurred
    document: dict[str, object] = {
        "v": FORMAT,
        "alg": ALGORITHM,
        "installation": header.installation,
        "seq": header.seq,
        "prev": header.prev,
        "recorded_at": header.recorded_at.isoformat(),
        "idem": header.idem,
        "item": header.item,
        "kind": header.kind.value,
        "form": header.form,
        "occurred": {
            "earliest": occurred.earliest.isoformat(),
            "latest": occurred.latest.isoformat(),
            "clock": occurred.clock.value,
            "offset_s": occurred.offset_s,
        },
        "device": header.device,
        "actor": header.actor,
        "established": header.established.value,
        "payload_digest": header.payload_digest,
    }
    if header.flags:
        document["flags"] = [flag.value for flag in header.flags]
    if header.trusted_at is not None:
        document["trusted_at"] = header.trusted_at.isoformat()
    if header.corrects is not None:
        document["corrects"] = header.corrects
    if header.erases is not None:
        document["erases"] = header.erases
    if header.second is not None:
        second = header.second
        document["second"] = {"person": second.person, "established": second.established.value}
    return canonical(document, place="header")


def read_header(text: str, *, place: str = "header") -> Header:
    """Return what a header's text says.

    A format, an algorithm, a kind or a field that this program does not know is refused, not
    guessed.

    Args:
        place: what faults call the entry.

    Raises:
        BadInputError: the text is not canonical, or says something unknown.
    """
    return header_of(read_canonical(text, place=place), place=place)


def header_of(document: Json, *, place: str = "header") -> Header:
    """Return what a header says that is read already; faults as `read_header`."""
    if not isinstance(document, dict):
        raise _refused(place, "ledger.header.no_object")
    if document.get("v") != FORMAT or document.get("alg") != ALGORITHM:
        values = {"v": str(document.get("v")), "alg": str(document.get("alg"))}
        raise _refused(place, "ledger.header.version", **values)
    try:
        return _header(document)
    except UnreadableValueError as error:
        fault = Fault(place=place, message=error.message, values=error.values)
        raise BadInputError([fault]) from None
    except (KeyError, ValueError, TypeError, AttributeError) as error:
        raise _refused(place, "ledger.header.unreadable", what=str(error)) from None


def _header(document: dict[str, Json]) -> Header:
    """Read the fields; anything unknown or missing raises."""
    fields = dict(document)
    occurred = read_occurred(fields.pop("occurred"))
    second = fields.pop("second", None)
    flags = fields.pop("flags", [])
    trusted = fields.pop("trusted_at", None)
    del fields["v"], fields["alg"]
    read = Header(
        recorded_at=dt.datetime.fromisoformat(_text(fields.pop("recorded_at"))),
        item=parse_item(_text(fields.pop("item"))),
        kind=EntryKind(_text(fields.pop("kind"))),
        established=Established(_text(fields.pop("established"))),
        occurred=occurred,
        flags=tuple(ClockFlag(_text(flag)) for flag in cast("list[Json]", flags)),
        trusted_at=None if trusted is None else dt.datetime.fromisoformat(_text(trusted)),
        second=None if second is None else _second(second),
        **fields,  # type: ignore[arg-type]  # names and types are checked just below
    )
    for name in ("seq", "form", "corrects", "erases"):
        if type(getattr(read, name)) not in (int, type(None)):
            raise TypeError(name)
    for name in ("installation", "prev", "idem", "device", "actor", "payload_digest"):
        _text(getattr(read, name))
    require_offset(read.recorded_at, read.trusted_at)
    return read


def _second(value: Json) -> Second:
    fields = cast("dict[str, Json]", value)
    return Second(
        person=MemberId(_text(fields["person"])),
        established=Established(_text(fields["established"])),
    )


def _text(value: object) -> str:
    if not isinstance(value, str):
        raise TypeError(repr(value))
    return value


def _refused(place: str, message: str, **values: str) -> BadInputError:
    fault = Fault(place=place, message=MessageId(message), values=tuple(values.items()))
    return BadInputError([fault])
