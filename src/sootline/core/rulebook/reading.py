"""Which rule does a row state, and what is wrong with a row that states none?

A row of a TOML rule file and a row of a job file's department policy have the same form:
topic, value ("105 °F / 40 °C", "10 years", "2 cleanings", a list, a word), source, confidence,
and where they apply traits, in_force, decision; or `unset = true` with the question to ask.
"""

import re
from collections.abc import Iterable
from fractions import Fraction

from sootline.core.basis import (
    BadInputError,
    Confidence,
    DateSpan,
    EditionId,
    Fault,
    Limit,
    Quantity,
    RuleId,
    Side,
    UnreadableValueError,
    parse_limit,
)
from sootline.core.rulebook.fields import Fields
from sootline.core.rulebook.rules import Edition, EditionStatus, Rule, RuleKind, Value
from sootline.core.rulebook.topics import SCOPES, TOPICS, Topic

MOST_ROWS = 2000
_EDITION_ID = re.compile(r"[a-z0-9-]{1,40}/[a-z0-9-]{1,40}", re.ASCII)
_COUNTED = re.compile(r"(\d{1,4}) ([a-z-]{1,30})", re.ASCII)
_MOST_MONTHS = 1200
_PAIR_TOLERANCE_K = 1
_PAIR_TOLERANCE_SHARE = Fraction(2, 100)


def read_edition(mapping: object, place: str) -> Edition:
    """Read one edition from a parsed rule file.

    Args:
        place: how faults point at the file.

    Raises:
        BadInputError: every fault of the file.
    """
    fields = Fields(mapping, place)
    edition_id = fields.text("id")
    if edition_id and not _EDITION_ID.fullmatch(edition_id):
        fields.fault("id", "rules.fault.edition_id", found=edition_id[:60])
    title, body = fields.text("title"), fields.text("body")
    status = fields.word("status", tuple(EditionStatus))
    if not fields.has("in_force"):
        fields.fault("in_force", "rules.fault.missing", field="in_force")
    in_force = fields.date("in_force") or DateSpan()
    rules = _rows(fields, in_force)
    faults = fields.finish()
    if faults:
        raise BadInputError(faults)
    return Edition(
        id=EditionId(edition_id),
        title=title,
        body=body,
        status=EditionStatus(status),
        in_force=in_force,
        rules=rules,
    )


def read_rules(mapping: object, place: str) -> tuple[Rule, ...]:
    """Read the rows of a department's own rule file.

    Raises:
        BadInputError: every fault of the file.
    """
    fields = Fields(mapping, place)
    rules = _rows(fields, None)
    faults = fields.finish()
    if faults:
        raise BadInputError(faults)
    return rules


def read_rule(mapping: object, place: str, *, in_force: DateSpan | None = None) -> Rule:
    """Read one row.

    Args:
        place: how faults point at it ("department.policy[0]").
        in_force: since when the text counts that the row belongs to.

    Raises:
        BadInputError: every fault of the row.
    """
    fields = Fields(mapping, place)
    topic = fields.text("topic")
    if topic and topic not in TOPICS:
        known = ", ".join(TOPICS)
        fields.fault("topic", "rules.fault.topic", found=topic[:60], known=known)
    value = _stated(fields, TOPICS.get(topic))
    traits = fields.words("traits", SCOPES)
    source = fields.text("source")
    confidence = fields.word("confidence", tuple(Confidence))
    since = fields.date("in_force") or in_force
    decision = _decision(fields)
    faults = fields.finish()
    if faults:
        raise BadInputError(faults)
    return Rule(
        topic=RuleId(topic),
        kind=TOPICS[topic].kind,
        value=value,
        traits=traits,
        source=source,
        confidence=Confidence(confidence),
        in_force=since,
        decision=decision,
    )


def duplicates(rules: Iterable[Rule], place: str) -> tuple[Fault, ...]:
    """Find rows that say the same thing twice, or two things about the same components.

    A list may be spread over several rows, since its words may differ in source and confidence.
    """
    fields, seen = Fields({}, ""), set[tuple[str, tuple[str, ...], str]]()
    for index, rule in enumerate(rules):
        words = rule.value if isinstance(rule.value, tuple) else ("",)
        for word in words:
            key = (rule.topic, tuple(sorted(rule.traits)), word)
            if key in seen:
                traits = ", ".join(rule.traits) or "-"
                where = f"{place}[{index}]"
                fields.fault(where, "rules.fault.duplicate", topic=rule.topic, traits=traits)
            seen.add(key)
    return fields.finish()


