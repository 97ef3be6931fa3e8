"""How is long work handed from those who ask to the one who does it, so that none is lost?

Every step is one change of one row that holds only while the row stands as it was read: two
workers never do the same errand, and one that died leaves its errand to the next.
"""

import datetime as dt
import json
from collections.abc import Callable

from django.db import IntegrityError, transaction
from django.db.models import F, QuerySet

from sootline.core.basis import MemberId, MessageId
from sootline.storage.models import ErrandRow
from sootline.tasks.errands import Errand, ErrandKind, ErrandState, Outcome, Wish

# No word for so long means that whoever did it is gone.
LEASE = dt.timedelta(minutes=2)
_MOST_TRIES = 3
_FORGOTTEN = dt.timedelta(days=30)
_S = ErrandState


class ErrandStore:
    """The errands of a database.

    Args:
        now: what the machine's clock reads, with its offset.
    """

    def __init__(self, *, now: Callable[[], dt.datetime], alias: str = "default") -> None:
        self._now = now
        self._alias = alias

    def ask(self, wish: Wish) -> Errand:
        """Ask for it; a wish asked before is answered with what became of it."""
        row = ErrandRow(
            kind=wish.kind.value, key=wish.key, by=wish.by, station=wish.station,
            said=json.dumps(dict(wish.said), sort_keys=True), total=wish.total,
            state=_S.WAITING.value, asked_at=self._now(),
        )  # fmt: skip
        try:
            with transaction.atomic(using=self._alias):
                row.save(using=self._alias, force_insert=True)
        except IntegrityError:
            row = self._rows().get(key=wish.key)
        return _errand(row)

    def newest(self, kind: ErrandKind, station: str | None) -> Errand | None:
        """Return what was asked for last of a kind; None where nothing was."""
        row = self._rows().filter(kind=kind.value, station=station).order_by("-id").first()
        return None if row is None else _errand(row)

    def abandoned(self) -> int:
        """Return how many are under way without a word from whoever does them."""
        running = self._rows().filter(state=_S.RUNNING.value)
        return running.filter(beat_at__lt=self._now() - LEASE).count()

    def take(self, worker: str) -> Errand | None:
        """Begin the oldest that waits; None where none does, or another was quicker."""
        row = self._rows().filter(state=_S.WAITING.value).order_by("id").first()
        if row is None:
            return None
        mine = self._rows().filter(pk=row.pk, state=_S.WAITING.value)
        now = self._now()
        began = mine.update(
            state=_S.RUNNING.value, worker=worker, beat_at=now, done=0, tries=F("tries") + 1
        )
        return _errand(self._rows().get(pk=row.pk)) if began else None

    def beat(self, errand: Errand, worker: str, done: int) -> bool:
        """Say how far it is; False where it was given to another meanwhile."""
        return bool(self._of(errand, worker).update(beat_at=self._now(), done=done))

    def hand_in(self, errand: Errand, worker: str, outcome: Outcome, *, well: bool = True) -> bool:
        """End it; False where it was given to another meanwhile."""
        changes = {"state": (_S.DONE if well else _S.GIVEN_UP).value, **_ended(outcome)}
        return bool(self._of(errand, worker).update(ended_at=self._now(), **changes))

    def reap(self, *, of_host: str | None = None) -> int:
        """Take errands from workers that are gone: they wait again, or are closed with the reason.

        As often as it is asked, each is taken once.

        Args:
            of_host: also those a worker of this machine had, whenever it spoke last; for the one
                worker of a machine when it begins.

        Returns:
            how many were taken.
        """
        now = self._now()
        self._rows().filter(ended_at__lt=now - _FORGOTTEN).delete()
        running = self._rows().filter(state=_S.RUNNING.value)
        gone = running.filter(beat_at__lt=now - LEASE)
        if of_host is not None:
            gone = gone | running.filter(worker__startswith=f"{of_host}:")
        return sum(self._taken_from(row, now) for row in gone)

    def _taken_from(self, row: ErrandRow, now: dt.datetime) -> int:
        same = self._rows().filter(
            pk=row.pk, state=_S.RUNNING.value, worker=row.worker, beat_at=row.beat_at
        )
        if row.tries < _MOST_TRIES:
            return same.update(state=_S.WAITING.value, worker="", done=0)
        lost = Outcome(message=MessageId("errands.lost"), values=(("n", str(row.tries)),))
        return same.update(state=_S.GIVEN_UP.value, ended_at=now, **_ended(lost))

    def _rows(self) -> QuerySet[ErrandRow]:
        return ErrandRow.objects.using(self._alias)

    def _of(self, errand: Errand, worker: str) -> QuerySet[ErrandRow]:
        return self._rows().filter(pk=int(errand.id), worker=worker, state=_S.RUNNING.value)


def _ended(outcome: Outcome) -> dict[str, str]:
    said = {"message": outcome.message, "values": [list(pair) for pair in outcome.values]}
    return {"outcome": json.dumps(said)}


def _errand(row: ErrandRow) -> Errand:
    outcome = None
    if row.outcome:
        said = json.loads(row.outcome)
        values = tuple((key, value) for key, value in said["values"])
        outcome = Outcome(message=MessageId(said["message"]), values=values)
    wish = Wish(
        kind=ErrandKind(row.kind), by=MemberId(row.by), station=row.station, total=row.total,
        said=json.loads(row.said), key=row.key,
    )  # fmt: skip
    return Errand(
        id=str(row.pk), wish=wish, state=ErrandState(row.state), asked_at=row.asked_at,
        done=row.done, outcome=outcome,
    )  # fmt: skip
