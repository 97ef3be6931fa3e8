"""By which texts does a department go, and who says what on a topic?

A policy may ask for more than the adopted edition. One that asks for less is reported and not
used, unless the chief's decision with name and day stands with it. Nothing here touches label or
maker's guide: they are heard beside the rulebook, and no decision goes beyond them.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.basis import Bearing, DateSpan, EditionId, Finding, Ground, finding
from sootline.core.rulebook.rules import Edition, EditionStatus, Rule, Rulebook
from sootline.core.rulebook.topics import looser, value_text

POLICY = EditionId("policy")


@dataclass(frozen=True, kw_only=True)
class Spoken:
    """One text speaking on one topic; a rule without a value is a question."""

    edition: EditionId
    rule: Rule

    @property
    def ground(self) -> Ground:
        """Return what a finding cites when it rests on this."""
        return self.rule.ground(self.edition)


@dataclass(frozen=True, kw_only=True)
class Assembly:
    """The rulebook a department goes by, and what was found while laying its policy over it."""

    rulebook: Rulebook
    findings: tuple[Finding, ...]


def assemble(*, adopted: Edition, policy: Iterable[Rule], practice: Edition) -> Assembly:
    """Lay a department's policy over the edition it adopted."""
    kept: list[Rule] = []
    findings: list[Finding] = []
    for rule in policy:
        loosened = _loosened(rule, adopted)
        findings.extend(_report(rule, other, adopted.id) for other in loosened)
        if not loosened or rule.decision:
            kept.append(rule)
    own = Edition(
        id=POLICY,
        title="",
        body="",
        status=EditionStatus.POLICY,
        in_force=DateSpan(),
        rules=tuple(kept),
    )
    rulebook = Rulebook(adopted=adopted, policy=own, practice=practice)
    return Assembly(rulebook=rulebook, findings=tuple(findings))


def voices(rulebook: Rulebook, topic: str, traits: frozenset[str]) -> tuple[Spoken, ...]:
    """List who speaks on a topic for a component: edition, policy, practice, in this order.

    Within a text, what is confined to one of the component's traits comes first. Where a recorded
    decision loosens the edition for this component, the edition's own value is left out.
    """
    policy = rulebook.policy.on(topic, traits)
    decided = [rule for rule in policy if rule.decision]
    adopted = [
        rule
        for rule in rulebook.adopted.on(topic, traits)
        if not any(answers(mine, rule) and looser(mine, rule) for mine in decided)
    ]
    spoken = (
        (rulebook.adopted.id, adopted),
        (rulebook.policy.id, policy),
        (rulebook.practice.id, rulebook.practice.on(topic, traits)),
    )
    return tuple(Spoken(edition=edition, rule=rule) for edition, rules in spoken for rule in rules)


def answers(rule: Rule, other: Rule) -> bool:
    """Whether a policy was written for what the edition's rule covers, or for a part of it.

    A general decision does not reach what the edition says of one trait alone.
    """
    return not other.traits or (bool(rule.traits) and set(rule.traits) <= set(other.traits))


def _loosened(rule: Rule, adopted: Edition) -> tuple[Rule, ...]:
    same = (other for other in adopted.rules if other.topic == rule.topic)
    return tuple(other for other in same if answers(rule, other) and looser(rule, other))


def _report(rule: Rule, other: Rule, edition: EditionId) -> Finding:
    values = {
        "topic": rule.topic,
        "policy": value_text(rule),
        "edition": edition,
        "stated": value_text(other),
    }
    if rule.decision:
        ground = rule.ground(POLICY)
        return finding(
            Bearing.NOTES, "rules.policy.decided", ground, **values, decision=rule.decision
        )
    return finding(Bearing.WARNS, "rules.policy.looser", other.ground(edition), **values)
