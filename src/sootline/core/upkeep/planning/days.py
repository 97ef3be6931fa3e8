"""Which due pieces can be taken today without leaving a seat empty, and who wears what meanwhile?

A suggestion: pieces are tried in the order in which they press, each only if everybody who can
ride now still can, in spares that fit. Every swap is looked over once more by other code.
"""

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from sootline.core.basis import Bearing, ComponentId, Finding, MemberId, finding
from sootline.core.gear import Component
from sootline.core.intervals import Due, Matter
from sootline.core.riding import Riding, Situation, Slot, check_fit, failures, who_rides
from sootline.core.upkeep.planning.bundles import Bundle, bundle_dues, seats_kept, without
from sootline.core.upkeep.planning.facts import Cause, WorkToday
from sootline.core.upkeep.planning.seats import Seats, is_worn
from sootline.core.upkeep.qualified import PRACTICE


@dataclass(frozen=True, kw_only=True)
class Swap:
    """A member wears a spare while own gear is away."""

    member: MemberId
    slot: Slot
    spare: str


@dataclass(frozen=True, kw_only=True)
class Left:
    """A bundle that is not taken today, and why."""

    bundle: Bundle
    cause: Cause
    reasons: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class DayPlan:
    """What to take today.

    Args:
        taken: in the order in which they press.
        swaps: who wears which spare meanwhile.
        minutes: of each matter, what is used of the time there is.
        before, after: who rides without and with the plan.
        reasons: what is said of the whole.
    """

    taken: tuple[Bundle, ...]
    left: tuple[Left, ...]
    swaps: tuple[Swap, ...]
    minutes: tuple[tuple[Matter, int], ...]
    before: Riding
    after: Riding
    reasons: tuple[Finding, ...]


def plan_day(
    dues: Iterable[Due],
    components: Mapping[ComponentId, Component],
    situation: Situation,
    work: Sequence[WorkToday],
    *,
    by: dt.date,
) -> DayPlan:
    """Choose what to take today.

    A kind of work for which no time is said is not limited by time, and that is said.

    Args:
        by: the last day to look ahead to.
    """
    desk = _Desk(situation, work)
    bundles = bundle_dues(dues, components, situation, by=by)
    for bundle in bundles:
        desk.try_bundle(bundle)
    swaps = tuple(_swaps(desk.taken, desk.after))
    check_swaps(swaps, desk.taken, situation)
    return DayPlan(
        taken=tuple(desk.taken),
        left=tuple(desk.left),
        swaps=swaps,
        minutes=tuple(desk.used.items()),
        before=desk.before,
        after=desk.after,
        reasons=tuple(_reasons(bundles, work)),
    )


def check_swaps(swaps: Sequence[Swap], taken: Sequence[Bundle], situation: Situation) -> None:
    """Look over every swap by code that chose none of them.

    Raises:
        AssertionError: a spare is given twice, is itself taken, cannot be worn, or does not fit.
    """
    units = {unit.id: unit for unit in situation.units}
    riders = {rider.id: rider for rider in situation.riders}
    given = [swap.spare for swap in swaps]
    assert len(given) == len(set(given)), "a spare is given twice"
    assert not {bundle.unit for bundle in taken} & set(given), "a spare is itself taken"
    for swap in swaps:
        unit = units[swap.spare]
        assert unit.holder is None, swap.spare
        assert unit.there_by(0), swap.spare
        assert not failures(check_fit(situation, riders[swap.member], unit)), swap.spare


class _Desk:
    """Tries bundle after bundle, keeping what leaves every seat filled."""

    def __init__(self, situation: Situation, work: Sequence[WorkToday]) -> None:
        self._situation = situation
        self._work = {one.matter: one for one in work}
        self._seats = Seats(situation)
        self.before = who_rides(situation)
        self.after = self.before
        self.taken: list[Bundle] = []
        self.left: list[Left] = []
        self.used: dict[Matter, int] = {one.matter: 0 for one in work}

    def try_bundle(self, bundle: Bundle) -> None:
        """Take a bundle, or say why not."""
        cause = bundle.cause or self._short_of_time(bundle)
        if cause is None:
            after = self._after(bundle)
            if after is not None:
                self._take(bundle, after)
                return
            cause = Cause.NO_SPARE
        self.left.append(Left(bundle=bundle, cause=cause, reasons=(_why(bundle, cause),)))

    def _after(self, bundle: Bundle) -> Riding | None:
        """Return who rides once a bundle is taken as well; None when somebody no longer does."""
        if not is_worn(self.after, bundle):
            return self.after
        if not self._seats.may_keep(self.after, bundle, {one.unit for one in self.taken}):
            return None
        return seats_kept(self.before, without(self._situation, (*self.taken, bundle)))

    def _take(self, bundle: Bundle, after: Riding) -> None:
        self.taken.append(bundle)
        self.after = after
        for matter, minutes in self._minutes(bundle):
            self.used[matter] += minutes

    def _short_of_time(self, bundle: Bundle) -> Cause | None:
        short = any(
            self.used[matter] + minutes > self._work[matter].minutes
            for matter, minutes in self._minutes(bundle)
        )
        return Cause.NO_TIME if short else None

    def _minutes(self, bundle: Bundle) -> Iterator[tuple[Matter, int]]:
        for matter, one in self._work.items():
            yield matter, one.each * sum(1 for due in bundle.dues if due.matter is matter)


def _why(bundle: Bundle, cause: Cause) -> Finding:
    return finding(
        Bearing.LIMITS,
        f"upkeep.left.{cause}",
        PRACTICE,
        unit=bundle.unit,
        holder=bundle.holder or "-",
        pieces=", ".join(bundle.components),
    )


def _swaps(taken: Sequence[Bundle], after: Riding) -> Iterator[Swap]:
    """List what whoever gives something away today wears instead."""
    away = {(one.holder, one.slot) for one in taken}
    for rides in after.now.can:
        for worn in rides.outfit:
            if worn.handed and (rides.member, worn.slot) in away:
                yield Swap(member=rides.member, slot=worn.slot, spare=worn.unit.id)


def _reasons(bundles: Sequence[Bundle], work: Sequence[WorkToday]) -> Iterator[Finding]:
    yield finding(Bearing.NOTES, "upkeep.suggested", PRACTICE)
    timed = {one.matter for one in work}
    matters = dict.fromkeys(due.matter for bundle in bundles for due in bundle.dues)
    for matter in matters:
        if matter not in timed:
            yield finding(Bearing.ASKS, "upkeep.no_time_said", PRACTICE, matter=matter)
