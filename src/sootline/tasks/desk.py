"""Where does the job of the moment come from, and where does what people report go?"""

from dataclasses import dataclass
from typing import Protocol

from sootline.core.basis import DeviceId, MemberId, MessageId, Moment
from sootline.core.job.jobs import Job
from sootline.core.ledger.lives import Question
from sootline.core.ledger.times import ClockSource
from sootline.tasks.deeds import Deed
from sootline.tasks.plan_wash import PlanResult


@dataclass(frozen=True, kw_only=True)
class Told:
    """How something reached the desk that was written down elsewhere and came in later.

    It has happened: nothing of it is refused for how things stand by now. What does not fit is
    kept as it was told, counts as the safest that it can mean, and is asked about.

    Args:
        made: when it was written down, by the clock it was read from.
        clock: where that time was read.
        offset_s: that clock's reading less the true time [s]; None when nobody compared it.
        position: where the record ended on the page it was written on.
    """

    made: Moment
    clock: ClockSource
    device: DeviceId
    offset_s: int | None = None
    position: str = ""


@dataclass(frozen=True, kw_only=True)
class Report:
    """One thing somebody reported, as the history shows it.

    Args:
        by: who reported it; None is not known.
        message: what, as a message id.
        values: what the sentence names.
        about: the pieces, calls or loads it is about.
        key: names the request: sent twice it is one report; empty is no request's.
        told: of what was written down elsewhere and came in later; None is at this desk, now.
    """

    at: Moment
    by: MemberId | None
    message: MessageId
    values: tuple[tuple[str, str], ...] = ()
    about: tuple[str, ...] = ()
    key: str = ""
    told: Told | None = None


@dataclass(frozen=True, kw_only=True)
class Desk:
    """Everything the screens are drawn from, at one moment.

    Args:
        revision: another number whenever anything else changed.
        plan: the plan the wash room works by; None while nobody made one.
        reports: what was reported, the newest last.
        questions: what was reported and does not fit together, piece by piece.
        position: where the record ends, as a page carries it.
    """

    revision: int
    job: Job
    plan: PlanResult | None = None
    reports: tuple[Report, ...] = ()
    questions: tuple[Question, ...] = ()
    position: str = ""


class Desks(Protocol):
    """Keeps the desk; every change goes through here."""

    @property
    def key(self) -> str:
        """Name whose desk it is: equal keys, equal desks."""
        ...

    def look(self) -> Desk:
        """Return the desk as it stands."""
        ...

    def keep(self, report: Report, deed: Deed) -> None:
        """Keep what was reported, and what it changes.

        Raises:
            BadInputError: it cannot be so as things stand; nothing is kept.
        """
        ...

    def undo(self) -> Report | None:
        """Take back the newest report; None where there is nothing to take back."""
        ...
