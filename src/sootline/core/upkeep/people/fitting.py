"""Who is due to be measured again, and what may a new member be given on the first day?"""

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from sootline.core.basis import Bearing, DateSpan, Finding, Ground, MemberId, finding
from sootline.core.intervals import Standing
from sootline.core.intervals.dues import stand
from sootline.core.riding import Rider, Situation, Slot, check_fit, failures
from sootline.core.riding.fit import misfit
from sootline.core.rulebook import Rulebook, voices
from sootline.core.upkeep.people.facts import Changed, Measured
from sootline.core.upkeep.qualified import PRACTICE


@dataclass(frozen=True, kw_only=True)
class Refit:
    """One person's measures, how old they are, and whether they are due to be taken again."""

    member: MemberId
    measured: DateSpan
    first_day: DateSpan
    standing: Standing
    reasons: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class Offer:
    """What fills one place of a new member's outfit.

    Args:
        unit: the spare that fits best; None is none that fits.
        others: further spares that fit, the best first.
    """

    slot: Slot
    unit: str | None
    others: tuple[str, ...]


def list_refits(
    members: Iterable[MemberId],
    measured: Sequence[Measured],
    changed: Sequence[Changed],
    rulebook: Rulebook,
    today: dt.date,
) -> tuple[Refit, ...]:
    """List everybody's refit, the most pressing first.

    Somebody never measured is due now; so is somebody who reported a change since the last time.
    """
    months, ground = _interval(rulebook)
    refits = [
        _refit(member, measured, changed, months=months, ground=ground, today=today)
        for member in members
    ]
    return tuple(sorted(refits, key=lambda one: one.first_day.earliest or dt.date.max))


def offer_first_day(rider: Rider, situation: Situation) -> tuple[Offer, ...]:
    """List what on the rack fits a person who has nothing yet, place by place.

    Only what can be worn now and fits in every dimension is offered; "close enough" is not.
    """
    return tuple(_offer(rider, situation, slot) for slot in rider.needs)


def _offer(rider: Rider, situation: Situation, slot: Slot) -> Offer:
    fitting = sorted(
        (misfit(dimensions), unit.id)
        for unit in situation.units
        if unit.holder is None and unit.slot is slot and unit.there_by(0)
        if not failures(dimensions := check_fit(situation, rider, unit))
    )
    names = tuple(name for _, name in fitting)
    return Offer(slot=slot, unit=names[0] if names else None, others=names[1:])


def _refit(
    member: MemberId,
    measured: Sequence[Measured],
    changed: Sequence[Changed],
    *,
    months: int | None,
    ground: Ground,
    today: dt.date,
) -> Refit:
    taken = [one.on for one in measured if one.member == member]
    last = max(taken, key=lambda span: span.earliest or dt.date.min, default=DateSpan())
    since = tuple(_since(member, last, changed))
    first_day = last.plus_months(months) if months is not None else DateSpan()
    if since or last == DateSpan():
        first_day = DateSpan.day(today)
    said = _age(last, months, ground)
    return Refit(
        member=member,
        measured=last,
        first_day=first_day,
        standing=stand(first_day, today),
        reasons=(said, *since),
    )


def _age(last: DateSpan, months: int | None, ground: Ground) -> Finding:
    if last == DateSpan():
        return finding(Bearing.REQUIRES, "fitting.never_measured", ground)
    if months is None:
        return finding(Bearing.ASKS, "fitting.no_interval", ground, measured=last)
    return finding(Bearing.NOTES, "fitting.measured", ground, measured=last, months=months)


def _since(member: MemberId, last: DateSpan, changed: Sequence[Changed]) -> Iterator[Finding]:
    """List the changes that may lie after the last time; the earliest reading of that counts."""
    for one in changed:
        if one.member == member and not _before(one.on, last):
            yield finding(
                Bearing.REQUIRES, "fitting.changed", PRACTICE, change=one.change, on=one.on
            )


def _before(change: DateSpan, last: DateSpan) -> bool:
    """Whether a change is known to lie before the last measuring."""
    if change.latest is None or last.earliest is None:
        return False
    return change.latest < last.earliest


def _interval(rulebook: Rulebook) -> tuple[int | None, Ground]:
    """Return the shortest interval anybody states; practice speaks only where nobody else does."""
    spoken = [
        (one.rule.value, one.ground)
        for one in voices(rulebook, "people.refit_months", frozenset())
        if isinstance(one.rule.value, int)
    ]
    own = [pair for pair in spoken if pair[1].edition != rulebook.practice.id]
    months, ground = min(own or spoken, key=lambda pair: pair[0], default=(None, PRACTICE))
    return months, ground
