"""Who may inspect or repair what, by the texts the department goes by?"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    Bearing,
    Confidence,
    DateSpan,
    EditionId,
    Finding,
    Ground,
    RuleId,
    finding,
)
from sootline.core.gear import Component, find_kind
from sootline.core.gear.sources import kind_traits
from sootline.core.rulebook import Rulebook, voices

PRACTICE = Ground(
    rule=RuleId("upkeep"),
    edition=EditionId("practice"),
    source="common practice, no published source",
    confidence=Confidence.PRACTICE,
)


class Grade(StrEnum):
    """How far somebody's training or verification goes, the least first."""

    WEARER = "wearer"
    TRAINED = "trained"
    VERIFIED = "verified"


class Scope(StrEnum):
    """What somebody is trained or verified for; each is named apart, none includes another."""

    ROUTINE_INSPECTION = "routine-inspection"
    ADVANCED_INSPECTION = "advanced-inspection"
    LINER_INSPECTION = "liner-inspection"
    BASIC_REPAIR = "basic-repair"
    ADVANCED_REPAIR = "advanced-repair"
    ADVANCED_CLEANING = "advanced-cleaning"


TOPIC_OF = {
    Scope.ROUTINE_INSPECTION: "inspect.routine.who",
    Scope.ADVANCED_INSPECTION: "inspect.advanced.who",
    Scope.LINER_INSPECTION: "inspect.liner.who",
    Scope.BASIC_REPAIR: "repair.basic.who",
    Scope.ADVANCED_REPAIR: "repair.advanced.who",
}
_RANK = list(Grade)


@dataclass(frozen=True, kw_only=True)
class Qualified:
    """One person or provider, and for what, as the department recorded it.

    Args:
        who: the person's name or number, or the provider's.
        until: the last day it counts; unknown is not known to have ended.
        source: where that is written (a class list, a certificate's number).
    """

    who: str
    grade: Grade
    scopes: tuple[Scope, ...]
    until: DateSpan = DateSpan()
    source: str = ""


@dataclass(frozen=True, kw_only=True)
class Leave:
    """Whether somebody may do a thing to a component.

    Args:
        grade: what the texts ask for.
    """

    may: bool
    grade: Grade
    reasons: tuple[Finding, ...]


def ask_leave(
    scope: Scope,
    who: str,
    component: Component,
    rulebook: Rulebook,
    *,
    people: Iterable[Qualified],
    day: DateSpan,
) -> Leave:
    """Say whether somebody may do a thing to a component on a day.

    The strictest of edition, policy and practice counts. A text that speaks without a known value
    is asked about, and meanwhile nobody less than verified counts on its word alone.

    Raises:
        BadInputError: the component's kind is unknown.
    """
    grade, ground, asked = _asked_grade(scope, component, rulebook)
    has = _grade_of(scope, who, component, tuple(people), day)
    may = has is not None and _RANK.index(has) >= _RANK.index(grade)
    said = finding(
        Bearing.NOTES if may else Bearing.FORBIDS,
        "inspection.may" if may else "inspection.may_not",
        ground,
        who=who,
        scope=scope,
        grade=grade,
    )
    return Leave(may=may, grade=grade, reasons=(said, *asked))


def _asked_grade(
    scope: Scope, component: Component, rulebook: Rulebook
) -> tuple[Grade, Ground, tuple[Finding, ...]]:
    traits = kind_traits(find_kind(component.kind), component.traits)
    spoken = voices(rulebook, TOPIC_OF[scope], traits)
    stated = [(Grade(str(one.rule.value)), one.ground) for one in spoken if one.rule.value]
    unset = tuple(
        finding(Bearing.ASKS, f"ask.{one.rule.topic}", one.ground)
        for one in spoken
        if one.rule.value is None
    )
    if not stated:
        return Grade.VERIFIED, PRACTICE, unset
    grade, ground = max(stated, key=lambda one: _RANK.index(one[0]))
    return grade, ground, unset


def _grade_of(
    scope: Scope, who: str, component: Component, people: tuple[Qualified, ...], day: DateSpan
) -> Grade | None:
    """Return the highest grade somebody has for this; the wearer is one for routine alone."""
    grades = [
        one.grade
        for one in people
        if one.who == who and scope in one.scopes and not _ended(one.until, day)
    ]
    if scope is Scope.ROUTINE_INSPECTION and who in (component.owner, component.state.holder):
        grades.append(Grade.WEARER)
    return max(grades, key=_RANK.index, default=None)


def _ended(until: DateSpan, day: DateSpan) -> bool:
    """Whether a last day may have passed; the earliest reading counts."""
    if until == DateSpan() or day.latest is None:
        return False
    last = until.earliest or until.latest
    assert last is not None  # one bound at least is known
    return last < day.latest
