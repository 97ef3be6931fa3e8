"""Which targets, spares and cabinet runs lie next to these?"""

from sootline.core.washplan.kernel.arrays import (  # isort: skip
    AFTER, BOXED, BOXES, BOX_MIN, BOX_UNITS, COVERED, DONE_AT, DRY_AT, GIVEN, INSPECT, ITEMS,
    KIND_OF, MEMBER, MEMBERS, NEVER, RACK_MIN, RACK_UNITS, READY, RUN, RUNS, SLOTS, STAGE,
    TARGET, UNITS, Ints,
)  # fmt: skip
from sootline.core.washplan.kernel.drawing import draw
from sootline.core.washplan.kernel.editing import (
    drop_run,
    keeps_forced,
    may_box,
    run_units,
    unused_run,
    wet_at,
)


def aim(facts: Ints, new: Ints, chance: Ints) -> bool:
    """Aim one member's gear earlier or later."""
    new[facts[TARGET] + draw(chance, facts[MEMBERS])] += draw(chance, 241) - 120
    return True


def lend(facts: Ints, now: Ints, new: Ints, chance: Ints) -> bool:
    """Hand a spare to somebody else who can use it."""
    one, found = -1, 0
    for i in range(facts[ITEMS]):
        if now[facts[COVERED] + i] == 1 and facts[facts[GIVEN] + i] == 0:
            found += 1
            if draw(chance, found) == 0:
                one = i
    if one < 0:
        return False
    other, found = -1, 0
    for i in range(facts[ITEMS]):
        if (
            facts[facts[KIND_OF] + i] == facts[facts[KIND_OF] + one]
            and now[facts[COVERED] + i] == 0
            and facts[facts[STAGE] + i] < 5
        ):
            found += 1
            if draw(chance, found) == 0:
                other = i
    if other < 0:
        return False
    new[facts[COVERED] + one] = 0
    new[facts[COVERED] + other] = 1
    return True


def _draw_boxable(facts: Ints, chance: Ints) -> int:
    item, found = -1, 0
    for i in range(facts[ITEMS]):
        if may_box(facts, i):
            found += 1
            if draw(chance, found) == 0:
                item = i
    return item


def _draw_run(facts: Ints, picks: Ints, chance: Ints) -> int:
    """Draw a run's place as cabinet times slots plus place, -1 if there is none."""
    spot, found = -1, 0
    for c in range(facts[BOXES]):
        for k in range(picks[facts[RUNS] + c]):
            found += 1
            if draw(chance, found) == 0:
                spot = c * facts[SLOTS] + k
    return spot


def box(facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints) -> bool:
    """Put an item into a run, into a new run, or take it out onto the rack."""
    item = _draw_boxable(facts, chance)
    if item < 0:
        return False
    was = now[facts[RUN] + item]
    new[facts[RUN] + item] = -1
    if was >= 0 and run_units(facts, new, was) == 0:
        drop_run(facts, new, was)
    if was < 0 or draw(chance, 2) == 0:
        c = draw(chance, facts[BOXES])
        if new[facts[RUNS] + c] > 0 and draw(chance, 10) < 7:
            run = new[facts[BOXED] + c * facts[SLOTS] + draw(chance, new[facts[RUNS] + c])]
            if not _squeeze(facts, times, new, chance, item, run, facts[facts[BOX_UNITS] + c]):
                return False
        elif not _new_run(facts, now, times, new, chance, item, c):
            return False
    return keeps_forced(facts, new, item)


def _squeeze(
    facts: Ints, times: Ints, new: Ints, chance: Ints, item: int, run: int, units: int
) -> bool:
    """Put an item into a run; whoever has the most time goes onto the rack if it is full."""
    new[facts[RUN] + item] = run
    while run_units(facts, new, run) > units:
        giving, least = -1, 0
        for i in range(facts[ITEMS]):
            if (
                new[facts[RUN] + i] == run
                and i != item
                and facts[facts[UNITS] + i] <= facts[RACK_UNITS]
            ):
                slack = (
                    times[facts[DONE_AT] + i]
                    - times[facts[READY] + facts[facts[MEMBER] + i]]
                    + draw(chance, 60)
                )
                if giving < 0 or slack < least:
                    giving, least = i, slack
        if giving < 0:
            return False
        new[facts[RUN] + giving] = -1
    return True


