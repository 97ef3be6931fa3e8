"""Why these loads in this order?

Nothing is told that was not tried: each pair of neighbouring loads of a washer changes places, the
wash room is run again, and what that does to the members is the reason.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from sootline.core.basis import MachineId, MessageId
from sootline.core.washplan.bench import Bench
from sootline.core.washplan.choice import Choice, DrumLoad
from sootline.core.washplan.engine import Engine, interpreted
from sootline.core.washplan.found import Found, Judge
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.kernel import arrays as at
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.pool import as_choice
from sootline.core.washplan.shop import open_shop

_ROUNDS = 3
Loads = tuple[tuple[DrumLoad, ...], ...]


@dataclass(frozen=True, kw_only=True)
class OrderReason:
    """What happens when a load changes places with the next one in its washer.

    Args:
        load, then: their numbers in the order of the work, from 1.
        later, sooner: how many members are ready later or sooner than in the plan.
        most: the longest that one of them waits longer [min].
        worse: whether the goal is reached less well; None where it comes to the same.
    """

    washer: MachineId
    load: int
    then: int
    later: int
    sooner: int
    most: int
    worse: bool | None

    @property
    def message(self) -> MessageId:
        """Which sentence says it."""
        told = {True: "first", None: "either", False: "unsettled"}[self.worse]
        return MessageId(f"plan.why.{'first_but' if self.worse and self.sooner else told}")

    @property
    def values(self) -> dict[str, str]:
        """What the sentence is about."""
        told = {"load": self.load, "next": self.then, "n": self.later, "sooner": self.sooner}
        return {name: str(value) for name, value in (told | {"minutes": self.most}).items()}


def explain_order(
    instance: Instance, plan: Plan, *, goal: Goal, by: int = 0, engine: Engine | None = None
) -> tuple[OrderReason, ...]:
    """Say for each load that has another behind it in its washer why it comes first.

    Loads that have begun are facts and need no reason; a family that must come last says so itself.

    Args:
        by: the deadline [min]; only the goal deadline reads it.
    """
    trial = _Trial(instance, plan, Judge(goal=goal, by=by), engine or interpreted())
    base = trial.run(trial.choice)
    return tuple(trial.reasons(base)) if base else ()


class _Trial:
    """A plan's decisions, and the wash room they are run through."""

    def __init__(self, instance: Instance, plan: Plan, judge: Judge, engine: Engine) -> None:
        self.shop, self.judge = open_shop(instance, single=True), judge
        self.bench = Bench(self.shop, engine)
        self.choice = as_choice(self.shop, plan)
        ordered = sorted(plan.loads, key=lambda load: (load.load_start, load.washer))
        self.number = {
            piece: number for number, load in enumerate(ordered, start=1) for piece in load.pieces
        }

    def reasons(self, base: Found) -> Iterator[OrderReason]:
        """Try every pair of neighbours the other way round."""
        for w, loads in enumerate(self.choice.loads):
            for k, (one, other) in enumerate(pairwise(loads)):
                if (one[0] in self.shop.late) != (other[0] in self.shop.late):
                    continue
                swapped = (*loads[:k], other, one, *loads[k + 2 :])
                tried = self.run(replace(self.choice, loads=_put(self.choice.loads, w, swapped)))
                if tried:
                    yield self._reason(w, (one[1][0], other[1][0]), base, tried)

    def run(self, choice: Choice) -> Found | None:
        """Return the best of a few runs that aim at what came out of the one before."""
        best: Found | None = None
        for _ in range(_ROUNDS):
            found = Found(
                bench=self.bench, picks=self.bench.picks(choice), times=self.bench.times()
            )
            bench = self.bench
            if not bench.engine.run_clock(bench.facts, found.picks, bench.room, found.times):
                break
            if best is None or self.judge.better(found, best):
                best = found
            choice = replace(choice, target=self.judge.targets(found))
        return best

    def _reason(self, w: int, items: tuple[int, int], base: Found, tried: Found) -> OrderReason:
        before, after = (self.bench.section(one.times, at.READY) for one in (base, tried))
        longer = [b - a for a, b in zip(before, after, strict=True)]
        costs = self.judge.cost(base), self.judge.cost(tried)
        first, second = (self.number[self.shop.items[i].pieces[0].id] for i in items)
        return OrderReason(
            washer=self.shop.instance.washers[w].id, load=first, then=second,
            later=sum(one > 0 for one in longer), sooner=sum(one < 0 for one in longer),
            most=max(longer, default=0),
            worse=None if costs[0] == costs[1] else costs[1] > costs[0],
        )  # fmt: skip


def _put(loads: Loads, w: int, mine: tuple[DrumLoad, ...]) -> Loads:
    return (*loads[:w], mine, *loads[w + 1 :])
