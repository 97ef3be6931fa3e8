"""The desk of the record: what it adds up to now, and where deeds are recorded."""

import datetime as dt
import json
import threading
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from uuid import uuid4

from sootline.core.basis import (
    BadInputError,
    DeviceId,
    Fault,
    ItemId,
    MemberId,
    MessageId,
)
from sootline.core.job.jobs import Job
from sootline.core.ledger import Entry, EntryKind, Head, ItemKind, kind_of, name_of
from sootline.core.ledger.acts import Act
from sootline.core.ledger.appending import OvertakenError
from sootline.core.ledger.entries import Header
from sootline.core.ledger.kinds import Established
from sootline.core.ledger.times import ClockSource, Occurred
from sootline.storage.register import RegisterStore
from sootline.storage.remembered import RememberedRegister, remember
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.deeds import Deed, Planned
from sootline.tasks.desk import Desk, Report, Told
from sootline.tasks.plan_wash import PlanResult
from sootline.tasks.read_year import FACT_FORMS
from sootline.tasks.recorded_plan import plan_item, plan_read
from sootline.tasks.recording import RefusedError
from sootline.tasks.undo_act import withdraw_all
from sootline.tasks.write_reports import write
from sootline.wiring.people import people_policy
from sootline.wiring.rules import RULES
from sootline.wiring.store import now, open_book, open_questions, open_store

_BROWSER = DeviceId("browser")
_SHOWN = 200
_MINUTES = 10_000_000
# The newest plan of each desk as it was unpacked, under the entry that says it.
_plans: dict[str, tuple[int, PlanResult | None]] = {}
_lock = threading.Lock()


@dataclass(frozen=True, kw_only=True)
class _Stood:
    """What followed from the record as it stood, whatever the time.

    Args:
        head: where the record ended.
    """

    head: Head
    job: Job
    plan: PlanResult | None
    reports: tuple[Report, ...]


_stood: dict[str, _Stood] = {}


