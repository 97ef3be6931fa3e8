"""Where does the job of the moment come from, and where does what people report go?"""

from dataclasses import dataclass
from typing import Protocol

from sootline.core.basis import MemberId, MessageId, Moment
from sootline.core.job.jobs import Job
from sootline.tasks.deeds import Deed
from sootline.tasks.plan_wash import PlanResult


@dataclass(frozen=True, kw_only=True)
class Report:
    """One thing somebody reported, as the history shows it.

    Args:
        by: who reported it; None is not known.
        message: what, as a message id.
        values: what the sentence names.
        about: the pieces, calls or loads it is about.
        key: names the request: sent twice it is one report; empty is no request's.
    """

    at: Moment
    by: MemberId | None
    message: MessageId
    values: tuple[tuple[str, str], ...] = ()
    about: tuple[str, ...] = ()
    key: str = ""


@dataclass(frozen=True, kw_only=True)
class Desk:
    """Everything the screens are drawn from, at one moment.

    Args:
        revision: another number whenever anything else changed.
        plan: the plan the wash room works by; None while nobody made one.
        reports: what was reported, the newest last.
    """

    revision: int
    job: Job
    plan: PlanResult | None = None
    reports: tuple[Report, ...] = ()


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
