"""What is known of one component when its care is decided, and by which texts?"""

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from sootline.core.basis import (
    Bearing,
    Confidence,
    ContaminantId,
    EditionId,
    Finding,
    Ground,
    MessageId,
    RuleId,
)
from sootline.core.care.decisions import Due
from sootline.core.care.policy import CarePolicy
from sootline.core.exposure.calls import Call
from sootline.core.exposure.grades import Exposure
from sootline.core.exposure.wearing import Wearing
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import Kind
from sootline.core.gear.labels import Guide
from sootline.core.gear.terms import CareTerms
from sootline.core.rulebook.contaminants import ContaminantRule, Knowledge, Level
from sootline.core.rulebook.rules import Rulebook

ON_IT = frozenset((Knowledge.KNOWN, Knowledge.SUSPECTED))


@dataclass(frozen=True, kw_only=True)
class Texts:
    """By what everything is decided: texts, contaminants, the department's choices, the moment.

    Args:
        kept: findings that are the same for every component, so that they are built once.
    """

    rulebook: Rulebook
    contaminants: Mapping[ContaminantId, ContaminantRule]
    policy: CarePolicy
    now: dt.datetime
    kept: dict[tuple[str, ...], tuple[Finding, ...]] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class Concern:
    """One exposure, with what common practice asks for it.

    Args:
        rule: None when the contaminant is in no list; then nobody here knows what it needs.
    """

    exposure: Exposure
    rule: ContaminantRule | None

    @property
    def on_it(self) -> bool:
        """Whether it is known or suspected to be there."""
        return self.exposure.knowledge in ON_IT

    @property
    def wet(self) -> bool:
        """Whether it asks for disinfection."""
        return self.on_it and self.rule is not None and self.rule.disinfect

    @property
    def ground(self) -> Ground:
        """What a finding cites that rests on this contaminant."""
        return self.rule.ground if self.rule else practice("unlisted")

    @property
    def level(self) -> Level:
        """The least level it asks for by itself; an unlisted one is never below advanced."""
        if self.rule is not None:
            return self.rule.floor(self.exposure.knowledge) or Level.LOOK
        return Level.ADVANCED if self.on_it else Level.LOOK


@dataclass(frozen=True, kw_only=True)
class Case:
    """One component with everything that bears on its care.

    Args:
        reached_skin: calls at which something reached its wearer's skin.
        secured: calls at which an investigator secured it, or its owner came to harm.
    """

    component: Component
    kind: Kind
    terms: CareTerms
    wearings: tuple[Wearing, ...]
    concerns: tuple[Concern, ...]
    guide: Guide | None = None
    due: tuple[Due, ...] = ()
    reached_skin: tuple[Call, ...] = ()
    evidence: tuple[Call, ...] = ()
    casualty: tuple[Call, ...] = ()


def practice(topic: str) -> Ground:
    """Return the ground of a habit of the trade that no text publishes."""
    return Ground(
        rule=RuleId(f"care.{topic}"),
        edition=EditionId("practice/care"),
        source="common practice, no published source",
        confidence=Confidence.PRACTICE,
    )


def decided(topic: str) -> Ground:
    """Return the ground of something the department's own policy asks for."""
    return Ground(
        rule=RuleId(f"policy.{topic}"),
        edition=EditionId("policy"),
        source="the department's policy",
        confidence=Confidence.POLICY,
    )


def recorded(topic: str, source: str = "the record of the component") -> Ground:
    """Return the ground of something that stands in the record."""
    return Ground(
        rule=RuleId(f"record.{topic}"),
        edition=EditionId("record"),
        source=source,
        confidence=Confidence.STATED,
    )


def reason(bearing: Bearing, message: str, ground: Ground, **values: object) -> Finding:
    """Build a reason of this stage from plain values, each kept as text; None is left out."""
    named = tuple((name, str(value)) for name, value in values.items() if value is not None)
    return Finding(bearing=bearing, message=MessageId(message), ground=ground, values=named)


def keep(
    texts: Texts, key: tuple[str, ...], build: Callable[[], tuple[Finding, ...]]
) -> tuple[Finding, ...]:
    """Return findings that are the same for every component, built the first time only."""
    found = texts.kept.get(key)
    if found is None:
        found = texts.kept[key] = build()
    return found
