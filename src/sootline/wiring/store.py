"""Which database and folder answer? To be imported once the framework is started."""

import datetime as dt

from django.conf import settings

from sootline.core.ledger.lives import Question
from sootline.storage.attachments import AttachmentStore
from sootline.storage.backups import Backup, read_backup, restore_backup, write_backup
from sootline.storage.checkup import Checked, check_up
from sootline.storage.ledger import LedgerStore
from sootline.storage.preparing import prepare
from sootline.storage.questions import read_questions
from sootline.storage.readiness import find_faults
from sootline.storage.register import RegisterStore
from sootline.tasks.recording import Book

__all__ = [
    "Backup",
    "Checked",
    "attachments",
    "check_up",
    "find_faults",
    "now",
    "open_book",
    "open_questions",
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


def open_book(station: str | None = None) -> Book:
    """Return where acts are recorded, and what the record adds up to.

    Args:
        station: shows only what belongs to it, or to none; None shows everything.
    """
    return Book(ledger=open_store(), register=RegisterStore(station=station))


def open_questions(station: str | None = None) -> tuple[Question, ...]:
    """Return what does not fit together in the record, the newest first.

    Args:
        station: only of what belongs to it, or to none; None is all.
    """
    return read_questions("default", station=station)


def attachments() -> AttachmentStore:
    """Return the attachments of the data directory."""
    return AttachmentStore(folder=settings.DATA_DIR)
