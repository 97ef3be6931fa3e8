"""How were the sources weighed against each other, and what must still be asked?"""

from collections.abc import Iterator

from sootline.core.basis import Bearing, EditionId, Finding, Ground, Limit, finding
from sootline.core.gear.limits import unset_grounds
from sootline.core.gear.methods import FORBIDDEN, WASH, ResolvedDrying
from sootline.core.gear.sources import Sources
from sootline.core.gear.terms import ResolvedLimit, ResolvedMethod


def list_questions(sources: Sources, limits: tuple[ResolvedLimit, ...]) -> Iterator[Finding]:
    """List what must be asked: an unreadable label, unset values, a bath in words only."""
    if not sources.readable:
        ground = sources.maker[0].ground("readable")
        yield finding(Bearing.ASKS, "gear.terms.label_unreadable", ground)
    unset = [ground for resolved in limits for ground in resolved.unset]
    for topic in (WASH, *FORBIDDEN):
        unset += unset_grounds(topic, sources)
    for ground in unset:
        yield finding(Bearing.ASKS, f"ask.{ground.rule}", ground, edition=ground.edition)
    for resolved in limits:
        if not resolved.limits:
            for voice in resolved.as_typed:
                yield finding(Bearing.ASKS, "gear.terms.words_only", voice.ground, words=voice.text)


def list_limit_notes(limits: tuple[ResolvedLimit, ...], adopted: EditionId) -> Iterator[Finding]:
    """List where label, guide or policy permit more than counts, and who decided otherwise."""
    for resolved in limits:
        if resolved.binding is None:
            continue
        binding, ground = resolved.binding
        for voice in resolved.as_typed:
            yield finding(
                Bearing.LIMITS, "gear.terms.words_capped", ground, words=voice.text, limit=binding
            )
        if resolved.decided:
            yield _decision_used(resolved, resolved.decided, binding)
        for limit, looser in resolved.limits:
            if looser.edition != adopted and binding.stricter(limit):
                yield _looser(resolved.topic, limit, looser, resolved.binding)


def list_method_notes(method: ResolvedMethod, drying: ResolvedDrying) -> Iterator[Finding]:
    """List the methods somebody names and somebody else forbids."""
    if method.wash is not method.wanted:
        yield finding(
            Bearing.FORBIDS,
            "gear.terms.method_fell",
            method.ground,
            wanted=method.wanted,
            method=method.wash,
        )
    if drying.ban:
        yield finding(
            Bearing.FORBIDS,
            "gear.terms.drying_fell",
            drying.ground,
            methods=", ".join(drying.methods),
        )


def _decision_used(resolved: ResolvedLimit, decided: Ground, binding: Limit) -> Finding:
    """Say that the edition's own limit is set aside, by whom, and what counts instead."""
    limit, edition = resolved.set_aside[0]
    return finding(
        Bearing.NOTES,
        "gear.terms.decision_used",
        decided,
        topic=resolved.topic,
        limit=limit,
        edition=edition.edition,
        binding=binding,
        decision=decided.source,
    )


def _looser(topic: str, limit: Limit, looser: Ground, binding: tuple[Limit, Ground]) -> Finding:
    """Say that a source permits more than what counts."""
    return finding(
        Bearing.NOTES,
        "gear.terms.looser",
        looser,
        topic=topic,
        given=limit,
        giver=looser.edition,
        limit=binding[0],
        edition=binding[1].edition,
    )
