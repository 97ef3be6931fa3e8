"""What must every component undergo, what is due on it, and which answers of before still hold?

A department of thousands of pieces changes a few at a time. What nothing new bears on is judged as
before; the rest is judged again. Judging everything anew comes to the same.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from typing import TypeVar

from sootline.core.basis import ComponentId, MemberId
from sootline.core.care import Decision, decide_care
from sootline.core.care import Due as Reason
from sootline.core.exposure import Call
from sootline.core.gear import Component
from sootline.core.intervals import Due, cleaning_reasons, list_due
from sootline.core.job.jobs import Job
from sootline.core.riding.garments import Kept
from sootline.core.rulebook import Assembly, assemble
from sootline.tasks.decide import Decided
from sootline.tasks.list_due import DueList, civil_day, in_order_of_pressing
from sootline.tasks.ports import Rules

_Dues = Mapping[ComponentId, tuple[Due, ...]]
_Decisions = Mapping[ComponentId, Decision]
_T = TypeVar("_T")


@dataclass(frozen=True, kw_only=True)
class Judged:
    """What every component of a job must undergo and what is due on it, on a civil day.

    Args:
        book: the texts it was judged by.
        dues: every matter of every component.
        decisions: after the calls and by what is due anyway.
        after_calls: after the calls alone; a cleaning that is merely due keeps nobody off.
        elements: what "who can ride" puts together of it, for the next time it is asked.
    """

    job: Job
    today: date
    book: Assembly
    dues: _Dues
    decisions: _Decisions
    after_calls: _Decisions
    elements: Kept = field(default_factory=dict, compare=False, repr=False)

    @property
    def due_list(self) -> DueList:
        """Everything that is due, as `due_gear` gives it."""
        pairs = ((one, self.dues[one.id]) for one in self.job.components)
        return in_order_of_pressing(pairs, self.today, self.book.findings)

    @property
    def decided(self) -> Decided:
        """Every decision in the order of the job, as `decide_job` gives it."""
        return Decided(
            rulebook=self.book.rulebook,
            decisions=tuple(self.decisions[one.id] for one in self.job.components),
            findings=self.book.findings,
        )


def judge(rules: Rules, job: Job, before: Judged | None = None) -> Judged:
    """Judge every component of a job.

    Args:
        before: what was judged earlier by the same rules; what nothing new bears on is taken
            from it.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    today = civil_day(job)
    if before is None or not _same_texts(before, job, today):
        book = assemble(
            adopted=rules.edition(job.department.edition),
            policy=job.department.policy,
            practice=rules.practice(),
        )
        nothing = Judged(job=job, today=today, book=book, dues={}, decisions={}, after_calls={})
        return _judged(rules, job, nothing, frozenset(one.id for one in job.components))
    return _judged(rules, job, before, frozenset(_anew(job, before.job)))


def _same_texts(before: Judged, job: Job, today: date) -> bool:
    was = before.job
    return (was.department, was.guides, before.today) == (job.department, job.guides, today)


def _anew(job: Job, was: Job) -> Iterator[ComponentId]:
    """Name what has changed, and what a call bears on that is open or was."""
    kept = {one.id: one for one in was.components}
    for one in job.components:
        # Mostly the very same object; only then is comparing quick.
        if kept.get(one.id) is not one and kept.get(one.id) != one:
            yield one.id
    yield from at_calls(job.components, (*job.calls, *was.calls))


def at_calls(components: Iterable[Component], calls: Iterable[Call]) -> frozenset[ComponentId]:
    """Name every component a call may bear on: worn, remarked on, or of its people.

    Whose gear met something at a call is among its people, whoever wore the piece.
    """
    pieces: set[ComponentId] = set()
    people: set[MemberId] = set()
    for call in calls:
        pieces.update(piece for one in call.people for piece in one.worn or ())
        pieces.update((one.component for one in call.remarks), call.evidence)
        people.update((one.member for one in call.people), call.casualties)
    if not pieces and not people:
        return frozenset()
    gear = tuple(components)
    people.update(one.owner for one in gear if one.id in pieces and one.owner)
    return frozenset(one.id for one in gear if one.id in pieces or one.owner in people)


def _judged(rules: Rules, job: Job, before: Judged, anew: frozenset[ComponentId]) -> Judged:
    some = tuple(one for one in job.components if one.id in anew)
    guides = {guide.id: guide for guide in job.guides}
    dues = {
        one.id: list_due(
            one, guides.get(one.guide) if one.guide else None,
            before.book.rulebook, before.today,
        )
        for one in some
    }  # fmt: skip
    after_calls = _decide(rules, job, before, some, ())
    decided = {**after_calls, **_also_due(rules, job, before, some, tuple(_reasons(dues)))}
    there = [one.id for one in job.components]
    return replace(
        before,
        job=job,
        dues=_joined(there, before.dues, dues),
        decisions=_joined(there, before.decisions, decided),
        after_calls=_joined(there, before.after_calls, after_calls),
    )


def _also_due(
    rules: Rules,
    job: Job,
    before: Judged,
    some: tuple[Component, ...],
    reasons: tuple[Reason, ...],
) -> _Decisions:
    """Decide once more where a cleaning is due; only there do the two answers differ."""
    if not reasons:
        return {}
    due = frozenset(one.component for one in reasons)
    # What a call says of a person reaches all of their gear, so it goes along.
    bearing = due | at_calls(some, job.calls)
    found = _decide(rules, job, before, tuple(one for one in some if one.id in bearing), reasons)
    return {name: decision for name, decision in found.items() if name in due}


def _decide(
    rules: Rules, job: Job, before: Judged, some: tuple[Component, ...], due: Iterable[Reason]
) -> dict[ComponentId, Decision]:
    decisions = decide_care(
        components=some,
        guides=job.guides,
        calls=job.calls,
        rulebook=before.book.rulebook,
        contaminants=rules.contaminants(),
        policy=job.department.care,
        now=job.now,
        due=due,
    )
    return {one.component: one for one in decisions}


def _reasons(dues: _Dues) -> Iterator[Reason]:
    for name, listed in dues.items():
        for found in cleaning_reasons(listed):
            yield Reason(component=name, finding=found)


def _joined(
    there: list[ComponentId], before: Mapping[ComponentId, _T], fresh: Mapping[ComponentId, _T]
) -> dict[ComponentId, _T]:
    return {name: fresh[name] if name in fresh else before[name] for name in there}
