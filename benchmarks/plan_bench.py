"""How soon is there a verified plan, how good is it, and how far may it be from the best?

`python -m benchmarks.plan_bench [SECONDS]` prints one row per instance. The instances come from a
seeded generator; their minutes and weights are invented. The first plan counts the hand rules, the
bound and the independent check; the process is warm.
"""

import sys
from collections.abc import Callable
from time import perf_counter

from tests.instances.generate import crews

from sootline.core.verify import verify
from sootline.core.washplan import HandRule, Instance, Plan, hand_plan, solve

SECONDS = 10.0
COLUMNS = ("instance", "pieces", "first plan s", "objective", "bound", "gap", "s", *HandRule)


def until(seconds: float) -> Callable[[], bool]:
    """Say stop once so many seconds have passed."""
    end = perf_counter() + seconds
    return lambda: perf_counter() >= end


def timed(instance: Instance, seconds: float) -> tuple[Plan, float]:
    """Plan and verify, and say how long both took together."""
    start = perf_counter()
    plan = solve(instance, stop=until(seconds))
    faults = verify(instance, plan)
    if faults:
        raise SystemExit(f"{instance.name}: {faults}")
    return plan, perf_counter() - start


def row(instance: Instance, seconds: float) -> tuple[str, ...]:
    """Measure one instance; hand rules are given as times the plan's objective."""
    _, first = timed(instance, 0)
    plan, took = timed(instance, seconds)
    rules = [hand_plan(instance, rule).objective / plan.objective for rule in HandRule]
    return (
        instance.name,
        str(len(instance.pieces)),
        f"{first:.3f}",
        str(plan.objective),
        f"{plan.bound:.0f}",
        f"{100 * (plan.gap or 0):.1f} %",
        f"{took:.1f}",
        *(f"{ratio:.3f}" for ratio in rules),
    )


def main() -> None:
    """Print the table."""
    seconds = float(sys.argv[1]) if len(sys.argv) > 1 else SECONDS
    timed(crews(2, seed=0), 0)
    cases = [
        crews(4, seed=1),
        crews(14, seed=1),
        crews(14, seed=1, cabinets=1),
        crews(60, seed=1, washers=2),
        crews(60, seed=1, washers=2, cabinets=2),
    ]
    print("\t".join(COLUMNS))
    for instance in cases:
        print("\t".join(row(instance, seconds)), flush=True)


if __name__ == "__main__":
    main()
