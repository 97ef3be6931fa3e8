"""A record kept in memory and looked up by name, for a year of entries: the real fold, no database.

It answers as `tests.unit.tasks.memory_book` does; only what an entry touches is folded anew.
"""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from sootline.core.basis import ComponentId, InstallationId, ItemId, MemberId
from sootline.core.gear import Life
from sootline.core.job.lives import component_of, offered_to, station_of
from sootline.core.ledger import (
    Anchor,
    Appended,
    Draft,
    Entry,
    Head,
    ItemKind,
    append,
    begin,
    component,
    kind_of,
)
from sootline.core.ledger.facts import Fact, read_facts
from sootline.core.ledger.folding import fold_facts, loads_of
from sootline.core.ledger.things import ThingLife, fold_things
from sootline.tasks.ports import Known
from sootline.tasks.recording import Book


@dataclass
class IndexedLedger:
    """Entries in a list, found by key and by what they are about.

    Args:
        now: the recording clock; whoever writes sets it on.
    """

    now: dt.datetime
    kept: list[Entry] = field(default_factory=list)
    end: Head = field(default_factory=lambda: begin(InstallationId("simulated")))
    keys: dict[tuple[MemberId, str], Entry] = field(default_factory=dict)
    facts: dict[ItemId, list[Fact]] = field(default_factory=lambda: defaultdict(list))
    last: dict[ItemId, Entry] = field(default_factory=dict)

    def head(self) -> Head:
        """Say where the record ends."""
        return self.end

    def entries(self, after: int = 0) -> Iterator[Entry]:
        """Read entries in their order."""
        return iter(self.kept[after:])

    def known(self, actor: MemberId, idem: str) -> bool:
        """Whether an actor has used a key."""
        return (actor, idem) in self.keys

    def of_act(self, actor: MemberId, act: str) -> tuple[Entry, ...]:
        """Return the entries of one act."""
        return tuple(
            entry
            for (who, idem), entry in self.keys.items()
            if who == actor and idem.startswith(f"{act}/")
        )

    def anchor(self, at: dt.datetime) -> Anchor | None:
        """Take no anchor: nothing here asks for one."""
        raise NotImplementedError

    def append(self, drafts: Sequence[Draft]) -> tuple[Appended, ...]:
        """Append drafts one by one; no test here lets one of them fail."""
        return tuple(self._one(draft) for draft in drafts)

    def _one(self, draft: Draft) -> Appended:
        done = append(
            self.end, draft, now=self.now, salt=bytes(16),
            same_key=self.keys.get((draft.actor, draft.idem)),
            last_of_item=self.last.get(draft.item),
            target=None,
        )  # fmt: skip
        if not done.repeated:
            self.kept.append(done.entry)
            self.keys[draft.actor, draft.idem] = done.entry
            self.last[draft.item] = done.entry
            self.facts[draft.item] += read_facts([done.entry])
            self.end = done.head
        return done


@dataclass
class IndexedRegister:
    """What the entries add up to, thing by thing."""

    ledger: IndexedLedger
    _pieces: dict[ItemId, tuple[int, Known]] = field(default_factory=dict)
    _things: dict[ItemId, tuple[int, ThingLife]] = field(default_factory=dict)

    def component(self, identity: ComponentId) -> Known | None:
        """Return one component."""
        item = component(identity)
        return self._known(item) if item in self.ledger.facts else None

    def components(self) -> tuple[Known, ...]:
        """Return every component that was not disposed of."""
        return tuple(one for one in self._all() if one.component.state.life is not Life.DISPOSED)

    def disposed(self) -> tuple[Known, ...]:
        """Return every component that was disposed of."""
        return tuple(one for one in self._all() if one.component.state.life is Life.DISPOSED)

    def components_of(self, member: MemberId) -> tuple[Known, ...]:
        """Return every component a member owns or has."""
        return tuple(
            one for one in self._all()
            if member in (one.component.owner, one.component.state.holder)
        )  # fmt: skip

    def thing(self, item: ItemId) -> ThingLife | None:
        """Return what is known of a thing."""
        return self._life(item) if item in self.ledger.facts else None

    def things(self, kind: ItemKind) -> tuple[ThingLife, ...]:
        """Return every registered thing of a kind."""
        names = sorted(item for item in self.ledger.facts if kind_of(item) is kind)
        return tuple(life for life in map(self._life, names) if life.registered)

    def _all(self) -> list[Known]:
        names = sorted(i for i in self.ledger.facts if kind_of(i) is ItemKind.COMPONENT)
        return [self._known(item) for item in names]

    def _known(self, item: ItemId) -> Known:
        own = self.ledger.facts[item]
        facts = list(own)
        for load in loads_of(own):
            facts += self.ledger.facts.get(load, [])
        if item not in self._pieces or self._pieces[item][0] != len(facts):
            folded = fold_facts(sorted(facts, key=lambda fact: fact.seq))
            life = folded.piece(item)
            known = Known(
                component=component_of(life),
                station=station_of(life),
                offered_to=offered_to(life),
                seq=life.last_seq,
            )
            self._pieces[item] = (len(facts), known)
        return self._pieces[item][1]

    def _life(self, item: ItemId) -> ThingLife:
        facts = self.ledger.facts[item]
        if item not in self._things or self._things[item][0] != len(facts):
            (life,) = fold_things(facts)
            self._things[item] = (len(facts), life)
        return self._things[item][1]


def indexed_book(now: dt.datetime) -> Book:
    """Return an empty record."""
    ledger = IndexedLedger(now=now)
    return Book(ledger=ledger, register=IndexedRegister(ledger))
