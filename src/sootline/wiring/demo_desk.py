"""The demo department's desk: kept in memory until the program stops."""

import threading
from dataclasses import replace
from functools import cache
from itertools import count

from sootline.core.job.jobs import Job
from sootline.tasks.deeds import Deed, Planned
from sootline.tasks.desk import Desk, Report
from sootline.tasks.plan_wash import PlanResult, plan_wash
from sootline.tasks.take_reports import take
from sootline.wiring.demo import demo_job
from sootline.wiring.plans import load_planning_times
from sootline.wiring.rules import RULES

# Counted, not timed, so that everybody sees the same night.
_TRIES = 1500


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
            after = replace(
                before,
                revision=next(self._numbers),
                job=take(RULES, before.job, deed, by=report.by or "?"),
                plan=deed.plan if isinstance(deed, Planned) else before.plan,
                reports=(*before.reports, report),
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


@cache
def demo_desks() -> MemoryDesks:
    """Return the desk of the demo department, with the wash of its last night planned."""
    job = demo_job()
    tries = count()
    plan = plan_wash(RULES, job, planning=load_planning_times(), stop=lambda: next(tries) >= _TRIES)
    return MemoryDesks(job, plan)
