"""What does the record add up to now, without reading again what no entry has touched since?

Rows are kept in memory under the entry they were read at. A later look reads the entries since
then, and only the rows those touch: what is handed out equals what all rows would say.
"""

import threading
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import islice
from typing import TypeVar

from django.db.models import Model, QuerySet

from sootline.core.basis import ComponentId, ItemId, MemberId
from sootline.core.ledger import Head, ItemKind, kind_of, name_of
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.things import ThingLife
from sootline.storage.entries import read_entries, read_head
from sootline.storage.models import ComponentRow, Thing
from sootline.storage.projecting import batched, concerned
from sootline.storage.questions import QUESTION
from sootline.storage.register import known_of
from sootline.storage.rows import life_of
from sootline.storage.stations import OneStation
from sootline.tasks.ports import Known

# Past so many entries everything is read anew: it is as quick.
_MOST_ENTRIES = 5000
_AT_ONCE = 400
_DISPOSED = "disposed"
_Key = TypeVar("_Key", bound=str)
_Value = TypeVar("_Value")
_Row = TypeVar("_Row", bound=Model)


@dataclass(frozen=True, kw_only=True)
class Remembered:
    """Every row as of an entry; never changed, so that it can be handed out.

    Args:
        head: where the record ended when the rows were read.
        known: by number, in order; what was disposed of too.
        gone: which of them were disposed of.
        lives: of everything else, by kind and name, in order.
    """

    head: Head
    known: Mapping[ComponentId, Known] = field(default_factory=dict)
    gone: frozenset[ComponentId] = frozenset()
    lives: Mapping[ItemKind, Mapping[ItemId, ThingLife]] = field(default_factory=dict)


class RememberedRegister:
    """A register as tasks ask for it, answered from memory.

    Args:
        station: shows only what belongs to it, or to none; None shows everything.
    """

    def __init__(
        self, rows: Remembered, station: str | None = None, *, alias: str = "default"
    ) -> None:
        self._rows = rows
        self._station = station
        self._alias = alias

    @property
    def head(self) -> Head:
        """Where the record ended when the rows were read."""
        return self._rows.head

    def component(self, identity: ComponentId) -> Known | None:
        """Return one component; None when the record says nothing of it."""
        known = self._rows.known.get(identity)
        return known if known is not None and self._shows(known) else None

    def components(self) -> tuple[Known, ...]:
        """Return every component that was not disposed of, in the order of their numbers."""
        return self._chosen(gone=False)

    def disposed(self) -> tuple[Known, ...]:
        """Return every component that was disposed of, in the order of their numbers."""
        return self._chosen(gone=True)

    def components_of(self, member: MemberId) -> tuple[Known, ...]:
        """Return every component a member owns or has."""
        return tuple(
            known
            for known in self._rows.known.values()
            if self._shows(known)
            and member in (known.component.owner, known.component.state.holder)
        )

    def thing(self, item: ItemId) -> ThingLife | None:
        """Return what is known of any other thing; None when nothing is."""
        return self._rows.lives.get(kind_of(item), {}).get(item)

    def things(self, kind: ItemKind) -> tuple[ThingLife, ...]:
        """Return everything of one kind that is registered, in the order of its names."""
        found = tuple(one for one in self._rows.lives.get(kind, {}).values() if one.registered)
        if self._station is None:
            return found
        return tuple(OneStation(self._alias, self._station).things(found, kind))

    def _chosen(self, *, gone: bool) -> tuple[Known, ...]:
        rows = self._rows
        return tuple(
            known
            for name, known in rows.known.items()
            if (name in rows.gone) is gone and self._shows(known)
        )

    def _shows(self, known: Known) -> bool:
        return self._station is None or known.station in (self._station, None)


_kept: dict[str, Remembered] = {}
_lock = threading.Lock()


def remember(alias: str = "default") -> Remembered:
    """Return what the rows say as of the newest entry."""
    head = read_head(alias)
    with _lock:
        kept = _kept.get(alias)
        if kept is None or kept.head != head:
            _kept[alias] = kept = _brought_up(alias, kept, head)
        return kept


def _brought_up(alias: str, kept: Remembered | None, head: Head) -> Remembered:
    """Read the rows that entries have touched since, or all of them."""
    components = ComponentRow.objects.using(alias)
    things = Thing.objects.using(alias).exclude(kind=QUESTION)
    items = None if kept is None else _touched_since(alias, kept.head)
    if kept is None or items is None:
        return _with_rows(Remembered(head=head), components.all(), things.all())
    pieces = [name_of(one) for one in items if kind_of(one) is ItemKind.COMPONENT]
    others = [one for one in items if kind_of(one) is not ItemKind.COMPONENT]
    return _with_rows(
        _without(kept, items, head),
        _some(components, "id", pieces),
        _some(things, "item", others),
    )


def _touched_since(alias: str, was: Head) -> frozenset[ItemId] | None:
    """Name what entries since then have touched; None where the record is another than it was."""
    fresh = list(islice(read_entries(alias, after=max(0, was.seq - 1)), _MOST_ENTRIES + 1))
    if was.seq and (not fresh or fresh.pop(0).hash != was.hash):
        return None
    if len(fresh) >= _MOST_ENTRIES:
        return None
    return concerned(alias, read_facts(fresh))


def _some(rows: QuerySet[_Row], field_name: str, names: Iterable[str]) -> Iterator[_Row]:
    for some in batched(sorted(names), _AT_ONCE):
        yield from rows.filter(**{f"{field_name}__in": some})


def _without(kept: Remembered, items: Iterable[ItemId], head: Head) -> Remembered:
    """Forget some things: their rows say whether they are still there."""
    known, lives = dict(kept.known), {kind: dict(some) for kind, some in kept.lives.items()}
    for one in items:
        lives.get(kind_of(one), {}).pop(one, None)
        if kind_of(one) is ItemKind.COMPONENT:
            known.pop(ComponentId(name_of(one)), None)
    return replace(kept, head=head, known=known, gone=kept.gone & known.keys(), lives=lives)


def _with_rows(
    kept: Remembered, pieces: Iterable[ComponentRow], things: Iterable[Thing]
) -> Remembered:
    known, gone = dict(kept.known), set(kept.gone)
    for row in pieces:
        name = ComponentId(row.id)
        known[name] = known_of(row)
        (gone.add if row.life == _DISPOSED else gone.discard)(name)
    lives = {kind: dict(some) for kind, some in kept.lives.items()}
    for life in map(life_of, things):
        lives.setdefault(kind_of(life.item), {})[life.item] = life
    return replace(
        kept,
        known=_sorted(known),
        gone=frozenset(gone),
        lives={kind: _sorted(some) for kind, some in lives.items()},
    )


def _sorted(rows: dict[_Key, _Value]) -> dict[_Key, _Value]:
    """Put rows in the order of their names; mostly they are in it already."""
    names = list(rows)
    in_order = sorted(names)
    return rows if names == in_order else {name: rows[name] for name in in_order}
