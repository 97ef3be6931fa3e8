"""No way of rewriting the record is let through: not by the framework, not by plain SQL."""

from collections.abc import Callable

import pytest
from django.db import DatabaseError, connection, models, transaction
from django.db.models import F
from django.utils import timezone
from tests.integration.store_acts import erasure, store_in, worn
from tests.integration.store_databases import Database, lead_to

from sootline.core.ledger import Entry, component, verify_chain
from sootline.storage.guards import install, missing
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import Attachment, EntryRow, Installation, Look, PayloadRow
from sootline.storage.readiness import ReadOnlyError

ROW = "SELECT 3, header, prev, hash, 'x', actor, item, kind, recorded_at, trusted_at, NULL, NULL"
COLUMNS = (
    "seq, header, prev, hash, idem, actor, item, kind, recorded_at, trusted_at, corrects, erases"
)
BOTH = {
    "update header": "UPDATE ledger_entry SET header = '{}' WHERE seq = 1",
    "update hash": "UPDATE ledger_entry SET hash = 'x'",
    "update copy": "UPDATE ledger_entry SET actor = 'nobody' WHERE seq = 2",
    "update key": "UPDATE ledger_entry SET seq = 9 WHERE seq = 2",
    "update to itself": "UPDATE ledger_entry SET seq = seq",
    "delete one": "DELETE FROM ledger_entry WHERE seq = 2",
    "delete all": "DELETE FROM ledger_entry",
    "delete payload": "DELETE FROM ledger_payload WHERE seq = 1",
    "delete all payloads": "DELETE FROM ledger_payload",
    "update payload": "UPDATE ledger_payload SET body = '{}' WHERE seq = 1",
    "update salt": "UPDATE ledger_payload SET salt = ''",
    "payload again": "INSERT INTO ledger_payload SELECT 1, salt, body FROM ledger_payload",
    "upsert": f"INSERT INTO ledger_entry ({COLUMNS}) SELECT {COLUMNS} FROM ledger_entry "
    "WHERE seq = 1 ON CONFLICT (seq) DO UPDATE SET header = '{}'",
    "gap": f"INSERT INTO ledger_entry ({COLUMNS}) SELECT 7, header, prev, hash, 'x', actor, "
    "item, kind, recorded_at, trusted_at, NULL, NULL FROM ledger_entry WHERE seq = 1",
    "wrong previous": f"INSERT INTO ledger_entry ({COLUMNS}) {ROW} FROM ledger_entry WHERE seq = 1",
    "before the first": f"INSERT INTO ledger_entry ({COLUMNS}) SELECT 0, header, prev, hash, 'x', "
    "actor, item, kind, recorded_at, trusted_at, NULL, NULL FROM ledger_entry WHERE seq = 1",
    "copies that lie": f"INSERT INTO ledger_entry ({COLUMNS}) SELECT 3, header, hash, hash, 'x', "
    "actor, item, kind, recorded_at, trusted_at, NULL, NULL FROM ledger_entry WHERE seq = 2",
    "rename installation": "UPDATE installation SET name = 'other'",
    "delete installation": "DELETE FROM installation",
    "forget a look": "DELETE FROM look",
    "change a look": "UPDATE look SET actor = 'x'",
    "forget a photo": "DELETE FROM attachment",
    "change a photo": "UPDATE attachment SET sha256 = 'x'",
}
ONLY = {
    "sqlite": {
        "replace": f"INSERT OR REPLACE INTO ledger_entry ({COLUMNS}) "
        f"SELECT {COLUMNS} FROM ledger_entry WHERE seq = 1",
        "replace word": f"REPLACE INTO ledger_entry ({COLUMNS}) "
        f"SELECT {COLUMNS} FROM ledger_entry WHERE seq = 2",
        "replace by key": f"REPLACE INTO ledger_entry ({COLUMNS}) SELECT 3, header, hash, hash, "
        "idem, actor, item, kind, recorded_at, trusted_at, NULL, NULL "
        "FROM ledger_entry WHERE seq = 2",
        "replace payload": "REPLACE INTO ledger_payload SELECT 2, salt, '{}' FROM ledger_payload",
        "replace installation": "REPLACE INTO installation SELECT 1, 'x', since FROM installation",
        "replace look": "REPLACE INTO look SELECT * FROM look",
        "replace photo": "REPLACE INTO attachment SELECT * FROM attachment",
        "update or replace": "UPDATE OR REPLACE ledger_entry SET seq = 1 WHERE seq = 2",
    },
    "postgresql": {
        "truncate": "TRUNCATE ledger_entry CASCADE",
        "truncate payloads": "TRUNCATE ledger_payload",
        "truncate looks": "TRUNCATE look",
        "truncate photos": "TRUNCATE attachment",
        "merge": "MERGE INTO ledger_entry e USING (SELECT 1 AS seq) s ON e.seq = s.seq "
        "WHEN MATCHED THEN UPDATE SET header = '{}'",
        "as a replica": "SET LOCAL session_replication_role = replica; DELETE FROM ledger_payload",
        "in one expression": "WITH gone AS (DELETE FROM ledger_payload RETURNING *) "
        "SELECT count(*) FROM gone",
    },
}
Act = Callable[[], object]


def _save_again() -> None:
    row = EntryRow.objects.get(seq=1)
    row.kind = "issued"
    row.save()


def _forced_insert() -> None:
    row = EntryRow.objects.get(seq=1)
    row.save(force_insert=True)


