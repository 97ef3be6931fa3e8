"""What does the record add up to now, thing by thing? Read from the rows that follow from it."""

import json

from django.db.models import Q, QuerySet

from sootline.core.basis import ComponentId, ItemId, MemberId
from sootline.core.gear import Component
from sootline.core.job.codec import decode
from sootline.core.ledger import ItemKind
from sootline.core.ledger.things import ThingLife
from sootline.storage.models import ComponentRow, Thing
from sootline.tasks.ports import Known


class RegisterStore:
    """The rows of a database, as tasks ask for them.

    Args:
        station: shows only what belongs to it, or to none; None shows everything.
    """

    def __init__(self, *, alias: str = "default", station: str | None = None) -> None:
        self.alias = alias
        self._station = station

    def component(self, identity: ComponentId) -> Known | None:
        """Return one component; None when the record says nothing of it."""
        row = self._rows().filter(id=identity).first()
        return None if row is None else known_of(row)

    def components_of(self, member: MemberId) -> tuple[Known, ...]:
        """Return every component a member owns or has."""
        rows = self._rows().filter(Q(owner=member) | Q(holder=member))
        return tuple(map(known_of, rows.order_by("id")))

    def components(self) -> tuple[Known, ...]:
        """Return every component that was not disposed of, in the order of their numbers."""
        return tuple(map(known_of, self._rows().exclude(life="disposed").order_by("id")))

    def disposed(self) -> tuple[Known, ...]:
        """Return every component that was disposed of, in the order of their numbers."""
        return tuple(map(known_of, self._rows().filter(life="disposed").order_by("id")))

    def thing(self, item: ItemId) -> ThingLife | None:
        """Return what is known of any other thing; None when nothing is."""
        row = Thing.objects.using(self.alias).filter(item=item).first()
        return None if row is None else life_of(row)

    def things(self, kind: ItemKind) -> tuple[ThingLife, ...]:
        """Return everything of one kind that is registered, in the order of its names."""
        rows = Thing.objects.using(self.alias).filter(kind=kind.value, registered=True)
        return tuple(map(life_of, rows.order_by("item")))

    def _rows(self) -> QuerySet[ComponentRow]:
        rows = ComponentRow.objects.using(self.alias)
        if self._station is None:
            return rows.all()
        return rows.filter(Q(station=self._station) | Q(station=None))


def known_of(row: ComponentRow) -> Known:
    """Return the component of a row."""
    component = decode(Component, row.document)
    return Known(component=component, station=row.station, offered_to=row.offered_to, seq=row.seq)


def life_of(row: Thing) -> ThingLife:
    """Return the life of a row."""
    return ThingLife(
        item=ItemId(row.item),
        facts=json.loads(row.facts),
        registered=row.registered,
        last_seq=row.seq,
    )
