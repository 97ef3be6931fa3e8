"""A backup holds everything up to its moment, comes back on either database, and shows damage."""

import io
import threading
import zipfile
from pathlib import Path

import pytest
from django.db import connection, connections
from PIL import Image
from tests.conftest import COULD_NOT
from tests.integration.store_acts import NOON, erasure, store_in, worn
from tests.integration.store_databases import Database, Databases

from sootline.core.basis import BadInputError
from sootline.core.ledger import Entry, component, verify_chain
from sootline.storage.attachments import AttachmentStore
from sootline.storage.backups import read_backup, restore_backup, write_backup
from sootline.storage.guards import missing
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import ComponentRow, Look, User

OTHER = {"sqlite": "postgresql", "postgresql": "sqlite"}


def _photo() -> bytes:
    target = io.BytesIO()
    Image.new("RGB", (8, 8), "red").save(target, "JPEG")
    return target.getvalue()


def _filled(database: Database) -> LedgerStore:
    store = store_in(database)
    store.append([worn("a", "0412"), worn("b", "0413"), worn("c", "0412")])
    store.append([erasure("e", 1, component("0412"))])
    User.objects.make("Maren", "a pass phrase of some length", ["officer"], member="118")
    Look.objects.create(at=NOON, actor="118", member="120", what="exposures")
    AttachmentStore(folder=database.folder).keep(_photo(), now=NOON)
    return store


def _everything(store: LedgerStore) -> tuple[list[Entry], list[object], list[object]]:
    rows: list[object] = [*ComponentRow.objects.order_by("id").values_list()]
    return list(store.entries()), rows, [*User.objects.values_list("name", "password", "roles")]


@pytest.mark.parametrize("other", [False, True], ids=["same", "moved"])
def test_a_backup_comes_back(
    database: Database, databases: Databases, tmp_path: Path, other: bool
) -> None:
    """Every byte and hash of the record, the rows, accounts and photos: on either database."""
    store = _filled(database)
    before, head = _everything(store), store.head()
    written = write_backup(store, tmp_path / "b.zip")
    vendor = OTHER[database.vendor] if other else database.vendor
    if not databases.able(vendor):
        pytest.skip(f"{COULD_NOT}: no PostgreSQL server is installed (make services)")

    fresh = databases.fresh(vendor)
    restored = LedgerStore(folder=fresh.folder, now=lambda: NOON)
    restore_backup(restored, tmp_path / "b.zip")

    assert connection.vendor == vendor
    assert (_everything(restored), restored.head()) == (before, head)
    assert (written.entries, written.attachments, written.accounts) == (4, 1, 1)
    assert missing(connection) == ()
    assert list(AttachmentStore(folder=fresh.folder).damaged()) == []
    assert User.objects.get().check_password("a pass phrase of some length")
    restored.append([worn("d")])


def test_a_backup_does_not_overwrite(database: Database, tmp_path: Path) -> None:
    """A file that is there stays as it is."""
    (tmp_path / "b.zip").write_text("mine")

    with pytest.raises(BadInputError):
        write_backup(_filled(database), tmp_path / "b.zip")

    assert (tmp_path / "b.zip").read_text() == "mine"


def test_a_store_in_use_is_not_restored_over(database: Database, tmp_path: Path) -> None:
    """A backup only comes back where there is nothing yet."""
    store = _filled(database)
    write_backup(store, tmp_path / "b.zip")

    with pytest.raises(BadInputError) as raised:
        restore_backup(store, tmp_path / "b.zip")

    assert raised.value.faults[0].message == "store.restore.not_empty"


def _rewritten(file: Path, part: str, data: bytes) -> None:
    with zipfile.ZipFile(file) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    parts[part] = data
    with zipfile.ZipFile(file, "w") as archive:
        for name, content in parts.items():
            archive.writestr(name, content)


@pytest.mark.parametrize(
    "damage",
    [
        lambda file: _rewritten(file, "record.jsonl", b""),
        lambda file: _rewritten(file, "tables.jsonl", b"{}"),
        lambda file: _rewritten(file, "extra", b""),
        lambda file: _rewritten(file, "contents.json", b'{"sootline": "backup", "form": 9}'),
        lambda file: file.write_bytes(file.read_bytes()[:-200]),
        lambda file: file.write_text("no archive"),
    ],
    ids=["record", "tables", "extra", "form", "cut", "other"],
)
def test_a_damaged_backup_is_refused(databases: Databases, tmp_path: Path, damage: object) -> None:
    """A changed part, one too many, a form not known, a file cut short: each is refused."""
    file = tmp_path / "b.zip"
    write_backup(_filled(databases.fresh("sqlite")), file)

    damage(file)  # type: ignore[operator]

    with pytest.raises(BadInputError):
        read_backup(file)


def test_backups_during_writes(database: Database, tmp_path: Path) -> None:
    """A backup taken while others write holds at least what was acknowledged when it began."""
    store = store_in(database)
    stop = threading.Event()

    def write() -> None:
        n = 0
        while not stop.is_set():
            store.append([worn(f"k{n}")])
            n += 1
        connections.close_all()

    writer = threading.Thread(target=write)
    writer.start()
    try:
        for n in range(5):
            acknowledged = store.head().seq
            backup = write_backup(store, tmp_path / f"{n}.zip")
            assert backup.entries >= acknowledged
            assert backup.verified.intact
    finally:
        stop.set()
        writer.join()
    assert verify_chain(store.entries()).intact
