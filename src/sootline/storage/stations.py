"""What belongs to other stations alone, and is therefore not shown to one?

A component and a thing say to which station they belong, or to none. A person belongs where gear
or an account says so; a call is seen by every station somebody of which was there, with those
people alone.
"""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace
from functools import cached_property

from django.db.models import Q, QuerySet

from sootline.core.basis import ItemId
from sootline.core.ledger import EntryKind, ItemKind, item, kind_of, name_of
from sootline.core.ledger.things import ThingLife
from sootline.storage.models import ComponentRow, Link, PayloadRow, Thing, User
from sootline.storage.rows import life_of


class OneStation:
    """What one station sees.

    Args:
        station: its name.
    """

    def __init__(self, alias: str, station: str) -> None:
        self._alias = alias
        self._station = station

    def components(self) -> QuerySet[ComponentRow]:
        """Return the components of the station, and those of none."""
        return ComponentRow.objects.using(self._alias).filter(self._here)

    def things(self, found: Collection[ThingLife], kind: ItemKind) -> Iterator[ThingLife]:
        """Return those things of a kind that the station sees."""
        away = self._away(_spoken_of(life) for life in found)
        for life in found:
            if life.facts.get("station") not in (None, "", self._station):
                continue
            if kind is ItemKind.MEMBER and name_of(life.item) in self.strangers:
                continue
            if _spoken_of(life) in away:
                continue
            seen = self._call(life) if kind is ItemKind.CALL else life
            if seen is not None:
                yield seen

    def hidden(self, items: Collection[str]) -> frozenset[str]:
        """Return which of these are not the station's to see."""
        wanted = frozenset(items)
        return frozenset(
            one for kind in ItemKind for one in self._hidden(kind, _of(kind, wanted)) if one
        )

    def shows_attachment(self, digest: str) -> bool:
        """Whether a photo or a paper was attached to something the station sees."""
        rows = PayloadRow.objects.using(self._alias).filter(
            seq__kind=EntryKind.ATTACHED.value, body__contains=digest
        )
        items = frozenset(rows.values_list("seq__item", flat=True))
        return not items or bool(items - self.hidden(items))

    @cached_property
    def strangers(self) -> frozenset[str]:
        """The people who belong to other stations alone."""
        here = self._people(Q(station=self._station))
        elsewhere = self._people(~self._here)
        accounts = User.objects.using(self._alias).exclude(station="")
        here |= set(accounts.filter(station=self._station).values_list("member", flat=True))
        elsewhere |= set(accounts.exclude(station=self._station).values_list("member", flat=True))
        return frozenset(elsewhere - here)

    @property
    def _here(self) -> Q:
        return Q(station=self._station) | Q(station=None)

    def _away(self, names: Iterable[str]) -> frozenset[str]:
        """Return which components and people of these belong to other stations."""
        asked = frozenset(names)
        rows = ComponentRow.objects.using(self._alias).filter(id__in=asked).exclude(self._here)
        return frozenset(rows.values_list("id", flat=True)) | (asked & self.strangers)

    def _people(self, where: Q) -> set[str]:
        rows = ComponentRow.objects.using(self._alias).filter(where)
        pairs = rows.values_list("owner", "holder").distinct()
        return {name for pair in pairs for name in pair if name}

    def _call(self, life: ThingLife) -> ThingLife | None:
        """Return a call with the station's people alone; None where there were others only."""
        people = life.facts.get("people")
        if not isinstance(people, list):
            return life
        left = [one for one in people if not self._is_stranger(one)]
        if people and not left:
            return None
        return replace(life, facts={**life.facts, "people": left})

    def _is_stranger(self, person: object) -> bool:
        return isinstance(person, dict) and person.get("member") in self.strangers

    def _hidden(self, kind: ItemKind, names: frozenset[str]) -> Iterator[str]:
        if not names:
            return
        if kind is ItemKind.COMPONENT:
            yield from (item(kind, name) for name in self._away(names))
        elif kind is ItemKind.SET:
            seen = self.components().filter(set__in=names).values_list("set", flat=True)
            yield from (item(kind, name) for name in names - {one for one in seen if one})
        elif kind is ItemKind.LOAD:
            yield from (item(kind, name) for name in names if self._is_others_load(name))
        else:
            yield from self._hidden_things(kind, names)

    def _hidden_things(self, kind: ItemKind, names: frozenset[str]) -> Iterator[str]:
        items = [item(kind, name) for name in names]
        rows = Thing.objects.using(self._alias).filter(item__in=items)
        lives = [life_of(row) for row in rows]
        shown = {life.item for life in self.things(lives, kind)}
        yield from (life.item for life in lives if life.item not in shown)

    def _is_others_load(self, name: str) -> bool:
        """Whether nothing of the station was in a load."""
        links = Link.objects.using(self._alias).filter(other=item(ItemKind.LOAD, name))
        pieces = [
            name_of(one)
            for one in map(ItemId, links.values_list("item", flat=True))
            if kind_of(one) is ItemKind.COMPONENT
        ]
        return bool(pieces) and not self.components().filter(id__in=pieces).exists()


def _spoken_of(life: ThingLife) -> str:
    """Return the component or the person a fact of the year is about, if it is about one."""
    fact = life.facts.get("fact")
    if not isinstance(fact, dict):
        return ""
    return str(fact.get("component") or fact.get("member") or "")


def _of(kind: ItemKind, items: frozenset[str]) -> frozenset[str]:
    return frozenset(name_of(ItemId(one)) for one in items if kind_of(ItemId(one)) is kind)
