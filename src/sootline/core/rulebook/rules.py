"""What does one text say on one topic, and how well is that known?

A rule is a value with its source; an unset value is a question the department must answer from its
own licensed copy, never a default.
"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    Confidence,
    DateSpan,
    EditionId,
    Ground,
    Limit,
    MessageId,
    RuleId,
    UnreadableValueError,
)


class RuleKind(StrEnum):
    """Which shape a rule's value has."""

    LIMIT = "limit"
    INTERVAL = "interval"
    COUNT = "count"
    LIST = "list"
    CHOICE = "choice"


Value = Limit | int | tuple[str, ...] | str

_SHAPES: dict[RuleKind, type[Limit] | type[int] | type[tuple[str, ...]] | type[str]] = {
    RuleKind.LIMIT: Limit,
    RuleKind.INTERVAL: int,
    RuleKind.COUNT: int,
    RuleKind.LIST: tuple,
    RuleKind.CHOICE: str,
}


@dataclass(frozen=True, kw_only=True)
class Rule:
    """One topic as one text states it.

    Args:
        topic: what it is about ("wash.bath_temp"); the same topic has the same id in every text.
        value: a Limit; months (interval) or a number (count); words (list); one word (choice);
            None is unset: the department must be asked.
        traits: what it is confined to: a kind, a layer, an element of the ensemble or a trait; one
            of them suffices; empty is every component.
        source: where the value was read; a citation.
        decision: who decided, and on which day, that a policy looser than the adopted edition
            holds ("A. Name, 2026-02-01"); None everywhere else.
    """

    topic: RuleId
    kind: RuleKind
    value: Value | None
    source: str
    confidence: Confidence
    traits: tuple[str, ...] = ()
    in_force: DateSpan | None = None
    decision: str | None = None

    def __post_init__(self) -> None:
        if self.value is not None and not isinstance(self.value, _SHAPES[self.kind]):
            raise UnreadableValueError(
                "rules.fault.shape", topic=self.topic, kind=self.kind, value=str(self.value)
            )

    def covers(self, traits: frozenset[str]) -> bool:
        """Whether the rule speaks of a component that has these traits."""
        return not self.traits or not traits.isdisjoint(self.traits)

    @property
    def question(self) -> MessageId:
        """The message that asks the department for this value."""
        return MessageId(f"ask.{self.topic}")

    def ground(self, edition: EditionId) -> Ground:
        """Return what a finding cites when it rests on this rule."""
        return Ground(
            rule=self.topic,
            edition=edition,
            source=self.source,
            confidence=self.confidence,
            in_force=self.in_force,
        )


class EditionStatus(StrEnum):
    """Where an edition stands today; the law of a place may still name an older one."""

    CURRENT = "current"
    SUPERSEDED = "superseded"
    WITHDRAWN = "withdrawn"
    PRACTICE = "practice"
    POLICY = "policy"


@dataclass(frozen=True, kw_only=True)
class Edition:
    """One text in one edition: what it is, since when it counts, and its rules."""

    id: EditionId
    title: str
    body: str
    status: EditionStatus
    in_force: DateSpan
    rules: tuple[Rule, ...]

    def on(self, topic: str, traits: frozenset[str] = frozenset()) -> tuple[Rule, ...]:
        """List what the text says on a topic for a component with these traits.

        Rules confined to a trait the component has come before the general ones.
        """
        spoken = [rule for rule in self.rules if rule.topic == topic and rule.covers(traits)]
        return tuple(sorted(spoken, key=lambda rule: not rule.traits))


@dataclass(frozen=True, kw_only=True)
class Rulebook:
    """The texts a department goes by: the adopted edition, its own policy, common practice.

    Args:
        adopted: the edition of the care standard the department adopted.
        policy: the department's own values, as an edition of its own; may be empty.
        practice: common practice, the last to speak on methods and silent on limits.
    """

    adopted: Edition
    policy: Edition
    practice: Edition

    @property
    def texts(self) -> tuple[Edition, ...]:
        """The texts in the order in which they speak on methods."""
        return (self.adopted, self.policy, self.practice)
