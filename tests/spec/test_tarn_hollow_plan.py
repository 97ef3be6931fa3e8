"""Tarn Hollow: fourteen sets, one washer, six places to dry. What does the plan say?

Facts and answers are those of the worked case this setting stands for; its minutes and weights are
invented, its arithmetic is checked by hand in each docstring.
"""

import pytest
from tests.instances.stops import after
from tests.instances.tarn_hollow import FIRST_TURN, SETS, SIX_IN_THE_EVENING, tarn_hollow

from sootline.core.basis import ComponentId, MachineId
from sootline.core.verify import verify
from sootline.core.washplan import RACK, Drying, Goal, Instance, Load, Plan, solve

TWELVE_THIRTY = 480 + FIRST_TURN
EIGHT_IN_THE_EVENING = 930 + FIRST_TURN


@pytest.fixture(scope="module")
def instance() -> Instance:
    """Return the evening's gear."""
    return tarn_hollow()


@pytest.fixture(scope="module")
def all_done(instance: Instance) -> Plan:
    """Return the plan that has everything dry soonest."""
    return solve(instance, goal=Goal.ALL_DONE, stop=after(200))


@pytest.fixture(scope="module")
def for_the_shift(instance: Instance) -> Plan:
    """Return the plan with the most complete sets by 18:00."""
    return solve(instance, goal=Goal.DEADLINE, by=SIX_IN_THE_EVENING, stop=after(1500))


def test_seven_loads_leave_the_washer_free_at_half_past_twelve(all_done: Plan) -> None:
    """Shells 5, 5, 3; liners 8, 5; two for set 14: seven times 70 less the first loading."""
    assert len(all_done.loads) == 7
    assert max(load.unload_end for load in all_done.loads) == TWELVE_THIRTY


def test_no_drum_exceeds_its_limit(all_done: Plan) -> None:
    """Five shell sets are 36.0 lb of 42.0, eight liner sets with hoods exactly 42.0."""
    most = {"shell": 5, "liner": 8, "shell 14": 1, "liner 14": 1}

    assert all(len(load.pieces) <= most[load.family] for load in all_done.loads)


def test_set_fourteen_is_washed_alone_and_last(all_done: Plan, for_the_shift: Plan) -> None:
    """Its shell and its liner each have a drum to themselves after all others."""
    for plan in (all_done, for_the_shift):
        last_two = sorted(plan.loads, key=lambda load: load.load_start)[-2:]

        assert {load.family for load in last_two} == {"shell 14", "liner 14"}
        assert [len(load.pieces) for load in last_two] == [1, 1]


def test_everything_is_dry_at_eight_in_the_evening(instance: Instance, all_done: Plan) -> None:
    """One of the six places is in use for 870 minutes at the least.

    5,040 place-minutes are 840 each; in units of 30 minutes 28 = 5a + 7b only for four liners,
    and 14 liners are too few for six such places; 870 is the next sum, counted from 05:30.
    """
    assert all_done.makespan == EIGHT_IN_THE_EVENING
    assert verify(instance, all_done) == ()


def test_nothing_can_be_dry_sooner(all_done: Plan) -> None:
    """The bound is 930 minutes after 04:30 as well."""
    assert all_done.bound == EIGHT_IN_THE_EVENING
    assert all_done.gap == 0


def test_twelve_sets_are_complete_for_the_evening_shift(
    instance: Instance, for_the_shift: Plan
) -> None:
    """Waves of liners, shells, liners, shells end at 17:30 with twelve sets."""
    ready = [minute for minute in for_the_shift.ready.values() if minute <= SIX_IN_THE_EVENING]

    assert len(ready) == 12
    assert max(ready) <= 13 * 60 + FIRST_TURN
    assert verify(instance, for_the_shift) == ()


def test_thirteen_sets_are_proven_impossible(for_the_shift: Plan) -> None:
    """13 sets take 4,680 place-minutes; six places have 4,500 from 05:30 to 18:00."""
    assert for_the_shift.bound == 12
    assert for_the_shift.gap == 0


def test_the_price_of_twelve_is_a_later_end(for_the_shift: Plan) -> None:
    """The last set is done at 21:00 at the latest, an hour after the other goal's end."""
    assert EIGHT_IN_THE_EVENING < for_the_shift.makespan <= 990 + FIRST_TURN


def test_all_shells_first_gives_only_ten(instance: Instance) -> None:
    """Washing all shells first and hanging up as they come leaves two sets out at 18:00."""
    plan = _shells_first_as_they_come(instance)
    ready = [minute for minute in plan.ready.values() if minute <= SIX_IN_THE_EVENING]

    assert verify(instance, plan) == ()
    assert len(ready) == 10


def _shells_first_as_they_come(instance: Instance) -> Plan:
    """Write the plan by hand: no search, whoever is out of the drum first hangs first."""
    drums = [
        ("shell", range(1, 6)), ("shell", range(6, 11)), ("shell", range(11, 14)),
        ("liner", range(1, 9)), ("liner", range(9, 14)),
        ("shell 14", range(14, 15)), ("liner 14", range(14, 15)),
    ]  # fmt: skip
    loads, dry, places = [], [], [0] * 6
    for k, (family, sets) in enumerate(drums):
        start, out = 70 * k, 70 * (k + 1)
        pieces = tuple(ComponentId(f"{family.split()[0]} {n:02}") for n in sets)
        loads.append(
            Load(
                washer=MachineId("washer"), family=family, load_start=start, prog_start=start + 10,
                prog_end=out, unload_start=out, unload_end=out, pieces=pieces,
            )
        )  # fmt: skip
        for piece in pieces:
            place = places.index(min(places))
            begin = max(out, places[place])
            places[place] = begin + (150 if piece.startswith("shell") else 210)
            dry.append(Drying(piece=piece, where=RACK, start=begin, end=places[place]))
    ends = {step.piece: step.end for step in dry}
    ready = {
        instance.members[n - 1].id: max(
            ends[ComponentId(f"shell {n:02}")], ends[ComponentId(f"liner {n:02}")]
        )
        for n in SETS
    }
    return Plan(
        instance=instance.name, loads=tuple(loads), dry=tuple(dry), ready=ready,
        objective=sum(ready.values()), makespan=max(ends.values()),
    )  # fmt: skip
