"""When does each step happen if the loads, the cabinet runs and the spares are decided?

An event simulation: unloading and loading come first, otherwise the task that has to start
soonest for its member's target. It always ends, because loads keep one order per washer and runs
one order per cabinet, and nothing that washes waits for anything that dries.
"""

from sootline.core.washplan.kernel.arrays import (  # isort: skip
    AFTER, BOXED, BOXES, BOX_FREE, BUSY, COVERED, DONE_AT, DRIED, DRIED_AT, DRUM, DRY_AT,
    DUE_DRY, DUE_INSPECT, DUE_WASH, ENDS, EVENTS, EVENT_HEAP, FAMILIES, FAMILY, FIRST, FREE,
    FREE_AT, FREE_FROM, HAND, HAND_AT, HAND_MIN, HUNG, INSIDE, INSPECT, INSPECTED, ITEMS,
    KIND, LAST, LEFT, LOAD, LOADED, LOADING, LOADING_AT, LOADS, LOAD_FAMILY, LOAD_MIN,
    LONGEST, MEMBER, MEMBERS, MINUTE, MISSING, NEVER, NEXT_LOAD, NEXT_RUN, OPENED_AT, ORDER,
    PREP, PREPARED, PRIORITY, PROG_END, RACK_BACK, RACK_BUSY, RACK_HEAP, RACK_MIN, READY,
    RELEASE, RELEASED, RUN, RUNNING, RUNS, RUN_MIN, SLOTS, SPARE, STATE, STATION, STATIONS,
    STATION_BACK, STATION_FREE, STATION_HEAP, SUMS, TASKS, TASK_HEAP, UNITS, UNITS_LEFT,
    UNLOADED, UNLOADING, UNLOADING_AT, UNLOAD_MIN, UNPREPARED, USED, WAITING, WASHED, WASHERS,
    WET, Ints,
)  # fmt: skip
from sootline.core.washplan.kernel.heap import drop, push
from sootline.core.washplan.kernel.opening import add, idle_after, open_room
from sootline.core.washplan.kernel.people import busy_end, may, start_best


def run_clock(facts: Ints, picks: Ints, room: Ints, times: Ints) -> int:
    """Run the room through one choice; 0 if helpers' hours end before the work does, else 1."""
    open_room(facts, picks, room, times)
    while room[LEFT] > 0 or room[USED] > 0:
        if room[EVENTS] == 0:
            return 0
        minute = room[facts[EVENT_HEAP]] >> 20
        while room[EVENTS] > 0 and room[facts[EVENT_HEAP]] >> 20 == minute:
            key = room[facts[EVENT_HEAP]]
            room[EVENTS] = drop(room, facts[EVENT_HEAP], room[EVENTS])
            _happen(facts, picks, room, times, minute, (key >> 16) & 15, key & 65535)
        busy_end(facts, room, minute)
        _start_runs(facts, picks, room, times, minute)
        _hang_up(facts, room, times, minute)
        _drums(facts, picks, room, times, minute)
        while start_best(facts, picks, room, times, minute):
            pass
    _sum(facts, picks, times)
    return 1


def _sum(facts: Ints, picks: Ints, times: Ints) -> None:
    for m in range(facts[MEMBERS]):
        times[facts[READY] + m] = facts[facts[RELEASE] + m]
    makespan = 0
    for i in range(facts[ITEMS]):
        m, done = facts[facts[MEMBER] + i], times[facts[DONE_AT] + i]
        makespan = max(makespan, done)
        if picks[facts[COVERED] + i] == 0 and done > times[facts[READY] + m]:
            times[facts[READY] + m] = done
    objective = 0
    for m in range(facts[MEMBERS]):
        objective += facts[facts[PRIORITY] + m] * times[facts[READY] + m]
    times[facts[SUMS]] = objective
    times[facts[SUMS] + 1] = makespan
    times[facts[SUMS] + 2] = 0
    for w in range(facts[WASHERS]):
        times[facts[SUMS] + 2] += picks[facts[LOADS] + w]