def _new_run(
    facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints, item: int, c: int
) -> bool:
    """Open a run for an item and what is wet with it, at a drawn place of a cabinet."""
    if facts[facts[UNITS] + item] > facts[facts[BOX_UNITS] + c]:
        return False
    run, units = unused_run(facts, new), facts[facts[BOX_UNITS] + c] - facts[facts[UNITS] + item]
    within = (15, 60, 150)[draw(chance, 3)]
    new[facts[RUN] + item] = run
    wet = wet_at(facts, now, times, item)
    for i in range(facts[ITEMS]):
        alike = (
            facts[facts[BOX_MIN] + i] == facts[facts[BOX_MIN] + item]
            and new[facts[RUN] + i] < 0
            and facts[facts[UNITS] + i] <= units
        )
        if alike and may_box(facts, i) and abs(wet_at(facts, now, times, i) - wet) <= within:
            units -= facts[facts[UNITS] + i]
            new[facts[RUN] + i] = run
    at = draw(chance, new[facts[RUNS] + c] + 1)
    base = c * facts[SLOTS]
    for k in range(new[facts[RUNS] + c], at, -1):
        new[facts[BOXED] + base + k] = new[facts[BOXED] + base + k - 1]
    new[facts[BOXED] + base + at] = run
    new[facts[RUNS] + c] += 1
    return True


def reorder_runs(facts: Ints, new: Ints, chance: Ints) -> bool:
    """Exchange two runs that follow each other, move one elsewhere, or open one up."""
    spot = _draw_run(facts, new, chance)
    if spot < 0:
        return False
    run, c = new[facts[BOXED] + spot], spot // facts[SLOTS]
    way = draw(chance, 10)
    if way < 5 and spot > c * facts[SLOTS]:
        new[facts[BOXED] + spot - 1], new[facts[BOXED] + spot] = (
            new[facts[BOXED] + spot],
            new[facts[BOXED] + spot - 1],
        )
        return True
    if way < 8:
        to = draw(chance, facts[BOXES])
        if run_units(facts, new, run) > facts[facts[BOX_UNITS] + to]:
            return False
        drop_run(facts, new, run)
        base, at = to * facts[SLOTS], draw(chance, new[facts[RUNS] + to] + 1)
        for k in range(new[facts[RUNS] + to], at, -1):
            new[facts[BOXED] + base + k] = new[facts[BOXED] + base + k - 1]
        new[facts[BOXED] + base + at] = run
        new[facts[RUNS] + to] += 1
        return True
    for i in range(facts[ITEMS]):
        if new[facts[RUN] + i] == run:
            new[facts[RUN] + i] = -1
            if not keeps_forced(facts, new, i):
                return False
    drop_run(facts, new, run)
    return True


def refill_run(facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints) -> bool:
    """Fill a run anew with what gains most by it among all that is wet when it starts."""
    spot = _draw_run(facts, now, chance)
    if spot < 0:
        return False
    run, units = now[facts[BOXED] + spot], facts[facts[BOX_UNITS] + spot // facts[SLOTS]]
    start, longest = 0, 0
    for i in range(facts[ITEMS]):
        if now[facts[RUN] + i] == run:
            start, longest = (
                max(start, times[facts[DRY_AT] + i]),
                max(longest, facts[facts[BOX_MIN] + i]),
            )
            new[facts[RUN] + i] = -1
    start += (-60, -30, 0, 0, 15, 30)[draw(chance, 6)]
    noise = (1, 30, 120)[draw(chance, 3)]
    # The chain of items is built anew before the clock runs: until then it holds the keys.
    for i in range(facts[ITEMS]):
        new[facts[AFTER] + i] = NEVER
        wet = wet_at(facts, now, times, i)
        if (
            may_box(facts, i)
            and new[facts[RUN] + i] < 0
            and wet <= start
            and facts[facts[BOX_MIN] + i] <= longest
        ):
            gain = wet + facts[facts[RACK_MIN] + i] - start - longest
            if gain > 0 or facts[facts[UNITS] + i] > facts[RACK_UNITS]:
                rest = (
                    times[facts[READY] + facts[facts[MEMBER] + i]]
                    - wet
                    - facts[facts[RACK_MIN] + i]
                    - facts[facts[INSPECT] + i]
                )
                new[facts[AFTER] + i] = rest + draw(chance, noise)
    return _fill_run(facts, new, run, units)


def _fill_run(facts: Ints, new: Ints, run: int, units: int) -> bool:
    filled = False
    while True:
        item, least = -1, NEVER
        for i in range(facts[ITEMS]):
            if new[facts[AFTER] + i] < least:
                item, least = i, new[facts[AFTER] + i]
        if item < 0:
            break
        new[facts[AFTER] + item] = NEVER
        if facts[facts[UNITS] + item] <= units:
            units -= facts[facts[UNITS] + item]
            new[facts[RUN] + item] = run
            filled = True
    for i in range(facts[ITEMS]):
        if not keeps_forced(facts, new, i) and facts[facts[STAGE] + i] <= 3:
            return False
    return filled
