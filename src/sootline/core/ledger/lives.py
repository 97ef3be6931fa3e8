"""What is known of a component's life so far, and what must somebody still answer?"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import DeviceId, Finding, ItemId, MemberId
from sootline.core.gear.records import Record
from sootline.core.gear.state import State
from sootline.core.ledger.correcting import Settled
from sootline.core.ledger.forms import Payload
from sootline.core.ledger.times import Occurred


class Effect(StrEnum):
    """What an entry did to the state of its component."""

    TOOK = "took"
    NOTED = "noted"
    REFUSED = "refused"
    DEPENDS = "depends"
    WITHDRAWN = "withdrawn"


@dataclass(frozen=True, kw_only=True, slots=True)
class Line:
    """One line of a component's history; none is ever left out.

    Args:
        reason: why the entry changed nothing, of a refused one.
    """

    settled: Settled
    effect: Effect
    reason: Finding | None = None

    @property
    def seq(self) -> int:
        """The entry's place in the record."""
        return self.settled.fact.seq


@dataclass(frozen=True, kw_only=True, slots=True)
class Exposure:
    """Who wore a component at which call.

    Args:
        call: None when nobody named it.
        on_hold: whether it was on hold then; a fact, without blame.
    """

    seq: int
    call: str | None
    member: MemberId
    occurred: Occurred
    on_hold: bool


@dataclass(frozen=True, kw_only=True)
class Question:
    """What only somebody who was there can answer.

    Args:
        finding: the question, with what it rests on.
        entries: the entries that do not fit together, in the order of their times.
        people: everybody who wrote one of them, each once.
    """

    item: ItemId
    finding: Finding
    entries: tuple[int, ...]
    people: tuple[MemberId, ...]


@dataclass(frozen=True, kw_only=True)
class PieceLife:
    """One component's life as the record has it.

    Args:
        history: every entry about it, in the order of when things happened.
        register: what was registered, with what was read or changed later.
        records: the deeds its dates depend on.
        washes: washes that are recorded as finished.
        washes_before: how many it had when it was registered; None is not known.
        last_seq: the last entry that is about it.
    """

    item: ItemId
    state: State
    history: tuple[Line, ...]
    register: Payload
    records: tuple[Record, ...] = ()
    exposures: tuple[Exposure, ...] = ()
    washes: int = 0
    washes_before: int | None = None
    questions: tuple[Question, ...] = ()
    last_seq: int = 0

    @property
    def stands(self) -> bool:
        """Whether anything said of it still counts; not when every entry was withdrawn."""
        return any(line.effect is not Effect.WITHDRAWN for line in self.history)

    @property
    def wash_count(self) -> int | None:
        """All its washes; None when nobody knows how many there were before."""
        return None if self.washes_before is None else self.washes_before + self.washes


@dataclass(frozen=True, kw_only=True)
class LoadLife:
    """One load, and the components that were recorded as put into it, refused ones too."""

    item: ItemId
    pieces: tuple[ItemId, ...]
    history: tuple[Settled, ...]


@dataclass(frozen=True, kw_only=True)
class SuspectClock:
    """A device whose clock was found to be wrong.

    Args:
        offset_s: its reading less the true time [s], as compared; None where it was only seen
            that its times cannot be right.
        entries: the entries whose times it gave.
    """

    device: DeviceId
    offset_s: int | None
    entries: tuple[int, ...]


@dataclass(frozen=True, kw_only=True)
class Folded:
    """Everything the record adds up to, at one moment and with what was known at one.

    Args:
        as_of, known_at: what was asked for; None is everything.
    """

    pieces: tuple[PieceLife, ...]
    loads: tuple[LoadLife, ...]
    clocks: tuple[SuspectClock, ...]
    as_of: dt.datetime | None = None
    known_at: dt.datetime | int | None = None

    @property
    def questions(self) -> tuple[Question, ...]:
        """What must be answered, component by component."""
        return tuple(question for piece in self.pieces for question in piece.questions)

    def piece(self, item: ItemId) -> PieceLife:
        """Return one component's life.

        Raises:
            KeyError: the record says nothing of it.
        """
        for piece in self.pieces:
            if piece.item == item:
                return piece
        raise KeyError(item)

    def load(self, item: ItemId) -> LoadLife:
        """Return one load.

        Raises:
            KeyError: the record says nothing of it.
        """
        for load in self.loads:
            if load.item == item:
                return load
        raise KeyError(item)
