"""Everything leaves in open files, nothing in it lets anybody sign in, and it comes back equal."""

import csv
import io
import json
import zipfile
from pathlib import Path

from tests.integration.store.test_backups import _photo
from tests.integration.store_acts import NOON, draft, store_in, worn
from tests.integration.store_databases import Database, Databases

from sootline.core.ledger import EntryKind, ItemKind, component, item
from sootline.storage.attachments import AttachmentStore
from sootline.storage.backups import restore_backup
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import User
from sootline.wiring.full_export import export_everything

WORDS = "a pass phrase of some length"


def _filled(database: Database) -> LedgerStore:
    store = store_in(database)
    said = {"kind": "hood", "owner": "=1+1", "station": "2", "made": "2024",
            "state": {"custody": "hook", "stage": "checked"}}  # fmt: skip
    store.append([draft("m", EntryKind.REGISTERED, item(ItemKind.MEMBER, "118"), crew="E2")])
    store.append([draft("r", EntryKind.REGISTERED, component("H1"), **said)])  # type: ignore[arg-type]
    store.append([worn("w", "H1")])
    User.objects.make("Maren", WORDS, ["officer"], member="118")
    AttachmentStore(folder=database.folder).keep(_photo(), now=NOON)
    return store


def _parts(file: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(file) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def test_it_comes_back_equal(database: Database, databases: Databases, tmp_path: Path) -> None:
    """Out, in elsewhere, and out again: every part is the same, byte for byte."""
    first, second = tmp_path / "a.zip", tmp_path / "b.zip"
    export_everything(_filled(database), first)
    fresh = databases.fresh(database.vendor)
    restored = LedgerStore(folder=fresh.folder, now=lambda: NOON)
    restore_backup(restored, first)

    export_everything(restored, second)

    assert _parts(first) == _parts(second)
    assert sum(name.startswith("attachments/") for name in _parts(first)) == 1


def test_no_password_leaves(database: Database, databases: Databases, tmp_path: Path) -> None:
    """Neither its hash; the account comes back and waits for a new one."""
    export_everything(_filled(database), tmp_path / "a.zip")

    hashed = User.objects.get().password.encode()
    assert all(hashed not in part for part in _parts(tmp_path / "a.zip").values())
    fresh = databases.fresh(database.vendor)
    restore_backup(LedgerStore(folder=fresh.folder, now=lambda: NOON), tmp_path / "a.zip")
    account = User.objects.get()
    assert (account.name, account.roles, account.has_usable_password()) == (
        "maren", ["officer"], False,
    )  # fmt: skip


def test_the_lists_open_in_a_spreadsheet(database: Database, tmp_path: Path) -> None:
    """A row for each piece and member; what looks like a formula is marked as a text."""
    export_everything(_filled(database), tmp_path / "a.zip")
    parts = _parts(tmp_path / "a.zip")

    text = parts["components.csv"].decode("utf-8-sig")
    (row,) = csv.DictReader(io.StringIO(text))
    assert (row["id"], row["owner"], row["stage"], row["last_entry"]) == (
        "H1", "'=1+1", "worn", "3",
    )  # fmt: skip
    assert '"118","E2"' in parts["members.csv"].decode("utf-8-sig")
    assert json.loads(parts["contents.json"])["sootline"] == "backup"
