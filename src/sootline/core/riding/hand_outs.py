"""Does a hand-out cost somebody a seat, now or when a loan arrives?"""

from collections.abc import Iterator
from dataclasses import replace

from sootline.core.basis import (
    BadInputError,
    Bearing,
    Confidence,
    EditionId,
    Fault,
    Finding,
    Ground,
    MessageId,
    RuleId,
    finding,
)
from sootline.core.riding.answers import Riding
from sootline.core.riding.coverage import who_rides
from sootline.core.riding.fit import check_fit, failures
from sootline.core.riding.situation import HandOut, Rider, Situation, Unit

GROUND = Ground(
    rule=RuleId("riding.coverage"),
    edition=EditionId("statement"),
    source="the gear and people recorded",
    confidence=Confidence.STATED,
)


def check_hand_out(situation: Situation, hand_out: HandOut) -> tuple[Finding, ...]:
    """Say what speaks against a hand-out: fit, state, or a seat it costs.

    The best that can follow with it is compared with the best without it, now and at each later
    arrival; a loan that nobody can use any more is named.

    Raises:
        BadInputError: no such member, no such spare, or it is already somebody's.
    """
    rider, unit = _find(situation, hand_out)
    against = tuple(_against(situation, rider, unit))
    if against:
        return against
    handed = give(situation, hand_out)
    return tuple(_costs(who_rides(situation), who_rides(handed), rider, unit))


def give(situation: Situation, hand_out: HandOut) -> Situation:
    """Return the situation after a hand-out.

    Raises:
        BadInputError: no such member, no such spare, or it is already somebody's.
    """
    _, given = _find(situation, hand_out)
    units = tuple(
        replace(unit, holder=hand_out.member, own=False) if unit is given else unit
        for unit in situation.units
    )
    return replace(situation, units=units)


def _find(situation: Situation, hand_out: HandOut) -> tuple[Rider, Unit]:
    riders = [rider for rider in situation.riders if rider.id == hand_out.member]
    units = [unit for unit in situation.units if unit.id == hand_out.unit]
    spares = [unit for unit in units if unit.holder is None]
    if riders and spares:
        return riders[0], spares[0]
    values = (("member", hand_out.member), ("spare", hand_out.unit))
    known = "riding.hand_out.not_spare" if units else "riding.hand_out.no_spare"
    message = MessageId(known if riders else "riding.hand_out.no_member")
    raise BadInputError([Fault(place="hand_out", message=message, values=values)])


def _against(situation: Situation, rider: Rider, unit: Unit) -> Iterator[Finding]:
    """List what forbids the hand-out by itself."""
    yield from unit.reasons
    for failed in failures(check_fit(situation, rider, unit)):
        yield finding(
            Bearing.FORBIDS,
            f"riding.fit.{failed.verdict}",
            fit_ground(failed.name),
            member=rider.id,
            spare=unit.id,
            dimension=failed.name,
            element=failed.element,
            measure=failed.measure or "?",
            size=failed.size or "?",
            off="?" if failed.off is None else abs(failed.off),
            unit=failed.unit,
        )


def fit_ground(dimension: str) -> Ground:
    """Return the ground of a fit limit: the department's own policy."""
    return Ground(
        rule=RuleId(f"fit.{dimension}"),
        edition=EditionId("policy"),
        source="the department's fit limits",
        confidence=Confidence.POLICY,
    )


def _costs(free: Riding, handed: Riding, rider: Rider, unit: Unit) -> Iterator[Finding]:
    """Compare moment by moment; the first loss is the one to know."""
    for best, left in zip(free.moments, handed.moments, strict=False):
        lost = len(best.can) - len(left.can)
        if lost <= 0:
            continue
        wasted = [one.id for one in _unused(handed) if one.id not in {o.id for o in _unused(free)}]
        yield finding(
            Bearing.WARNS,
            "riding.hand_out.wastes" if best.minute else "riding.hand_out.costs",
            GROUND,
            member=rider.id,
            spare=unit.id,
            best=len(best.can),
            left=len(left.can),
            minute=best.minute,
            wasted=", ".join(wasted) or "-",
            instead=", ".join(_instead(free, unit)) or "-",
        )
        return


def _unused(riding: Riding) -> list[Unit]:
    """List the spares and loans that arrive and are given to nobody."""
    given = {worn.unit.id for one in riding.moments[-1].can for worn in one.outfit if worn.handed}
    return [unit for moment in riding.moments for unit in moment.arrived if unit.id not in given]


def _instead(free: Riding, unit: Unit) -> list[str]:
    """Name who gets the spare in the best handing-out."""
    return [
        one.member
        for one in free.moments[-1].can
        for worn in one.outfit
        if worn.handed and worn.unit.id == unit.id
    ]