def _happen(
    facts: Ints, picks: Ints, room: Ints, times: Ints, minute: int, kind: int, one: int
) -> None:
    if kind == RELEASED and facts[facts[PREP] + one] > 0:
        key = room[facts[DUE_WASH] + one] * MINUTE + PREPARED * KIND + one
        room[TASKS] = push(room, facts[TASK_HEAP], room[TASKS], key)
    elif kind in (RELEASED, PREPARED):
        _prepared(facts, picks, room, times, one)
    elif kind == LOADED:
        room[facts[STATE] + one] = RUNNING
    elif kind == WASHED:
        room[facts[STATE] + one] = WAITING
        room[facts[PROG_END] + one] = NEVER
    elif kind == UNLOADED:
        _unloaded(facts, picks, room, times, minute, one)
    elif kind == WET:
        _wet(facts, picks, room, times, one)
    elif kind == DRIED:
        _dried(facts, picks, room, times, one)
    elif kind == INSPECTED:
        times[facts[DONE_AT] + one] = minute
        room[LEFT] -= 1
    elif kind == STATION_BACK:
        room[facts[STATION_FREE] + one] += 1
    elif kind == RACK_BACK:
        room[UNITS_LEFT] += facts[facts[RACK_BUSY] + one]


def _prepared(facts: Ints, picks: Ints, room: Ints, times: Ints, i: int) -> None:
    if facts[facts[FAMILY] + i] != HAND:
        room[facts[UNPREPARED] + picks[facts[LOAD] + i]] -= 1
    elif facts[facts[HAND_MIN] + i] == 0:
        _wet(facts, picks, room, times, i)
    else:
        s = facts[facts[STATION] + i]
        key = room[facts[DUE_WASH] + i] * MINUTE + i
        size = room[STATIONS + s]
        room[STATIONS + s] = push(room, facts[STATION_HEAP] + s * facts[ITEMS], size, key)


def _unloaded(facts: Ints, picks: Ints, room: Ints, times: Ints, minute: int, w: int) -> None:
    one = room[facts[INSIDE] + w]
    room[facts[STATE] + w] = FREE
    room[USED] -= 1
    if one >= 0:
        room[facts[LAST] + w] = picks[facts[LOAD_FAMILY] + one]
    room[facts[FREE_AT] + w] = max(
        facts[facts[FREE_FROM] + w], minute + idle_after(facts, picks, room, w)
    )
    add(facts, room, room[facts[FREE_AT] + w], 0, 0)
    if one >= 0:
        i = picks[facts[FIRST] + one]
        while i >= 0:
            _wet(facts, picks, room, times, i)
            i = picks[facts[AFTER] + i]
    else:
        for i in range(facts[ITEMS]):
            if facts[facts[DRUM] + i] == w:
                _wet(facts, picks, room, times, i)


def _wet(facts: Ints, picks: Ints, room: Ints, times: Ints, i: int) -> None:
    if facts[facts[FAMILY] + i] == HAND and times[facts[HAND_AT] + i] >= 0:
        room[facts[STATION_FREE] + facts[facts[STATION] + i]] += 1
    if picks[facts[RUN] + i] >= 0:
        room[facts[MISSING] + picks[facts[RUN] + i]] -= 1
    else:
        key = room[facts[DUE_DRY] + i] * MINUTE + i
        room[HUNG] = push(room, facts[RACK_HEAP], room[HUNG], key)


def _dried(facts: Ints, picks: Ints, room: Ints, times: Ints, i: int) -> None:
    if times[facts[DRY_AT] + i] >= 0 and picks[facts[RUN] + i] < 0:
        room[UNITS_LEFT] += facts[facts[UNITS] + i]
    if facts[facts[INSPECT] + i] == 0:
        times[facts[DONE_AT] + i] = times[facts[DRIED_AT] + i]
        room[LEFT] -= 1
    else:
        key = room[facts[DUE_INSPECT] + i] * MINUTE + INSPECTED * KIND + i
        room[TASKS] = push(room, facts[TASK_HEAP], room[TASKS], key)


