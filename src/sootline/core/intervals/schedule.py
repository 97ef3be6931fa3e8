"""What is due on one component, by every text the department goes by?"""

import datetime as dt

from sootline.core.basis import Bearing, Finding, Ground
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import Layer
from sootline.core.gear.labels import Guide
from sootline.core.gear.resolve import resolve_months
from sootline.core.gear.sources import kind_traits
from sootline.core.gear.terms import ResolvedInterval
from sootline.core.intervals.dues import Due, Matter, Standing
from sootline.core.intervals.recurring import (
    CleaningTerms,
    cleaning_due,
    inspection_due,
    liner_inspection_due,
)
from sootline.core.intervals.retirement import retirement_due
from sootline.core.rulebook.books import voices
from sootline.core.rulebook.rules import Rulebook, RuleKind

_COUNT = "clean.advanced.count_in_12_months"
_RETIREMENTS = ("retire.months", "retire.reflective_months")


def list_due(
    component: Component, guide: Guide | None, rulebook: Rulebook, today: dt.date
) -> tuple[Due, ...]:
    """List every matter of a component with its first day, how it stands, and why.

    Raises:
        BadInputError: the component's kind is unknown.
    """

    def months(topic: str) -> ResolvedInterval:
        return resolve_months(topic, component, guide, rulebook)

    terms = CleaningTerms(
        every=months("clean.advanced.months"),
        count=_count(component, rulebook),
        warn=months("clean.advanced.warn_months"),
    )
    dues = [
        retirement_due(component, [months(topic) for topic in _RETIREMENTS], today),
        cleaning_due(component, terms, today),
        inspection_due(component, months("inspect.advanced.months"), today),
    ]
    if find_kind(component.kind).layer is Layer.LINER:
        first, repeat = months("inspect.liner.first_months"), months("inspect.liner.repeat_months")
        dues.append(liner_inspection_due(component, first, repeat, today))
    return tuple(due for due in dues if due is not None)


def cleaning_reasons(dues: tuple[Due, ...]) -> tuple[Finding, ...]:
    """Return the reasons that care accepts: a cleaning that is due is a reason to clean."""
    pressing = (Standing.TODAY, Standing.OVERDUE)
    return tuple(
        reason
        for due in dues
        if due.matter is Matter.ADVANCED_CLEANING and due.standing in pressing
        for reason in due.reasons
        if reason.bearing is Bearing.REQUIRES
    )


def _count(component: Component, rulebook: Rulebook) -> tuple[int, Ground] | None:
    """Return the largest number of cleanings in twelve months that any text asks for."""
    traits = kind_traits(find_kind(component.kind), component.traits)
    counts = [
        (spoken.rule.value, spoken.ground)
        for spoken in voices(rulebook, _COUNT, traits)
        if spoken.rule.kind is RuleKind.COUNT and isinstance(spoken.rule.value, int)
    ]
    return max(counts, key=lambda pair: pair[0], default=None)
