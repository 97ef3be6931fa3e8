"""How far does the record reach, and which anchors of it lie where they can be copied away?

An anchor over a long record is not reckoned from its first entry each time: what was summed up
before is kept in memory, and only what came since is added. The daily file has one anchor a line,
the newest last, and is only ever added to.
"""

import datetime as dt
import os
import threading
from pathlib import Path

from sootline.core.ledger import Anchor, read_anchors, write_anchor
from sootline.core.ledger.merkle import Frontier
from sootline.storage.gate import gate
from sootline.storage.models import EntryRow
from sootline.storage.statements import installation_name

_lock = threading.Lock()
# Of each record: what is summed up, and the last hash in it.
_known: dict[str, tuple[Frontier, str]] = {}
_FILE = "anchors.jsonl"


def take(alias: str, at: dt.datetime) -> Anchor | None:
    """Take the anchor of the record as it stands; None of an empty one."""
    name = installation_name(alias)
    rows = EntryRow.objects.using(alias).order_by("seq")
    with _lock:
        frontier, last = _known.get(name, (Frontier(), ""))
        if frontier.size and not rows.filter(seq=frontier.size, hash=last).exists():
            frontier, last = Frontier(), ""  # another record of that name, as tests have them
        fresh = rows.filter(seq__gt=frontier.size).values_list("hash", flat=True)
        for last in fresh.iterator(chunk_size=5000):  # the last one is wanted after the loop
            frontier.add(bytes.fromhex(last))
        _known[name] = frontier, last
        if not frontier.size:
            return None
        root = frontier.root().hex()
        return Anchor(installation=name, n=frontier.size, hash=last, root=root, at=at)  # type: ignore[arg-type]


def anchor_file(folder: Path) -> Path:
    """Return the file of anchors: SOOTLINE_ANCHORS, else one in the data directory."""
    named = os.environ.get("SOOTLINE_ANCHORS")
    return Path(named).expanduser().absolute() if named else folder / _FILE


def keep(folder: Path, anchor: Anchor, *, once_a_day: bool) -> bool:
    """Add an anchor to the file unless one that says as much stands there; say whether it did.

    Args:
        folder: the data directory.
        once_a_day: also leave it where the newest in the file is of the same day [UTC].

    Raises:
        BadInputError: the file holds something else than anchors.
        OSError: it cannot be written.
    """
    file = anchor_file(folder)
    with gate(folder / "anchors.lock"):
        before = read_anchors(file.read_text(encoding="utf-8")) if _filled(file) else ()
        if before and _enough(before[-1], anchor, once_a_day=once_a_day):
            return False
        file.parent.mkdir(parents=True, exist_ok=True)
        with file.open("a", encoding="utf-8", newline="\n") as added:
            added.write(write_anchor(anchor) + "\n")
            added.flush()
            os.fsync(added.fileno())
    return True


def _filled(file: Path) -> bool:
    return file.exists() and file.stat().st_size > 0


def _enough(last: Anchor, anchor: Anchor, *, once_a_day: bool) -> bool:
    if (last.installation, last.hash) == (anchor.installation, anchor.hash):
        return True
    return once_a_day and last.at.astimezone(dt.UTC).date() == anchor.at.astimezone(dt.UTC).date()
