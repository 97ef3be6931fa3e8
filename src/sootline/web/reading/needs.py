"""How do decisions read: calls to make first, what waits for whom, then gear member by member?"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from sootline.core.basis import ComponentId, Finding
from sootline.core.care import Decision, Fate
from sootline.core.gear import Component, Hold
from sootline.core.job.jobs import Job
from sootline.tasks.decide import Decided
from sootline.tasks.hold_labels import HoldLabel, list_hold_labels
from sootline.web.reading.saying import Resting, Said, resting, said


@dataclass(frozen=True, kw_only=True)
class Waiting:
    """One thing somebody must decide, and whose gear waits for it.

    Args:
        cause: the name of the hold.
        question: what must be answered.
        who: who decides, who stands in, when it goes higher.
    """

    cause: str
    question: Said
    who: Said
    labels: tuple[HoldLabel, ...]


@dataclass(frozen=True, kw_only=True)
class Need:
    """What some pieces of one member need alike.

    Args:
        reasons: why, as the first of them has it.
        whole: whether it is everything the member has.
    """

    what: tuple[Said, ...]
    pieces: tuple[Component, ...]
    reasons: tuple[Resting, ...]
    whole: bool


@dataclass(frozen=True, kw_only=True)
class Needs:
    """The whole screen."""

    first: tuple[Finding, ...]
    waiting: tuple[Waiting, ...]
    members: tuple[tuple[str, tuple[Need, ...]], ...]
    quiet: int
    cautions: tuple[Finding, ...]
    unknowns: tuple[Finding, ...]


def read_needs(job: Job, decided: Decided, member: str = "") -> Needs:
    """Lay the decisions out.

    Args:
        member: only this one's; empty is everybody's.
    """
    pieces = {component.id: component for component in job.components}
    decisions = [
        one for one in decided.decisions if not member or pieces[one.component].owner == member
    ]
    loud = [one for one in decisions if one.fate is not Fate.HOOK]
    labels = list_hold_labels(job, decided)
    return Needs(
        first=_once(one for decision in decisions for one in decision.first),
        waiting=tuple(_waiting(one for one in labels if not member or one.owner == member)),
        members=tuple(_members(loud, pieces, job)),
        quiet=len(decisions) - len(loud),
        cautions=_once(one for decision in decisions for one in decision.cautions),
        unknowns=_once(one for decision in decisions for one in decision.unknowns),
    )


def what_of(decision: Decision) -> tuple[Said, ...]:
    """Say in a few words what a component needs: fate, level, disinfection, method."""
    words = [said(f"name.fate.{decision.fate}")]
    if decision.fate in (Fate.WASH, Fate.HOLD):
        then = "web.needs.level" if decision.fate is Fate.WASH else "web.needs.then"
        words.append(said(then, level=decision.level))
        if decision.disinfection:
            words.append(said(f"name.disinfection.{decision.disinfection}"))
    if decision.fate is Fate.WASH:
        words.append(said(f"name.wash_method.{decision.wash}"))
        if decision.separation.alone:
            words.append(said("decide.alone"))
        elif decision.separation.hazards:
            hazards = ", ".join(decision.separation.hazards)
            words.append(said("decide.apart", contaminant=hazards))
    return tuple(words)


def _waiting(labels: Iterable[HoldLabel]) -> Iterator[Waiting]:
    groups: dict[tuple[object, ...], list[HoldLabel]] = defaultdict(list)
    holds: dict[tuple[object, ...], tuple[Hold, str, str]] = {}
    for label in labels:
        for held in label.held:
            hold = held.hold
            told = hold.reason.values if hold.reason else ()
            key = (hold.cause, hold.question, hold.decider, told)
            groups[key].append(label)
            holds[key] = (hold, held.person or "", held.stand_in or "")
    for name, (hold, person, stand_in) in holds.items():
        values = hold.reason.values if hold.reason else ()
        yield Waiting(
            cause=hold.cause,
            question=Said(message=hold.question, values=values),
            who=said(
                "web.needs.who",
                decider=hold.decider,
                person=person,
                deputy=hold.deputy,
                stand_in=stand_in,
                hours=hold.escalate_after_h,
            ),
            labels=tuple(groups[name]),
        )


def _members(
    decisions: Iterable[Decision], pieces: dict[ComponentId, Component], job: Job
) -> Iterator[tuple[str, tuple[Need, ...]]]:
    groups: dict[str, dict[tuple[Said, ...], list[Decision]]] = defaultdict(dict)
    for decision in decisions:
        owner = pieces[decision.component].owner or ""
        groups[owner].setdefault(what_of(decision), []).append(decision)
    for owner, needs in groups.items():
        owned = sum(component.owner == owner for component in job.components)
        yield (
            owner,
            tuple(
                Need(
                    what=what,
                    pieces=tuple(pieces[one.component] for one in alike),
                    reasons=resting(_once(alike[0].reasons)),
                    whole=bool(owner) and len(alike) == owned,
                )
                for what, alike in needs.items()
            ),
        )


def _once(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Keep the first of findings that say the same."""
    return tuple({(one.message, one.values): one for one in findings}.values())
