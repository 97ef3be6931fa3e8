"""How good is the plan beside hand rules, bound and known bests, instance by instance?

`python -m benchmarks.turnaround_bench [FOLDER] [--best FILE] [--seconds S] [--runs N]` prints one
row for each neutral instance in a folder; without a folder, for twelve generated calls of 4 to 60
members, whose minutes and weights are invented. The process is warm: the engine is loaded and one
plan made before. With several runs the median plan counts. Each plan is verified.

The file of bests maps an instance's name to `plan_after_10_s`, `best`, `bound` and the objectives
of `hand_rules`; the lower of its hand rules and ours counts.
"""

import argparse
import json
import os
import statistics
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tests.instances.calls import variety

from sootline.core.basis import BadInputError
from sootline.core.verify import verify
from sootline.core.washplan import HandRule, Instance, Plan, hand_plan, solve
from sootline.wiring.beside import helps_for
from sootline.wiring.engines import find_engine
from sootline.wiring.plans import read_question, stop_after

HEADINGS = ("instance", "n", *HandRule, "plan", "bound", "gap %", "/ 10 s", "/ best", "x plain",
            "x all", "first s", "s")  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Measured:
    """One instance's figures; ratios are None where nothing is known to compare with."""

    instance: Instance
    rules: tuple[int, ...]
    plan: Plan
    seconds: float
    first: float
    known: dict[str, Any]

    def row(self) -> tuple[str, ...]:
        """Return the figures as the table shows them."""
        value = self.plan.objective
        by_hand = [min(pair) for pair in zip(self.rules, self._known_rules(), strict=True)]
        return (
            self.instance.name, str(len(self.instance.members)), *map(str, self.rules),
            str(value), f"{self.plan.bound:.0f}", f"{100 * (self.plan.gap or 0):.1f}",
            self._ratio("plan_after_10_s"), self._ratio("best"),
            f"{min(by_hand[:4]) / value:.3f}", f"{min(by_hand) / value:.3f}",
            f"{self.first:.3f}", f"{self.seconds:.1f}",
        )  # fmt: skip

    def _known_rules(self) -> tuple[int, ...]:
        known = tuple(self.known.get("hand_rules", {}).values())
        return known if len(known) == len(self.rules) else self.rules

    def _ratio(self, name: str) -> str:
        return f"{self.plan.objective / self.known[name]:.4f}" if name in self.known else "-"


def planned(instance: Instance, seconds: float, seed: int) -> tuple[Plan, float]:
    """Plan and verify; say how long both took together."""
    began = time.perf_counter()
    helps = helps_for(seconds)
    plan = solve(instance, stop=stop_after(seconds), seed=seed, helps=helps)
    if faults := verify(instance, plan):
        raise SystemExit(f"{instance.name}: {faults}")
    return plan, time.perf_counter() - began


def measure(instance: Instance, seconds: float, runs: int, known: dict[str, Any]) -> Measured:
    """Measure one instance."""
    first = statistics.median(_first(instance) for _ in range(3))
    made = [planned(instance, seconds, seed) for seed in range(runs)]
    plan, took = sorted(made, key=lambda one: one[0].objective)[(runs - 1) // 2]
    engine = find_engine()
    rules = tuple(hand_plan(instance, rule, engine).objective for rule in HandRule)
    return Measured(
        instance=instance, rules=rules, plan=plan, seconds=took, first=first, known=known
    )


def _first(instance: Instance) -> float:
    return planned(instance, 0, 0)[1]


def instances_in(folder: Path) -> list[Instance]:
    """Read every neutral instance of a folder, by name."""
    found = []
    for path in sorted(folder.glob("*.json")):
        try:
            question = read_question(path)
        except BadInputError:
            continue
        if isinstance(question, Instance):
            found.append(question)
    return found


def main(typed: list[str] | None = None) -> None:
    """Print the table, and the means over 30 members and more."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", nargs="?", type=Path)
    parser.add_argument("--best", type=Path)
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--runs", type=int, default=1)
    options = parser.parse_args(typed)
    best = json.loads(options.best.read_text(encoding="utf-8")) if options.best else {}
    instances = instances_in(options.folder) if options.folder else list(variety())
    planned(instances[0], 1.0, 0)
    print(f"load {os.getloadavg()[0]:.1f} on {os.cpu_count()} processors; {options.seconds:g} s,"
          f" median of {options.runs}; machine code {find_engine().steps > 1}")  # fmt: skip
    print("\t".join(HEADINGS))
    large: list[tuple[str, ...]] = []
    for instance in instances:
        row = measure(instance, options.seconds, options.runs, best.get(instance.name, {})).row()
        print("\t".join(row), flush=True)
        large += [row] if len(instance.members) >= 30 else []
    if large:
        plain, every = (statistics.mean(float(row[k]) for row in large) for k in (-4, -3))
        print(
            f"30 members and more, mean: {plain:.3f} times the best plain rule, {every:.3f} of all"
        )


if __name__ == "__main__":
    main()
