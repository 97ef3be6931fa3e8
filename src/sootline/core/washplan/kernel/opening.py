"""How does the wash room look when the clock starts, and when is every step due?"""

from sootline.core.washplan.kernel.arrays import (  # isort: skip
    AFTER, BOXES, BOX_FREE, BOX_FREE_FROM, BOX_MIN, BUSY, BUSY_END, COUNT, COVERED, DONE_AT,
    DRIED, DRIED_AT, DRY_AT, DUE_DRY, DUE_INSPECT, DUE_WASH, EARLY, EDGE, EDGES, EMPTIED,
    ENDS, EVENTS, EVENT_HEAP, FAMILIES, FIRST, FREE, FREE_AT, FREE_FROM, HAND_AT, HAND_MIN,
    HELPERS_BUSY, HUNG, IDLE, INSIDE, INSPECT, INSPECT_AT, ITEMS, KIND, LAST, LAST_FAMILY,
    LEFT, LOAD, LOADS, LOAD_COUNT, LOAD_FAMILY, LOAD_MIN, LOAD_WEIGHT, LONGEST, MEMBER,
    MEMBERS, MINUTE, MISSING, NEVER, NEXT_LOAD, NEXT_RUN, NOW, OPENED_AT, OPEN_END, ORDER,
    PREPARED, PREP_AT, PROG_END, RACKS_BUSY, RACK_BACK, RACK_BUSY, RACK_END, RACK_MIN,
    RACK_UNITS, RELEASED, RUN, RUNNING, RUN_MIN, SINCE, SLOTS, STAGE, STATE, STATIONS,
    STATIONS_BUSY, STATION_BACK, STATION_BUSY, STATION_COUNT, STATION_END, STATION_FREE,
    STATION_PLACES, TARGET, TASKS, UNITS_LEFT, UNLOAD_MIN, UNPREPARED, USED, WAKE, WASHED,
    WASHERS, WEIGHT, WET, Ints,
)  # fmt: skip
from sootline.core.washplan.kernel.heap import push


def add(facts: Ints, room: Ints, minute: int, kind: int, one: int) -> None:
    """Note that something happens at a minute."""
    key = minute * MINUTE + kind * KIND + one
    room[EVENTS] = push(room, facts[EVENT_HEAP], room[EVENTS], key)


def open_room(facts: Ints, picks: Ints, room: Ints, times: Ints) -> None:
    """Set everything to the start."""
    room[EVENTS] = room[TASKS] = room[HUNG] = room[BUSY] = room[USED] = 0
    room[LEFT] = facts[ITEMS]
    room[UNITS_LEFT] = facts[RACK_UNITS]
    link(facts, picks, room)
    _people_and_places(facts, room)
    _dues(facts, picks, room)
    _drums(facts, picks, room, times)
    _items(facts, room, times)


def link(facts: Ints, picks: Ints, room: Ints) -> None:
    """Collect each load's items, weight and pieces, and what each run waits for."""
    for one in range(facts[SLOTS]):
        picks[facts[FIRST] + one] = -1
        picks[facts[LOAD_WEIGHT] + one] = 0
        picks[facts[LOAD_COUNT] + one] = 0
        room[facts[UNPREPARED] + one] = 0
        room[facts[MISSING] + one] = 0
        room[facts[LONGEST] + one] = 0
    for back in range(facts[ITEMS]):
        i = facts[ITEMS] - 1 - back
        one = picks[facts[LOAD] + i]
        if one >= 0:
            picks[facts[AFTER] + i] = picks[facts[FIRST] + one]
            picks[facts[FIRST] + one] = i
            picks[facts[LOAD_WEIGHT] + one] += facts[facts[WEIGHT] + i]
            picks[facts[LOAD_COUNT] + one] += facts[facts[COUNT] + i]
            room[facts[UNPREPARED] + one] += 1
        run = picks[facts[RUN] + i]
        if run >= 0:
            room[facts[MISSING] + run] += 1
            room[facts[LONGEST] + run] = max(room[facts[LONGEST] + run], facts[facts[BOX_MIN] + i])


def _people_and_places(facts: Ints, room: Ints) -> None:
    for k in range(facts[HELPERS_BUSY]):
        end = facts[facts[BUSY_END] + k]
        room[facts[ENDS] + room[BUSY]] = end
        room[BUSY] += 1
        add(facts, room, end, WAKE, 0)
    for k in range(facts[EDGES]):
        edge = facts[facts[EDGE] + k]
        if edge > facts[NOW]:
            add(facts, room, edge, WAKE, 0)
    for s in range(facts[STATION_COUNT]):
        room[STATIONS + s] = 0
        room[facts[STATION_FREE] + s] = facts[facts[STATION_PLACES] + s]
    for k in range(facts[STATIONS_BUSY]):
        room[facts[STATION_FREE] + facts[facts[STATION_BUSY] + k]] -= 1
        add(
            facts, room, facts[facts[STATION_END] + k], STATION_BACK, facts[facts[STATION_BUSY] + k]
        )
    for k in range(facts[RACKS_BUSY]):
        room[UNITS_LEFT] -= facts[facts[RACK_BUSY] + k]
        add(facts, room, facts[facts[RACK_END] + k], RACK_BACK, k)
    for c in range(facts[BOXES]):
        room[facts[NEXT_RUN] + c] = 0
        room[facts[BOX_FREE] + c] = facts[facts[BOX_FREE_FROM] + c]
        add(facts, room, facts[facts[BOX_FREE_FROM] + c], WAKE, 0)


