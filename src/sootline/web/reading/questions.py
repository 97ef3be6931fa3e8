"""How does a question read that nobody is to blame for, and what was told, by which clock?"""

import datetime as dt
from dataclasses import dataclass

from sootline.core.basis import DeviceId, MemberId, MessageId
from sootline.core.ledger import ClockSource, name_of
from sootline.core.ledger.lives import Effect, Line, PieceLife, Question
from sootline.web.reading.clock import Clock
from sootline.web.reading.saying import Said

# What somebody registered, or changed on a label, is no part of a night.
_PLAIN = frozenset({"registered", "facts-changed", "issued"})


@dataclass(frozen=True, kw_only=True)
class Told:
    """One thing somebody wrote down about a piece.

    Args:
        when: put right, where the clock was found to be wrong.
        own: as that clock showed it, where it was wrong.
        slow: by how many minutes it was slow; negative is ahead.
        counts: whether it changed what the piece counts as.
    """

    what: str
    when: str
    own: str
    slow: int
    device: DeviceId
    on_paper: bool
    actor: MemberId
    counts: bool

    @property
    def ahead(self) -> int:
        """By how many minutes the clock was ahead."""
        return -self.slow


def read_question(question: Question, clock: Clock) -> Said:
    """Return a question with its times as the department's clocks show them."""
    found = question.finding
    values = tuple(
        (name, _shown(value, clock) if name in ("first", "last") else value)
        for name, value in found.values
    )
    return Said(message=MessageId(found.message), values=values)


def piece_of(question: Question) -> str:
    """Return the number of the piece a question is about."""
    return name_of(question.item)


def told(life: PieceLife, clock: Clock) -> list[Told]:
    """List what was written down of a piece, in the order in which it happened."""
    lines = [line for line in life.history if line.settled.fact.kind.value not in _PLAIN]
    return [_told(line, clock) for line in lines]


def _told(line: Line, clock: Clock) -> Told:
    fact = line.settled.fact
    occurred = fact.occurred
    suspect = occurred.suspect
    return Told(
        what=fact.kind.value,
        when=clock.at(fact.earliest),
        own=clock.at(occurred.earliest) if suspect else "",
        slow=-round((occurred.offset_s or 0) / 60) if suspect else 0,
        device=fact.device,
        on_paper=occurred.clock is ClockSource.PAPER,
        actor=fact.actor,
        counts=line.effect is not Effect.REFUSED,
    )


def _shown(text: str, clock: Clock) -> str:
    return clock.at(dt.datetime.fromisoformat(text))
