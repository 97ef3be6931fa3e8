"""Do the tables screens read say what the entries add up to? A replay beside them tells."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from enum import StrEnum
from hashlib import sha256

from django.db import connections, models, transaction

from sootline.core.basis import ItemId
from sootline.core.ledger import component
from sootline.storage.ledger import POSTGRESQL_LOCK, LedgerStore
from sootline.storage.models import ComponentRow, Thing
from sootline.storage.projecting import replay
from sootline.storage.snapshots import snapshot

_AT_ONCE = 2000


class Difference(StrEnum):
    """How a row differs from what the entries make of it."""

    MISSING = "missing"
    EXTRA = "extra"
    OTHER = "other"


@dataclass(frozen=True, kw_only=True)
class Compared:
    """What came of comparing.

    Args:
        entries, rows: how many were read.
        differing: the things whose rows differ, and how; none when the tables are right.
    """

    entries: int
    rows: int
    differing: tuple[tuple[ItemId, Difference], ...] = ()


def compare(store: LedgerStore) -> Compared:
    """Replay the record beside its tables and hold each row against them; nothing is changed.

    SQLite's record is copied first and others go on writing; PostgreSQL's writers wait meanwhile.
    """
    with _beside(store) as alias:
        before = dict(_rows(alias))
        entries = replay(alias)
        after = dict(_rows(alias))
        transaction.set_rollback(True, using=alias)
    differing = tuple(
        (item, _difference(before.get(item), after.get(item)))
        for item in sorted(before.keys() | after.keys())
        if before.get(item) != after.get(item)
    )
    return Compared(entries=entries, rows=len(after), differing=differing)


def _difference(before: str | None, after: str | None) -> Difference:
    if before is None:
        return Difference.MISSING
    return Difference.EXTRA if after is None else Difference.OTHER


@contextmanager
def _beside(store: LedgerStore) -> Iterator[str]:
    """Give a connection on which the record may be replayed without anybody seeing it."""
    if connections[store.alias].vendor == "sqlite":
        with snapshot(store.alias, store.folder) as alias:
            yield alias
        return
    with transaction.atomic(using=store.alias):
        with connections[store.alias].cursor() as cursor:
            cursor.execute("SELECT pg_advisory_xact_lock(%s)", [POSTGRESQL_LOCK])
        yield store.alias


def _rows(alias: str) -> Iterator[tuple[ItemId, str]]:
    """Return every thing with a hash of its row."""
    for row in _each(ComponentRow, alias):
        yield component(row[0]), _digest(row)
    for row in _each(Thing, alias):
        yield ItemId(row[0]), _digest(row)


def _each(model: type[models.Model], alias: str) -> Iterator[tuple[str, ...]]:
    rows = model._default_manager.using(alias).order_by("pk").values_list()
    return rows.iterator(chunk_size=_AT_ONCE)


def _digest(row: tuple[object, ...]) -> str:
    return sha256(repr(row).encode()).hexdigest()
