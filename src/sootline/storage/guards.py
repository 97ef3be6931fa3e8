"""Are the guards over the record in place, word for word, and how do they get there?"""

from django.db.backends.base.base import BaseDatabaseWrapper

from sootline.storage.guard_texts import (
    postgresql_functions,
    postgresql_guards,
    sqlite_guards,
)


def install(connection: BaseDatabaseWrapper) -> None:
    """Put every guard in place anew."""
    with connection.cursor() as cursor:
        if connection.vendor == "sqlite":
            for name, text in sqlite_guards().items():
                cursor.execute(f"DROP TRIGGER IF EXISTS {name}")
                cursor.execute(text)
            return
        for name, body in postgresql_functions().items():
            cursor.execute(
                f"CREATE OR REPLACE FUNCTION {name}() RETURNS trigger LANGUAGE plpgsql "
                f"SET search_path = pg_catalog, public AS $body${body}$body$"
            )
        for name, text in postgresql_guards().items():
            table = text.partition(" ON public.")[2].partition(" ")[0]
            cursor.execute(f"DROP TRIGGER IF EXISTS {name} ON {table}")
            cursor.execute(text)
            # ALWAYS: also where a session calls itself a replica, which silences usual triggers.
            cursor.execute(f"ALTER TABLE {table} ENABLE ALWAYS TRIGGER {name}")


def missing(connection: BaseDatabaseWrapper) -> tuple[str, ...]:
    """List the guards that are not there, switched off, or say something else than shipped."""
    if connection.vendor == "sqlite":
        wanted, found = sqlite_guards(), _sqlite_found(connection)
    else:
        wanted = postgresql_guards() | postgresql_functions()
        found = _postgresql_found(connection)
    return tuple(sorted(name for name, text in wanted.items() if found.get(name) != text))


def _sqlite_found(connection: BaseDatabaseWrapper) -> dict[str, str]:
    with connection.cursor() as cursor:
        cursor.execute("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
        return dict(cursor.fetchall())


def _postgresql_found(connection: BaseDatabaseWrapper) -> dict[str, str]:
    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT tgname, pg_get_triggerdef(oid) FROM pg_trigger "
            "WHERE NOT tgisinternal AND tgenabled = 'A'"
        )
        found = dict(cursor.fetchall())
        cursor.execute(
            "SELECT proname, prosrc FROM pg_proc WHERE pronamespace = 'public'::regnamespace"
        )
        return found | dict(cursor.fetchall())
