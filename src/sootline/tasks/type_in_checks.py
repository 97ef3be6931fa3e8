"""Which checks does a ticked sheet hold, typed in row by row?"""

import datetime as dt

from sootline.core.job.jobs import Job
from sootline.core.rebuild import AfterWashCheck
from sootline.core.rebuild.rows import read_rows
from sootline.core.rebuild.sheet_rows import SheetRow
from sootline.tasks.check_sheets import list_after_wash
from sootline.tasks.decide import decide_job
from sootline.tasks.ports import Rules


def sheet_rows(rules: Rules, job: Job) -> tuple[SheetRow, ...]:
    """Return the rows of the after-wash sheet as it is printed from this job.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    groups = list_after_wash(job, decide_job(rules, job))
    listed = [(component.id, group.points) for group in groups for component in group.components]
    return tuple(
        SheetRow(number=number, component=component, points=points)
        for number, (component, points) in enumerate(listed, 1)
    )


def type_in_checks(
    rules: Rules, job: Job, text: str, *, by: str, at: dt.datetime
) -> tuple[AfterWashCheck, ...]:
    """Read the typed rows of the sheet that was printed from this job.

    Raises:
        BadInputError: with every fault by line, or of the job.
        UnreadableValueError: nobody's name is given, or a moment without its offset.
    """
    return read_rows(text, sheet_rows(rules, job), by=by, at=at)
