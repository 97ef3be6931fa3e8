"""Where is the store's own record read? To be imported once the framework is started."""

import datetime as dt
from collections.abc import Iterator
from itertools import count
from pathlib import Path
from zoneinfo import ZoneInfo

from django.conf import settings

from sootline.core.basis import MemberId
from sootline.core.job.jobs import Job, Member
from sootline.core.job.things import thing_of
from sootline.core.ledger import Anchor, Entry, ItemKind, name_of
from sootline.core.ledger.correcting import Amended, settle
from sootline.core.ledger.exports import Exported, ExportHead
from sootline.core.ledger.facts import read_facts
from sootline.storage import anchoring
from sootline.storage.comparing import Compared, compare
from sootline.storage.dues import DueStore
from sootline.storage.ledger import LedgerStore
from sootline.storage.preparing import prepare
from sootline.storage.register import RegisterStore
from sootline.tasks.assemble_job import assemble_job, read_department
from sootline.tasks.import_roster import Register
from sootline.tasks.list_due_page import DuePage, list_due_page
from sootline.tasks.ports import DueKey
from sootline.wiring.rules import RULES
from sootline.wiring.store import now, open_store

__all__ = [
    "Compared",
    "OwnRecord",
    "anchor_file",
    "anchor_now",
    "compare",
    "due_of_record",
    "free_key",
    "job_of_record",
    "open_record",
    "registered",
]


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


def due_of_record(
    station: str | None,
    *,
    today: dt.date | None,
    until: dt.date | None,
    after: DueKey | None,
    most: int,
) -> DuePage:
    """Return a page of what is due; arguments and faults as `list_due_page`.

    Args:
        station: shows only what belongs to it, or to none; None shows everything.
        today: None is the department's civil day.
    """
    open_record()
    register, days = RegisterStore(station=station), DueStore(station=station)
    zone = ZoneInfo(read_department(register).department.zone)
    day = today or now().astimezone(zone).date()
    return list_due_page(RULES, register, days, today=day, until=until, after=after, most=most)


def job_of_record() -> Job:
    """Return the job that the record makes at this moment.

    Raises:
        BadInputError: the department was never described, or what is recorded makes no job.
    """
    open_record()
    return assemble_job(RegisterStore(), now=now().replace(microsecond=0))


def registered() -> Register:
    """Return the members and the gear that the record knows, as a part of a job."""
    found = RegisterStore()
    lives = found.things(ItemKind.MEMBER)
    members = (thing_of(ItemKind.MEMBER, name_of(life.item), life.facts) for life in lives)
    return Register(
        members=tuple(one for one in members if isinstance(one, Member)),
        components=tuple(known.component for known in found.components()),
    )


def free_key(actor: MemberId, key: str) -> str:
    """Return a key for an act that may have been recorded before, and been taken back.

    The first such key whose act still stands, else the first that nobody used.
    """
    store = open_store()
    for turn in count(1):
        chosen = key if turn == 1 else f"{key}-{turn}"
        found = store.of_act(actor, chosen)
        if not found or not _undone(found[0], store):
            return chosen
    raise AssertionError(key)


def _undone(entry: Entry, store: LedgerStore) -> bool:
    about = read_facts(store.entries(item=entry.read_header().item))
    (settled,) = [one for one in settle(about) if one.written.seq == entry.seq]
    return settled.amended is Amended.WITHDRAWN


def anchor_file() -> Path:
    """Return the file of anchors."""
    return anchoring.anchor_file(settings.DATA_DIR)


def anchor_now() -> Anchor | None:
    """Take the anchor that a report is printed with; None for the demonstration."""
    return None if settings.DEMO else open_store().anchor(now())
