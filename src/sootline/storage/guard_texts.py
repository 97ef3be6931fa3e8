"""Which guards does each database keep over the record, word for word?

Every trigger has one text, shipped here and compared with what the database holds.
"""

TABLES = ("ledger_entry", "ledger_payload", "attachment", "look", "installation")
_BEGINNING = "0" * 64

# What the copies of an entry must repeat of its header.
_COPIES = ("seq", "prev", "idem", "actor", "item", "kind", "corrects", "erases")


def sqlite_guards() -> dict[str, str]:
    """Return the triggers of SQLite by name."""
    guards: dict[str, str] = {}
    for table in TABLES:
        guards |= _sqlite_refusal(table, "update")
        if table != "ledger_payload":
            guards |= _sqlite_refusal(table, "delete")
    guards["ledger_payload_no_delete"] = (
        "CREATE TRIGGER ledger_payload_no_delete BEFORE DELETE ON ledger_payload "
        "WHEN NOT EXISTS (SELECT 1 FROM ledger_entry e WHERE e.kind = 'erased' "
        "AND e.erases = OLD.seq AND json_extract(e.header, '$.erases') = OLD.seq "
        "AND json_extract(e.header, '$.second.person') <> json_extract(e.header, '$.actor')) "
        "BEGIN SELECT RAISE(ABORT, 'the record is not deleted: ledger_payload'); END"
    )
    guards["ledger_entry_in_order"] = _sqlite_order()
    # Every entry comes with a payload, so that one erased is never the last and cannot come back.
    guards["ledger_payload_once"] = (
        "CREATE TRIGGER ledger_payload_once BEFORE INSERT ON ledger_payload "
        "WHEN NEW.seq <= (SELECT coalesce(max(seq), 0) FROM ledger_payload) "
        "BEGIN SELECT RAISE(ABORT, 'a payload comes with its entry, once'); END"
    )
    guards["installation_once"] = (
        "CREATE TRIGGER installation_once BEFORE INSERT ON installation "
        "WHEN NEW.id <> 1 OR EXISTS (SELECT 1 FROM installation) "
        "BEGIN SELECT RAISE(ABORT, 'the installation is named once'); END"
    )
    for table, key in (("attachment", "sha256"), ("look", "id")):
        guards[f"{table}_once"] = (
            f"CREATE TRIGGER {table}_once BEFORE INSERT ON {table} "
            f"WHEN EXISTS (SELECT 1 FROM {table} WHERE {key} = NEW.{key}) "
            f"BEGIN SELECT RAISE(ABORT, 'already there: {table}'); END"
        )
    return guards


def _sqlite_refusal(table: str, act: str) -> dict[str, str]:
    name = f"{table}_no_{act}"
    text = (
        f"CREATE TRIGGER {name} BEFORE {act.upper()} ON {table} "
        f"BEGIN SELECT RAISE(ABORT, 'the record is not {act}d: {table}'); END"
    )
    return {name: text}


def _sqlite_order() -> str:
    copies = " OR ".join(
        f"NEW.{name} IS NOT json_extract(NEW.header, '$.{name}')" for name in _COPIES
    )
    last = "(SELECT hash FROM ledger_entry ORDER BY seq DESC LIMIT 1)"
    return (
        "CREATE TRIGGER ledger_entry_in_order BEFORE INSERT ON ledger_entry "
        "WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM ledger_entry) "
        f"OR NEW.prev IS NOT coalesce({last}, '{_BEGINNING}') "
        "OR EXISTS (SELECT 1 FROM ledger_entry WHERE actor = NEW.actor AND idem = NEW.idem) "
        f"OR {copies} "
        "BEGIN SELECT RAISE(ABORT, 'an entry does not join on to the record'); END"
    )


# Integrity errors (23514), so that both databases refuse with the same error.
_REFUSE = "RAISE EXCEPTION '{said}' USING ERRCODE = '23514';"


def postgresql_functions() -> dict[str, str]:
    """Return the bodies of the functions that PostgreSQL's triggers call, by name."""
    copies = " OR ".join(
        f"NEW.{name}::text IS DISTINCT FROM (NEW.header::jsonb ->> '{name}')" for name in _COPIES
    )
    return {
        "record_refuse": (
            "BEGIN RAISE EXCEPTION 'the record is not rewritten: %', TG_TABLE_NAME "
            "USING ERRCODE = '23514'; END"
        ),
        "record_in_order": (
            "DECLARE last record; BEGIN "
            "SELECT seq, hash INTO last FROM ledger_entry ORDER BY seq DESC LIMIT 1; "
            "IF NEW.seq IS DISTINCT FROM coalesce(last.seq, 0) + 1 "
            f"OR NEW.prev IS DISTINCT FROM coalesce(last.hash, '{_BEGINNING}') "
            "OR EXISTS (SELECT 1 FROM ledger_entry WHERE actor = NEW.actor AND idem = NEW.idem) "
            f"OR {copies} THEN "
            + _REFUSE.format(said="an entry does not join on to the record")
            + " END IF; RETURN NEW; END"
        ),
        "record_payload_once": (
            "BEGIN IF NEW.seq <= (SELECT coalesce(max(seq), 0) FROM ledger_payload) THEN "
            + _REFUSE.format(said="a payload comes with its entry, once")
            + " END IF; RETURN NEW; END"
        ),
        "record_payload_erase": (
            "BEGIN IF NOT EXISTS (SELECT 1 FROM ledger_entry e WHERE e.kind = 'erased' "
            "AND e.erases = OLD.seq AND (e.header::jsonb ->> 'erases')::bigint = OLD.seq "
            "AND (e.header::jsonb -> 'second' ->> 'person') "
            "IS DISTINCT FROM (e.header::jsonb ->> 'actor') "
            "AND (e.header::jsonb -> 'second' ->> 'person') IS NOT NULL) THEN "
            + _REFUSE.format(said="the record is not deleted: ledger_payload")
            + " END IF; RETURN OLD; END"
        ),
        "record_installation_once": (
            "BEGIN IF NEW.id <> 1 THEN "
            + _REFUSE.format(said="the installation is named once")
            + " END IF; RETURN NEW; END"
        ),
    }


def postgresql_guards() -> dict[str, str]:
    """Return the triggers of PostgreSQL by name."""
    guards: dict[str, str] = {}
    for table in TABLES:
        guards |= _postgresql(table, "no_update", "BEFORE UPDATE", "ROW", "record_refuse")
        guards |= _postgresql(table, "no_truncate", "BEFORE TRUNCATE", "STATEMENT", "record_refuse")
        erasable = table == "ledger_payload"
        function = "record_payload_erase" if erasable else "record_refuse"
        guards |= _postgresql(table, "no_delete", "BEFORE DELETE", "ROW", function)
    guards |= _postgresql("ledger_entry", "in_order", "BEFORE INSERT", "ROW", "record_in_order")
    guards |= _postgresql("ledger_payload", "once", "BEFORE INSERT", "ROW", "record_payload_once")
    return guards | _postgresql(
        "installation", "once", "BEFORE INSERT", "ROW", "record_installation_once"
    )


def _postgresql(table: str, what: str, when: str, each: str, function: str) -> dict[str, str]:
    name = f"{table}_{what}"
    text = (
        f"CREATE TRIGGER {name} {when} ON public.{table} "
        f"FOR EACH {each} EXECUTE FUNCTION {function}()"
    )
    return {name: text}
