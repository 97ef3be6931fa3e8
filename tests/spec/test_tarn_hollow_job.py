"""Tarn Hollow: 14 sets after a warehouse fire, one washer, six drying places.

An invented department. Every figure can be worked out by hand: five shell sets of 7.2 lb are
36.0 lb and six would be 43.2 lb against a limit of 42 lb; eight liner sets of 5.0 lb with their
hoods of 0.25 lb are exactly 42.0 lb; drying takes 14 x (150 + 210) = 5,040 place-minutes.
Minute 0 is 04:20, so 12:30 is minute 490, 18:00 minute 820, 20:00 minute 940, 21:00 minute 1000.
"""

from functools import cache

import pytest
from tests.spec.tarn_hollow import tarn_hollow

from sootline.core.basis import Bearing
from sootline.core.washplan.rules import HandRule
from sootline.core.washplan.search import hand_plan
from sootline.files.planning_table import load_planning_times
from sootline.tasks.plan_wash import PlanResult, plan_wash
from sootline.wiring.rules import RULES

SIX_PM = "2026-02-03T18:00:00+00:00"
SIX_PM_MINUTE = 820


class Asked:
    """Ends a search after it has been asked so many times."""

    def __init__(self, times: int) -> None:
        self.left = times

    def __call__(self) -> bool:
        """Count down."""
        self.left -= 1
        return self.left < 0


@cache
def planned(goal: str, by: str | None = None) -> PlanResult:
    """Plan the job for a goal, once."""
    return plan_wash(
        RULES, tarn_hollow(goal, by), planning=load_planning_times(), stop=Asked(4000), seed=1
    )


def loads_of(result: PlanResult, sort: str) -> list[tuple[str, int]]:
    """List mass and number of components of the loads of one sort."""
    loads = [load for load in result.worksheet.loads if load.sort.id == sort]
    return [(f"{load.mass.amount:.2f}", len(load.components)) for load in loads]


def fewest_loads(result: PlanResult, sort: str) -> int:
    """Count the loads a sort needs at the least by weight."""
    pieces = [piece for piece in result.instance.pieces if piece.family == sort]
    cap = result.instance.washers[0].programmes[sort].cap
    heavy = sorted((piece.weight for piece in pieces), reverse=True)
    loads: list[int] = []
    for weight in heavy:
        fits = [i for i, load in enumerate(loads) if load + weight <= cap]
        if fits:
            loads[fits[0]] += weight
        else:
            loads.append(weight)
    return len(loads)


def test_seven_loads_of_shells_liners_and_the_set_with_blood() -> None:
    """Three of shells, two of liners and hoods, two for set 14: seven loads, not more."""
    result = planned("all-done")

    sorts = [load.sort.id for load in result.worksheet.loads]
    assert (sorts.count("shells"), sorts.count("liners"), len(sorts)) == (3, 2, 7)
    assert fewest_loads(result, "shells") == 3
    assert fewest_loads(result, "liners") == 2


def test_five_shell_sets_are_a_load_and_six_are_too_many() -> None:
    """Five sets weigh 36.0 lb; a sixth would make 43.2 lb of 42."""
    result = planned("all-done")
    heaviest = max(loads_of(result, "shells"))
    shells = [piece for piece in result.instance.pieces if piece.family == "shells"]
    cap = result.instance.washers[0].programmes["shells"].cap

    assert heaviest == ("36.00", 10)
    assert (result.instance.units["weight"], cap) == ("0.01 lb", 4200)
    assert 6 * shells[0].weight == 4320


def test_eight_liner_sets_with_hoods_are_exactly_the_limit() -> None:
    """Eight sets of 5.0 lb and eight hoods of 0.25 lb are 42.0 of 42 lb, and are one load."""
    assert max(loads_of(planned("all-done"), "liners")) == ("42.00", 24)


def test_coat_and_trousers_hang_as_one_and_hoods_take_no_place() -> None:
    """A place holds a set's shells or liners; hoods dry elsewhere."""
    pieces = {piece.id: piece for piece in planned("all-done").instance.pieces}

    shells, hood = pieces["coat-shell-M01+trouser-shell-M01"], pieces["hood-M01"]  # type: ignore[index]
    assert (shells.units, shells.dry_rack, hood.units) == (1, 150, 0)


def test_set_14_is_alone_and_last_with_shell_and_liner_apart() -> None:
    """The two last loads are set 14's shells and its liners with its hood; no one else's."""
    loads = planned("all-done").worksheet.loads[-2:]

    assert {load.sort.company for load in loads} == {"shells", "liners"}
    assert all(name.endswith("-M14") for load in loads for name in load.components)
    assert sum(len(load.components) for load in loads) == 5


@pytest.mark.parametrize(
    ("goal", "by"), [("all-done", None), ("deadline", SIX_PM), ("soonest", None)]
)
def test_no_goal_ever_mixes(goal: str, by: str | None) -> None:
    """Whatever the goal: no shell with a liner, set 14 with nobody and after everybody."""
    loads = planned(goal, by).worksheet.loads

    for load in loads:
        kinds = {name.rpartition("-")[0] for name in load.components}
        assert not (
            kinds & {"coat-shell", "trouser-shell"}
            and kinds & {"coat-liner", "trouser-liner", "hood"}
        )
        assert len({name.endswith("M14") for name in load.components}) == 1
    assert [load.sort.separation.alone for load in loads] == sorted(
        load.sort.separation.alone for load in loads
    )


def test_the_washer_is_free_at_half_past_twelve() -> None:
    """Seven loads of 70 minutes from 04:20."""
    assert planned("all-done").worksheet.loads[-1].end.likely == 490


def test_everything_dry_at_eight_in_the_evening_and_not_before() -> None:
    """The best possible is 20:00, and the plan knows that nothing is better."""
    plan = planned("all-done").plan

    assert (plan.makespan, plan.bound, plan.gap) == (940, 940, 0)


def test_the_drying_places_are_the_bottleneck_not_the_washer() -> None:
    """5,040 place-minutes on six places; the washers come second."""
    first, second, *_ = planned("all-done").pressures

    assert (first.resource, first.busy, first.places) == ("rack", 5040, 6)
    assert second.resource == "washers"


def test_twelve_complete_sets_by_six_at_the_price_of_the_last_at_nine() -> None:
    """The deadline is another goal: 12 sets, which is proven the most; the last at 21:00."""
    result = planned("deadline", SIX_PM)

    assert result.worksheet.complete_by(SIX_PM_MINUTE) == 12
    assert (result.plan.bound, result.plan.gap) == (12, 0)
    assert result.plan.makespan >= 1000


def test_all_shells_first_gives_fewer_by_six() -> None:
    """Even dispatched well, all shells before the liners bring fewer sets by 18:00 than twelve."""
    plan = hand_plan(planned("all-done").instance, HandRule.SHELLS_THEN_LINERS)

    assert 0 < sum(ready <= SIX_PM_MINUTE for ready in plan.ready.values()) < 12


def test_nobody_is_back_before_a_named_touch_check() -> None:
    """Every member's return waits for the check, set 14's too."""
    back = planned("all-done").worksheet.back

    assert len(back) == 14
    assert all(
        (one.gate.bearing, one.gate.message) == (Bearing.REQUIRES, "plan.gate.touch_check")
        for one in back
    )