def _rows(fields: Fields, in_force: DateSpan | None) -> tuple[Rule, ...]:
    rows = fields.take("rule")
    place = f"{fields.place}: rule"
    if not isinstance(rows, list) or not 0 < len(rows) <= MOST_ROWS:
        fields.fault("rule", "rules.fault.rows", limit=str(MOST_ROWS))
        return ()
    rules = []
    for index, row in enumerate(rows):
        try:
            rules.append(read_rule(row, f"{place}[{index}]", in_force=in_force))
        except BadInputError as error:
            fields.faults.extend(error.faults)
    if len(rules) == len(rows):
        fields.faults.extend(duplicates(rules, place))
    return tuple(rules)


def _stated(fields: Fields, topic: Topic | None) -> Value | None:
    """Read the value, or accept that it is unset when the question stands with it."""
    if fields.flag("unset"):
        if fields.has("value"):
            fields.take("value")
            fields.fault("value", "rules.fault.unset_value")
        question = fields.text("question")
        if topic and question and question != f"ask.{topic.id}":
            fields.fault("question", "rules.fault.question", expected=f"ask.{topic.id}")
        return None
    if topic is None:
        fields.take("value")
        return None
    if topic.kind is RuleKind.LIST:
        if not fields.has("value"):
            fields.fault("value", "rules.fault.missing", field="value")
        return fields.words("value", topic.words, empty=False)
    if topic.kind is RuleKind.CHOICE:
        return fields.word("value", topic.words)
    return _number(fields, topic)


def _number(fields: Fields, topic: Topic) -> Value | None:
    text = fields.text("value")
    if not text:
        return None
    try:
        if topic.kind is RuleKind.LIMIT and topic.side is not None:
            return _limit(text, topic, topic.side)
        return _months(text) if topic.kind is RuleKind.INTERVAL else _counted(text, topic)
    except UnreadableValueError as error:
        fields.unreadable("value", error)
        return None


def _limit(text: str, topic: Topic, side: Side) -> Limit:
    limit = parse_limit(text, side)
    first = limit.values[0]
    if first.dimension != topic.unit:
        raise UnreadableValueError("rules.fault.dimension", found=text, expected=topic.unit)
    for value in limit.values[1:]:
        apart = abs(value.base - first.base)
        close = _PAIR_TOLERANCE_SHARE * abs(first.base)
        if apart > (_PAIR_TOLERANCE_K if topic.unit == "temperature" else close):
            raise UnreadableValueError("rules.fault.pair", found=text)
    if len({value.unit for value in limit.values}) != len(limit.values):
        raise UnreadableValueError("rules.fault.pair", found=text)
    return limit


def _months(text: str) -> int:
    months = Quantity.parse(text)
    if months.dimension != "calendar":
        raise UnreadableValueError("rules.fault.dimension", found=text, expected="months, years")
    if months.base.denominator != 1 or not 0 < months.base <= _MOST_MONTHS:
        raise UnreadableValueError("rules.fault.months", found=text, limit=str(_MOST_MONTHS))
    return int(months.base)


def _counted(text: str, topic: Topic) -> int:
    match = _COUNTED.fullmatch(text)
    units = (topic.unit, topic.unit.removesuffix("s"))
    if not match or match[2] not in units or not int(match[1]):
        raise UnreadableValueError("rules.fault.count", found=text[:60], unit=topic.unit)
    return int(match[1])


def _decision(fields: Fields) -> str | None:
    """Read who decided and on which day; both are needed, and the day must be a single one."""
    text = fields.text("decision", needed=False)
    if not text:
        return None
    who, _, day = text.rpartition(",")
    try:
        complete = bool(who.strip()) and DateSpan.parse(day).known
    except UnreadableValueError:
        complete = False
    if not complete:
        fields.fault("decision", "rules.fault.decision", found=text[:60])
    return text
