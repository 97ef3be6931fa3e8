"""With which few statements does an entry come in? Fixed texts: they run under the record's lock.

Putting a query together anew each time takes longer than the database needs to answer it. Only
names of our own tables and columns stand in the texts; every value is handed over beside them.
"""

import datetime as dt
from functools import cache

from django.db import connections, models

from sootline.storage.models import EntryRow, Installation

_ENTRY = EntryRow._meta.db_table
_NAME = f"SELECT name FROM {Installation._meta.db_table}"  # noqa: S608
_LAST = f"SELECT seq, hash, trusted_at FROM {_ENTRY} ORDER BY seq DESC LIMIT 1"  # noqa: S608
_KEY = f"SELECT seq FROM {_ENTRY} WHERE actor = %s AND idem = %s"  # noqa: S608


def installation_name(alias: str) -> str:
    """Return whose record it is.

    Raises:
        Installation.DoesNotExist: the record was never begun.
    """
    found = _one(alias, _NAME, ())
    if found is None:
        raise Installation.DoesNotExist
    return str(found[0])


def last_entry(alias: str) -> tuple[int, str, dt.datetime | None] | None:
    """Return place, hash and trusted moment of the last entry; None of an empty record."""
    found = _one(alias, _LAST, ())
    if found is None:
        return None
    seq, digest, trusted = found
    if isinstance(trusted, dt.datetime) and trusted.tzinfo is None:
        trusted = trusted.replace(tzinfo=dt.UTC)  # SQLite keeps moments in UTC, without saying so
    return seq, digest, trusted  # type: ignore[return-value]  # columns of these kinds


def seq_of_key(actor: str, idem: str, alias: str) -> int | None:
    """Return the place of the entry an actor recorded under a key."""
    found = _one(alias, _KEY, (actor, idem))
    return None if found is None else found[0]  # type: ignore[return-value]


def put(row: models.Model, alias: str) -> None:
    """Add one row.

    Raises:
        IntegrityError: a guard or a constraint refuses it.
    """
    connection = connections[alias]
    fields = row._meta.concrete_fields
    values = [
        field.get_db_prep_save(getattr(row, field.attname), connection=connection)
        for field in fields
    ]
    with connection.cursor() as cursor:
        cursor.execute(_insert(type(row)), values)


@cache
def _insert(model: type[models.Model]) -> str:
    columns = [field.column for field in model._meta.concrete_fields]
    marks = ", ".join(["%s"] * len(columns))
    return f"INSERT INTO {model._meta.db_table} ({', '.join(columns)}) VALUES ({marks})"  # noqa: S608


def _one(alias: str, text: str, values: tuple[str, ...]) -> tuple[object, ...] | None:
    with connections[alias].cursor() as cursor:
        cursor.execute(text, values)
        return cursor.fetchone()  # type: ignore[no-any-return]
