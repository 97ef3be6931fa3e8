"""A record kept in memory, for tests of what officers do: the real fold, no database."""

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from sootline.core.basis import ComponentId, DeviceId, InstallationId, ItemId, KindId, MemberId
from sootline.core.gear import Assembly, CareStage, Component, Custody, Life, State
from sootline.core.job.jobs import Member
from sootline.core.job.lives import component_of, offered_to, station_of
from sootline.core.ledger import (
    Anchor,
    Appended,
    ClockSource,
    Draft,
    Entry,
    Established,
    Head,
    ItemKind,
    Occurred,
    append,
    begin,
    component,
    kind_of,
)
from sootline.core.ledger.acts import Act
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold
from sootline.core.ledger.things import ThingLife, fold_things
from sootline.tasks.ports import Known
from sootline.tasks.recording import Book
from sootline.tasks.register_gear import register_components
from sootline.tasks.register_things import register_things

NOON = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)
COAT = ComponentId("0412")
LINER = ComponentId("0512")
MAREN = MemberId("118")


@dataclass
class MemoryLedger:
    """Entries in a list."""

    kept: list[Entry] = field(default_factory=list)
    end: Head = field(default_factory=lambda: begin(InstallationId("tarn-hollow")))

    def head(self) -> Head:
        """Say where the record ends."""
        return self.end

    def entries(self, after: int = 0) -> Iterator[Entry]:
        """Read entries in their order."""
        return iter(self.kept[after:])

    def known(self, actor: MemberId, idem: str) -> bool:
        """Whether an actor has used a key."""
        return self._key(actor, idem) is not None

    def of_act(self, actor: MemberId, act: str) -> tuple[Entry, ...]:
        """Return the entries of one act."""
        return tuple(
            one
            for one in self.kept
            if one.read_header().actor == actor and one.read_header().idem.startswith(f"{act}/")
        )

    def anchor(self, at: dt.datetime) -> Anchor | None:
        """Take no anchor: no task here asks for one."""
        raise NotImplementedError

    def append(self, drafts: Sequence[Draft]) -> tuple[Appended, ...]:
        """Append all drafts, or none."""
        head, done = self.end, []
        for draft in drafts:
            at = draft.corrects or draft.erases
            about = [one for one in self.kept if one.read_header().item == draft.item]
            done.append(
                append(
                    head, draft, now=NOON, salt=bytes(16),
                    same_key=self._key(draft.actor, draft.idem),
                    last_of_item=about[-1] if about else None,
                    target=self.kept[at - 1] if at and at <= len(self.kept) else None,
                )
            )  # fmt: skip
            head = done[-1].head
        self.kept += [one.entry for one in done if not one.repeated]
        self.end = head
        return tuple(done)

    def _key(self, actor: MemberId, idem: str) -> Entry | None:
        for entry in self.kept:
            header = entry.read_header()
            if (header.actor, header.idem) == (actor, idem):
                return entry
        return None


@dataclass
class MemoryRegister:
    """What the entries in the list add up to."""

    ledger: MemoryLedger
    _seen: tuple[int, tuple[Known, ...]] = (-1, ())

    def component(self, identity: ComponentId) -> Known | None:
        """Return one component."""
        return next((one for one in self._all() if one.component.id == identity), None)

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
        lives = fold_things(read_facts(self.ledger.kept))
        return next((life for life in lives if life.item == item), None)

    def things(self, kind: ItemKind) -> tuple[ThingLife, ...]:
        """Return every registered thing of a kind."""
        lives = sorted(fold_things(read_facts(self.ledger.kept)), key=lambda life: life.item)
        return tuple(life for life in lives if life.registered and kind_of(life.item) is kind)

    def _all(self) -> tuple[Known, ...]:
        if self._seen[0] != len(self.ledger.kept):
            self._seen = (len(self.ledger.kept), tuple(self._folded()))
        return self._seen[1]

    def _folded(self) -> Iterator[Known]:
        pieces = (piece for piece in fold(self.ledger.kept).pieces if piece.stands)
        for piece in sorted(pieces, key=lambda piece: piece.item):
            yield Known(
                component=component_of(piece),
                station=station_of(piece),
                offered_to=offered_to(piece),
                seq=piece.last_seq,
            )


def act(idem: str, *, minute: int = 0) -> Act:
    """Return an act of the gear officer, some minutes after noon."""
    at = NOON + dt.timedelta(minutes=minute)
    return Act(
        idem=idem,
        occurred=Occurred.at(at, ClockSource.SERVER),
        device=DeviceId("office"),
        actor=MemberId("200"),
        established=Established.SIGNED_IN,
    )


def coat(identity: ComponentId = COAT, **state: object) -> Component:
    """Return a shell of Maren's, checked and on her hook, unless its state says otherwise."""
    usual = State(custody=Custody.HOOK, stage=CareStage.CHECKED, assembly=Assembly.ASSEMBLED)
    return Component(
        id=identity,
        kind=KindId("coat-shell"),
        owner=MAREN,
        state=State(**{**usual.__dict__, **state}),
    )


def book(*pieces: Component) -> Book:
    """Return a record with Maren and some pieces in it; the coat when none are named."""
    ledger = MemoryLedger()
    made = Book(ledger=ledger, register=MemoryRegister(ledger))
    register_things(made, act("m", minute=-60), [Member(id=MAREN, crew="E2")])
    register_components(made, act("r", minute=-60), pieces or (coat(),), station="2")
    return made


def state_of(made: Book, piece: ComponentId = COAT) -> State:
    """Return a component's state."""
    (known,) = made.known(piece)
    return known.component.state


def last_about(made: Book, piece: ComponentId = COAT) -> Entry:
    """Return the last entry about a component."""
    about = [one for one in made.ledger.entries() if one.read_header().item == component(piece)]
    return about[-1]
