"""On what does a figure about a machine rest: what was entered, or a law of physics?"""

from sootline.core.basis import Confidence, EditionId, Ground, RuleId


def as_entered(rule: str) -> Ground:
    """Return the ground of a fact as the department entered it."""
    return Ground(
        rule=RuleId(rule),
        edition=EditionId("statement"),
        source="as entered",
        confidence=Confidence.STATED,
    )


def by_physics(rule: str, source: str) -> Ground:
    """Return the ground of a figure that follows from a law of physics and what was entered.

    Args:
        source: the law, as a handbook calls it.
    """
    return Ground(
        rule=RuleId(rule),
        edition=EditionId("physics"),
        source=source,
        confidence=Confidence.HIGH,
    )
