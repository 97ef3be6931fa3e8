"""What does the record add up to now, thing by thing? Read from the rows that follow from it."""

from collections.abc import Collection

from django.db.models import Q, QuerySet

from sootline.core.basis import ComponentId, ItemId, MemberId
from sootline.core.gear import Component
from sootline.core.job.codec import decode
from sootline.core.ledger import ItemKind
from sootline.core.ledger.things import ThingLife
from sootline.storage.models import ComponentRow, Thing
from sootline.storage.rows import life_of
from sootline.storage.stations import OneStation
from sootline.tasks.ports import Known


class RegisterStore:
    """The rows of a database, as tasks ask for them.

    Args:
        station: shows only what belongs to it, or to none; None shows everything.
    """

    def __init__(self, *, alias: str = "default", station: str | None = None) -> None:
        self.alias = alias
        self._station = OneStation(alias, station) if station is not None else None

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
        """Return what is known of any other thing; None when nothing is.

        Whole, whichever station asks: whoever writes about a call must not lose others' people.
        Lists, which screens are drawn from, show a station its own.
        """
        row = Thing.objects.using(self.alias).filter(item=item).first()
        return None if row is None else life_of(row)

    def things(self, kind: ItemKind) -> tuple[ThingLife, ...]:
        """Return everything of one kind that is registered, in the order of its names."""
        rows = Thing.objects.using(self.alias).filter(kind=kind.value, registered=True)
        lives = tuple(map(life_of, rows.order_by("item")))
        return lives if self._station is None else tuple(self._station.things(lives, kind))

    def hidden(self, items: Collection[str]) -> frozenset[str]:
        """Return which of these things belong to other stations alone."""
        return frozenset() if self._station is None else self._station.hidden(items)

    def _rows(self) -> QuerySet[ComponentRow]:
        if self._station is not None:
            return self._station.components()
        return ComponentRow.objects.using(self.alias).all()


def known_of(row: ComponentRow) -> Known:
    """Return the component of a row."""
    component = decode(Component, row.document)
    return Known(component=component, station=row.station, offered_to=row.offered_to, seq=row.seq)