def _dues(facts: Ints, picks: Ints, room: Ints) -> None:
    """Work back from the targets to the latest start of every step."""
    last = 0
    for m in range(facts[MEMBERS]):
        last = max(last, picks[facts[TARGET] + m])
    for i in range(facts[ITEMS]):
        due = last if picks[facts[COVERED] + i] else picks[facts[TARGET] + facts[facts[MEMBER] + i]]
        due -= facts[facts[INSPECT] + i]
        room[facts[DUE_INSPECT] + i] = due
        due -= (
            facts[facts[RACK_MIN] + i] if picks[facts[RUN] + i] < 0 else facts[facts[BOX_MIN] + i]
        )
        room[facts[DUE_DRY] + i] = due
        room[facts[DUE_WASH] + i] = due - facts[facts[HAND_MIN] + i]
    for w in range(facts[WASHERS]):
        due = NEVER
        for k in range(picks[facts[LOADS] + w] - 1, -1, -1):
            one = picks[facts[ORDER] + w * facts[SLOTS] + k]
            i = picks[facts[FIRST] + one]
            while i >= 0:
                due = min(due, room[facts[DUE_DRY] + i])
                i = picks[facts[AFTER] + i]
            run = facts[facts[RUN_MIN] + w * facts[FAMILIES] + picks[facts[LOAD_FAMILY] + one]]
            due -= run + facts[LOAD_MIN] + facts[UNLOAD_MIN]
            i = picks[facts[FIRST] + one]
            while i >= 0:
                room[facts[DUE_WASH] + i] = due
                i = picks[facts[AFTER] + i]


def idle_after(facts: Ints, picks: Ints, room: Ints, w: int) -> int:
    """Return the changeover minutes from the washer's last load to its next."""
    k = room[facts[NEXT_LOAD] + w]
    if k >= picks[facts[LOADS] + w]:
        return 0
    family = picks[facts[LOAD_FAMILY] + picks[facts[ORDER] + w * facts[SLOTS] + k]]
    return facts[facts[IDLE] + (room[facts[LAST] + w] + 1) * facts[FAMILIES] + family]


def _drums(facts: Ints, picks: Ints, room: Ints, times: Ints) -> None:
    for w in range(facts[WASHERS]):
        room[facts[STATE] + w] = FREE
        room[facts[NEXT_LOAD] + w] = 0
        room[facts[LAST] + w] = facts[facts[LAST_FAMILY] + w]
        room[facts[INSIDE] + w] = -1
        room[facts[PROG_END] + w] = NEVER
        room[facts[FREE_AT] + w] = facts[facts[FREE_FROM] + w]
        times[facts[OPENED_AT] + w] = -1
        if facts[facts[OPEN_END] + w] >= 0:
            room[facts[STATE] + w] = RUNNING
            room[USED] += 1
            room[facts[PROG_END] + w] = facts[facts[OPEN_END] + w]
            add(facts, room, max(facts[NOW], facts[facts[OPEN_END] + w]), WASHED, w)
        else:
            ready = facts[facts[EMPTIED] + w] + idle_after(facts, picks, room, w)
            room[facts[FREE_AT] + w] = max(facts[facts[FREE_FROM] + w], ready)
            add(facts, room, room[facts[FREE_AT] + w], WAKE, 0)


def _items(facts: Ints, room: Ints, times: Ints) -> None:
    for i in range(facts[ITEMS]):
        times[facts[PREP_AT] + i] = times[facts[HAND_AT] + i] = times[facts[DRY_AT] + i] = times[
            facts[DRIED_AT] + i
        ] = -1
        times[facts[INSPECT_AT] + i] = times[facts[DONE_AT] + i] = -1
        stage = facts[facts[STAGE] + i]
        at = max(facts[NOW], facts[facts[SINCE] + i])
        if stage == 0:
            add(facts, room, facts[facts[EARLY] + i], RELEASED, i)
        elif stage == 1:
            add(facts, room, max(at, facts[facts[EARLY] + i]), PREPARED, i)
        elif stage == 3:
            add(facts, room, at, WET, i)
        elif stage == 4:
            times[facts[DRIED_AT] + i] = facts[facts[SINCE] + i]
            add(facts, room, at, DRIED, i)
        elif stage == 5:
            times[facts[DONE_AT] + i] = facts[facts[SINCE] + i]
            room[LEFT] -= 1
