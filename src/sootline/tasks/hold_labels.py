"""Which bags and pieces must be marked so that nobody opens them, why, and who decides?"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from sootline.core.basis import BagId, ContaminantId, Finding, MemberId, Moment
from sootline.core.care.decisions import Decision
from sootline.core.exposure.calls import Call
from sootline.core.gear import Component
from sootline.core.gear.state import Hold
from sootline.core.job.jobs import Job
from sootline.tasks.decide import Decided
from sootline.tasks.hazards import hazards_on


@dataclass(frozen=True, kw_only=True)
class Held:
    """One cause for which a bag stays shut.

    Args:
        since: when the gear was last used at the call that caused it; None is not recorded.
        person, stand_in: who holds the deciding office tonight, and who stands in.
    """

    hold: Hold
    since: Moment | None
    person: str | None
    stand_in: str | None


@dataclass(frozen=True, kw_only=True)
class HoldLabel:
    """One label: what stays shut together, for the same causes.

    Args:
        sealed: False for a hold under which the gear is kept aside but not shut.
        first: what to do before anybody touches it.
    """

    owner: MemberId | None
    components: tuple[Component, ...]
    bags: tuple[BagId, ...]
    held: tuple[Held, ...]
    sealed: bool
    hazards: tuple[ContaminantId, ...]
    first: tuple[Finding, ...]


def list_hold_labels(job: Job, decided: Decided) -> tuple[HoldLabel, ...]:
    """Return a label for everything with an open hold, one member's and cause's gear on one."""
    known = {component.id: component for component in job.components}
    groups: dict[tuple[object, ...], list[Decision]] = defaultdict(list)
    for decision in decided.decisions:
        if decision.open_holds:
            component = known[decision.component]
            whose = component.owner or component.id
            causes = tuple(hold.cause for hold in decision.open_holds)
            groups[whose, causes, decision.sealed].append(decision)
    return tuple(
        _label(job, [known[one.component] for one in group], group) for group in groups.values()
    )


def _label(job: Job, components: list[Component], decisions: list[Decision]) -> HoldLabel:
    first = decisions[0]
    owner = components[0].owner
    return HoldLabel(
        owner=owner,
        components=tuple(components),
        bags=tuple(dict.fromkeys(_bags(job, owner, first.open_holds))),
        held=tuple(_held(job, hold) for hold in first.open_holds),
        sealed=first.sealed,
        hazards=hazards_on(decisions),
        first=tuple(dict.fromkeys(one for decision in decisions for one in decision.first)),
    )


def _held(job: Job, hold: Hold) -> Held:
    told = dict(hold.reason.values) if hold.reason else {}
    call = next(_calls(job, hold), None)
    return Held(
        hold=hold,
        since=(call.back_at or call.at) if call else None,
        person=told.get("person"),
        stand_in=told.get("stand_in"),
    )


def _calls(job: Job, hold: Hold) -> Iterator[Call]:
    """Find the call a hold comes from: its cause ends in it."""
    name = hold.cause.rpartition("/")[2]
    return (call for call in job.calls if call.id == name)


def _bags(job: Job, owner: MemberId | None, holds: Iterable[Hold]) -> Iterator[BagId]:
    for hold in holds:
        for call in _calls(job, hold):
            for person in call.people:
                if person.member == owner:
                    yield from person.bags
