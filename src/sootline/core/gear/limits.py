"""How hot, how hard, how sour or how alkaline at the most, over everything that speaks?"""

from dataclasses import replace
from fractions import Fraction

from sootline.core.basis import Ground, Limit, Side
from sootline.core.gear.sources import Sources
from sootline.core.gear.terms import ResolvedLimit, Voice

BATH = "wash.bath_temp"
_FIELDS = {
    BATH: "wash_temp",
    "wash.ph_low": "ph_low",
    "wash.ph_high": "ph_high",
    "wash.extraction": "extraction",
    "dry.air_temp": "dry_temp",
}

LIMIT_TOPICS = tuple(_FIELDS)

Stated = tuple[tuple[Limit, Ground], ...]


def resolve_limit(topic: str, sources: Sources) -> ResolvedLimit:
    """Gather every limit on a topic, strictest first; all of them must permit a reading.

    A recorded decision of the department sets the edition's limit aside only where the maker
    states one of his own and the label could be read: without that nobody knows what the
    component bears.
    """
    maker = _maker_limits(topic, sources)
    adopted, decided, policy = _ruled_limits(topic, sources)
    loosened = decided if maker and sources.readable else ()
    aside = tuple(one for one in adopted if any(one[0].stricter(loose[0]) for loose in loosened))
    kept = tuple(one for one in adopted if one not in aside)
    # A decision that sets nothing aside is a policy value like any other: it can only tighten.
    stated = (*maker, *kept, *policy, *decided)
    return ResolvedLimit(
        topic=topic,
        limits=tuple(sorted(stated, key=_strictness)),
        set_aside=aside,
        decided=next(
            (who for loose, who in loosened if aside and aside[0][0].stricter(loose)), None
        ),
        unset=unset_grounds(topic, sources),
        as_typed=_words(sources) if topic == BATH else (),
    )


def unset_grounds(topic: str, sources: Sources) -> tuple[Ground, ...]:
    """List who speaks on a topic without a known value that the department has yet to answer."""
    book = sources.rulebook
    if any(rule.value is not None for rule, _ in sources.rules(topic, book.policy)):
        return ()
    ruled = sources.rules(topic, book.adopted, book.policy)
    return tuple(ground for rule, ground in ruled if rule.value is None)


def _maker_limits(topic: str, sources: Sources) -> Stated:
    """List what label and guide state."""
    field = _FIELDS[topic]
    spoken = ((text.care.limit(topic), text.ground(field)) for text in sources.maker)
    return tuple((limit, ground) for limit, ground in spoken if limit is not None)


def _ruled_limits(topic: str, sources: Sources) -> tuple[Stated, Stated, Stated]:
    """List what the edition states, the policy by decision, and the policy otherwise."""
    book = sources.rulebook
    adopted: list[tuple[Limit, Ground]] = []
    decided: list[tuple[Limit, Ground]] = []
    policy: list[tuple[Limit, Ground]] = []
    for rule, ground in sources.rules(topic, book.adopted):
        if isinstance(rule.value, Limit):
            adopted.append((rule.value, ground))
    for rule, ground in sources.rules(topic, book.policy):
        if isinstance(rule.value, Limit):
            # Whoever reads the limit must see who decided it and when.
            cited = replace(ground, source=f"{rule.source}; {rule.decision}")
            by_decision = rule.decision is not None
            (decided if by_decision else policy).append(
                (rule.value, cited if by_decision else ground)
            )
    return tuple(adopted), tuple(decided), tuple(policy)


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
