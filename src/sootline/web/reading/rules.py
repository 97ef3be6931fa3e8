"""How do a rule, its value and a difference between two editions read?"""

from collections.abc import Sequence
from dataclasses import dataclass

from sootline.core.basis import EditionId, Limit
from sootline.core.rulebook import TOPICS, Difference, Rule, RuleKind
from sootline.tasks.show_rules import TopicShown
from sootline.words import name, say

_WORDS_OF = {
    "wash.forbidden": "act",
    "dry.forbidden": "act",
    "wash.method": "wash_method",
    "wash.company": "company",
    "clean.smoke_level": "level",
    "blood.soft_word": "disinfection",
    "blood.hard_word": "disinfection",
}
_SCOPES = ("kind", "element", "layer", "trait")


@dataclass(frozen=True, kw_only=True)
class RuleLine:
    """One text's word on a topic.

    Args:
        scope: to what it is confined, in words.
        question: what to ask where the value is not known.
    """

    edition: EditionId
    rule: Rule
    value: str
    scope: str
    question: str


@dataclass(frozen=True, kw_only=True)
class TopicLines:
    """A topic with everything the texts say on it."""

    topic: str
    lines: tuple[RuleLine, ...]


@dataclass(frozen=True, kw_only=True)
class DifferenceLine:
    """A topic on which two editions differ."""

    difference: Difference
    before: str
    after: str
    scope: str


def read_topic(topic: TopicShown, lang: str) -> TopicLines:
    """Lay one topic out."""
    return TopicLines(
        topic=topic.topic,
        lines=tuple(
            RuleLine(
                edition=spoken.edition,
                rule=spoken.rule,
                value=value_of(spoken.rule, lang),
                scope=_scopes(spoken.rule.traits, lang),
                question=say(spoken.rule.question, lang=lang) if spoken.rule.value is None else "",
            )
            for spoken in topic.spoken
        ),
    )


def read_difference(difference: Difference, lang: str) -> DifferenceLine:
    """Lay one difference out; an edition that says nothing on the topic is silent."""
    silent = say("rules.value.silent", lang=lang)

    def said(rules: Sequence[Rule]) -> str:
        return "; ".join(value_of(rule, lang) for rule in rules) or silent

    return DifferenceLine(
        difference=difference,
        before=said(difference.before),
        after=said(difference.after),
        scope=_scopes(difference.traits, lang),
    )


def value_of(rule: Rule, lang: str) -> str:
    """Return a value with its unit, or that it is not known."""
    match rule.value:
        case None:
            return say("rules.value.unset", lang=lang)
        case Limit() as limit:
            side = "at_most" if limit.side == "at most" else "at_least"
            return say(f"rules.value.{side}", {"value": limit.numbers}, lang=lang)
        case int(number):
            unit = "months" if rule.kind is RuleKind.INTERVAL else TOPICS[rule.topic].unit
            return say(f"rules.count.{unit}", {"n": str(number)}, lang=lang)
        case str(word):
            return _word(rule, word, lang)
        case words:
            return ", ".join(_word(rule, word, lang) for word in words)


def _word(rule: Rule, word: str, lang: str) -> str:
    return name(_WORDS_OF.get(rule.topic, "rule_word"), word, lang=lang)


def _scopes(traits: Sequence[str], lang: str) -> str:
    return ", ".join(_scope(trait, lang) for trait in traits)


def _scope(trait: str, lang: str) -> str:
    called = (name(category, trait, lang=lang) for category in _SCOPES)
    return next((text for text in called if text != trait), trait)
