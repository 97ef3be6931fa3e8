"""How does the question look without names and sizes? From a situation to a demand."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sootline.core.basis import MemberId
from sootline.core.riding.fit import check_fit, failures, misfit
from sootline.core.riding.matching import Demand, Need, Seeker, Stock
from sootline.core.riding.situation import Rider, Situation, Slot, Unit

_Like = tuple[Slot, object, object, int]


@dataclass(frozen=True, kw_only=True)
class Question:
    """A demand, and what its indices stand for.

    Args:
        moments: the minutes that the demand's levels stand for.
        riders: per seeker, who it is.
        stocks: per stock, the units that are alike.
        crews: per crew, its name.
    """

    demand: Demand
    moments: tuple[int, ...]
    riders: tuple[Rider, ...]
    stocks: tuple[tuple[Unit, ...], ...]
    crews: tuple[str, ...]


def ask(situation: Situation, moments: Sequence[int]) -> Question:
    """Put the question to the matching: spares that are alike become one stock.

    Args:
        moments: minutes from now, rising; the first is the one that counts first.
    """
    held = hold_of(situation)
    stocks = _stocks(situation, moments)
    crews = tuple(minimum.crew for minimum in situation.crews)
    desk = _Desk(situation=situation, held=held, stocks=stocks, moments=tuple(moments))
    seekers = tuple(
        Seeker(
            needs=tuple(_need(desk, rider, slot) for slot in rider.needs),
            priority=rider.priority,
            crew=_crew(rider, held, crews, moments[0]),
        )
        for rider in situation.present
    )
    demand = Demand(
        levels=len(moments),
        stocks=tuple(
            Stock(level=_level(units[0], moments) or 0, count=len(units)) for units in stocks
        ),
        seekers=seekers,
        minimums=tuple(minimum.interior for minimum in situation.crews),
    )
    return Question(
        demand=demand,
        moments=tuple(moments),
        riders=situation.present,
        stocks=stocks,
        crews=crews,
    )


@dataclass(frozen=True, kw_only=True)
class _Desk:
    """What a need is looked up in."""

    situation: Situation
    held: Mapping[tuple[MemberId, Slot], tuple[Unit, ...]]
    stocks: tuple[tuple[Unit, ...], ...]
    moments: tuple[int, ...]


def hold_of(situation: Situation) -> Mapping[tuple[MemberId, Slot], tuple[Unit, ...]]:
    """Group what members have, own or handed out, by member and place; own gear first."""
    held: dict[tuple[MemberId, Slot], tuple[Unit, ...]] = {}
    for unit in sorted(situation.units, key=lambda one: not one.own):
        if unit.holder is not None:
            key = (unit.holder, unit.slot)
            held[key] = (*held.get(key, ()), unit)
    return held


def inside(
    rider: Rider, held: Mapping[tuple[MemberId, Slot], tuple[Unit, ...]], minute: int
) -> bool:
    """Whether a person counts for interior work in what the person has at a minute."""
    return rider.interior and not any(
        worn.untried
        for slot in rider.needs
        if (worn := worn_at(held.get((rider.id, slot), ()), minute)) is not None
    )


def worn_at(units: Sequence[Unit], minute: int) -> Unit | None:
    """Pick what a member wears of what the member has: tried on before untried, own first."""
    there = [unit for unit in units if unit.there_by(minute)]
    return min(there, key=lambda unit: unit.untried, default=None)


def _crew(
    rider: Rider,
    held: Mapping[tuple[MemberId, Slot], tuple[Unit, ...]],
    crews: tuple[str, ...],
    minute: int,
) -> int | None:
    return crews.index(rider.crew) if rider.crew in crews and inside(rider, held, minute) else None


def _stocks(situation: Situation, moments: Sequence[int]) -> tuple[tuple[Unit, ...], ...]:
    """Group the spares that are there by the last moment and are alike in size and time."""
    alike: dict[_Like, list[Unit]] = {}
    for unit in situation.units:
        level = _level(unit, moments)
        if unit.holder is None and level is not None:
            alike.setdefault((unit.slot, unit.elements, unit.size, level), []).append(unit)
    return tuple(tuple(units) for units in alike.values())


def _level(unit: Unit, moments: Sequence[int]) -> int | None:
    return next((k for k, minute in enumerate(moments) if unit.there_by(minute)), None)


def _need(desk: _Desk, rider: Rider, slot: Slot) -> Need:
    held = desk.held.get((rider.id, slot), ())
    levels = [level for unit in held if (level := _level(unit, desk.moments)) is not None]
    own = min(levels, default=None)
    if own == 0:
        return Need(own=0)
    fitting = [
        (index, misfit(dimensions))
        for index, units in enumerate(desk.stocks)
        if units[0].slot is slot
        and not failures(dimensions := check_fit(desk.situation, rider, units[0]))
    ]
    return Need(
        own=own,
        stocks=tuple(index for index, _ in fitting),
        misfits=tuple(off for _, off in fitting),
    )
