"""What works beside the search is heard, and always ended."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace

import pytest
from tests.instances.calls import call
from tests.instances.small import piece, small
from tests.instances.stops import after

from sootline.core.basis import MachineId, MemberId, PlaceId
from sootline.core.verify import verify
from sootline.core.washplan import (
    Cabinet,
    Changes,
    Goal,
    Instance,
    Member,
    Plan,
    Programme,
    Washer,
    carry_on,
    solve,
)
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.priced import price_out

CALL = call(3, seed=5)


@dataclass
class Told:
    """A bounder that says what it was given to say."""

    bound: float | None = None
    proven: Plan | None = None
    ended: int = 0
    asked: list[Goal] = field(default_factory=list)

    def begin(self, instance: Instance, goal: Goal, _: int, newest: Callable[[], Plan]) -> "Told":
        """Begin at once."""
        assert verify(instance, newest()) == ()
        self.asked.append(goal)
        return self

    def newest(self) -> float | None:
        """Return the bound."""
        return self.bound

    def plan(self) -> Plan | None:
        """Return the plan."""
        return self.proven

    def end(self) -> None:
        """Count."""
        self.ended += 1


def test_a_bound_that_meets_the_plan_ends_the_search() -> None:
    """Nobody has to say stop."""
    first = solve(CALL, stop=after(0))
    told = Told(bound=float(first.objective))
    plan = solve(CALL, stop=lambda: False, helps=Helps(bounder=told.begin))

    assert (plan.bound, plan.gap, told.ended) == (first.objective, 0, 1)


def test_a_proven_plan_is_taken() -> None:
    """It is better than what the search had, so it is the answer."""
    better = solve(CALL, stop=after(700))
    told = Told(bound=float(better.objective), proven=better)
    plan = solve(CALL, stop=after(3), helps=Helps(bounder=told.begin))

    assert replace(plan, bound=None, gap=None) == replace(better, bound=None, gap=None)
    assert plan.gap == 0


def test_a_looser_bound_changes_nothing() -> None:
    """The closer of the two counts, for a deadline the lower one."""
    plain = solve(CALL, goal=Goal.DEADLINE, by=400, stop=after(5))
    told = Told(bound=1e9)
    plan = solve(CALL, goal=Goal.DEADLINE, by=400, stop=after(5), helps=Helps(bounder=told.begin))

    assert plan.bound == plain.bound


def test_the_last_minute_is_bounded_by_counting() -> None:
    """Nothing works beside the goal all-done."""
    told = Told()
    solve(CALL, goal=Goal.ALL_DONE, stop=after(5), helps=Helps(bounder=told.begin))

    assert told.asked == []


@pytest.mark.parametrize("minute", [0, 30, 70, 130, 260, 400])
@pytest.mark.parametrize("cabinets", [0, 2])
def test_prices_hold_in_the_middle_of_a_plan(minute: int, cabinets: int) -> None:
    """Whatever has begun, the bound stays below the plan that carries on, and the search holds."""
    instance = call(3, seed=9, cabinets=cabinets, spares=True, shifts=True)
    plan = solve(instance, stop=after(40))
    now = carry_on(instance, plan, minute=minute, changes=Changes())
    later = solve(now, stop=after(400), known=plan)
    bound = price_out(
        now, goal=Goal.SOONEST, by=0, known=(later.objective, later.makespan), stop=after(60),
        tell=lambda _: None,
    )  # fmt: skip

    assert verify(now, later) == ()
    assert bound <= later.objective <= plan.objective


def test_a_search_goes_on_though_some_choices_find_no_helper() -> None:
    """Helpers leave soon after the best plan: choices that need them longer are passed over."""
    free = small(pieces=tuple(piece(name, weight=40) for name in "abcd"))
    end = solve(free, stop=after(200)).makespan
    tight = replace(free, helpers=((0, end + 20, 1),))
    plan = solve(tight, stop=after(1200))

    assert verify(tight, plan) == ()


def test_pieces_of_unlike_limits_are_kept_apart() -> None:
    """Washers, cabinets and members that differ in every limit: no change breaks one."""
    cool = {"S": Programme(cap=90, min=60, temp=30), "L": Programme(cap=90, min=50, temp=30)}
    hot = {"S": Programme(cap=110, min=60, temp=60), "L": Programme(cap=70, min=50, temp=60)}
    pieces = tuple(
        piece(
            f"p{n}", member=MemberId(f"m{n % 4}"), weight=(30, 44, 52, 38, 64)[n % 5],
            family="SL"[n % 2], max_temp=(60, 40)[n % 3 == 0], units=(1, 2, 4)[n % 3],
            dry_cab=(None, 60, 70)[n % 3], dry_rack=(100, 140)[n % 2],
        )
        for n in range(20)
    )  # fmt: skip
    instance = small(
        members=tuple(Member(id=MemberId(f"m{m}")) for m in range(4)),
        pieces=pieces,
        washers=tuple(
            Washer(id=MachineId(name), programmes=runs) for name, runs in (("c", cool), ("h", hot))
        ),
        cabinets=(Cabinet(id=PlaceId("d"), units=5), Cabinet(id=PlaceId("e"), units=2)),
        rack_units=3,
    )
    plan = solve(instance, stop=after(2500))

    assert verify(instance, plan) == ()
