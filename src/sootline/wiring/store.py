"""Which database and folder answer? To be imported once the framework is started."""

import datetime as dt

from django.conf import settings

from sootline.storage.attachments import AttachmentStore
from sootline.storage.backups import Backup, read_backup, restore_backup, write_backup
from sootline.storage.ledger import LedgerStore
from sootline.storage.preparing import prepare
from sootline.storage.readiness import find_faults

__all__ = [
    "Backup",
    "attachments",
    "find_faults",
    "now",
    "open_store",
    "prepare",
    "read_backup",
    "restore_backup",
    "write_backup",
]


def now() -> dt.datetime:
    """Read the machine's clock."""
    return dt.datetime.now(dt.UTC)


def open_store() -> LedgerStore:
    """Return the record of the data directory."""
    return LedgerStore(folder=settings.DATA_DIR, now=now)


def attachments() -> AttachmentStore:
    """Return the attachments of the data directory."""
    return AttachmentStore(folder=settings.DATA_DIR)
