"""A job file becomes the beginning of a record: department, people, gear, calls, the year.

What a file says of the year stands in the record as it was; what it did to gear stands in the
file's gear already.
"""

from dataclasses import dataclass, replace

from sootline.core.job.jobs import Job
from sootline.core.job.things import DepartmentFacts
from sootline.core.ledger import Appended
from sootline.core.ledger.acts import Act
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.tasks.record_call import record_call
from sootline.tasks.recording import Book
from sootline.tasks.register_gear import register_components
from sootline.tasks.register_things import describe_department, register_things
from sootline.tasks.take_readings import draft_reading, list_readings
from sootline.tasks.write_year import draft_fact
from sootline.tasks.year_facts import list_facts


@dataclass(frozen=True, kw_only=True)
class TakenIn:
    """What was recorded.

    Args:
        members, components, calls: how many of each the file has.
        entries: how many entries are new; none when the file was taken in before.
    """

    members: int
    components: int
    calls: int
    entries: int


def take_in_job(book: Book, act: Act, job: Job) -> TakenIn:
    """Record everything a job says of a department, in steps that may be asked for again.

    Machines, sinks and racks stay part of what the department says of its wash room.

    Raises:
        BadInputError: a member, a piece or a call in it is registered already, or does not fit;
            steps before it stand, and asking again with the file put right goes on from there.
    """
    year = job.upkeep
    facts = DepartmentFacts(
        department=job.department,
        guides=job.guides,
        wash_room=job.wash_room,
        riding=job.riding,
        upkeep=UpkeepFacts(
            qualified=year.qualified,
            work_today=year.work_today,
            lead_times=year.lead_times,
            routines=year.routines,
        ),
    )
    done = [describe_department(book, _step(act, "department"), facts)]
    if job.members:
        done.append(register_things(book, _step(act, "members"), job.members))
    if job.components:
        done.append(register_components(book, _step(act, "gear"), job.components))
    done += [record_call(book, _step(act, f"call-{call.id}"), call) for call in job.calls]
    drafts = [
        draft_fact(_step(act, f"fact-{place}"), fact)
        for place, fact in enumerate((*job.builds, *list_facts(year)))
    ]
    drafts += [
        draft_reading(_step(act, f"reading-{place}"), reading)
        for place, reading in enumerate(list_readings(job.readings))
    ]
    if drafts:
        done.append(book.ledger.append(drafts))
    return TakenIn(
        members=len(job.members),
        components=len(job.components),
        calls=len(job.calls),
        entries=sum(_new(step) for step in done),
    )


def _step(act: Act, name: str) -> Act:
    return replace(act, idem=f"{act.idem}/{name}")


def _new(step: tuple[Appended, ...]) -> int:
    return sum(not one.repeated for one in step)
