"""What does a task need from outside, whoever answers?"""

import datetime as dt
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple, Protocol

from sootline.core.basis import ComponentId, EditionId, ItemId, MemberId
from sootline.core.gear import Component
from sootline.core.intervals import Matter
from sootline.core.ledger import Anchor, Appended, Draft, Entry, Head, ItemKind
from sootline.core.ledger.exports import Exported, ExportHead
from sootline.core.ledger.things import ThingLife
from sootline.core.rulebook import ContaminantRule, Edition


class Rules(Protocol):
    """The rule texts there are."""

    def editions(self) -> tuple[EditionId, ...]:
        """List the editions of standards, common practice apart."""
        ...

    def edition(self, edition: EditionId) -> Edition:
        """Return one edition.

        Raises:
            BadInputError: there is no such edition.
        """
        ...

    def practice(self) -> Edition:
        """Return common practice."""
        ...

    def contaminants(self) -> tuple[ContaminantRule, ...]:
        """Return what common practice asks for, contaminant by contaminant."""
        ...


class LedgerExport(Protocol):
    """A record that left the program, or one thing's part of it."""

    @property
    def head(self) -> ExportHead:
        """What the first line says."""
        ...

    def entries(self) -> Iterator[Exported]:
        """Read the entries in their order, from the first each time."""
        ...


class Ledger(Protocol):
    """The record this installation keeps."""

    def head(self) -> Head:
        """Say where the record ends."""
        ...

    def entries(self, after: int = 0) -> Iterator[Entry]:
        """Read entries in their order, those that follow a place.

        Args:
            after: the place of the last one that is not wanted.
        """
        ...

    def append(self, drafts: Sequence[Draft]) -> tuple[Appended, ...]:
        """Append drafts that belong together: all of them, or none.

        The keeper looks up keys, targets and the last entries, draws the salts and reads the
        clock.

        Raises:
            KeyReusedError: a key stands for other words.
            OvertakenError: somebody else wrote about the same thing first.
            BadInputError: nothing can be corrected or erased there.
        """
        ...

    def anchor(self, at: dt.datetime) -> Anchor | None:
        """Take an anchor of the record as it stands; None of an empty one."""
        ...

    def of_act(self, actor: MemberId, act: str) -> tuple[Entry, ...]:
        """Return the entries that an actor recorded as one act, in their order."""
        ...

    def known(self, actor: MemberId, idem: str) -> bool:
        """Whether an actor has used a key: then the request was answered before."""
        ...


@dataclass(frozen=True, kw_only=True)
class Known:
    """A component as the record has it.

    Args:
        station: to which it belongs; None is not said.
        offered_to: the station it is offered to and has not accepted yet.
        seq: the last entry about it.
    """

    component: Component
    station: str | None = None
    offered_to: str | None = None
    seq: int


class DueKey(NamedTuple):
    """One thing that is due, as a long list is ordered by it: by day, component, matter."""

    day: dt.date
    component: ComponentId
    matter: Matter


@dataclass(frozen=True, kw_only=True)
class DueAt:
    """One thing that is due, with its component as the record has it."""

    key: DueKey
    known: Known


# What is due on a component, and on which day at its earliest reading; None is not known.
FirstDays = Callable[[Component], Iterable[tuple[Matter, dt.date | None]]]


class DueDays(Protocol):
    """When what is due, out of any number of components."""

    def bring_up(self, digest: str, first_days: FirstDays) -> int:
        """Reckon anew whatever changed; everything, where the digest of the texts is another."""
        ...

    def due(self, until: dt.date, *, after: DueKey | None, most: int) -> tuple[DueAt, ...]:
        """List what is due up to a day, from the earliest on, behind the last one seen."""
        ...


class Register(Protocol):
    """What the record adds up to, as it stands now."""

    def component(self, identity: ComponentId) -> Known | None:
        """Return one component; None when the record says nothing of it."""
        ...

    def components(self) -> tuple[Known, ...]:
        """Return every component that was not disposed of, in the order of their numbers."""
        ...

    def disposed(self) -> tuple[Known, ...]:
        """Return every component that was disposed of, in the order of their numbers."""
        ...

    def components_of(self, member: MemberId) -> tuple[Known, ...]:
        """Return every component a member owns or has."""
        ...

    def thing(self, item: ItemId) -> ThingLife | None:
        """Return what is known of any other thing; None when nothing is."""
        ...

    def things(self, kind: ItemKind) -> tuple[ThingLife, ...]:
        """Return every registered thing of a kind, in the order of their names."""
        ...
