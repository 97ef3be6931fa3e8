"""Is the record this program keeps whole, and what leaves it? A demonstration keeps none."""

from collections.abc import Iterator

from django.conf import settings

from sootline.core.basis import BadInputError, ComponentId
from sootline.core.ledger import Anchor, Entry, Verification, component, verify_chain
from sootline.core.ledger.anchors import read_anchors
from sootline.core.ledger.exports import export_all
from sootline.storage.anchoring import anchor_file
from sootline.wiring.store import now, open_store


def verify_record() -> tuple[Verification, tuple[Anchor, ...]] | None:
    """Verify every entry against the chain and the anchors kept beside it; None keeps no record."""
    if settings.DEMO:
        return None
    anchors = _anchors()
    return verify_chain(open_store().entries(), anchors), anchors


def export_record() -> Iterator[str] | None:
    """Return the record as lines, with an anchor of this moment; None keeps no record."""
    if settings.DEMO:
        return None
    store = open_store()
    lines = export_all(store.head().installation, store.entries(), store.anchor(now()))
    return (f"{line}\n" for line in lines)


def entries_about(piece: ComponentId) -> tuple[Entry, ...]:
    """Return every entry about a component, the oldest first; a demonstration has none."""
    return () if settings.DEMO else tuple(open_store().entries(item=component(piece)))


def _anchors() -> tuple[Anchor, ...]:
    """Return the anchors of the daily file; one that cannot be read is none."""
    try:
        return read_anchors(anchor_file(settings.DATA_DIR).read_text(encoding="utf-8"))
    except (OSError, BadInputError):
        return ()
