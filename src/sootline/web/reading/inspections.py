"""How do inspections read: the days there are, what is due, one day piece by piece?"""

from dataclasses import dataclass, replace

from sootline.core.basis import DateSpan
from sootline.core.gear import Component
from sootline.core.intervals import Matter, Standing
from sootline.core.rulebook import assemble
from sootline.core.upkeep.inspections import Inspection, InspectionDay, InspectionKind, Judged
from sootline.core.upkeep.inspections.facts import SCOPE_OF
from sootline.core.upkeep.qualified import Grade, Leave, ask_leave
from sootline.tasks.list_due import DueItem, DueList, civil_day
from sootline.web.answers import Answers
from sootline.wiring.rules import RULES

_PRESSES = (Standing.OVERDUE, Standing.TODAY, Standing.SOON)
_KIND_OF = {
    Matter.ADVANCED_INSPECTION: InspectionKind.ADVANCED,
    Matter.LINER_INSPECTION: InspectionKind.LINER,
}


@dataclass(frozen=True, kw_only=True)
class DayLine:
    """One inspection day in a list.

    Args:
        left: how many pieces nobody has looked at yet.
        absent: how many are not there.
    """

    kind: str
    on: str
    planned: int
    left: int
    absent: int


@dataclass(frozen=True, kw_only=True)
class DuePiece:
    """One piece of which an inspection is due."""

    kind: str
    item: DueItem


@dataclass(frozen=True, kw_only=True)
class DayPiece:
    """One piece of a day.

    Args:
        judged: what came of it; None while nobody looked.
        absent: why it is not there; None while nobody said so.
        photos: names of kept photos of what was found.
    """

    component: Component
    judged: Judged | None
    absent: str | None
    photos: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class DayShown:
    """One day, owner by owner."""

    kind: str
    on: str
    owners: tuple[tuple[str, tuple[DayPiece, ...]], ...]
    left: int
    done: int


@dataclass(frozen=True, kw_only=True)
class AskedOf:
    """Who may inspect a piece.

    Args:
        grade: what the texts ask for.
        people: who may, by what the department has recorded.
    """

    grade: Grade
    people: tuple[str, ...]


def read_days(answers: Answers) -> tuple[DayLine, ...]:
    """Lay out the days, the newest first."""
    lines = []
    for result in answers.inspected.days:
        seen = {one.component for one in result.pieces if _looked(answers, result.day, one)}
        away = {one.component for one in result.day.absent} - seen
        lines.append(
            DayLine(
                kind=result.day.kind.value,
                on=result.day.on.isoformat(),
                planned=len(result.day.planned),
                left=len(set(result.day.planned) - seen - away),
                absent=len(away),
            )
        )
    return tuple(sorted(lines, key=lambda one: one.on, reverse=True))


def read_due(due: DueList) -> tuple[DuePiece, ...]:
    """List the pieces of which an inspection is due, the most pressing first."""
    return tuple(
        DuePiece(kind=_KIND_OF[item.due.matter].value, item=item)
        for item in due.items
        if item.due.matter in _KIND_OF and item.due.standing in _PRESSES
    )


def read_one_day(answers: Answers, day: InspectionDay) -> DayShown:
    """Lay one day out, owner by owner; what nobody looked at stays to do."""
    result = next(one for one in answers.inspected.days if one.day == day)
    pieces = {one.id: one for one in answers.job.components}
    absent = {one.component: one.why for one in day.absent}
    owners: dict[str, list[DayPiece]] = {}
    for judged in result.pieces:
        component = pieces[judged.component]
        looked = _looked(answers, day, judged)
        owners.setdefault(component.owner or component.set or "-", []).append(
            DayPiece(
                component=component,
                judged=judged if looked else None,
                absent=None if looked else absent.get(judged.component),
                photos=looked[-1].photos if looked else (),
            )
        )
    every = [one for listed in owners.values() for one in listed]
    return DayShown(
        kind=day.kind.value,
        on=day.on.isoformat(),
        owners=tuple((owner, tuple(listed)) for owner, listed in owners.items()),
        left=sum(1 for one in every if one.judged is None and one.absent is None),
        done=sum(1 for one in every if one.judged is not None),
    )


def asked_of(answers: Answers, kind: InspectionKind, component: Component) -> AskedOf:
    """Say who may inspect a piece, by the texts and by the department's own list."""
    job = answers.job
    book = assemble(
        adopted=RULES.edition(job.department.edition),
        policy=job.department.policy,
        practice=RULES.practice(),
    ).rulebook
    scope, people = SCOPE_OF[kind], job.upkeep.qualified
    day = DateSpan.day(civil_day(job))

    def leave(who: str) -> Leave:
        return ask_leave(scope, who, component, book, people=people, day=day)

    names = dict.fromkeys((*(one.who for one in people), component.owner or ""))
    return AskedOf(
        grade=leave("").grade, people=tuple(who for who in names if who and leave(who).may)
    )


def _looked(answers: Answers, day: InspectionDay, judged: Judged) -> tuple[Inspection, ...]:
    """Return the inspections of a piece on a day, however they came out."""
    return tuple(
        one
        for one in answers.job.upkeep.inspections
        if one.component == judged.component
        and one.kind is day.kind
        and civil_day(replace(answers.job, now=one.at)) == day.on
    )
