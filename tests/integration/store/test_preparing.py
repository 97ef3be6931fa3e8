"""Tables come into their newest form by themselves; the app's own role may only read and add."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from django.core.management import call_command
from django.db import DatabaseError, connection, connections, transaction
from tests.conftest import COULD_NOT
from tests.integration.store_acts import NOON, store_in, worn
from tests.integration.store_databases import Database, Databases, lead_to

from sootline.core.basis import InstallationId
from sootline.project.databases import database as settings_of
from sootline.storage.data_dir import data_dir, secret_key
from sootline.storage.guards import missing
from sootline.storage.ledger import LedgerStore
from sootline.storage.preparing import prepare
from sootline.storage.readiness import find_faults

REFUSED_TO_THE_APP = (
    "UPDATE ledger_entry SET hash = 'x'",
    "DELETE FROM ledger_entry",
    "TRUNCATE ledger_entry CASCADE",
    "UPDATE ledger_payload SET body = '{}'",
    "TRUNCATE ledger_payload",
    "DELETE FROM ledger_payload",
    "UPDATE attachment SET bytes = 0",
    "DELETE FROM look",
    "ALTER TABLE ledger_entry DISABLE TRIGGER ALL",
    "ALTER TABLE ledger_entry ADD COLUMN more text",
    "DROP TRIGGER ledger_entry_no_update ON ledger_entry",
    "DROP TABLE ledger_payload",
    "CREATE OR REPLACE FUNCTION record_refuse() RETURNS trigger LANGUAGE plpgsql "
    "AS $$BEGIN RETURN NEW; END$$",
    "SET session_replication_role = replica",
    "UPDATE django_migrations SET name = 'x'",
)


def _store(database: Database) -> LedgerStore:
    return LedgerStore(folder=database.folder, now=lambda: NOON)


def test_an_empty_database_is_made_ready(databases: Databases) -> None:
    """From nothing to a record with a name, as often as it is asked for."""
    store = _store(databases.fresh("sqlite", migrated=False))

    prepare(store)
    prepare(store)

    assert store.head().seq == 0
    assert (find_faults(), missing(connection)) == ((), ())


def test_a_record_keeps_its_name(database: Database) -> None:
    """An installation is named once."""
    store = store_in(database)

    assert store.begin(InstallationId("other")).installation == "tarn-hollow"


def test_a_copy_before_tables_change(databases: Databases) -> None:
    """Before a migration changes tables that hold something, the file is copied beside."""
    database = databases.fresh("sqlite", migrated=False)
    call_command("migrate", "storage", "0002", verbosity=0)
    store = store_in(database)
    store.append([worn("a")])

    prepare(store)

    (copy,) = (database.folder / "before-change").iterdir()
    assert copy.stat().st_size > 0
    assert store.head().seq == 1


@pytest.fixture
def shared(databases: Databases) -> Iterator[Database]:
    """Make a PostgreSQL database that one role owns and another uses."""
    if not databases.able("postgresql"):
        pytest.skip(f"{COULD_NOT}: no PostgreSQL server is installed (make services)")
    made = databases.fresh("postgresql", migrated=False)
    server, name = databases.server(), made.folder.name
    for role in (f"owner_{name}", f"app_{name}"):
        server.run(f"CREATE ROLE {role} LOGIN")
    server.run(f"ALTER DATABASE {name} OWNER TO owner_{name}")
    server.run(f"ALTER SCHEMA public OWNER TO owner_{name}", database=name)
    app = Database(vendor="postgresql", folder=made.folder, url=server.url(name, f"app_{name}"))
    lead_to(app)
    owner = settings_of(server.url(name, f"owner_{name}"), made.folder)
    connections.databases["owner"] = {**connections.databases["default"], **owner}
    yield app
    connections["owner"].close()
    del connections["owner"]
    del connections.databases["owner"]


def test_the_app_may_only_read_and_add(shared: Database) -> None:
    """The owner makes the tables; the app writes entries, and nothing that rewrites is let pass."""
    store = _store(shared)
    prepare(store)
    store.append([worn("a")])

    for statement in REFUSED_TO_THE_APP:
        with pytest.raises(DatabaseError), transaction.atomic():
            connection.cursor().execute(statement)

    assert (find_faults(), store.head().seq) == ((), 1)


def test_the_command_alone_leaves_no_rights(databases: Databases) -> None:
    """Migrating by the framework's own command ends with every guard in place too."""
    databases.fresh("sqlite", migrated=False)

    call_command("migrate", verbosity=0)

    assert missing(connection) == ()


def test_settings_that_would_lose_entries(databases: Databases) -> None:
    """A database that does not write through is read-only, and says which setting."""
    databases.fresh("sqlite")
    with connection.cursor() as cursor:
        cursor.execute("PRAGMA synchronous=NORMAL")

    assert [(one.place, one.values) for one in find_faults()] == [
        ("database.synchronous", (("value", "1"), ("limit", "2")))
    ]


def test_a_database_that_is_not_there(tmp_path: Path, databases: Databases) -> None:
    """It is said, and nothing fails on top of it."""
    databases.fresh("sqlite")
    lead_to(Database(vendor="sqlite", folder=tmp_path / "gone"))

    assert [one.message for one in find_faults()] == ["store.unreachable"]


@pytest.mark.parametrize(
    ("platform", "environment", "end"),
    [
        ("linux", {"SOOTLINE_DATA": "/srv/gear"}, "/srv/gear"),
        ("linux", {"XDG_DATA_HOME": "/x"}, "/x/sootline"),
        ("linux", {}, "/.local/share/sootline"),
        ("darwin", {}, "/Library/Application Support/Sootline"),
        ("win32", {"LOCALAPPDATA": "/l"}, "/l/Sootline"),
        ("win32", {}, "/AppData/Local/Sootline"),
    ],
)
def test_where_the_data_lies(platform: str, environment: dict[str, str], end: str) -> None:
    """By the variable, else in the usual place of the platform."""
    assert str(data_dir(environment, platform=platform)).endswith(end)


def test_one_secret_for_ever(tmp_path: Path) -> None:
    """It is made once, long, and for its owner alone."""
    first, again = secret_key(tmp_path / "d"), secret_key(tmp_path / "d")

    assert (first, len(first) >= 64) == (again, True)
    assert ((tmp_path / "d" / "secret-key").stat().st_mode & 0o777) == 0o600
