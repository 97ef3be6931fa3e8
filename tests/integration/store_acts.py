"""What the store's tests write down: an invented department's entries."""

import datetime as dt
from collections.abc import Callable

from tests.integration.store_databases import Database

from sootline.core.basis import DeviceId, InstallationId, ItemId, MemberId
from sootline.core.ledger import (
    ClockSource,
    Draft,
    EntryKind,
    Established,
    Occurred,
    Second,
    component,
    write_payload,
)
from sootline.storage.ledger import LedgerStore

NOON = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)


def store_in(database: Database, now: Callable[[], dt.datetime] = lambda: NOON) -> LedgerStore:
    """Return the store of a database, begun."""
    store = LedgerStore(folder=database.folder, now=now)
    store.begin(InstallationId("tarn-hollow"))
    return store


def worn(key: str, piece: str = "0412", *, actor: str = "118", after: int | None = None) -> Draft:
    """Draft that a piece was worn."""
    return draft(key, EntryKind.WORN, component(piece), actor=actor, after=after, member="118")


def erasure(key: str, seq: int, item: ItemId, *, second: str = "120") -> Draft:
    """Draft that two people have a payload erased."""
    other = Second(person=MemberId(second), established=Established.SIGNED_IN)
    return draft(key, EntryKind.ERASED, item, erases=seq, second=other, reason="court order")


def draft(
    key: str,
    kind: EntryKind,
    item: ItemId,
    /,
    *,
    actor: str = "118",
    after: int | None = None,
    erases: int | None = None,
    corrects: int | None = None,
    second: Second | None = None,
    **payload: object,
) -> Draft:
    """Draft an entry of any kind."""
    return Draft(
        idem=key,
        item=item,
        kind=kind,
        occurred=Occurred.at(NOON, ClockSource.SERVER),
        device=DeviceId("office"),
        actor=MemberId(actor),
        established=Established.SIGNED_IN,
        payload=write_payload(**payload),
        after=after,
        erases=erases,
        corrects=corrects,
        second=second,
    )
