"""How does the whole store leave as one file, and how does it come back, on either database?

A ZIP file of open parts: the record as JSON Lines, the accounts and the other tables as JSON, the
attachments under the hashes of their bytes, and a list of all parts with their hashes. It is read
again and verified before anybody is told that it is there.
"""

import json
import os
import zipfile
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from itertools import islice
from pathlib import Path
from typing import Any

from django.core import serializers
from django.db import models, transaction

from sootline import __version__
from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.ledger import Anchor, Entry, Verification, take_anchor, verify_chain
from sootline.core.ledger.exports import export_all, read_head, read_line
from sootline.storage import entries
from sootline.storage.attachments import AttachmentStore
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import Attachment, EntryRow, Installation, Look, User
from sootline.storage.projecting import replay
from sootline.storage.snapshots import snapshot

BACKUP_FORM = 1
_RECORD, _LIST, _TABLES = "record.jsonl", "contents.json", "tables.jsonl"
_OTHERS: tuple[type[models.Model], ...] = (User, Look, Attachment)
_AT_ONCE = 500
# What no hash of a password begins with.
_NO_PASSWORD = "!"  # noqa: S105
Lists = Callable[[str], Mapping[str, str]]


@dataclass(frozen=True, kw_only=True)
class Backup:
    """What a backup file holds, as it was read back.

    Args:
        anchor: how far the record in it reaches; None of an empty one.
    """

    file: Path
    entries: int
    attachments: int
    accounts: int
    anchor: Anchor | None
    verified: Verification


def write_backup(
    store: LedgerStore, file: Path, *, secrets: bool = True, lists: Lists | None = None
) -> Backup:
    """Write the whole store into a file while others go on writing, and read it back.

    Args:
        secrets: False leaves the passwords' hashes out: whoever is in it cannot sign in before an
            administrator gives a new one.
        lists: makes further files for people to read, by name, from the same moment.

    Raises:
        BadInputError: the file is there already, or what was written does not verify.
        OSError: there is no room, or no right to write there.
    """
    if file.exists():
        raise _refused("store.backup.exists", file)
    beside = file.with_name(f".{file.name}.{os.getpid()}.part")
    try:
        with snapshot(store.alias, store.folder) as alias:
            _write(store, alias, beside, secrets=secrets, lists=lists)
        backup = read_backup(beside)
        with beside.open("rb+") as written:
            os.fsync(written.fileno())
        beside.replace(file)
        store.keep_anchor(once_a_day=False)
    finally:
        beside.unlink(missing_ok=True)
    return Backup(**{**backup.__dict__, "file": file})


def read_backup(file: Path) -> Backup:
    """Verify a backup file: every part's hash, the record's chain, its end.

    Raises:
        BadInputError: it is no backup, or something in it is not what was written.
    """
    try:
        with zipfile.ZipFile(file) as archive:
            contents = _contents(archive, file)
            anchor = read_head(next(_lines(archive))).anchor
            found = verify_chain(_entries(archive), [anchor] if anchor else [])
            rows = archive.read(_TABLES).decode().splitlines()
    except (zipfile.BadZipFile, KeyError, OSError, StopIteration) as error:
        raise _refused("store.backup.unreadable", file, what=type(error).__name__) from None
    if not found.intact:
        raise _refused("store.backup.damaged", file, what=f"entry {found.first_bad}")
    accounts = sum('"storage.user"' in row for row in rows)
    return Backup(
        file=file,
        entries=found.entries,
        attachments=sum(name.startswith("attachments/") for name in contents),
        accounts=accounts,
        anchor=anchor,
        verified=found,
    )


def restore_backup(store: LedgerStore, file: Path) -> Backup:
    """Bring a backup back into an empty store, entry by entry under its guards.

    Raises:
        BadInputError: the file does not verify, or the store is not empty.
    """
    backup = read_backup(file)
    alias = store.alias
    if Installation.objects.using(alias).exists() or User.objects.using(alias).exists():
        raise _refused("store.restore.not_empty", file)
    attachments = AttachmentStore(folder=store.folder, alias=alias)
    with zipfile.ZipFile(file) as archive, transaction.atomic(using=alias):
        head = read_head(next(_lines(archive)))
        for name in archive.namelist():
            if name.startswith("attachments/"):
                attachments.write(Path(name).name, archive.read(name))
        Installation.objects.using(alias).create(name=head.installation, since=store.now())
        entries.insert_many(_entries(archive), head.installation, alias)
        for row in serializers.deserialize("jsonl", archive.read(_TABLES), using=alias):
            if not isinstance(row.object, Attachment):
                row.object.pk = None
            row.save(using=alias)
        replay(alias)
    found = verify_chain(store.entries(), [backup.anchor] if backup.anchor else [])
    if not found.intact or EntryRow.objects.using(alias).count() != backup.entries:
        raise _refused("store.backup.damaged", file, what=f"entry {found.first_bad}")
    return backup


