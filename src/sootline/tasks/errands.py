"""What takes longer than anybody waits at a screen: asked here, done elsewhere, followed truly.

How far it is, is what was done of what is known to be there; nothing is guessed in percent.
"""

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Protocol

from sootline.core.basis import MemberId, MessageId

# Says how much is done so far; answers whether to go on.
Tell = Callable[[int], bool]


class ErrandKind(StrEnum):
    """What can be asked for."""

    IMPROVE = "improve"
    VERIFY = "verify"
    EXPORT = "export"


class ErrandState(StrEnum):
    """How far it is."""

    WAITING = "waiting"
    RUNNING = "running"
    DONE = "done"
    GIVEN_UP = "given-up"


@dataclass(frozen=True, kw_only=True)
class Wish:
    """What somebody asks for.

    Args:
        by: who asks; in this name what comes out is written down.
        station: whose desk it is about; None is all of them.
        total: how much there is to do in all: entries to read, or seconds that are given.
        said: what else it takes to do it.
        key: the same key is the same wish, however often it is sent.
    """

    kind: ErrandKind
    by: MemberId
    station: str | None
    total: int
    said: Mapping[str, str]
    key: str


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """What came of it, as a message and its values."""

    message: MessageId
    values: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, kw_only=True)
class Errand:
    """A wish and what became of it so far.

    Args:
        done: how much of the wish's total is done.
        outcome: once it is done or given up.
    """

    id: str
    wish: Wish
    state: ErrandState
    asked_at: dt.datetime
    done: int = 0
    outcome: Outcome | None = None

    @property
    def open(self) -> bool:
        """Whether anything is still to come of it."""
        return self.state in (ErrandState.WAITING, ErrandState.RUNNING)


class Errands(Protocol):
    """Where long work is asked for and followed."""

    def ask(self, wish: Wish) -> Errand:
        """Ask for it; a wish asked before is answered with what became of it."""
        ...

    def newest(self, kind: ErrandKind, station: str | None) -> Errand | None:
        """Return what was asked for last of a kind; None where nothing was."""
        ...
