"""How hot, how hard, how sour or how alkaline at the most, over everything that speaks?"""

from dataclasses import dataclass, replace
from fractions import Fraction

from sootline.core.basis import Ground, Limit, Side
from sootline.core.gear.sources import Sources
from sootline.core.gear.terms import ResolvedLimit, Voice
from sootline.core.rulebook.books import answers
from sootline.core.rulebook.rules import Edition, Rule

BATH = "wash.bath_temp"
_FIELDS = {
    BATH: "wash_temp",
    "wash.ph_low": "ph_low",
    "wash.ph_high": "ph_high",
    "wash.extraction": "extraction",
    "dry.air_temp": "dry_temp",
}

LIMIT_TOPICS = tuple(_FIELDS)


@dataclass(frozen=True, kw_only=True)
class _Ruled:
    """A limit as a rule states it."""

    rule: Rule
    limit: Limit
    ground: Ground


def resolve_limit(topic: str, sources: Sources) -> ResolvedLimit:
    """Gather every limit on a topic, strictest first; all of them must permit a reading.

    A recorded decision of the department sets the edition's limit aside only where the maker
    states one of his own and the label could be read: without that nobody knows what the
    component bears.
    """
    book = sources.rulebook
    maker = _maker_limits(topic, sources)
    adopted = _ruled_limits(topic, sources, book.adopted)
    policy = _ruled_limits(topic, sources, book.policy)
    usable = policy if maker and sources.readable else []
    aside = {one: who for one in adopted if (who := _decided(one, usable))}
    stated = [*maker, *(_stated(one) for one in adopted if one not in aside), *map(_stated, policy)]
    return ResolvedLimit(
        topic=topic,
        limits=tuple(sorted(stated, key=_strictness)),
        set_aside=tuple(_stated(one) for one in aside),
        decided=next(iter(aside.values()), None),
        unset=unset_grounds(topic, sources),
        as_typed=_words(sources) if topic == BATH else (),
    )


def unset_grounds(topic: str, sources: Sources) -> tuple[Ground, ...]:
    """List who speaks on a topic without a known value that the department has yet to answer."""
    book = sources.rulebook
    given = [rule for rule, _ in sources.rules(topic, book.policy) if rule.value is not None]
    return tuple(
        ground
        for rule, ground in sources.rules(topic, book.adopted, book.policy)
        if rule.value is None and not any(answers(mine, rule) for mine in given)
    )


def _maker_limits(topic: str, sources: Sources) -> list[tuple[Limit, Ground]]:
    """List what label and guide state."""
    field = _FIELDS[topic]
    spoken = ((text.care.limit(topic), text.ground(field)) for text in sources.maker)
    return [(limit, ground) for limit, ground in spoken if limit is not None]


def _ruled_limits(topic: str, sources: Sources, text: Edition) -> list[_Ruled]:
    """List what the edition or the policy states, each with its rule."""
    return [
        _Ruled(rule=rule, limit=rule.value, ground=ground)
        for rule, ground in sources.rules(topic, text)
        if isinstance(rule.value, Limit)
    ]


def _stated(ruled: _Ruled) -> tuple[Limit, Ground]:
    return ruled.limit, ruled.ground


def _decided(adopted: _Ruled, policy: list[_Ruled]) -> Ground | None:
    """Return who decided that a limit of the edition is set aside, and when."""
    for mine in policy:
        loosens = answers(mine.rule, adopted.rule) and adopted.limit.stricter(mine.limit)
        if mine.rule.decision and loosens:
            # Whoever reads the limit must see who decided it and when.
            return replace(mine.ground, source=f"{mine.rule.source}; {mine.rule.decision}")
    return None


def _words(sources: Sources) -> tuple[Voice, ...]:
    """List a bath that label or guide give in words only; no number is read into it."""
    return tuple(
        Voice(text=text.care.wash_words, ground=text.ground("wash_words"))
        for text in sources.maker
        if text.care.wash_words
    )


def _strictness(stated: tuple[Limit, Ground]) -> tuple[Fraction, Fraction]:
    """Order limits so that the one that permits least comes first, whatever the units.

    A pair permits up to its wider value in that value's unit, so this comes first.
    """
    limit, _ = stated
    bases = [value.base for value in limit.values]
    if limit.side is Side.AT_MOST:
        return max(bases), min(bases)
    return -min(bases), -max(bases)
