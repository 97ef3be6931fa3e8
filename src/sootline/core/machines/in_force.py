"""Which limits bind every piece here, and which pieces bear less than that?"""

from collections.abc import Iterable, Iterator
from fractions import Fraction

from sootline.core.basis import Bearing, Finding, Ground, Limit, Side, finding
from sootline.core.gear import CareTerms, Component, ResolvedLimit
from sootline.core.machines.programme_check import WashLimits
from sootline.core.rulebook import Rulebook, voices

_TOPICS = ("wash.bath_temp", "wash.extraction", "wash.ph_low", "wash.ph_high")


def resolved(rulebook: Rulebook, topic: str) -> ResolvedLimit:
    """Gather what edition and policy state for every piece alike, strictest first.

    Common practice sets no limit, and what they confine to some pieces is left to those pieces.
    """
    stated: list[tuple[Limit, Ground]] = []
    unset: list[Ground] = []
    for spoken in voices(rulebook, topic, frozenset()):
        if isinstance(spoken.rule.value, Limit):
            stated.append((spoken.rule.value, spoken.ground))
        else:
            unset.append(spoken.ground)
    strict = tuple(sorted(stated, key=_strictness))
    return ResolvedLimit(topic=topic, limits=strict, unset=tuple(unset))


def limits_in_force(rulebook: Rulebook) -> WashLimits:
    """Gather the limits of a wash that bind every piece alike."""
    bath, spin, ph_low, ph_high = (resolved(rulebook, topic) for topic in _TOPICS)
    return WashLimits(bath=bath, spin=spin, ph_low=ph_low, ph_high=ph_high)


def stricter_labels(
    pieces: Iterable[tuple[Component, CareTerms]], limits: WashLimits
) -> Iterator[Finding]:
    """List the pieces that bear less than what binds every piece."""
    for component, terms in pieces:
        for general in (limits.bath, limits.spin, limits.ph_low, limits.ph_high):
            own = terms.limit(general.topic).binding
            if own and (general.binding is None or own[0].stricter(general.binding[0])):
                values = {"component": component.id, "limit": own[0]}
                yield finding(Bearing.WARNS, "machine.stricter_label", own[1], **values)


def _strictness(stated: tuple[Limit, Ground]) -> Fraction:
    limit, _ = stated
    bases = [value.base for value in limit.values]
    return max(bases) if limit.side is Side.AT_MOST else -min(bases)
