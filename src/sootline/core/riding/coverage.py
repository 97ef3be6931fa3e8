"""Who can ride now, in what, and who more when something arrives?

One handing-out is chosen for now and every later arrival together: the most now, and among those
ways the one that leaves the most at each arrival. Whoever got a spare keeps it.
"""

from collections.abc import Sequence

from sootline.core.riding.answers import CanRide, Coverage, CrewStatus, Riding, Worn
from sootline.core.riding.asking import Question, ask, hold_of, worn_at
from sootline.core.riding.fit import check_fit
from sootline.core.riding.gaps import list_gaps
from sootline.core.riding.matching import Outcome, hand_out, match
from sootline.core.riding.situation import Rider, Situation, Unit


def who_rides(situation: Situation, at: int = 0) -> Riding:
    """Find who can ride at a minute and at each later arrival of spares or loans within 24 hours.

    Args:
        at: the first minute asked about, from now.
    """
    question = ask(situation, (at, *situation.arrivals(at)))
    outcome = match(question.demand)
    riders = _riders(situation, question, outcome)
    moments = tuple(_coverage(situation, question, riders, k) for k in range(len(question.moments)))
    return Riding(
        moments=moments,
        away=tuple(rider.id for rider in situation.riders if rider.away),
        best_now=outcome.best_now,
        best_later=outcome.best_later,
        most_now=outcome.most_now,
    )


def _riders(situation: Situation, question: Question, outcome: Outcome) -> tuple[CanRide, ...]:
    """Give each rider what fills every place, naming one unit of each stock."""
    held = hold_of(situation)
    given = hand_out(question.demand, outcome.levels)
    left = [list(units) for units in question.stocks]
    riding = []
    for rider, level, stocks in zip(question.riders, outcome.levels, given, strict=True):
        if level is None:
            continue
        minute = question.moments[level]
        outfit = tuple(
            _own(held.get((rider.id, slot), ()), minute)
            if stock is None
            else _handed(situation, rider, left[stock].pop(0))
            for slot, stock in zip(rider.needs, stocks, strict=True)
        )
        riding.append(
            CanRide(
                member=rider.id,
                crew=rider.crew,
                since=minute,
                interior=rider.interior and not any(worn.unit.untried for worn in outfit),
                outfit=outfit,
            )
        )
    return tuple(riding)


def _own(units: Sequence[Unit], minute: int) -> Worn:
    unit = worn_at(units, minute)
    assert unit is not None  # the matching counted on it
    return Worn(slot=unit.slot, unit=unit, handed=False)


def _handed(situation: Situation, rider: Rider, unit: Unit) -> Worn:
    return Worn(
        slot=unit.slot, unit=unit, handed=True, dimensions=check_fit(situation, rider, unit)
    )


def _coverage(
    situation: Situation, question: Question, riders: Sequence[CanRide], moment: int
) -> Coverage:
    minute = question.moments[moment]
    can = tuple(one for one in riders if one.since <= minute)
    before = question.moments[moment - 1] if moment else None
    return Coverage(
        minute=minute,
        arrived=tuple(
            unit
            for unit in situation.units
            if unit.holder is None
            and before is not None
            and unit.there_by(minute)
            and not unit.there_by(before)
        ),
        can=can,
        cannot=list_gaps(situation, can, riders, minute),
        crews=tuple(
            CrewStatus(
                crew=minimum.crew,
                interior=sum(1 for one in can if one.crew == minimum.crew and one.interior),
                minimum=minimum.interior,
            )
            for minimum in situation.crews
        ),
    )