class StoreDesks:
    """The desk as one account sees it.

    Args:
        actor: whose account it is.
        station: the only station whose gear it sees; None sees all.
        established: how it is known who the actor is.
        device: where the actor sits.
    """

    def __init__(
        self,
        actor: MemberId,
        station: str | None,
        *,
        established: Established = Established.SIGNED_IN,
        device: DeviceId = _BROWSER,
    ) -> None:
        self._actor = actor
        self._established = established
        self._device = device
        self._station = station
        self._book = open_book(station)

    @property
    def key(self) -> str:
        """Name everything the desk depends on but time: two accounts of a station see one."""
        return f"{self._rows.head.installation}/{self._station or ''}"

    def look(self) -> Desk:
        """Return the desk as it stands this minute.

        Raises:
            BadInputError: the record does not make a job; a department was never described.
        """
        moment = now().replace(second=0, microsecond=0)
        stood = self._stands(moment)
        job = replace(stood.job, now=moment)
        return Desk(
            revision=stood.head.seq * _MINUTES + int(moment.timestamp() // 60) % _MINUTES,
            job=job,
            plan=_of_here(stood.plan, job),
            reports=stood.reports,
            questions=open_questions(self._station),
            position=f"{stood.head.seq}:{stood.head.hash}",
        )

    def keep(self, report: Report, deed: Deed) -> None:
        """Record a deed.

        Raises:
            BadInputError: it cannot be so as things stand.
        """
        if report.key and open_store().begun(self._actor, report.key):
            # Asked for before, and answered: the same key is the same request.
            return
        book = replace(self._book, told=report.told is not None)
        act = self._act(report.key or uuid4().hex, report.told)
        if isinstance(deed, Planned):
            deed = replace(deed, station=self._station)
        moment = now()
        job = replace(self._stands(moment).job, now=moment)
        try:
            write(RULES, book, act, job, deed)
        except RefusedError as error:
            raise BadInputError(error.faults) from error
        except OvertakenError as error:
            raise BadInputError([Fault(place="-", message=error.message)]) from error

    def undo(self) -> Report | None:
        """Withdraw everything of this account's newest act; corrections stay as they are.

        What was written longer ago than a shift is no longer one's own to take back.
        """
        since = now() - people_policy().own_entry
        own = [one for one in self._entries() if self._is_own(_header(one), since)]
        done = [one for one in own if _header(one).kind is not EntryKind.CORRECTED]
        withdrawn = {_header(one).corrects for one in own}
        left = [one for one in done if one.seq not in withdrawn]
        if not left:
            return None
        last = [one for one in left if _act_of(one) == _act_of(left[-1])]
        withdraw_all(self._book, self._act(uuid4().hex), last, reason="undo")
        return report_of(left[-1])

    @cached_property
    def _rows(self) -> RememberedRegister:
        """What the record added up to when this desk was first asked."""
        return RememberedRegister(remember(), self._station)

    def _stands(self, moment: dt.datetime) -> _Stood:
        """Return what follows from the record as it stands; worked out once for every entry."""
        rows = self._rows = RememberedRegister(remember(), self._station)
        with _lock:
            stood = _stood.get(self.key)
        if stood is None or stood.head != rows.head:
            job = assemble_job(rows, now=moment)
            reports = tuple(report_of(entry) for entry in self._entries())
            stood = _Stood(head=rows.head, job=job, plan=self._plan(job), reports=reports)
            with _lock:
                _stood[self.key] = stood
        return stood

    def _plan(self, job: Job) -> PlanResult | None:
        """Return the plan the record holds, unpacked once for every entry that says one."""
        life = self._rows.thing(plan_item(self._station))
        said = life.facts.get(EntryKind.PLANNED.value) if life else None
        if life is None or not isinstance(said, dict):
            return None
        with _lock:
            kept = _plans.get(self.key)
        if kept is None or kept[0] != life.last_seq:
            kept = (life.last_seq, plan_read(RULES, job, said))
            with _lock:
                _plans[self.key] = kept
        return kept[1]

    def _is_own(self, header: Header, since: dt.datetime) -> bool:
        return header.actor == self._actor and header.recorded_at >= since

    def _entries(self) -> list[Entry]:
        head = self._book.ledger.head().seq
        found = list(self._book.ledger.entries(max(0, head - _SHOWN)))
        items = {_header(one).item for one in found}
        hidden = RegisterStore(station=self._station).hidden(items)
        return [one for one in found if _header(one).item not in hidden]

    def _act(self, key: str, told: Told | None = None) -> Act:
        act = Act(
            idem=key,
            occurred=Occurred.at(now(), ClockSource.SERVER),
            device=self._device,
            actor=self._actor,
            established=self._established,
        )
        if told is None:
            return act
        when = Occurred.at(told.made, told.clock, offset_s=told.offset_s)
        return replace(act, occurred=when, device=told.device, position=told.position or None)


def _of_here(plan: PlanResult | None, job: Job) -> PlanResult | None:
    """Return a plan whose pieces are all still there; another is as good as none."""
    here = {component.id for component in job.components}
    washed = (
        {one for sort in plan.loads.sorting.sorts for one in sort.components} if plan else set()
    )
    return plan if washed <= here else None


def _act_of(entry: Entry) -> str:
    return _header(entry).idem.partition("/")[0]


# Each look shows the newest entries, mostly those of the look before.
@lru_cache(maxsize=1000)
def _called(thing: ItemId) -> str:
    """Return what a reader calls a thing: a fact of the year by its form, for it has no number."""
    name = name_of(thing)
    if kind_of(thing) is not ItemKind.YEAR_FACT:
        return name
    return max((form for form in FACT_FORMS if name.startswith(form)), key=len, default=name)


# Every look shows the newest entries, mostly those of the look before.
@lru_cache(maxsize=2000)
def _header(entry: Entry) -> Header:
    return entry.read_header()


def report_of(entry: Entry) -> Report:
    """Return an entry as the history shows it."""
    header = _header(entry)
    handed = _handed_over(entry) if header.kind is EntryKind.NOTED else ()
    at: dt.datetime = header.recorded_at
    if handed:
        signed = MessageId("web.handover.signed")
        return Report(at=at, by=header.actor, message=signed, values=handed)
    values = (("kind", header.kind.value), ("item", _called(header.item)))
    return Report(
        at=at,
        by=header.actor,
        message=MessageId("web.history.entry"),
        values=values,
        about=(header.item.partition(":")[2],),
    )


def _handed_over(entry: Entry) -> tuple[tuple[str, str], ...]:
    """Return who handed over to whom, where a note says so."""
    said = json.loads(entry.payload or "{}")
    if not isinstance(said, dict) or "taker" not in said:
        return ()
    exceptions = said.get("exceptions")
    listed = exceptions.values() if isinstance(exceptions, dict) else ()
    count = len({piece for pieces in listed for piece in pieces})
    return (("giver", str(said.get("giver"))), ("taker", str(said["taker"])), ("n", str(count)))
