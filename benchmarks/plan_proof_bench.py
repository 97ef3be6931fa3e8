"""Does any bound lie, does any damaged plan pass, and are known optima reached?

`python -m benchmarks.plan_proof_bench [--tiny N] [--damaged N] [--seconds S] [--large]` prints:
tiny random calls against trying everything; damaged plans against the independent check; bin
packing and the batch machine with families against optima that the literature gives; with
`--large` also the time to a gap of a tenth at 15 to 240 members and the exponent fitted to it.
Minutes and weights of the calls are invented.
"""

import argparse
import itertools
import time
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from math import log, nan

import numpy as np
from tests.instances.batch_machine import batch_machine, best_by_subsets, best_of_unit_sizes
from tests.instances.calls import call
from tests.instances.chance import seeded
from tests.instances.exhaustive import optimum
from tests.instances.generate import crews, tiny
from tests.instances.stops import after, paced
from tests.outside.test_washplan_bin_packing import CYCLE, DRYING, triplets
from tests.property.washplan_damage import DAMAGES

from sootline.core.basis import BadInputError
from sootline.core.verify import verify
from sootline.core.washplan import Goal, Instance, Plan, bound_of, solve
from sootline.core.washplan.exact import Proof
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.priced import price_out
from sootline.wiring.beside import helps_for
from sootline.wiring.engines import find_engine
from sootline.wiring.plans import stop_after

TIMES, MOVES, MOMENT = 60, 2_000, 2.0
DEADLINE, PRICE_STEPS, CLOSE, ENOUGH = 9, 200, 1.01, 0.10
BINS, JOBS, MEMBERS, LONGEST = (20, 40, 83, 167), (30, 60, 120), (15, 30, 60, 120, 240), 60.0


def against_everything(wanted: int) -> None:
    """Compare bounds, proof and search with the exhaustive best of tiny calls."""
    lying = proven = done = 0
    alone: list[float] = []
    planned: list[float] = []
    engine = replace(find_engine(), steps=MOVES)
    for seed in itertools.count():
        if done == wanted:
            break
        try:
            instance = tiny(seed)
        except BadInputError:
            continue
        done += 1
        best = optimum(instance, DEADLINE).soonest
        stop, share = paced(TIMES)
        known = solve(instance, stop=stop, helps=Helps(engine=engine, share=share))
        plan, _ = _planned(instance, MOMENT, Goal.SOONEST)
        told = [bound_of(instance, goal=Goal.SOONEST, by=0)]
        price_out(instance, goal=Goal.SOONEST, by=0, known=(known.objective, known.makespan),
                  stop=after(PRICE_STEPS), tell=told.append)  # fmt: skip
        found = Proof(instance, known).run(told.append) or known
        lying += max(told) > best
        proven += found.objective == best == max(told)
        alone.append(known.objective / max(1, best))
        planned.append(plan.objective / max(1, best))
    print(f"tiny calls\t{done}\tbounds beyond the best\t{lying}\tproven best\t{proven}")
    for name, ratios in (("search alone", alone), (f"plan in {MOMENT:g} s", planned)):
        far = sum(ratio > CLOSE for ratio in ratios)
        print(f"{name}\tbeyond 1 %\t{far}\tworst ratio\t{max(ratios):.4f}")


def damaged(wanted: int) -> None:
    """Damage plans in every way and count what the check lets pass."""
    shapes = ((4, 1, 0), (5, 2, 1), (6, 1, 2), (4, 2, 0), (8, 1, 1), (6, 2, 2))
    good: list[tuple[Instance, Plan]] = []
    for seed, (members, washers, cabinets) in enumerate(shapes):
        instance = crews(members, seed=seed, washers=washers, cabinets=cabinets)
        good.append((instance, solve(instance, stop=after(30))))
    refused = passed = 0
    kinds: set[str] = set()
    for seed in itertools.count():
        if refused + passed >= wanted:
            break
        (instance, plan), (damage, _) = good[seed % len(good)], DAMAGES[seed % len(DAMAGES)]
        broken = damage(instance, plan, seeded(seed))
        if broken is None:
            continue
        kinds.add(damage.__name__)
        sound = verify(instance, broken) == ()
        passed, refused = passed + sound, refused + (not sound)
    print(f"damaged plans\t{refused + passed}\tkinds\t{len(kinds)}\tlet pass\t{passed}")


def known_optima(seconds: float) -> None:
    """Compare with optima that the literature's constructions give."""
    print("published family\tcase\toptimum\tplan\tratio\tbound\ts")
    for bins in BINS:
        instance = triplets(bins, seed=bins)
        plan, took = _planned(instance, seconds, Goal.ALL_DONE)
        _row(f"triplets, {3 * bins} pieces", bins * CYCLE + DRYING, plan.makespan, plan, took)
    for jobs in JOBS:
        instance = batch_machine(jobs, seed=jobs, most_size=1)
        plan, took = _planned(instance, seconds, Goal.SOONEST)
        best = best_of_unit_sizes(instance)
        _row(f"families, unit sizes, {jobs} jobs", best, plan.objective, plan, took)
    for seed in range(5):
        instance = batch_machine(12, seed=seed, most_size=9)
        plan, took = _planned(instance, seconds, Goal.SOONEST)
        best = best_by_subsets(instance)
        _row(f"families, any sizes, 12 jobs, seed {seed}", best, plan.objective, plan, took)


def _planned(instance: Instance, seconds: float, goal: Goal) -> tuple[Plan, float]:
    began = time.perf_counter()
    plan = solve(instance, goal=goal, stop=stop_after(seconds), helps=helps_for(seconds))
    if faults := verify(instance, plan):
        raise SystemExit(f"{instance.name}: {faults}")
    return plan, time.perf_counter() - began


def _row(case: str, best: int, value: int, plan: Plan, took: float) -> None:
    bound = plan.bound if plan.bound is not None else nan
    print(f"\t{case}\t{best}\t{value}\t{value / best:.4f}\t{bound / best:.4f}\t{took:.1f}")


def time_to_gap() -> None:
    """Find the least time given, doubled from 1 s, in which the gap falls to a tenth."""
    print("members\tseconds to a gap of 10 %\tgap reached")
    points: list[tuple[float, float]] = []
    for members in MEMBERS:
        instance = call(members, seed=members)
        took, gap = _least(partial(_planned, instance, goal=Goal.SOONEST))
        told = f"{took:g}" if gap <= ENOUGH else f"more than {LONGEST:g}"
        print(f"{members}\t{told}\t{100 * gap:.1f} %", flush=True)
        if gap <= ENOUGH:
            points.append((log(members), log(took)))
    if len(points) > 1:
        exponent = np.polyfit([x for x, _ in points], [y for _, y in points], 1)[0]
        print(f"fitted exponent\t{exponent:.2f}\tover {len(points)} sizes")


def _least(plan: Callable[[float], tuple[Plan, float]]) -> tuple[float, float]:
    seconds = 1.0
    while True:
        gap = plan(seconds)[0].gap or 0.0
        if gap <= ENOUGH or seconds >= LONGEST:
            return seconds, gap
        seconds = min(2 * seconds, LONGEST)


def main(typed: list[str] | None = None) -> None:
    """Print everything."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--tiny", type=int, default=500)
    parser.add_argument("--damaged", type=int, default=2000)
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--large", action="store_true")
    options = parser.parse_args(typed)
    against_everything(options.tiny)
    damaged(options.damaged)
    known_optima(options.seconds)
    if options.large:
        time_to_gap()


if __name__ == "__main__":
    main()
