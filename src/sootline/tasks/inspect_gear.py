"""What came of inspections, day by day and one by one, and what is looked at on a piece?"""

from dataclasses import dataclass
from datetime import date
from zoneinfo import ZoneInfo

from sootline.core.basis import BadInputError, ComponentId, Fault, Finding, MessageId
from sootline.core.gear import Component
from sootline.core.job.jobs import Job
from sootline.core.rulebook import assemble
from sootline.core.upkeep.inspections import (
    Bench,
    DayResult,
    Inspection,
    InspectionKind,
    Judged,
    LinerTest,
    Result,
    judge_day,
    judge_inspection,
    list_points,
    list_tests,
)
from sootline.tasks.list_due import civil_day
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class InspectionResult:
    """Every inspection day, and every inspection outside of one.

    Args:
        findings: what a policy looser than the edition came to.
    """

    days: tuple[DayResult, ...]
    single: tuple[Judged, ...]
    findings: tuple[Finding, ...]

    @property
    def quiet(self) -> bool:
        """Whether nothing was found and nothing stays due."""
        every = [piece for day in self.days for piece in day.pieces] + list(self.single)
        return all(piece.result is Result.NOTHING_FOUND for piece in every)


@dataclass(frozen=True, kw_only=True)
class CheckList:
    """What is looked at and tested on one component in one inspection."""

    component: ComponentId
    kind: InspectionKind
    points: tuple[MessageId, ...]
    tests: tuple[LinerTest, ...]
    questions: tuple[Finding, ...]


def inspect_gear(rules: Rules, job: Job) -> InspectionResult:
    """Judge every inspection of a job; a day takes those of its kind and civil day.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    bench, findings = _bench(rules, job)
    zone = ZoneInfo(job.department.zone)
    left = list(job.upkeep.inspections)
    days = []
    for day in job.upkeep.inspection_days:
        made = [one for one in left if one.kind is day.kind and _on(one, zone) == day.on]
        left = [one for one in left if one not in made]
        days.append(judge_day(day, job.components, made, bench))
    pieces = {component.id: component for component in job.components}
    return InspectionResult(
        days=tuple(days),
        single=tuple(judge_inspection(pieces[one.component], one, bench) for one in left),
        findings=findings,
    )


def judge_one(rules: Rules, job: Job, inspection: Inspection) -> Judged:
    """Judge one inspection by itself.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist, or has no such
            component.
    """
    component = _component(job, inspection.component)
    return judge_inspection(component, inspection, bench_of(rules, job))


def list_checks(rules: Rules, job: Job, piece: ComponentId) -> tuple[CheckList, ...]:
    """List the three check lists of one component; an inspection it does not have is left out.

    Raises:
        BadInputError: the job has no such component.
    """
    component = _component(job, piece)
    bench, _ = _bench(rules, job)
    lists = []
    for kind in InspectionKind:
        asked = list_tests(component, kind, bench.rulebook)
        points = list_points(component.kind, kind)
        if points:
            lists.append(
                CheckList(
                    component=piece,
                    kind=kind,
                    points=points,
                    tests=tuple(test for test, _ in asked.tests),
                    questions=asked.questions,
                )
            )
    return tuple(lists)


def _component(job: Job, piece: ComponentId) -> Component:
    component = next((one for one in job.components if one.id == piece), None)
    if component is None:
        message = MessageId("job.no_such_component")
        raise BadInputError([Fault(place="--piece", message=message, values=(("value", piece),))])
    return component


def bench_of(rules: Rules, job: Job) -> Bench:
    """Return what a job's inspections are judged by.

    Raises:
        BadInputError: the job names an edition that does not exist.
    """
    return _bench(rules, job)[0]


def _bench(rules: Rules, job: Job) -> tuple[Bench, tuple[Finding, ...]]:
    book = assemble(
        adopted=rules.edition(job.department.edition),
        policy=job.department.policy,
        practice=rules.practice(),
    )
    bench = Bench(
        rulebook=book.rulebook,
        guides=job.guides,
        people=job.upkeep.qualified,
        today=civil_day(job),
    )
    return bench, book.findings


def _on(inspection: Inspection, zone: ZoneInfo) -> date:
    return inspection.at.astimezone(zone).date()
