"""The kernel does the same interpreted and as machine code."""

from collections.abc import Iterator
from itertools import count

import pytest
from tests.instances.calls import call

from sootline.core.washplan import Instance, hand_plan, solve
from sootline.core.washplan.bench import Bench
from sootline.core.washplan.choice import Choice
from sootline.core.washplan.engine import Engine, interpreted
from sootline.core.washplan.found import Found, Judge
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.kernel.drawing import draw
from sootline.core.washplan.kernel.heap import drop, push
from sootline.core.washplan.plan import Goal
from sootline.core.washplan.rules import HandRule, rule_choice
from sootline.core.washplan.shop import open_shop

INSTANCES = (
    call(3, seed=1),
    call(4, seed=2, washers=2, cabinets=1, spares=True),
    call(3, seed=3, hazard=0.5, shifts=True, rack_per_member=6),
)


@pytest.fixture(scope="module")
def machine() -> Engine:
    """Return the compiled engine, where something can compile."""
    pytest.importorskip("numba")
    engines = pytest.importorskip("sootline.wiring.engines")
    folder = engines.kept_code()
    folder.mkdir(parents=True, exist_ok=True)
    engine: Engine = engines.load_compiled(folder)
    return engine


def _annealed(instance: Instance, engine: Engine, goal: Goal) -> tuple[Choice, list[int]]:
    """Take sixty hot steps from a hand rule with one engine."""
    bench = Bench(open_shop(instance, single=True), engine)
    choice = rule_choice(bench.shop, HandRule.ALTERNATE)
    now = Found(bench=bench, picks=bench.picks(choice), times=bench.times())
    assert engine.run_clock(bench.facts, now.picks, bench.room, now.times) == 1
    best, new = now.copy(), now.copy()
    aim = Judge(goal=goal, by=300).aim(bench)
    engine.anneal(
        bench.facts, aim, now.picks, now.times, best.picks, best.times, new.picks, new.times,
        bench.room, engine.ints([77]), 0.05, 0.01, 60,
    )  # fmt: skip
    return now.choice(), [int(number) for number in best.times]


@pytest.mark.parametrize("goal", list(Goal))
@pytest.mark.parametrize("instance", INSTANCES, ids=lambda one: str(one.name))
def test_steps_are_equal_on_both_engines(instance: Instance, goal: Goal, machine: Engine) -> None:
    """The same chance leads to the same choice and the same minutes."""
    assert _annealed(instance, machine, goal) == _annealed(instance, interpreted(), goal)


@pytest.mark.parametrize("rule", list(HandRule))
def test_hand_plans_are_equal_on_both_engines(rule: HandRule, machine: Engine) -> None:
    """Every rule, to the minute."""
    for instance in INSTANCES:
        assert hand_plan(instance, rule, machine) == hand_plan(instance, rule)


def _asked(times: int) -> Iterator[bool]:
    return (n >= times for n in count())


def test_a_search_ends_when_its_share_of_time_is_over() -> None:
    """With a clock the forming, then each annealing, ends at its share."""
    instance, asked = INSTANCES[1], count()
    helps = Helps(share=lambda: next(asked) / 400)
    plan = solve(instance, stop=lambda: False, helps=helps)

    assert plan.objective <= min(hand_plan(instance, rule).objective for rule in HandRule)


def test_a_tie_goes_to_fewer_loads() -> None:
    """Half of the objective given away makes the fewest drums that hold everything."""
    instance = INSTANCES[0]
    neutral, lazy = (
        solve(instance, stop=stop.__next__, helps=Helps(tie=tie))
        for stop, tie in ((_asked(30), 0.0), (_asked(30), 0.5))
    )

    assert len(lazy.loads) <= len(neutral.loads)
    assert lazy.objective <= 1.5 * neutral.objective


def test_the_heap_gives_the_least_key_first() -> None:
    """Keys come out in order, whatever the order they went in."""
    keys = [5, 3, 9, 1, 7, 2, 8, 6, 4, 0]
    heap, size, out = [0] * 12, 0, []
    for key in keys:
        size = push(heap, 2, size, key)
    while size:
        out.append(heap[2])
        size = drop(heap, 2, size)

    assert out == sorted(keys)


def test_draws_lie_within_their_range() -> None:
    """The ten-thousandth state from 1 is that of the generator's authors (from memory)."""
    chance = [1]
    drawn = [draw(chance, 6) for _ in range(10_000)]

    assert set(drawn) == set(range(6))
    # Source: the check value of minstd_rand in the C++ standard, [rand.predef] (from memory).
    assert chance == [399268537]
