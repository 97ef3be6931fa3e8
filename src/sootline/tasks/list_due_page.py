"""What is due next, out of more components than a list can show at once?"""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256

from sootline import __version__
from sootline.core.basis import BadInputError
from sootline.core.gear import Component, Guide
from sootline.core.intervals import Due, Matter, Standing, list_due
from sootline.core.job.things import DepartmentFacts
from sootline.core.rulebook import Rulebook, assemble
from sootline.tasks.assemble_job import read_department
from sootline.tasks.list_due import DueItem
from sootline.tasks.ports import DueAt, DueDays, DueKey, Register, Rules

MOST = 200


@dataclass(frozen=True, kw_only=True)
class DuePage:
    """One page of what is due, by its day.

    Args:
        items: with their reasons, as they stand today.
        following: where the next page begins; None after the last.
    """

    today: dt.date
    items: tuple[DueItem, ...]
    following: DueKey | None = None


@dataclass(frozen=True, kw_only=True)
class _Texts:
    rulebook: Rulebook
    guides: dict[str, Guide]
    digest: str


def list_due_page(
    rules: Rules,
    register: Register,
    days: DueDays,
    *,
    today: dt.date,
    until: dt.date | None = None,
    after: DueKey | None = None,
    most: int = 50,
) -> DuePage:
    """List what is due up to a day, from the earliest on, a page at a time.

    Args:
        until: the last day that counts; None is today.
        after: where the page before ended.
        most: how many at most, up to 200.

    Raises:
        BadInputError: the department was never described, or names an edition that does not
            exist.
    """
    texts = _texts(rules, read_department(register))
    days.bring_up(texts.digest, lambda one: _first_days(one, texts, today))
    size = max(1, min(most, MOST))
    found = days.due(until or today, after=after, most=size + 1)
    more = len(found) > size
    return DuePage(
        today=today,
        items=tuple(_items(found[:size], texts, today)),
        following=found[size - 1].key if more else None,
    )


def _texts(rules: Rules, facts: DepartmentFacts) -> _Texts:
    department = facts.department
    adopted, practice = rules.edition(department.edition), rules.practice()
    book = assemble(adopted=adopted, policy=department.policy, practice=practice)
    said = repr((__version__, book.rulebook, facts.guides))
    return _Texts(
        rulebook=book.rulebook,
        guides={guide.id: guide for guide in facts.guides},
        digest=sha256(said.encode()).hexdigest(),
    )


def _dues(component: Component, texts: _Texts, today: dt.date) -> tuple[Due, ...]:
    guide = texts.guides.get(component.guide) if component.guide else None
    return list_due(component, guide, texts.rulebook, today)


def _first_days(
    component: Component, texts: _Texts, today: dt.date
) -> Iterator[tuple[Matter, dt.date | None]]:
    """Say when what is due; gear in reserve waits for nothing but its end.

    A kind that nobody knows (another installation's) has no day; it stops no list.
    """
    try:
        dues = _dues(component, texts, today)
    except BadInputError:
        yield Matter.RETIREMENT, None
        return
    for due in dues:
        if due.standing is not Standing.WAITS:
            yield due.matter, due.first_day.earliest or due.first_day.latest


def _items(found: tuple[DueAt, ...], texts: _Texts, today: dt.date) -> Iterator[DueItem]:
    for one in found:
        component = one.known.component
        for due in _dues(component, texts, today):
            if due.matter is one.key.matter:
                yield DueItem(component=component, due=due)
