"""Which choice lies a larger step away? Several loads filled anew, two members exchanged."""

from sootline.core.washplan.kernel.arrays import (  # isort: skip
    AFTER, BOXED, BOXES, BOX_MIN, BOX_UNITS, CAN, COUNT, FAMILY, FIRST, INSPECT, ITEMS, LOAD,
    LOADS, LOAD_COUNT, LOAD_FAMILY, LOAD_WEIGHT, MEMBER, MEMBERS, NEVER, ORDER, RACK_MIN,
    RACK_UNITS, READY, RUN, RUNS, SLOTS, TARGET, UNITS, UNLOADING_AT, WASHERS, WEIGHT, Ints,
)  # fmt: skip
from sootline.core.washplan.kernel.drawing import draw
from sootline.core.washplan.kernel.editing import draw_spot, fits, forget_load, washer_of


def repack(facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints) -> bool:
    """Fill two to four loads of one family anew, by who has to be out of the drum first."""
    spot = draw_spot(facts, now, chance)
    if spot < 0:
        return False
    one = now[facts[ORDER] + spot]
    family, wanted = now[facts[LOAD_FAMILY] + one], 2 + draw(chance, 3)
    # The weights are counted anew before the clock runs: until then they mark what is chosen.
    for k in range(facts[SLOTS]):
        new[facts[LOAD_WEIGHT] + k] = new[facts[LOAD_COUNT] + k] = -1
    new[facts[LOAD_WEIGHT] + one] = new[facts[LOAD_COUNT] + one] = 0
    chosen = 1 + _choose_near(
        facts, now, times, new, family, wanted - 1, times[facts[UNLOADING_AT] + one]
    )
    if chosen < 2:
        return False
    noise = (1, 30, 90, 240)[draw(chance, 4)]
    for i in range(facts[ITEMS]):
        if now[facts[LOAD] + i] >= 0 and new[facts[LOAD_WEIGHT] + now[facts[LOAD] + i]] >= 0:
            tail = facts[facts[INSPECT] + i]
            tail += (
                facts[facts[RACK_MIN] + i] if now[facts[RUN] + i] < 0 else facts[facts[BOX_MIN] + i]
            )
            new[facts[AFTER] + i] = (
                times[facts[READY] + facts[facts[MEMBER] + i]] - tail + draw(chance, noise)
            )
        else:
            new[facts[AFTER] + i] = NEVER
    if not _refill(facts, now, times, new):
        return False
    for one in range(facts[SLOTS]):
        if new[facts[LOAD_WEIGHT] + one] == 0 and new[facts[LOAD_COUNT] + one] == 0:
            forget_load(facts, new, one)
    return True


def _choose_near(
    facts: Ints, now: Ints, times: Ints, new: Ints, family: int, wanted: int, minute: int
) -> int:
    """Mark the loads of a family that come out nearest to a minute."""
    for got in range(wanted):
        near, least = -1, NEVER
        for w in range(facts[WASHERS]):
            for k in range(now[facts[LOADS] + w]):
                one = now[facts[ORDER] + w * facts[SLOTS] + k]
                away = abs(times[facts[UNLOADING_AT] + one] - minute)
                if (
                    now[facts[LOAD_FAMILY] + one] == family
                    and new[facts[LOAD_WEIGHT] + one] < 0
                    and away < least
                ):
                    near, least = one, away
        if near < 0:
            return got
        new[facts[LOAD_WEIGHT] + near] = new[facts[LOAD_COUNT] + near] = 0
    return wanted


def _refill(facts: Ints, now: Ints, times: Ints, new: Ints) -> bool:
    """Put the most urgent first, each into the first load out that still takes it."""
    while True:
        item, least = -1, NEVER
        for i in range(facts[ITEMS]):
            if new[facts[AFTER] + i] < least:
                item, least = i, new[facts[AFTER] + i]
        if item < 0:
            return True
        new[facts[AFTER] + item] = NEVER
        goal, out = -1, NEVER
        for one in range(facts[SLOTS]):
            if new[facts[LOAD_WEIGHT] + one] < 0 or times[facts[UNLOADING_AT] + one] >= out:
                continue
            w = washer_of(facts, now, one)
            weight = new[facts[LOAD_WEIGHT] + one] + facts[facts[WEIGHT] + item]
            pieces = new[facts[LOAD_COUNT] + one] + facts[facts[COUNT] + item]
            suits = facts[facts[CAN] + item * facts[WASHERS] + w] == 1
            if suits and fits(facts, w, now[facts[LOAD_FAMILY] + one], weight, pieces):
                goal, out = one, times[facts[UNLOADING_AT] + one]
        if goal < 0:
            return False
        new[facts[LOAD] + item] = goal
        new[facts[LOAD_WEIGHT] + goal] += facts[facts[WEIGHT] + item]
        new[facts[LOAD_COUNT] + goal] += facts[facts[COUNT] + item]


