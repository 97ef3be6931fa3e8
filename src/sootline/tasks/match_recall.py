"""Whom does a recall mean, who has it, and what is left to see and to do?"""

from collections import Counter
from dataclasses import dataclass, replace

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.checks import check_job
from sootline.core.job.jobs import Job
from sootline.core.upkeep.recalls import (
    Affected,
    Closure,
    Match,
    Notice,
    Whereabouts,
    close_notice,
    fitted_into,
    match_notice,
    trace_whereabouts,
)


@dataclass(frozen=True, kw_only=True)
class Concerned:
    """One component that a notice means, perhaps means, or meant, and where it is."""

    match: Match
    where: Whereabouts


@dataclass(frozen=True, kw_only=True)
class NoticeResult:
    """One notice against the register.

    Args:
        counts: how many components stand in each way.
        concerned: affected first, then possible, then gone; each in the register's order.
        others: not meant, with the field that says so.
        tell: every department and person to be told, each once.
    """

    notice: Notice
    counts: tuple[tuple[Affected, int], ...]
    concerned: tuple[Concerned, ...]
    others: tuple[Match, ...]
    closure: Closure
    tell: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class RecallResult:
    """Every notice of a job."""

    notices: tuple[NoticeResult, ...]

    @property
    def closed(self) -> bool:
        """Whether nothing is left to see or to do for any notice."""
        return all(one.closure.closed for one in self.notices)


def match_recalls(job: Job, *, only: str | None = None) -> RecallResult:
    """Hold the register against each notice.

    Args:
        only: the notice asked about; every one when None.

    Raises:
        BadInputError: there is no such notice, or a kind is unknown.
    """
    notices = [one for one in job.upkeep.notices if only in (None, one.id)]
    if only is not None and not notices:
        fault = Fault(
            place="--notice",
            message=MessageId("job.no_such_notice"),
            values=(("value", only),),
        )
        raise BadInputError([fault])
    return RecallResult(notices=tuple(_result(notice, job) for notice in notices))


def with_notice(job: Job, notice: Notice) -> Job:
    """Return a job with one more notice.

    Raises:
        BadInputError: the job has one of this name already.
    """
    return check_job(
        replace(job, upkeep=replace(job.upkeep, notices=(*job.upkeep.notices, notice)))
    )


def _result(notice: Notice, job: Job) -> NoticeResult:
    matches = tuple(match_notice(notice, job.components))
    pieces = {component.id: component for component in job.components}
    fitted = fitted_into(job.builds, job.components)
    order = (Affected.AFFECTED, Affected.POSSIBLE, Affected.GONE)
    concerned = tuple(
        Concerned(
            match=match,
            where=trace_whereabouts(
                pieces[match.component], department=job.department.name, fitted=fitted
            ),
        )
        for affected in order
        for match in matches
        if match.affected is affected
    )
    here = [one for one in concerned if one.match.affected is not Affected.GONE]
    counts = Counter(match.affected for match in matches)
    return NoticeResult(
        notice=notice,
        counts=tuple((affected, counts[affected]) for affected in Affected),
        concerned=concerned,
        others=tuple(one for one in matches if one.affected is Affected.NOT_AFFECTED),
        closure=close_notice(notice, matches, job.upkeep.sightings, job.upkeep.actions),
        tell=tuple(dict.fromkeys(told for one in here for told in one.where.tell)),
    )
