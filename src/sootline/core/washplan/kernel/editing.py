"""How is a choice changed without breaking what limits it?"""

from sootline.core.washplan.kernel.arrays import (  # isort: skip
    AFTER, BOXED, BOXES, BOX_MIN, CAN, CAP, FAMILIES, FIRST, HAND_AT, HAND_MIN, ITEMS, LATE,
    LOAD, LOADS, LOAD_COUNT, LOAD_FAMILY, LOAD_WEIGHT, MOST, NEVER, NOW, ORDER, RACK_UNITS,
    RUN, RUNS, RUN_MIN, SINCE, SLOTS, STAGE, UNITS, UNLOADING_AT, UNLOAD_MIN, WASHERS, Ints,
)  # fmt: skip
from sootline.core.washplan.kernel.drawing import draw


def copy(source: Ints, goal: Ints) -> None:
    """Make one sequence equal to another."""
    for k in range(len(source)):
        goal[k] = source[k]


def draw_spot(facts: Ints, picks: Ints, chance: Ints) -> int:
    """Draw a load's place, as washer times slots plus place; -1 if there is no load."""
    total = 0
    for w in range(facts[WASHERS]):
        total += picks[facts[LOADS] + w]
    if total == 0:
        return -1
    at = draw(chance, total)
    w = 0
    while at >= picks[facts[LOADS] + w]:
        at -= picks[facts[LOADS] + w]
        w += 1
    return w * facts[SLOTS] + at


def spot_of(facts: Ints, picks: Ints, one: int) -> int:
    """Return a load's place, as washer times slots plus place."""
    w = k = 0
    while k >= picks[facts[LOADS] + w] or picks[facts[ORDER] + w * facts[SLOTS] + k] != one:
        k += 1
        if k >= picks[facts[LOADS] + w]:
            w, k = w + 1, 0
    return w * facts[SLOTS] + k


def washer_of(facts: Ints, picks: Ints, one: int) -> int:
    """Return the washer a load is in."""
    return spot_of(facts, picks, one) // facts[SLOTS]


def take_out(facts: Ints, picks: Ints, spot: int) -> None:
    """Take a load out of its washer's order."""
    w = spot // facts[SLOTS]
    picks[facts[LOADS] + w] -= 1
    for k in range(spot, w * facts[SLOTS] + picks[facts[LOADS] + w]):
        picks[facts[ORDER] + k] = picks[facts[ORDER] + k + 1]


def put_in(facts: Ints, picks: Ints, spot: int, one: int) -> None:
    """Put a load into a washer's order at a place."""
    w = spot // facts[SLOTS]
    for k in range(w * facts[SLOTS] + picks[facts[LOADS] + w], spot, -1):
        picks[facts[ORDER] + k] = picks[facts[ORDER] + k - 1]
    picks[facts[ORDER] + spot] = one
    picks[facts[LOADS] + w] += 1


def unused_load(facts: Ints, picks: Ints) -> int:
    """Return a load number that is not in use."""
    one = 0
    while picks[facts[LOAD_FAMILY] + one] >= 0:
        one += 1
    return one


def forget_load(facts: Ints, picks: Ints, one: int) -> None:
    """Drop a load that holds nothing."""
    take_out(facts, picks, spot_of(facts, picks, one))
    picks[facts[LOAD_FAMILY] + one] = -1


def fits(facts: Ints, w: int, family: int, weight: int, pieces: int) -> bool:
    """Say whether a washer takes so much of a family in one load."""
    at = w * facts[FAMILIES] + family
    return (
        facts[facts[RUN_MIN] + at] >= 0
        and weight <= facts[facts[CAP] + at]
        and pieces <= facts[facts[MOST] + at]
    )


def all_suit(facts: Ints, picks: Ints, one: int, w: int) -> bool:
    """Say whether every piece of a load may go into a washer."""
    i = picks[facts[FIRST] + one]
    while i >= 0:
        if facts[facts[CAN] + i * facts[WASHERS] + w] == 0:
            return False
        i = picks[facts[AFTER] + i]
    return fits(
        facts,
        w,
        picks[facts[LOAD_FAMILY] + one],
        picks[facts[LOAD_WEIGHT] + one],
        picks[facts[LOAD_COUNT] + one],
    )


def late_last(facts: Ints, picks: Ints) -> None:
    """Put dangerous families last in each washer, the order otherwise kept."""
    for w in range(facts[WASHERS]):
        base = w * facts[SLOTS]
        for k in range(1, picks[facts[LOADS] + w]):
            one = picks[facts[ORDER] + base + k]
            at = k
            if facts[facts[LATE] + picks[facts[LOAD_FAMILY] + one]] == 0:
                while (
                    at > 0
                    and facts[
                        facts[LATE]
                        + picks[facts[LOAD_FAMILY] + picks[facts[ORDER] + base + at - 1]]
                    ]
                    == 1
                ):
                    picks[facts[ORDER] + base + at] = picks[facts[ORDER] + base + at - 1]
                    at -= 1
                picks[facts[ORDER] + base + at] = one


def may_box(facts: Ints, i: int) -> bool:
    """Say whether a piece still has to dry and may do so in a cabinet."""
    return (
        facts[facts[BOX_MIN] + i] < NEVER
        and facts[facts[UNITS] + i] > 0
        and facts[facts[STAGE] + i] <= 3
    )


def drop_run(facts: Ints, picks: Ints, run: int) -> None:
    """Take a run out of its cabinet's order."""
    c = k = 0
    while k >= picks[facts[RUNS] + c] or picks[facts[BOXED] + c * facts[SLOTS] + k] != run:
        k += 1
        if k >= picks[facts[RUNS] + c]:
            c, k = c + 1, 0
    picks[facts[RUNS] + c] -= 1
    base = facts[BOXED] + c * facts[SLOTS]
    for j in range(k, picks[facts[RUNS] + c]):
        picks[base + j] = picks[base + j + 1]


def unused_run(facts: Ints, picks: Ints) -> int:
    """Return a run number that is not in use."""
    run = 0
    while True:
        used = False
        for c in range(facts[BOXES]):
            for k in range(picks[facts[RUNS] + c]):
                used = used or picks[facts[BOXED] + c * facts[SLOTS] + k] == run
        if not used:
            return run
        run += 1


def run_units(facts: Ints, picks: Ints, run: int) -> int:
    """Count the hanger units in a run."""
    units = 0
    for i in range(facts[ITEMS]):
        if picks[facts[RUN] + i] == run:
            units += facts[facts[UNITS] + i]
    return units


def wet_at(facts: Ints, picks: Ints, times: Ints, i: int) -> int:
    """Return when a piece was ready to dry."""
    if picks[facts[LOAD] + i] >= 0:
        return times[facts[UNLOADING_AT] + picks[facts[LOAD] + i]] + facts[UNLOAD_MIN]
    if times[facts[HAND_AT] + i] >= 0:
        return times[facts[HAND_AT] + i] + facts[facts[HAND_MIN] + i]
    return max(facts[NOW], facts[facts[SINCE] + i])


def keeps_forced(facts: Ints, picks: Ints, i: int) -> bool:
    """Say whether a piece without a run can hang on the rack."""
    return picks[facts[RUN] + i] >= 0 or facts[facts[UNITS] + i] <= facts[RACK_UNITS]