def _write(
    store: LedgerStore, alias: str, file: Path, *, secrets: bool, lists: Lists | None
) -> None:
    hashes: dict[str, str] = {}
    installation = Installation.objects.using(alias).get().name
    every = EntryRow.objects.using(alias).order_by("seq").values_list("hash", flat=True)
    head = entries.read_head(alias)
    anchor = take_anchor(head.installation, every.iterator(), store.now())
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED, compresslevel=3) as archive:
        lines = export_all(head.installation, entries.read_entries(alias), anchor)
        hashes[_RECORD] = _put_lines(archive, _RECORD, lines)
        hashes[_TABLES] = _put_lines(archive, _TABLES, _rows(alias, secrets=secrets))
        attachments = AttachmentStore(folder=store.folder, alias=alias)
        for row in Attachment.objects.using(alias).order_by("sha256"):
            data, _media_type = attachments.read(row.sha256)
            archive.writestr(f"attachments/{row.sha256}", data, zipfile.ZIP_STORED)
            hashes[f"attachments/{row.sha256}"] = sha256(data).hexdigest()
        for name, text in (lists(alias) if lists else {}).items():
            archive.writestr(name, text)
            hashes[name] = sha256(text.encode()).hexdigest()
        contents = {"sootline": "backup", "form": BACKUP_FORM, "program": __version__,
                    "installation": installation, "parts": hashes}  # fmt: skip
        archive.writestr(_LIST, json.dumps(contents, indent=1, sort_keys=True))


def _put_lines(archive: zipfile.ZipFile, name: str, lines: Iterator[str]) -> str:
    digest = sha256()
    with archive.open(name, "w", force_zip64=True) as part:
        while some := list(islice(lines, _AT_ONCE)):
            data = ("\n".join(some) + "\n").encode()
            digest.update(data)
            part.write(data)
    return digest.hexdigest()


def _rows(alias: str, *, secrets: bool) -> Iterator[str]:
    for model in _OTHERS:
        for row in model._default_manager.using(alias).order_by("pk").iterator():
            if isinstance(row, User) and not secrets:
                row.password = _NO_PASSWORD
            yield str(serializers.serialize("jsonl", [row])).rstrip("\n")


def _contents(archive: zipfile.ZipFile, file: Path) -> dict[str, str]:
    """Hold every part to the hash it is listed with.

    Raises:
        BadInputError: a part is missing, is not listed, or is another.
    """
    contents: Any = json.loads(archive.read(_LIST))
    if contents.get("sootline") != "backup" or contents.get("form") != BACKUP_FORM:
        raise _refused("store.backup.form", file, form=str(contents.get("form")))
    parts: dict[str, str] = contents["parts"]
    if sorted([*parts, _LIST]) != sorted(archive.namelist()):
        raise _refused("store.backup.damaged", file, what=_LIST)
    for name, wanted in parts.items():
        digest = sha256()
        with archive.open(name) as part:
            while data := part.read(2**20):
                digest.update(data)
        if digest.hexdigest() != wanted:
            raise _refused("store.backup.damaged", file, what=name)
    return parts


def _lines(archive: zipfile.ZipFile) -> Iterator[str]:
    with archive.open(_RECORD) as part:
        for line in part:
            yield line.decode().rstrip("\n")


def _entries(archive: zipfile.ZipFile) -> Iterator[Entry]:
    lines = _lines(archive)
    next(lines)
    for place, line in enumerate(lines, start=1):
        yield read_line(line, place).entry


def _refused(message: str, file: Path, **values: str) -> BadInputError:
    named = (("file", str(file)), *values.items())
    return BadInputError([Fault(place="backup", message=MessageId(message), values=named)])
