"""Which loads lie next to these? Random changes of what is washed with what, and when."""

from sootline.core.washplan.kernel.arrays import (  # isort: skip
    AFTER, BOX_MIN, CAN, COUNT, COVERED, DONE_AT, FIRST, ITEMS, LOAD, LOADS, LOAD_COUNT,
    LOAD_FAMILY, LOAD_WEIGHT, MEMBER, MEMBERS, ORDER, RACK_MIN, READY, SLOTS, UNLOADING_AT,
    WASHERS, WEIGHT, Ints,
)  # fmt: skip
from sootline.core.washplan.kernel.drawing import draw
from sootline.core.washplan.kernel.editing import (
    all_suit,
    draw_spot,
    fits,
    forget_load,
    late_last,
    put_in,
    take_out,
    unused_load,
    washer_of,
)


def hurry(facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints) -> bool:
    """Bring a piece its member waits for into an earlier drum, in place of one with time."""
    member = draw(chance, facts[MEMBERS])
    item, found = -1, 0
    for i in range(facts[ITEMS]):
        late = times[facts[DONE_AT] + i] >= times[facts[READY] + member] - 5
        if (
            facts[facts[MEMBER] + i] == member
            and now[facts[LOAD] + i] >= 0
            and now[facts[COVERED] + i] == 0
            and late
        ):
            found += 1
            if draw(chance, found) == 0:
                item = i
    if item < 0:
        return False
    return _into_another(
        facts, now, times, new, chance, item, times[facts[UNLOADING_AT] + now[facts[LOAD] + item]]
    )


def exchange(facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints) -> bool:
    """Move one item into any other load of its family, or exchange it for what it displaces."""
    spot = draw_spot(facts, now, chance)
    if spot < 0:
        return False
    item, found = -1, 0
    i = now[facts[FIRST] + now[facts[ORDER] + spot]]
    while i >= 0:
        found += 1
        if draw(chance, found) == 0:
            item = i
        i = now[facts[AFTER] + i]
    return _into_another(facts, now, times, new, chance, item, -1)


def _into_another(
    facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints, item: int, before: int
) -> bool:
    """Draw another load of the item's family, unloaded before a minute unless that is -1."""
    source, goal, found, washer = now[facts[LOAD] + item], -1, 0, 0
    for w in range(facts[WASHERS]):
        if facts[facts[CAN] + item * facts[WASHERS] + w] == 0:
            continue
        for k in range(now[facts[LOADS] + w]):
            one = now[facts[ORDER] + w * facts[SLOTS] + k]
            if one == source or now[facts[LOAD_FAMILY] + one] != now[facts[LOAD_FAMILY] + source]:
                continue
            if before >= 0 and times[facts[UNLOADING_AT] + one] >= before:
                continue
            found += 1
            if draw(chance, found) == 0:
                goal, washer = one, w
    if goal < 0:
        return False
    return _trade(facts, now, times, new, chance, item, goal, washer)


def _trade(
    facts: Ints, now: Ints, times: Ints, new: Ints, chance: Ints, item: int, goal: int, w: int
) -> bool:
    """Move an item into a load; what no longer fits there goes back the other way."""
    source, family = now[facts[LOAD] + item], now[facts[LOAD_FAMILY] + goal]
    home = washer_of(facts, now, source)
    weight, pieces = (
        now[facts[LOAD_WEIGHT] + goal] + facts[facts[WEIGHT] + item],
        now[facts[LOAD_COUNT] + goal] + facts[facts[COUNT] + item],
    )
    back, back_pieces = (
        now[facts[LOAD_WEIGHT] + source] - facts[facts[WEIGHT] + item],
        now[facts[LOAD_COUNT] + source],
    )
    back_pieces -= facts[facts[COUNT] + item]
    new[facts[LOAD] + item] = goal
    while not fits(facts, w, family, weight, pieces):
        giving, least = -1, 0
        i = now[facts[FIRST] + goal]
        while i >= 0:
            if new[facts[LOAD] + i] == goal and facts[facts[CAN] + i * facts[WASHERS] + home] == 1:
                slack = (
                    times[facts[DONE_AT] + i]
                    - times[facts[READY] + facts[facts[MEMBER] + i]]
                    + draw(chance, 60)
                )
                if giving < 0 or slack < least:
                    giving, least = i, slack
            i = now[facts[AFTER] + i]
        if giving < 0:
            return False
        new[facts[LOAD] + giving] = source
        weight -= facts[facts[WEIGHT] + giving]
        pieces -= facts[facts[COUNT] + giving]
        back += facts[facts[WEIGHT] + giving]
        back_pieces += facts[facts[COUNT] + giving]
    if back_pieces == 0:
        forget_load(facts, new, source)
        return True
    return fits(facts, home, family, back, back_pieces)


