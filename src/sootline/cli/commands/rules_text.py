"""How do rules, their sources and their differences read in a terminal?"""

import textwrap
from collections.abc import Iterator, Sequence

from sootline.cli.output import columns_wide, finding_lines, printable
from sootline.core.basis import Limit
from sootline.core.rulebook import TOPICS, Rule, RuleKind, Spoken
from sootline.tasks.compare_rules import RulesCompared
from sootline.tasks.show_rules import EditionListed, RulesShown
from sootline.words import name, say

_PIECES_SHOWN = 12
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


def listed_lines(listed: Sequence[EditionListed], *, lang: str) -> Iterator[str]:
    """Return the editions there are, one paragraph each."""
    for edition in listed:
        counts = {"stated": str(edition.stated), "unset": str(edition.unset)}
        yield from _heading(edition, lang)
        yield from _wrapped("  ", say("rules.show.listed", counts, lang=lang))


def shown_lines(shown: RulesShown, *, lang: str) -> Iterator[str]:
    """Return what an edition, a policy and common practice say, topic by topic."""
    yield from _heading(shown.edition, lang)
    for topic in shown.topics:
        yield ""
        yield f"{_topic(topic.topic, lang)} [{topic.topic}]"
        for spoken in topic.spoken:
            yield from _spoken(spoken, lang)
    if shown.questions:
        yield ""
        count = {"n": str(len(shown.questions))}
        yield from _wrapped("", say("rules.show.questions", count, lang=lang))
    if shown.findings:
        yield ""
        yield from finding_lines(shown.findings, lang=lang)
    yield ""
    yield from _wrapped("", say("rules.show.check", lang=lang))


def compared_lines(compared: RulesCompared, *, lang: str) -> Iterator[str]:
    """Return what differs between two editions, and for which pieces."""
    yield from _heading(compared.before, lang)
    yield from _heading(compared.after, lang)
    for difference in compared.differences:
        change = name("change", difference.change.value, lang=lang)
        called = _topic(difference.topic, lang)
        yield ""
        confined = _confined(difference.traits, lang)
        yield from _wrapped("", f"{called}{confined} [{difference.topic}]: {change}")
        for edition, rules in (
            (compared.before, difference.before),
            (compared.after, difference.after),
        ):
            said = "; ".join(_value(rule, lang) for rule in rules)
            said = said or say("rules.value.silent", lang=lang)
            yield from _wrapped(f"  {edition.id}: ", said)
        if compared.pieces:
            yield from _touched(difference.touches, lang)
    yield ""
    count = {"n": str(len(compared.differences))}
    yield from _wrapped("", say("rules.compare.count", count, lang=lang))
    yield from _wrapped("", say("rules.show.check", lang=lang))


def _heading(edition: EditionListed, lang: str) -> Iterator[str]:
    values = {"title": edition.title, "status": edition.status.value}
    message = "rules.show.heading"
    if edition.in_force.earliest:
        message, values["since"] = "rules.show.heading_dated", str(edition.in_force)
    yield from _wrapped(f"{edition.id}: ", say(message, values, lang=lang))


def _topic(topic: str, lang: str) -> str:
    called = name("topic", topic, lang=lang)
    return called[:1].upper() + called[1:]


def _spoken(spoken: Spoken, lang: str) -> Iterator[str]:
    rule = spoken.rule
    edition = name("edition", spoken.edition, lang=lang)
    said = _value(rule, lang)
    if rule.value is None:
        said = f"{said}. {say(rule.question, lang=lang)}"
    yield from _wrapped(f"  {edition}{_confined(rule.traits, lang)}: ", said)
    values = {"source": rule.source, "confidence": rule.confidence.value}
    message = "rules.show.source"
    if rule.decision:
        message, values["decision"] = "rules.show.source_decided", rule.decision
    yield from _wrapped("      ", say(message, values, lang=lang))


def _confined(traits: Sequence[str], lang: str) -> str:
    named = ", ".join(_scope(trait, lang) for trait in traits)
    return f" ({named})" if named else ""


def _scope(trait: str, lang: str) -> str:
    called = (name(category, trait, lang=lang) for category in _SCOPES)
    return next((text for text in called if text != trait), trait)


def _value(rule: Rule, lang: str) -> str:
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


def _touched(pieces: Sequence[str], lang: str) -> Iterator[str]:
    listed = ", ".join(printable(piece) for piece in pieces[:_PIECES_SHOWN])
    if len(pieces) > _PIECES_SHOWN:
        listed += ", ..."
    values = {"n": str(len(pieces)), "pieces": listed}
    yield from _wrapped("  ", say("rules.compare.touches", values, lang=lang))


def _wrapped(mark: str, text: str) -> list[str]:
    indent = " " * (min(len(mark) - len(mark.lstrip()), 6) + 2 if mark.strip() else len(mark))
    return textwrap.wrap(
        text,
        columns_wide(),
        initial_indent=mark,
        subsequent_indent=indent,
        break_long_words=False,
        break_on_hyphens=False,
    )