BY_THE_FRAMEWORK: dict[str, Act] = {
    "save": _save_again,
    "insert again": _forced_insert,
    "delete": lambda: EntryRow.objects.get(seq=2).delete(),
    "delete many": lambda: PayloadRow.objects.all().delete(),
    "update": lambda: EntryRow.objects.filter(seq=1).update(kind="issued"),
    "update by expression": lambda: EntryRow.objects.update(recorded_at=F("recorded_at")),
    "bulk update": lambda: EntryRow.objects.bulk_update(list(EntryRow.objects.all()), ["kind"]),
    "update or create": lambda: EntryRow.objects.update_or_create(seq=1, defaults={"kind": "x"}),
    "upsert": lambda: PayloadRow.objects.bulk_create(
        list(PayloadRow.objects.all()),
        update_conflicts=True,
        update_fields=["body"],
        unique_fields=["seq"],
    ),
    "payload save": lambda: PayloadRow.objects.get(seq=1).save(),
}


@pytest.fixture
def store(database: Database) -> LedgerStore:
    """Make a record of two entries, with a look and a photo beside it."""
    made = store_in(database)
    made.append([worn("a", "0412"), worn("b", "0413")])
    Look.objects.create(at=timezone.now(), actor="118", member="120", what="exposures")
    Attachment.objects.create(
        sha256="a" * 64, original_sha256="b" * 64, media_type="image/jpeg", bytes=1,
        added_at=timezone.now(),
    )  # fmt: skip
    return made


def _whole(store: LedgerStore) -> tuple[list[Entry], int, int, str]:
    name = Installation.objects.get().name
    return list(store.entries()), Look.objects.count(), Attachment.objects.count(), name


def _refused(act: Act, store: LedgerStore) -> None:
    before = _whole(store)
    with pytest.raises(DatabaseError), transaction.atomic():
        act()
    assert _whole(store) == before


def test_sql_that_rewrites(store: LedgerStore, database: Database) -> None:
    """Each of some thirty statements on each database is refused and changes nothing."""
    ways = BOTH | ONLY[database.vendor]
    assert len(ways) >= 20

    for statement in ways.values():
        _refused(lambda text=statement: connection.cursor().execute(text), store)  # type: ignore[misc]


def test_the_framework_cannot_rewrite(store: LedgerStore) -> None:
    """Nor does any call of the framework get past the guards."""
    for act in BY_THE_FRAMEWORK.values():
        _refused(act, store)


def test_an_erasure_opens_one_payload_only(store: LedgerStore) -> None:
    """What two people had erased is gone; everything else stays guarded."""
    store.append([erasure("e", 1, component("0412"))])

    _refused(lambda: PayloadRow.objects.filter(seq=2).delete(), store)
    _refused(lambda: PayloadRow.objects.filter(seq=3).delete(), store)
    _refused(lambda: PayloadRow.objects.create(seq_id=1, salt="00", body="{}"), store)


def test_guards_are_as_shipped(store: LedgerStore) -> None:
    """After migration every guard's text is the shipped one, and putting them anew is harmless."""
    assert missing(connection) == ()

    install(connection)

    assert missing(connection) == ()
    assert verify_chain(store.entries()).intact


def test_a_missing_guard_closes_the_record(database: Database) -> None:
    """Without one of its guards the store takes no entry, and says which guard is gone."""
    store = store_in(database)
    with connection.cursor() as cursor:
        on = "" if database.vendor == "sqlite" else " ON ledger_entry"
        cursor.execute(f"DROP TRIGGER ledger_entry_no_update{on}")

    with pytest.raises(ReadOnlyError) as raised:
        store.append([worn("a")])

    assert raised.value.faults[0].values == (("guard", "ledger_entry_no_update"),)
    assert store.head().seq == 0


def test_a_guard_that_says_something_else(database: Database) -> None:
    """A guard of the right name and other words counts as missing."""
    with connection.cursor() as cursor:
        if database.vendor == "sqlite":
            cursor.execute("DROP TRIGGER look_no_delete")
            cursor.execute(
                "CREATE TRIGGER look_no_delete BEFORE DELETE ON look BEGIN SELECT 1; END"
            )
        else:
            cursor.execute("ALTER TABLE look DISABLE TRIGGER look_no_delete")

    assert missing(connection) == ("look_no_delete",)


def _add_column(model: type[models.Model]) -> None:
    field: models.CharField[str, str] = models.CharField(max_length=9, default="x")
    field.set_attributes_from_name("added")
    with connection.schema_editor() as editor:
        editor.add_field(model, field)


def test_a_table_rebuilt_by_a_migration(database: Database) -> None:
    """A migration that rebuilds a table takes SQLite's triggers away: found, and read-only.

    PostgreSQL changes the table in place and keeps them.
    """
    _add_column(Attachment)

    gone = missing(connection)
    assert bool(gone) == (database.vendor == "sqlite")
    if gone:
        with pytest.raises(ReadOnlyError):
            store_in(database).append([worn("c")])


def test_entries_are_not_rebuilt_by_the_way(store: LedgerStore, database: Database) -> None:
    """SQLite cannot rebuild the table of entries under its guards: it stays as it was, whole."""
    before = _whole(store)

    if database.vendor == "sqlite":
        with pytest.raises(DatabaseError):
            _add_column(EntryRow)
        lead_to(database)  # as a process that stops over it
    else:
        _add_column(EntryRow)

    assert missing(connection) == ()
    assert _whole(store) == before
