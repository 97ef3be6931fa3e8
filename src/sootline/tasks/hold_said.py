"""Somebody says that gear must not be opened or washed until another decides: how is it kept?"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from sootline.core.basis import ComponentId, Moment
from sootline.core.gear import Event, EventKind, Hold
from sootline.core.job.jobs import Job
from sootline.core.ledger.acts import Act
from sootline.core.rulebook import Decider
from sootline.tasks.asked_holds import said_by_hand
from sootline.tasks.happening import befall
from sootline.tasks.holds import hold_by_hand
from sootline.tasks.recording import Book, required


@dataclass(frozen=True, kw_only=True)
class HoldSaid:
    """Pieces are on hold because somebody says so.

    Args:
        said: why, in that person's words.
        decider: who is to decide.
    """

    pieces: tuple[ComponentId, ...]
    said: str
    by: str
    decider: Decider
    at: Moment

    @property
    def hold(self) -> Hold:
        """The hold it comes to."""
        return said_by_hand(by=self.by, said=self.said, at=self.at, decider=self.decider)


def write_hold(book: Book, act: Act, deed: HoldSaid) -> None:
    """Record a hold on every piece.

    Raises:
        RefusedError: a piece is held for that cause already, or disposed of.
        BadInputError: nobody is named, nothing is said, or a piece is not known.
    """
    required(by=deed.by, said=deed.said)
    for piece in deed.pieces:
        hold_by_hand(book, replace(act, idem=f"{act.idem}/{piece}"), piece, deed.hold)


def take_hold(job: Job, deed: HoldSaid) -> Job:
    """Return the job with the hold on every piece.

    Raises:
        BadInputError: a piece is held for that cause already, or not known.
    """
    return befall(job, deed.pieces, lambda _: _opened(deed))


def _opened(deed: HoldSaid) -> Iterable[Event]:
    return [Event(kind=EventKind.HOLD_OPENED, hold=deed.hold)]
