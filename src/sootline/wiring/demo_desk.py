"""The demo department's desk: kept in memory until the program stops."""

import threading
from dataclasses import replace
from functools import cache
from itertools import count

from sootline.core.basis import BadInputError, ComponentId
from sootline.core.job.jobs import Job
from sootline.core.ledger import component
from sootline.core.ledger.lives import Question
from sootline.tasks.answer_question import Answered
from sootline.tasks.deeds import Deed, Planned
from sootline.tasks.desk import Desk, Report
from sootline.tasks.does_not_fit import does_not_fit
from sootline.tasks.plan_wash import PlanResult, plan_wash
from sootline.tasks.take_reports import take
from sootline.wiring.demo import demo_job
from sootline.wiring.plans import load_planning_times
from sootline.wiring.rules import RULES

# Counted, not timed, so that everybody sees the same night.
_TRIES = 1500
# That it is held already is no contradiction.
_HELD_ALREADY = "gear.refused.hold_already"


class MemoryDesks:
    """A desk in memory, with everything needed to take the newest reports back."""

    def __init__(self, job: Job, plan: PlanResult | None = None) -> None:
        self._lock = threading.Lock()
        self._desks = [Desk(revision=0, job=job, plan=plan)]
        self._numbers = count(1)

    @property
    def key(self) -> str:
        """Name the desk."""
        return "demo"

    def look(self) -> Desk:
        """Return the desk as it stands."""
        return self._desks[-1]

    def keep(self, report: Report, deed: Deed) -> None:
        """Keep what was reported and what it changes in the desk as it is by then."""
        with self._lock:
            before = self._desks[-1]
            if report.key and report.key in [one.key for one in before.reports]:
                return
            job, questions = _taken(before, report, deed)
            number = next(self._numbers)
            after = replace(
                before,
                revision=number,
                job=job,
                plan=deed.plan if isinstance(deed, Planned) else before.plan,
                reports=(*before.reports, report),
                questions=(*questions, *_left(before.questions, deed)),
                position=f"{number}",
            )
            self._desks.append(after)

    def undo(self) -> Report | None:
        """Take back the newest report; None where there is nothing to take back."""
        with self._lock:
            if len(self._desks) == 1:
                return None
            taken = self._desks.pop()
            back = self._desks.pop()
            self._desks.append(replace(back, revision=next(self._numbers)))
            return taken.reports[-1]


def _taken(before: Desk, report: Report, deed: Deed) -> tuple[Job, tuple[Question, ...]]:
    """Return the job after a deed; what was told and does not fit is only asked about.

    Raises:
        BadInputError: it cannot be so, or names what is not there.
    """
    try:
        return take(RULES, before.job, deed, by=report.by or "?"), ()
    except BadInputError as error:
        pieces = {one.id: one for one in before.job.components}
        odd = [one.place for one in error.faults if one.message.startswith("gear.")]
        if report.told and {one.message for one in error.faults} == {_HELD_ALREADY}:
            return before.job, ()
        if report.told is None or not odd or not all(place in pieces for place in odd):
            raise
    return before.job, tuple(
        does_not_fit(pieces[ComponentId(place)], before.reports, report) for place in odd
    )


def _left(questions: tuple[Question, ...], deed: Deed) -> tuple[Question, ...]:
    """Return the questions that a deed leaves open."""
    if not isinstance(deed, Answered):
        return questions
    return tuple(one for one in questions if one.item != component(deed.piece))


@cache
def demo_desks() -> MemoryDesks:
    """Return the desk of the demo department, with the wash of its last night planned."""
    job = demo_job()
    tries = count()
    plan = plan_wash(RULES, job, planning=load_planning_times(), stop=lambda: next(tries) >= _TRIES)
    return MemoryDesks(job, plan)
