"""What must be done before the store can be used: tables, guards, rights, a name?"""

import datetime as dt
from pathlib import Path

from django.conf import settings
from django.core.management import call_command
from django.db import connections
from django.db.migrations.executor import MigrationExecutor

from sootline.storage.guard_texts import TABLES
from sootline.storage.ledger import LedgerStore

_KEPT = 3


def prepare(store: LedgerStore, *, begin: bool = True) -> None:
    """Bring the tables into their newest form and begin the record, as often as called.

    With an owner's address, the owner changes the tables and the app is left with reading and
    adding. Before tables that hold something are changed, SQLite's file is copied beside.

    Args:
        begin: False leaves an empty record without a name, for a backup to come back into.

    Raises:
        DatabaseError: the database cannot be reached, or refuses.
    """
    owner = "owner" if "owner" in settings.DATABASES else store.alias
    if _waiting(owner):
        _copy_beside(store)
        call_command("migrate", database=owner, verbosity=0, interactive=False)
    if owner != store.alias:
        grant(owner, str(connections[store.alias].settings_dict["USER"]))
    if begin:
        store.begin()


def grant(owner: str, app: str) -> None:
    """Leave the app's own role with reading, adding and what rows that follow need.

    Args:
        owner: the connection that owns the tables.
        app: the role the app connects as.
    """
    connection = connections[owner]
    role = connection.ops.quote_name(app)
    with connection.cursor() as cursor:
        cursor.execute(f"GRANT USAGE ON SCHEMA public TO {role}")
        cursor.execute(
            f"GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO {role}"
        )
        cursor.execute(f"GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO {role}")
        cursor.execute(f"REVOKE INSERT, UPDATE, DELETE ON django_migrations FROM {role}")
        for table in TABLES:
            cursor.execute(f"REVOKE UPDATE, DELETE, TRUNCATE ON {table} FROM {role}")
        # A payload may go where an erasure names it; the guard looks.
        cursor.execute(f"GRANT DELETE ON ledger_payload TO {role}")


def _waiting(alias: str) -> bool:
    """Whether the tables are not in their newest form yet."""
    executor = MigrationExecutor(connections[alias])
    return bool(executor.migration_plan(executor.loader.graph.leaf_nodes()))


def _copy_beside(store: LedgerStore) -> None:
    """Keep a copy of a database file that holds entries, and the last few of such copies."""
    connection = connections[store.alias]
    if connection.vendor != "sqlite" or "ledger_entry" not in (
        connection.introspection.table_names()
    ):
        return
    folder = Path(store.folder) / "before-change"
    folder.mkdir(exist_ok=True, mode=0o700)
    name = f"{dt.datetime.now(dt.UTC):%Y%m%dT%H%M%S%f}.sqlite3"
    with connection.cursor() as cursor:
        cursor.execute("VACUUM INTO %s", [str(folder / name)])
    for old in sorted(folder.glob("*.sqlite3"))[:-_KEPT]:
        old.unlink()
