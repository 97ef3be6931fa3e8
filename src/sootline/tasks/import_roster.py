"""What comes into the register with a department's own list, and what must be known before?"""

import datetime as dt
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from sootline.core.basis import EditionId
from sootline.core.gear.components import Component
from sootline.core.gear.resolve import resolve_months
from sootline.core.gear.terms import ResolvedInterval
from sootline.core.intervals import Due
from sootline.core.intervals.retirement import retirement_due
from sootline.core.job.jobs import Member
from sootline.core.roster import Decision, Intake, Mapping, Table, read_list
from sootline.core.rulebook import Rule, Rulebook, assemble
from sootline.tasks.ports import Rules

_LIFE_TOPICS = ("retire.months", "retire.reflective_months")


@dataclass(frozen=True, kw_only=True)
class Register:
    """Members and their gear, as a part of a job."""

    members: tuple[Member, ...] = ()
    components: tuple[Component, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Imported:
    """What a list becomes.

    Args:
        register: the new members and pieces; of a list of events, all pieces with the events.
        mapping: how the list was read, to be remembered.
    """

    intake: Intake
    register: Register
    mapping: Mapping


def import_roster(
    rules: Rules,
    table: Table,
    mapping: Mapping,
    *,
    today: dt.date,
    edition: EditionId | None = None,
    policy: Iterable[Rule] = (),
    known: Register = Register(),
    decision: Decision | None = None,
) -> Imported:
    """Read a list as members and gear; nothing is kept by it.

    Args:
        edition: the adopted edition, by which gear past its life is held; None holds none, and
            says so.
        policy: the department's own rules on top of it.
        known: members and gear that are recorded already.
        decision: one officer's decision for every piece without a date.

    Raises:
        BadInputError: with every fault of the list, up to 1,000; or there is no such edition.
    """
    intake = read_list(
        table,
        mapping,
        today=today,
        known=known.components,
        due=_first_day_out(rules, edition, policy, today) if edition else None,
        decision=decision,
    )
    recorded = {member.id for member in known.members}
    members = tuple(
        Member(id=wearer.id, crew=wearer.crew, role=wearer.role)
        for wearer in intake.wearers
        if wearer.id not in recorded
    )
    return Imported(
        intake=intake,
        register=Register(members=members, components=intake.components),
        mapping=replace(mapping, columns=intake.columns),
    )


def _first_day_out(
    rules: Rules, edition: EditionId, policy: Iterable[Rule], today: dt.date
) -> Callable[[Component], Due | None]:
    """Return what finds a piece's first day out; the rules of a kind are looked up once."""
    book = assemble(adopted=rules.edition(edition), policy=policy, practice=rules.practice())
    found: dict[tuple[object, ...], tuple[ResolvedInterval, ...]] = {}

    def due(component: Component) -> Due | None:
        key = (component.kind, component.traits)
        if key not in found:
            found[key] = _lifetimes(component, book.rulebook)
        return retirement_due(component, found[key], today)

    return due


def _lifetimes(component: Component, rulebook: Rulebook) -> tuple[ResolvedInterval, ...]:
    return tuple(resolve_months(topic, component, None, rulebook) for topic in _LIFE_TOPICS)