def shift_load(facts: Ints, now: Ints, new: Ints, chance: Ints) -> bool:
    """Take one load elsewhere, most often near, sometimes to another washer."""
    spot = draw_spot(facts, now, chance)
    if spot < 0:
        return False
    w, one = spot // facts[SLOTS], now[facts[ORDER] + spot]
    k = spot - w * facts[SLOTS]
    to = w if draw(chance, 10) < 7 else draw(chance, facts[WASHERS])
    if to != w and not all_suit(facts, now, one, to):
        return False
    take_out(facts, new, spot)
    if to == w:
        step = 1 + draw(chance, 3)
        k += step if draw(chance, 2) == 0 else -step
        k = max(0, min(new[facts[LOADS] + w], k))
    else:
        k = draw(chance, new[facts[LOADS] + to] + 1)
    put_in(facts, new, to * facts[SLOTS] + k, one)
    late_last(facts, new)
    return True


def split(facts: Ints, now: Ints, new: Ints, chance: Ints) -> bool:
    """Make two loads of one: by drying minutes, or anywhere."""
    spot = draw_spot(facts, now, chance)
    if spot < 0:
        return False
    one, longest, inside = now[facts[ORDER] + spot], 0, 0
    i = now[facts[FIRST] + one]
    while i >= 0:
        longest = max(longest, min(facts[facts[RACK_MIN] + i], facts[facts[BOX_MIN] + i]))
        inside += 1
        i = now[facts[AFTER] + i]
    if inside < 2:
        return False
    other, moved, by_time = unused_load(facts, new), 0, draw(chance, 10) >= 3
    i = now[facts[FIRST] + one]
    while i >= 0:
        shorter = min(facts[facts[RACK_MIN] + i], facts[facts[BOX_MIN] + i]) < longest
        if (shorter if by_time else draw(chance, 2) == 0) and moved < inside - 1:
            new[facts[LOAD] + i] = other
            moved += 1
        i = now[facts[AFTER] + i]
    if moved == 0:
        return False
    new[facts[LOAD_FAMILY] + other] = now[facts[LOAD_FAMILY] + one]
    w = spot // facts[SLOTS]
    k = spot - w * facts[SLOTS]
    put_in(facts, new, w * facts[SLOTS] + k + draw(chance, new[facts[LOADS] + w] + 1 - k), other)
    late_last(facts, new)
    return True


def merge(facts: Ints, now: Ints, new: Ints, chance: Ints) -> bool:
    """Wash two loads of one family as one."""
    spot = draw_spot(facts, now, chance)
    if spot < 0:
        return False
    one, goal, found = now[facts[ORDER] + spot], -1, 0
    for w in range(facts[WASHERS]):
        for k in range(now[facts[LOADS] + w]):
            other = now[facts[ORDER] + w * facts[SLOTS] + k]
            if other == one or now[facts[LOAD_FAMILY] + other] != now[facts[LOAD_FAMILY] + one]:
                continue
            weight = now[facts[LOAD_WEIGHT] + one] + now[facts[LOAD_WEIGHT] + other]
            pieces = now[facts[LOAD_COUNT] + one] + now[facts[LOAD_COUNT] + other]
            if fits(facts, w, now[facts[LOAD_FAMILY] + one], weight, pieces) and all_suit(
                facts, now, one, w
            ):
                found += 1
                if draw(chance, found) == 0:
                    goal = other
    if goal < 0:
        return False
    i = now[facts[FIRST] + one]
    while i >= 0:
        new[facts[LOAD] + i] = goal
        i = now[facts[AFTER] + i]
    forget_load(facts, new, one)
    return True
