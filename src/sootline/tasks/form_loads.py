"""What may go together into the wash after a job's calls, where, and up to what limit?"""

from dataclasses import dataclass

from sootline.core.job.jobs import Job
from sootline.core.laundry.sorting import sort_components
from sootline.core.laundry.sorts import Sorting
from sootline.tasks.decide import Decided, decide_job
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class Loads:
    """The decisions of a job and the sorts that follow from them."""

    decided: Decided
    sorting: Sorting


def form_loads(rules: Rules, job: Job) -> Loads:
    """Decide on every component of a job and sort what is to be washed.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    decided = decide_job(rules, job)
    sorting = sort_components(
        decisions=decided.decisions,
        components=job.components,
        room=job.wash_room,
        rulebook=decided.rulebook,
    )
    return Loads(decided=decided, sorting=sorting)
