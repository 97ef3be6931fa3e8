"""What does an edition say, what does the department's policy add, and who speaks on this piece?"""

from collections.abc import Sequence
from dataclasses import dataclass

from sootline.core.basis import (
    BadInputError,
    DateSpan,
    EditionId,
    Fault,
    Finding,
    MessageId,
    RuleId,
)
from sootline.core.gear import KINDS
from sootline.core.gear.sources import kind_traits
from sootline.core.rulebook import (
    SCOPES,
    TOPICS,
    Edition,
    EditionStatus,
    Rule,
    Spoken,
    assemble,
    voices,
)
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class EditionListed:
    """One edition there is, and how much of it is known."""

    id: EditionId
    title: str
    status: EditionStatus
    in_force: DateSpan
    stated: int
    unset: int


@dataclass(frozen=True, kw_only=True)
class TopicShown:
    """Everything the texts say on one topic, in the order in which they speak."""

    topic: RuleId
    spoken: tuple[Spoken, ...]


@dataclass(frozen=True, kw_only=True)
class RulesShown:
    """An edition with the policy laid over it and common practice beneath.

    Args:
        questions: the topics on which the edition's value is not known.
        findings: what a policy looser than the edition came to.
    """

    edition: EditionListed
    topics: tuple[TopicShown, ...]
    questions: tuple[RuleId, ...]
    findings: tuple[Finding, ...]


def list_editions(rules: Rules) -> tuple[EditionListed, ...]:
    """List the editions there are."""
    return tuple(summarise(rules.edition(edition)) for edition in rules.editions())


def summarise(edition: Edition) -> EditionListed:
    """Say what an edition is and how much of it is known."""
    unset = sum(rule.value is None for rule in edition.rules)
    return EditionListed(
        id=edition.id,
        title=edition.title,
        status=edition.status,
        in_force=edition.in_force,
        stated=len(edition.rules) - unset,
        unset=unset,
    )


def show_rules(
    rules: Rules,
    edition: EditionId,
    *,
    policy: Sequence[Rule] = (),
    topic: str = "",
    of: Sequence[str] = (),
) -> RulesShown:
    """Show what an edition, a policy and common practice say.

    Args:
        policy: the department's own rules.
        topic: a topic or the beginning of some ("wash"); empty is all.
        of: a kind and traits ("coat-shell", "aluminised"); empty shows every rule.

    Raises:
        BadInputError: no such edition, topic, kind or trait; each fault lists those there are.
    """
    adopted = rules.edition(edition)
    wanted, traits = _topics(topic), _traits(of)
    book = assemble(adopted=adopted, policy=policy, practice=rules.practice())
    shown = []
    for name in wanted:
        spoken = _everything(name, book.rulebook.texts)
        if of:
            spoken = voices(book.rulebook, name, traits)
        if spoken:
            shown.append(TopicShown(topic=RuleId(name), spoken=spoken))
    asked = {rule.topic: None for rule in adopted.rules if rule.value is None}
    return RulesShown(
        edition=summarise(adopted),
        topics=tuple(shown),
        questions=tuple(name for name in asked if name in wanted),
        findings=book.findings,
    )


def _everything(topic: str, texts: Sequence[Edition]) -> tuple[Spoken, ...]:
    return tuple(
        Spoken(edition=text.id, rule=rule)
        for text in texts
        for rule in text.rules
        if rule.topic == topic
    )


def _topics(begin: str) -> tuple[str, ...]:
    found = tuple(topic for topic in TOPICS if topic == begin or topic.startswith(f"{begin}."))
    if begin and not found:
        raise _refusal("topic", "rules.fault.topic", begin, ", ".join(TOPICS))
    return found or tuple(TOPICS)


def _traits(words: Sequence[str]) -> frozenset[str]:
    """Return the words with everything their kinds bring along: element, layer, materials."""
    kinds = {str(kind.id): kind for kind in KINDS}
    unknown = [word for word in words if word not in SCOPES and word not in kinds]
    if unknown:
        raise _refusal("of", "rules.fault.word", unknown[0], ", ".join(sorted(SCOPES)))
    brought = [kind_traits(kinds[word]) for word in words if word in kinds]
    return frozenset(words).union(*brought)


def _refusal(place: str, message: str, found: str, known: str) -> BadInputError:
    values = (("found", found[:60]), ("known", known))
    return BadInputError([Fault(place=place, message=MessageId(message), values=values)])
