"""When did it happen, by which clock, and how far may that clock be trusted?

Two times stand in every entry: when it is said to have happened, a span as it was read from a
clock, and when it was recorded. The record's own order is neither of them but its sequence.
"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import Moment, UnreadableValueError, require_offset

# Common practice, no published source: two minutes are more than people differ by when they set
# a watch, and less than any step of the work takes.
SUSPECT_S = 120
# A clock that jumps by more than a day was set wrong: a guard against 1970 and against 2036.
AHEAD = dt.timedelta(hours=24)


class ClockSource(StrEnum):
    """Where a stated time was read."""

    SERVER = "server"
    DEVICE = "device"
    WALL = "wall"
    WATCH = "watch"
    PAPER = "paper"
    SAID = "said"
    DOCUMENT = "document"
    UNKNOWN = "unknown"


class ClockFlag(StrEnum):
    """What is wrong with the times of an entry."""

    BACK = "clock-back"
    AHEAD = "clock-ahead"
    FUTURE = "occurred-ahead"


# Flags of the recording machine's own clock.
DOUBTED = frozenset({ClockFlag.BACK, ClockFlag.AHEAD})


@dataclass(frozen=True, kw_only=True, slots=True)
class Occurred:
    """When something happened, as stated.

    Args:
        earliest, latest: as read from the clock, with their offset from UTC; both included.
        clock: where they were read.
        offset_s: the clock's reading less the true time [s], negative for a clock that is slow;
            None when nobody compared it.
    """

    earliest: Moment
    latest: Moment
    clock: ClockSource
    offset_s: int | None = None

    def __post_init__(self) -> None:
        require_offset(self.earliest, self.latest)
        if self.earliest > self.latest:
            raise UnreadableValueError(
                "ledger.occurred.reversed",
                earliest=self.earliest.isoformat(),
                latest=self.latest.isoformat(),
            )

    @classmethod
    def at(
        cls, moment: dt.datetime, clock: ClockSource, *, offset_s: int | None = None
    ) -> "Occurred":
        """Make the span of one moment as read from a clock."""
        return cls(earliest=moment, latest=moment, clock=clock, offset_s=offset_s)

    @property
    def true_earliest(self) -> dt.datetime:
        """The earliest, put right by what is known of the clock."""
        return (
            self.earliest - dt.timedelta(seconds=self.offset_s) if self.offset_s else self.earliest
        )

    @property
    def true_latest(self) -> dt.datetime:
        """The latest, put right by what is known of the clock."""
        return self.latest - dt.timedelta(seconds=self.offset_s) if self.offset_s else self.latest

    @property
    def suspect(self) -> bool:
        """Whether the clock was found to be wrong by more than people's watches differ."""
        return abs(self.offset_s or 0) > SUSPECT_S


def clock_flags(
    now: dt.datetime,
    occurred: Occurred,
    *,
    trusted: dt.datetime | None,
    seen: dt.datetime | None = None,
) -> tuple[ClockFlag, ...]:
    """Say what is wrong with the clock an entry is recorded by; nothing is refused for it.

    Args:
        now: what the clock reads.
        trusted: when the last entry whose clock was not flagged was recorded; None before any.
        seen: the latest moment any other clock vouches for (a heartbeat, the other machine);
            None when there is none.
    """
    flags = []
    if trusted is not None and now < trusted:
        flags.append(ClockFlag.BACK)
    latest = max((moment for moment in (trusted, seen) if moment is not None), default=None)
    if latest is not None and now > latest + AHEAD:
        flags.append(ClockFlag.AHEAD)
    if occurred.true_earliest > now:
        flags.append(ClockFlag.FUTURE)
    return tuple(flags)
