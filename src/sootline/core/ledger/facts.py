"""What does an entry report, once its texts are read?"""

import datetime as dt
import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import cast

from sootline.core.basis import (
    BadInputError,
    DeviceId,
    Fault,
    InstallationId,
    ItemId,
    MemberId,
    MessageId,
)
from sootline.core.ledger.canonical import Json
from sootline.core.ledger.entries import Entry, Header, header_of
from sootline.core.ledger.foreign import taken_entry
from sootline.core.ledger.forms import FORMS, UPCASTERS, Payload, Upcaster, upcast
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.times import DOUBTED, ClockFlag, Occurred

NOTHING: Payload = MappingProxyType({})

_read = json.JSONDecoder().decode


@dataclass(frozen=True, kw_only=True, slots=True)
class Fact:
    """What one entry reports.

    Args:
        seq: its place in this record.
        here: the installation that keeps this record.
        origin, origin_seq: the installation that wrote it, and its place there.
        earliest, latest: when it counts as having happened: the true span as far as the clock is
            known, or the moment of recording where its time cannot be right.
        known_from: when it was recorded, as far as the recording clock can be believed.
        payload: empty when it is erased.
        readable: whether this program knows how to read what another installation wrote.
    """

    seq: int
    here: InstallationId
    origin: InstallationId
    origin_seq: int
    item: ItemId
    kind: EntryKind
    occurred: Occurred
    earliest: dt.datetime
    latest: dt.datetime
    recorded_at: dt.datetime
    known_from: dt.datetime
    flags: tuple[ClockFlag, ...]
    device: DeviceId
    actor: MemberId
    corrects: int | None
    erases: int | None
    payload: Payload
    erased: bool = False
    readable: bool = True

    def text(self, name: str) -> str | None:
        """Return what the payload says under a name, where it is a text."""
        value = self.payload.get(name)
        return value if isinstance(value, str) else None


def read_facts(
    entries: Iterable[Entry],
    *,
    forms: Mapping[EntryKind, int] = FORMS,
    upcasters: Mapping[tuple[EntryKind, int], Upcaster] = UPCASTERS,
) -> tuple[Fact, ...]:
    """Read what entries report; whether they are the ones written is `verify_chain`'s question.

    Args:
        forms, upcasters: the newest form of each kind, and how older ones are read.

    Raises:
        BadInputError: with every entry of our own that this program does not know how to read.
    """
    facts, faults = [], []
    for entry in entries:
        try:
            facts.append(_fact(entry, forms, upcasters))
        except BadInputError as error:
            place = f"entry {entry.seq}"
            faults += [
                Fault(place=place, message=fault.message, values=fault.values)
                for fault in error.faults
            ]
    if faults:
        raise BadInputError(faults)
    return tuple(facts)


def _fact(
    entry: Entry,
    forms: Mapping[EntryKind, int],
    upcasters: Mapping[tuple[EntryKind, int], Upcaster],
) -> Fact:
    header = header_of(_json(entry.header))
    payload = NOTHING if entry.payload is None else _payload(entry.payload)
    payload = upcast(header.kind, header.form, payload, forms=forms, upcasters=upcasters)
    if header.kind is not EntryKind.FOREIGN or entry.payload is None:
        return _made(header, payload, erased=entry.payload is None)
    try:
        # Another installation may have had it from a third.
        inner = _fact(taken_entry(payload).entry, forms, upcasters)
    except BadInputError:
        return _made(header, payload, readable=False)
    return _abroad(header, inner)


def _abroad(outer: Header, inner: Fact) -> Fact:
    """Place what another installation reports in this record: our seq, our name of the thing."""
    late = ClockFlag.FUTURE in outer.flags and not inner.flags
    return Fact(
        seq=outer.seq,
        here=outer.installation,
        origin=inner.origin,
        origin_seq=inner.origin_seq,
        item=outer.item,
        kind=inner.kind,
        occurred=inner.occurred,
        earliest=outer.recorded_at if late else inner.earliest,
        latest=outer.recorded_at if late else inner.latest,
        recorded_at=outer.recorded_at,
        known_from=_known_from(outer),
        flags=inner.flags or (outer.flags if late else ()),
        device=inner.device,
        actor=inner.actor,
        corrects=inner.corrects,
        erases=inner.erases,
        payload=inner.payload,
        erased=inner.erased,
        readable=inner.readable,
    )


def _made(header: Header, payload: Payload, *, erased: bool = False, readable: bool = True) -> Fact:
    occurred = header.occurred
    if not header.flags:
        earliest, latest = occurred.true_earliest, occurred.true_latest
    elif DOUBTED.isdisjoint(header.flags):
        earliest = latest = header.recorded_at
    else:
        earliest = latest = _known_from(header)
    return Fact(
        seq=header.seq,
        here=header.installation,
        origin=header.installation,
        origin_seq=header.seq,
        item=header.item,
        kind=header.kind,
        occurred=occurred,
        earliest=earliest,
        latest=latest,
        recorded_at=header.recorded_at,
        known_from=_known_from(header),
        flags=header.flags,
        device=header.device,
        actor=header.actor,
        corrects=header.corrects,
        erases=header.erases,
        payload=payload,
        erased=erased,
        readable=readable,
    )


def _known_from(header: Header) -> dt.datetime:
    if DOUBTED.isdisjoint(header.flags):
        return header.recorded_at
    return header.trusted_at or header.recorded_at


def _json(text: str) -> Json:
    try:
        return cast("Json", _read(text))
    except (ValueError, RecursionError):
        fault = Fault(place="entry", message=MessageId("ledger.canonical.no_json"))
        raise BadInputError([fault]) from None


def _payload(text: str) -> Payload:
    payload = _json(text)
    if not isinstance(payload, dict):
        raise BadInputError([Fault(place="payload", message=MessageId("ledger.payload.no_object"))])
    return payload


def known_at(facts: Iterable[Fact], when: dt.datetime | int | None) -> Iterator[Fact]:
    """Leave out what was not in the record yet.

    Args:
        when: a place in the record, or a moment; entries whose clock is flagged count as recorded
            when the last trusted one was.
    """
    for fact in facts:
        if when is None:
            yield fact
        elif isinstance(when, int):
            if fact.seq <= when:
                yield fact
        elif fact.known_from <= when:
            yield fact
