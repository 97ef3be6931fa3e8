"""How does a choice get better? Random steps, ever less often one that makes it worse."""

from math import exp

from sootline.core.washplan.kernel.arrays import (  # isort: skip
    ALL_DONE, BOXES, DEADLINE, GUARD, MEMBERS, PRIORITY, READY, SUMS, TARGET, Ints,
)  # fmt: skip
from sootline.core.washplan.kernel.clock import run_clock
from sootline.core.washplan.kernel.drawing import draw
from sootline.core.washplan.kernel.editing import copy
from sootline.core.washplan.kernel.load_moves import exchange, hurry, merge, shift_load, split
from sootline.core.washplan.kernel.other_moves import aim, box, lend, refill_run, reorder_runs
from sootline.core.washplan.kernel.wide_moves import repack, swap_members

GIVE_WAY = 240


def ready_weight(facts: Ints, aim: Ints, times: Ints) -> int:
    """Return the priority of all members ready by the deadline."""
    weight = 0
    for m in range(facts[MEMBERS]):
        if times[facts[READY] + m] <= aim[1]:
            weight += facts[facts[PRIORITY] + m]
    return weight


def cost_of(facts: Ints, aim: Ints, times: Ints) -> float:
    """Return one number to go by: the goal first, its tie-break as a slope towards it."""
    mean = times[facts[SUMS]] / aim[2]
    if aim[0] == DEADLINE:
        late = 0.0
        for m in range(facts[MEMBERS]):
            over = max(0, times[facts[READY] + m] - aim[1]) / 240
            late += facts[facts[PRIORITY] + m] * min(1.0, over)
        return 1000 * (late - ready_weight(facts, aim, times)) / aim[2] + mean / 4
    if aim[0] == ALL_DONE:
        return times[facts[SUMS] + 1] + mean / 50
    return mean + times[facts[SUMS] + 1] / 5000


def is_better(facts: Ints, aim: Ints, times: Ints, than: Ints) -> bool:
    """Say whether one timetable beats another; the last tie goes to fewer loads."""
    first, second = (
        times[facts[SUMS]] - than[facts[SUMS]],
        times[facts[SUMS] + 1] - than[facts[SUMS] + 1],
    )
    if aim[0] == DEADLINE:
        second = first
        first = ready_weight(facts, aim, than) - ready_weight(facts, aim, times)
    elif aim[0] == ALL_DONE:
        first, second = second, first
    if first != 0:
        return first < 0
    if second != 0:
        return second < 0
    return times[facts[SUMS] + 2] < than[facts[SUMS] + 2]


def retarget(facts: Ints, aim: Ints, times: Ints, new: Ints, plain: bool) -> None:
    """Aim at what came out, or as the goal would have it.

    For all-done everybody aims at the common end. For a deadline those in time, and the next
    one, aim at the deadline itself and whoever is late gives way to them.
    """
    soonest_late = -1
    for m in range(facts[MEMBERS]):
        late = times[facts[READY] + m]
        if late > aim[1] and (soonest_late < 0 or late < soonest_late):
            soonest_late = late
    for m in range(facts[MEMBERS]):
        ready = times[facts[READY] + m]
        if plain or (aim[0] not in (DEADLINE, ALL_DONE)):
            new[facts[TARGET] + m] = ready
        elif aim[0] == ALL_DONE:
            new[facts[TARGET] + m] = times[facts[SUMS] + 1]
        elif ready <= max(aim[1], soonest_late):
            new[facts[TARGET] + m] = aim[1]
        else:
            new[facts[TARGET] + m] = max(ready, aim[1]) + GIVE_WAY


def _move(facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints) -> bool:
    """Change one drawn thing; False if that is not possible here."""
    drawn = draw(chance, 30 if facts[BOXES] == 0 else 44)
    if drawn < 7:
        return hurry(facts, now, times, new, chance)
    if drawn < 12:
        return exchange(facts, now, times, new, chance)
    if drawn < 17:
        return shift_load(facts, now, new, chance)
    if drawn < 19:
        return split(facts, now, new, chance)
    if drawn < 21:
        return merge(facts, now, new, chance)
    if drawn < 23:
        return aim(facts, new, chance)
    if drawn < 24:
        new[facts[GUARD]] = 1 - now[facts[GUARD]]
        return True
    if drawn < 26:
        return lend(facts, now, new, chance)
    if drawn < 28:
        return repack(facts, now, times, new, chance)
    if drawn < 30:
        return swap_members(facts, now, times, new, chance)
    if drawn < 37:
        return box(facts, now, times, new, chance)
    if drawn < 40:
        return reorder_runs(facts, new, chance)
    return refill_run(facts, now, times, new, chance)


def anneal(
    facts: Ints, goal: Ints, now: Ints, times: Ints, best: Ints, best_times: Ints,
    new: Ints, new_times: Ints, room: Ints, chance: Ints, hot: float, cold: float, steps: int,
) -> None:  # fmt: skip
    """Take so many steps from `now`, the heat going from hot to cold [share of the cost].

    `now` is left where the steps ended; `best` takes whatever is better than itself.
    """
    cost = cost_of(facts, goal, times)
    for step in range(steps):
        copy(now, new)
        if not _move(facts, now, times, new, chance):
            continue
        if draw(chance, 10) < 3:
            retarget(facts, goal, times, new, draw(chance, 2) == 0)
        if run_clock(facts, new, room, new_times) == 0:
            continue
        tried = cost_of(facts, goal, new_times)
        heat = hot * (cold / hot) ** (step / steps) * cost
        worse = (tried - cost) / max(heat, 1e-9)
        if worse <= 0 or draw(chance, 1 << 30) / (1 << 30) < exp(-worse):
            copy(new, now)
            copy(new_times, times)
            cost = tried
            if is_better(facts, goal, new_times, best_times):
                copy(new, best)
                copy(new_times, best_times)