def swap_members(facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints) -> bool:
    """Let the pieces of two members change places, as far as they are alike."""
    one = draw(chance, facts[MEMBERS])
    other = draw(chance, facts[MEMBERS])
    if one == other:
        return False
    changed = False
    for i in range(facts[ITEMS]):
        if facts[facts[MEMBER] + i] != one or now[facts[LOAD] + i] < 0:
            continue
        for j in range(facts[ITEMS]):
            untouched = (
                new[facts[LOAD] + j] == now[facts[LOAD] + j]
                and now[facts[LOAD] + j] != now[facts[LOAD] + i]
            )
            alike = (
                facts[facts[FAMILY] + i] == facts[facts[FAMILY] + j]
                and facts[facts[RACK_MIN] + i] == facts[facts[RACK_MIN] + j]
            )
            if (
                facts[facts[MEMBER] + j] == other
                and now[facts[LOAD] + j] >= 0
                and alike
                and untouched
            ):
                new[facts[LOAD] + i], new[facts[LOAD] + j] = (
                    now[facts[LOAD] + j],
                    now[facts[LOAD] + i],
                )
                new[facts[RUN] + i], new[facts[RUN] + j] = now[facts[RUN] + j], now[facts[RUN] + i]
                changed = True
                break
    new[facts[TARGET] + one], new[facts[TARGET] + other] = (
        now[facts[TARGET] + other],
        now[facts[TARGET] + one],
    )
    return changed and _still_fit(facts, new, one, other)


def _still_fit(facts: Ints, new: Ints, one: int, other: int) -> bool:
    """Say whether every load holds after a change, and every run still may dry what it has."""
    for k in range(facts[SLOTS]):
        new[facts[LOAD_WEIGHT] + k] = new[facts[LOAD_COUNT] + k] = 0
        new[facts[FIRST] + k] = 0
    for i in range(facts[ITEMS]):
        if new[facts[LOAD] + i] >= 0:
            new[facts[LOAD_WEIGHT] + new[facts[LOAD] + i]] += facts[facts[WEIGHT] + i]
            new[facts[LOAD_COUNT] + new[facts[LOAD] + i]] += facts[facts[COUNT] + i]
        if new[facts[RUN] + i] >= 0:
            new[facts[FIRST] + new[facts[RUN] + i]] += facts[facts[UNITS] + i]
            if facts[facts[MEMBER] + i] in (one, other) and facts[facts[BOX_MIN] + i] >= NEVER:
                return False
    for w in range(facts[WASHERS]):
        for k in range(new[facts[LOADS] + w]):
            load = new[facts[ORDER] + w * facts[SLOTS] + k]
            if not fits(
                facts,
                w,
                new[facts[LOAD_FAMILY] + load],
                new[facts[LOAD_WEIGHT] + load],
                new[facts[LOAD_COUNT] + load],
            ):
                return False
    for i in range(facts[ITEMS]):
        if facts[facts[MEMBER] + i] in (one, other) and new[facts[LOAD] + i] >= 0:
            if (
                facts[facts[CAN] + i * facts[WASHERS] + washer_of(facts, new, new[facts[LOAD] + i])]
                == 0
            ):
                return False
            if new[facts[RUN] + i] < 0 and facts[facts[UNITS] + i] > facts[RACK_UNITS]:
                return False
    for c in range(facts[BOXES]):
        for k in range(new[facts[RUNS] + c]):
            if (
                new[facts[FIRST] + new[facts[BOXED] + c * facts[SLOTS] + k]]
                > facts[facts[BOX_UNITS] + c]
            ):
                return False
    return True
