"""What was found, what follows from it, and on what ground?

A finding never holds a sentence: it names a message, and the values the sentence needs.
"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis.ids import EditionId, MessageId, RuleId
from sootline.core.basis.spans import DateSpan


class Bearing(StrEnum):
    """What a finding does to the decision it belongs to."""

    REQUIRES = "requires"
    FORBIDS = "forbids"
    HOLDS = "holds"
    LIMITS = "limits"
    ASKS = "asks"
    WARNS = "warns"
    NOTES = "notes"


class Confidence(StrEnum):
    """How well the source of a value is known."""

    HIGH = "high"
    MEDIUM = "medium"
    LOW = "low"
    MEMORY = "memory"
    PRACTICE = "practice"
    POLICY = "policy"
    STATED = "stated"


@dataclass(frozen=True, kw_only=True)
class Ground:
    """On what does a value or a finding rest?

    Args:
        rule: the rule's id ("wash.bath_temp"), or the field of a label ("label.wash_temp").
        edition: which text speaks ("nfpa-1851/2020", "label", "guide", "policy", "statement").
        source: where it was read or who said it; a citation, never a sentence of a standard.
        in_force: since when it counts, None where that has no meaning (a label).
    """

    rule: RuleId
    edition: EditionId
    source: str
    confidence: Confidence
    in_force: DateSpan | None = None


@dataclass(frozen=True, kw_only=True)
class Finding:
    """One reason: what it does, which sentence says it, and the ground it stands on.

    Args:
        values: what the sentence names, as (name, text) pairs; names are fixed per message.
    """

    bearing: Bearing
    message: MessageId
    ground: Ground
    values: tuple[tuple[str, str], ...] = ()

    def value(self, name: str) -> str:
        """Return the value the sentence calls by this name.

        Raises:
            KeyError: the finding carries no such value.
        """
        return dict(self.values)[name]


def finding(bearing: Bearing, message: str, ground: Ground, **values: object) -> Finding:
    """Build a finding from plain keyword values, each kept as text."""
    named = tuple((name, str(value)) for name, value in values.items())
    return Finding(bearing=bearing, message=MessageId(message), ground=ground, values=named)
