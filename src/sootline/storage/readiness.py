"""May this store be written to, or is something amiss that makes it read-only?"""

import logging
from typing import Any

from django.db import DatabaseError, connections
from django.db.backends.base.base import BaseDatabaseWrapper

from sootline.core.basis import Fault, MessageId, SootlineError
from sootline.storage.guards import missing

_LOG = logging.getLogger(__name__)
_CAREFUL = {"fsync": "on", "full_page_writes": "on", "synchronous_commit": "on"}
_SYNCED = (2, 3)


class ReadOnlyError(SootlineError):
    """The record takes no entries until somebody has looked at what is amiss.

    Args:
        faults: what is amiss.
    """

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        self.faults = faults
        self.message = MessageId("store.read_only")
        super().__init__("; ".join(f"{fault.place}: {fault.message}" for fault in faults))


def find_faults(alias: str = "default") -> tuple[Fault, ...]:
    """List everything that forbids writing: guards, and settings that would lose entries."""
    connection = connections[alias]
    try:
        gone = missing(connection)
        faults = [_fault("guards", "store.guard_missing", guard=name) for name in gone]
        return (*faults, *_settings_faults(connection))
    except DatabaseError as error:
        return (_fault("database", "store.unreachable", what=type(error).__name__),)


def after_migration(*, using: str, verbosity: int = 1, **_rest: Any) -> None:  # noqa: ANN401
    """Say it loudly when a migration has taken guards away.

    The tables may be in another form then; the store opens read-only until guards are back.
    """
    gone = missing(connections[using])
    if gone and verbosity:
        _LOG.error("guards missing after a migration: the store is read-only")


def _settings_faults(connection: BaseDatabaseWrapper) -> list[Fault]:
    if connection.vendor == "sqlite":
        return _sqlite_faults(connection)
    with connection.cursor() as cursor:
        cursor.execute("SELECT name, setting FROM pg_settings WHERE name = ANY(%s)", [[*_CAREFUL]])
        return [
            _fault(f"database.{name}", "store.setting", value=value, limit=_CAREFUL[name])
            for name, value in sorted(cursor.fetchall())
            if value != _CAREFUL[name]
        ]


def _sqlite_faults(connection: BaseDatabaseWrapper) -> list[Fault]:
    found = []
    with connection.cursor() as cursor:
        synchronous = cursor.execute("PRAGMA synchronous").fetchone()[0]
        if synchronous not in _SYNCED:
            value = str(synchronous)
            found.append(_fault("database.synchronous", "store.setting", value=value, limit="2"))
        journal = cursor.execute("PRAGMA journal_mode").fetchone()[0]
        if journal != "wal":
            found.append(
                _fault("database.journal_mode", "store.setting", value=journal, limit="wal")
            )
    return found


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))