def _start_runs(facts: Ints, picks: Ints, room: Ints, times: Ints, minute: int) -> None:
    for c in range(facts[BOXES]):
        k = room[facts[NEXT_RUN] + c]
        if k >= picks[facts[RUNS] + c] or room[facts[BOX_FREE] + c] > minute:
            continue
        run = picks[facts[BOXED] + c * facts[SLOTS] + k]
        if room[facts[MISSING] + run] > 0:
            continue
        end = minute + room[facts[LONGEST] + run]
        room[facts[NEXT_RUN] + c] += 1
        room[facts[BOX_FREE] + c] = end
        add(facts, room, end, 0, 0)
        for i in range(facts[ITEMS]):
            if picks[facts[RUN] + i] == run:
                times[facts[DRY_AT] + i] = minute
                times[facts[DRIED_AT] + i] = end
                add(facts, room, end, DRIED, i)


def _hang_up(facts: Ints, room: Ints, times: Ints, minute: int) -> None:
    """Hang what fits; something small may pass what does not fit yet, but the look is short."""
    skipped = 0
    while room[HUNG] > 0 and skipped < 4:
        key = room[facts[RACK_HEAP]]
        i = key & 65535
        room[HUNG] = drop(room, facts[RACK_HEAP], room[HUNG])
        if facts[facts[UNITS] + i] <= room[UNITS_LEFT]:
            room[UNITS_LEFT] -= facts[facts[UNITS] + i]
            times[facts[DRY_AT] + i] = minute
            times[facts[DRIED_AT] + i] = minute + facts[facts[RACK_MIN] + i]
            add(facts, room, times[facts[DRIED_AT] + i], DRIED, i)
        else:
            room[facts[SPARE] + skipped] = key
            skipped += 1
    for k in range(skipped):
        room[HUNG] = push(room, facts[RACK_HEAP], room[HUNG], room[facts[SPARE] + k])


def _drums(facts: Ints, picks: Ints, room: Ints, times: Ints, minute: int) -> None:
    for w in range(facts[WASHERS]):
        if room[facts[STATE] + w] == WAITING:
            _unload(facts, room, times, minute, w)
    for w in range(facts[WASHERS]):
        if room[facts[STATE] + w] == FREE and minute >= room[facts[FREE_AT] + w]:
            _load(facts, picks, room, times, minute, w)


def _unload(facts: Ints, room: Ints, times: Ints, minute: int, w: int) -> None:
    if facts[UNLOAD_MIN] > 0 and may(facts, room, minute, facts[UNLOAD_MIN]) == 0:
        return
    room[facts[STATE] + w] = UNLOADING
    if room[facts[INSIDE] + w] >= 0:
        times[facts[UNLOADING_AT] + room[facts[INSIDE] + w]] = minute
    else:
        times[facts[OPENED_AT] + w] = minute
    _occupy(facts, room, minute, facts[UNLOAD_MIN])
    add(facts, room, minute + facts[UNLOAD_MIN], UNLOADED, w)


def _load(facts: Ints, picks: Ints, room: Ints, times: Ints, minute: int, w: int) -> None:
    k = room[facts[NEXT_LOAD] + w]
    if k >= picks[facts[LOADS] + w]:
        return
    one = picks[facts[ORDER] + w * facts[SLOTS] + k]
    if room[facts[UNPREPARED] + one] > 0:
        return
    if facts[LOAD_MIN] > 0 and may(facts, room, minute, facts[LOAD_MIN]) == 0:
        return
    room[facts[NEXT_LOAD] + w] += 1
    room[facts[INSIDE] + w] = one
    times[facts[LOADING_AT] + one] = minute
    start = minute + facts[LOAD_MIN]
    end = start + facts[facts[RUN_MIN] + w * facts[FAMILIES] + picks[facts[LOAD_FAMILY] + one]]
    room[facts[STATE] + w] = LOADING
    room[USED] += 1
    room[facts[PROG_END] + w] = end
    _occupy(facts, room, minute, facts[LOAD_MIN])
    add(facts, room, start, LOADED, w)
    add(facts, room, end, WASHED, w)


def _occupy(facts: Ints, room: Ints, minute: int, minutes: int) -> None:
    if minutes > 0:
        room[facts[ENDS] + room[BUSY]] = minute + minutes
        room[BUSY] += 1
