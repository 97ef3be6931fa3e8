"""How is the whole store read at one moment while others go on writing?"""

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from django.db import connections, transaction

_ALIAS = "snapshot"


@contextmanager
def snapshot(alias: str, folder: Path) -> Iterator[str]:
    """Give the name of a connection that shows the store as it is now, whatever is written.

    Args:
        folder: where SQLite's copy lies meanwhile; it needs as much room as the database.
    """
    settings = dict(connections.databases[alias])
    embedded = connections[alias].vendor == "sqlite"
    with tempfile.TemporaryDirectory(dir=folder, prefix=".snapshot-") as beside:
        if embedded:
            copy = Path(beside) / "copy.sqlite3"
            # In one step: a copy made page by page begins anew with every entry that comes in.
            with connections[alias].cursor() as cursor:
                cursor.execute("VACUUM INTO %s", [str(copy)])
            settings["NAME"] = copy
        connections.databases[_ALIAS] = settings
        try:
            with transaction.atomic(using=_ALIAS):
                if not embedded:
                    with connections[_ALIAS].cursor() as cursor:
                        cursor.execute("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY")
                yield _ALIAS
        finally:
            connections[_ALIAS].close()
            del connections[_ALIAS]
            del connections.databases[_ALIAS]
