"""A wash that no call asks for is the cleaning that comes due, on both desks."""

from dataclasses import replace

from tests.unit.tasks.memory_book import act
from tests.unit.tasks.test_year import COAT, JOB, NOW, of, record

from sootline.core.basis import PlaceId
from sootline.core.gear.records import Deed
from sootline.core.job.jobs import Job
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.deeds import Washed, WashStep
from sootline.tasks.take_reports import take
from sootline.tasks.write_reports import write
from sootline.wiring.rules import RULES

STEPS = tuple(
    Washed(step=step, load=1, pieces=(COAT,), place=PlaceId("drum"))
    for step in (WashStep.STARTED, WashStep.ENDED)
)


def cleaned(job: Job) -> list[str]:
    """Return on which days the coat had an advanced cleaning."""
    records = of(job, COAT).records
    return [str(one.on.earliest) for one in records if one.deed is Deed.ADVANCED_CLEANING]


def test_a_planned_wash_counts_in_the_record() -> None:
    """Taken before its cleaning is due: the next one counts from this wash."""
    made = record()
    for number, step in enumerate(STEPS):
        job = assemble_job(made.register, now=NOW)
        write(RULES, made, act(f"w{number}"), job, step)

    assert len(cleaned(assemble_job(made.register, now=NOW))) == 1


def test_a_planned_wash_counts_in_memory() -> None:
    """The same on the desk that is kept in memory."""
    job = replace(JOB, calls=())
    for step in STEPS:
        job = take(RULES, job, step, by="118")

    assert cleaned(job) == ["2026-04-11"]
