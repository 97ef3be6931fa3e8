"""Small invented texts that tests of the rulebook build on."""

from sootline.core.basis import Confidence, DateSpan, EditionId, Side, parse_limit
from sootline.core.rulebook import TOPICS, Edition, EditionStatus, Rule, RuleKind, Value


def rule(
    topic: str,
    value: str | int | tuple[str, ...] | None,
    *traits: str,
    decision: str | None = None,
) -> Rule:
    """Make a rule; a text on a limit is read as the limit it states."""
    known = TOPICS[topic]
    stated: Value | None = value
    if known.kind is RuleKind.LIMIT and isinstance(value, str):
        stated = parse_limit(value, known.side or Side.AT_MOST)
    return Rule(
        topic=known.id,  # type: ignore[arg-type] # ids of topics are rule ids
        kind=known.kind,
        value=stated,
        source="invented",
        confidence=Confidence.STATED,
        traits=traits,
        decision=decision,
    )


def edition(name: str, *rules: Rule) -> Edition:
    """Make an edition of these rules."""
    return Edition(
        id=EditionId(name),
        title=name,
        body="invented",
        status=EditionStatus.CURRENT,
        in_force=DateSpan.parse("2024"),
        rules=rules,
    )
