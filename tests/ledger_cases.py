"""Entries of invented departments, for the tests of the record."""

import datetime as dt
from collections.abc import Sequence

from sootline.core.basis import DeviceId, InstallationId, ItemId, MemberId
from sootline.core.ledger import (
    ClockSource,
    Draft,
    Entry,
    EntryKind,
    Established,
    Head,
    Occurred,
    Second,
    append,
    begin,
    component,
    item,
    write_payload,
)
from sootline.core.ledger.items import ItemKind

ZONE = dt.timezone(dt.timedelta(hours=1))
DAY = dt.datetime(2026, 3, 1, tzinfo=ZONE)
TARN_HOLLOW = InstallationId("tarn-hollow")
SHELL = component("0412")


def at(text: str, day: dt.datetime = DAY) -> dt.datetime:
    """Return a time of the day ("04:20")."""
    hours, minutes = text.split(":")
    return day.replace(hour=int(hours), minute=int(minutes))


def span(first: str, last: str | None = None, *, offset_s: int | None = 0) -> Occurred:
    """Return a span of the day as read from a device."""
    return Occurred(
        earliest=at(first), latest=at(last or first), clock=ClockSource.DEVICE, offset_s=offset_s
    )


def draft(
    what: EntryKind,
    when: str | Occurred,
    /,
    *,
    thing: ItemId = SHELL,
    device: str = "phone-a",
    actor: str = "201",
    key: str | None = None,
    corrects: int | None = None,
    erases: int | None = None,
    second: Second | None = None,
    after: int | None = None,
    payload_of: dict[str, str] | None = None,
    **payload: object,
) -> Draft:
    """Return a draft with what most tests do not care about filled in."""
    occurred = span(when) if isinstance(when, str) else when
    return Draft(
        idem=key or f"{device}/{what}/{thing}/{occurred.earliest.isoformat()}/{corrects}/{erases}",
        item=thing,
        kind=what,
        occurred=occurred,
        device=DeviceId(device),
        actor=MemberId(actor),
        established=Established.PIN,
        payload=write_payload({**payload, **(payload_of or {})}),
        corrects=corrects,
        erases=erases,
        second=second,
        after=after,
    )


class Book:
    """A record that keeps its entries in a list."""

    def __init__(self, installation: InstallationId = TARN_HOLLOW) -> None:
        self.head: Head = begin(installation)
        self.entries: list[Entry] = []
        self.now = at("08:00")

    def add(self, *drafts: Draft, seen: dt.datetime | None = None) -> Entry:
        """Append drafts one after another, and return the last entry."""
        for one in drafts:
            target = one.corrects or one.erases
            done = append(
                self.head,
                one,
                now=self.now,
                salt=self.head.seq.to_bytes(16, "big"),
                target=self.entries[target - 1] if target else None,
                seen=seen,
            )
            self.head = done.head
            self.entries.append(done.entry)
        return self.entries[-1]

    def erase(self, seq: int) -> None:
        """Take a payload and its salt away, as the keeper of a record does."""
        kept = self.entries[seq - 1]
        self.entries[seq - 1] = Entry(
            seq=kept.seq, header=kept.header, hash=kept.hash, salt=None, payload=None
        )


def recorded(drafts: Sequence[Draft]) -> list[Entry]:
    """Return the entries of a fresh record with these drafts."""
    book = Book()
    book.add(*drafts)
    return book.entries


def load(name: str) -> ItemId:
    """Return the id of a load."""
    return item(ItemKind.LOAD, name)
