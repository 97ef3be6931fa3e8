"""What is due next, out of any number of components? Read by its day, a page at a time.

The days follow from the components and from the texts they are cared for by. They are brought up
to the record when somebody asks: what changed since is reckoned anew, and everything is once the
department goes by other texts.
"""

import heapq
from collections.abc import Iterator
from datetime import date
from itertools import islice

from django.db import connections, transaction
from django.db.models import Q, QuerySet

from sootline.core.basis import ComponentId
from sootline.core.intervals import Matter
from sootline.storage.models import ComponentRow
from sootline.storage.models.projections import DueBasis, DueDay
from sootline.storage.register import known_of
from sootline.tasks.ports import DueAt, DueKey, FirstDays, Known

# More names than this do not go into one question to SQLite.
_AT_ONCE = 400
_COLUMNS = ("day", "component", "matter")
# Any number will do, as long as nothing else on the server uses it.
_POSTGRESQL_LOCK = 0x50071_1F


class DueStore:
    """The due days of a database.

    Args:
        station: shows only what belongs to it, or to none; None shows everything.
    """

    def __init__(self, *, alias: str = "default", station: str | None = None) -> None:
        self.alias = alias
        self._station = station

    def bring_up(self, digest: str, first_days: FirstDays) -> int:
        """Reckon anew whatever changed; return of how many components.

        Args:
            digest: of the texts the days follow from; with another, everything is reckoned.
            first_days: what is due on a component, and on which day at its earliest reading.
        """
        if not self._behind(digest):
            return 0
        with transaction.atomic(using=self.alias):
            self._wait()
            basis = self._basis()
            seq = basis.seq if basis is not None and basis.digest == digest else 0
            if not seq:
                DueDay.objects.using(self.alias).all().delete()
            count = 0
            for rows in self._changed(seq):
                self._put(rows, first_days)
                seq, count = rows[-1].seq, count + len(rows)
            DueBasis.objects.using(self.alias).update_or_create(
                id=1, defaults={"digest": digest, "seq": seq}
            )
        return count

    def due(self, until: date, *, after: DueKey | None, most: int) -> tuple[DueAt, ...]:
        """List what is due up to a day, from the earliest on.

        Args:
            after: the last one that was seen; None begins at the first.
            most: how many at most.
        """
        rows = DueDay.objects.using(self.alias).filter(day__lte=until)
        keys = [DueKey(*key) for key in self._keys(rows, after, most)]
        known = self._known({key.component for key in keys})
        return tuple(DueAt(key=key, known=known[key.component]) for key in keys)

    def _keys(
        self, rows: QuerySet[DueDay], after: DueKey | None, most: int
    ) -> Iterator[tuple[date, ComponentId, Matter]]:
        """Read a page; each part of a station's view is one walk along one index."""
        if after is not None:
            rows = rows.filter(
                Q(day__gt=after.day)
                | Q(day=after.day, component__gt=after.component)
                | Q(day=after.day, component=after.component, matter__gt=after.matter),
                day__gte=after.day,
            )
        parts = [rows] if self._station is None else [
            rows.filter(station=self._station), rows.filter(station=None)
        ]  # fmt: skip
        found = [part.order_by(*_COLUMNS).values_list(*_COLUMNS)[:most] for part in parts]
        merged = islice(heapq.merge(*found), most)
        return ((day, ComponentId(piece), Matter(matter)) for day, piece, matter in merged)

    def _known(self, pieces: set[ComponentId]) -> dict[ComponentId, Known]:
        rows = ComponentRow.objects.using(self.alias).filter(id__in=pieces)
        return {ComponentId(row.id): known_of(row) for row in rows}

    def _basis(self) -> DueBasis | None:
        return DueBasis.objects.using(self.alias).first()

    def _behind(self, digest: str) -> bool:
        basis = self._basis()
        if basis is None or basis.digest != digest:
            return True
        return ComponentRow.objects.using(self.alias).filter(seq__gt=basis.seq).exists()

    def _changed(self, after: int) -> Iterator[list[ComponentRow]]:
        """Read components in the order of their last entries, some at a time."""
        rows = ComponentRow.objects.using(self.alias).order_by("seq", "id")
        identity: str | None = None
        while True:
            same = Q(seq=after, id__gt=identity) if identity is not None else Q(pk__in=())
            some = list(rows.filter(Q(seq__gt=after) | same, seq__gte=after)[:_AT_ONCE])
            if not some:
                return
            yield some
            after, identity = some[-1].seq, some[-1].id

    def _put(self, rows: list[ComponentRow], first_days: FirstDays) -> None:
        made = [
            DueDay(component=row.id, matter=matter.value, day=day, station=row.station)
            for row in rows
            if row.life != "disposed"
            for matter, day in first_days(known_of(row).component)
        ]
        days = DueDay.objects.using(self.alias)
        days.filter(component__in=[row.id for row in rows]).delete()
        days.bulk_create(made, batch_size=_AT_ONCE // 4)

    def _wait(self) -> None:
        """Let one process at a time reckon."""
        if connections[self.alias].vendor == "postgresql":
            with connections[self.alias].cursor() as cursor:
                cursor.execute("SELECT pg_advisory_xact_lock(%s)", [_POSTGRESQL_LOCK])
