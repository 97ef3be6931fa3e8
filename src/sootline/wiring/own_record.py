"""Where is the store's own record read? To be imported once the framework is started."""

from collections.abc import Iterator
from pathlib import Path

from django.conf import settings

from sootline.core.ledger import Anchor
from sootline.core.ledger.exports import Exported, ExportHead
from sootline.storage import anchoring
from sootline.storage.comparing import Compared, compare
from sootline.storage.ledger import LedgerStore
from sootline.storage.preparing import prepare
from sootline.wiring.store import now, open_store

__all__ = ["Compared", "OwnRecord", "anchor_file", "anchor_now", "compare", "open_record"]


class OwnRecord:
    """The store's record, read as an exported one is."""

    def __init__(self) -> None:
        self._store = open_record()
        self.head = ExportHead(installation=self._store.head().installation)

    def entries(self) -> Iterator[Exported]:
        """Read the entries in their order."""
        return (Exported(entry=entry) for entry in self._store.entries())


def open_record() -> LedgerStore:
    """Return the record of the data directory, its tables in their newest form."""
    store = open_store()
    prepare(store)
    return store


def anchor_file() -> Path:
    """Return the file of anchors."""
    return anchoring.anchor_file(settings.DATA_DIR)


def anchor_now() -> Anchor | None:
    """Take the anchor that a report is printed with; None for the demonstration."""
    return None if settings.DEMO else open_store().anchor(now())
