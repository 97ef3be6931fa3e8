"""Which task does a free helper take up next?"""

from sootline.core.washplan.kernel.arrays import (  # isort: skip
    BUSY, EDGE, EDGES, ENDS, GUARD, HAND_AT, HAND_MIN, HEADS, INSPECT, INSPECT_AT, ITEMS,
    MINUTE, NEVER, PREP, PREPARED, PREP_AT, PROG_END, STATIONS, STATION_COUNT, STATION_FREE,
    STATION_HEAP, TASKS, TASK_HEAP, WASHERS, WET, Ints,
)  # fmt: skip
from sootline.core.washplan.kernel.heap import drop
from sootline.core.washplan.kernel.opening import add


def busy_end(facts: Ints, room: Ints, minute: int) -> None:
    """Let helpers go whose task is over."""
    k = 0
    while k < room[BUSY]:
        if room[facts[ENDS] + k] <= minute:
            room[BUSY] -= 1
            room[facts[ENDS] + k] = room[facts[ENDS] + room[BUSY]]
        else:
            k += 1


def _edge(facts: Ints, minute: int) -> int:
    """Return the last moment of change at or before a minute, -1 before the first."""
    low, high = -1, facts[EDGES]
    while high - low > 1:
        middle = (low + high) >> 1
        if facts[facts[EDGE] + middle] <= minute:
            low = middle
        else:
            high = middle
    return low


def may(facts: Ints, room: Ints, minute: int, minutes: int) -> int:
    """Say whether a helper is free now and for the whole task: 1 or 0."""
    edge = _edge(facts, minute)
    if edge < 0 or room[BUSY] >= facts[facts[HEADS] + edge]:
        return 0
    # Whenever the head count changes during the task, those still busy and this one count.
    edge += 1
    while edge < facts[EDGES] and facts[facts[EDGE] + edge] < minute + minutes:
        if _busy_after(facts, room, facts[facts[EDGE] + edge]) >= facts[facts[HEADS] + edge]:
            return 0
        edge += 1
    return 1


def _busy_after(facts: Ints, room: Ints, minute: int) -> int:
    busy = 0
    for k in range(room[BUSY]):
        if room[facts[ENDS] + k] > minute:
            busy += 1
    return busy


def _drum_comes_first(facts: Ints, room: Ints, minute: int, minutes: int) -> bool:
    """Say whether a drum ends within the task and would find nobody to empty it."""
    comes = NEVER
    for w in range(facts[WASHERS]):
        comes = min(comes, room[facts[PROG_END] + w])
    if not minute < comes < minute + minutes:
        return False
    return _busy_after(facts, room, comes) + 1 >= facts[facts[HEADS] + _edge(facts, minute)]


def start_best(facts: Ints, picks: Ints, room: Ints, times: Ints, minute: int) -> bool:
    """Start the most urgent task that may start; False if none may."""
    if may(facts, room, minute, 1) == 0:
        return False
    key, queue = NEVER * MINUTE, -2
    if room[TASKS] > 0:
        key, queue = room[facts[TASK_HEAP]], -1
    for s in range(facts[STATION_COUNT]):
        if room[STATIONS + s] > 0 and room[facts[STATION_FREE] + s] > 0:
            waiting = room[facts[STATION_HEAP] + s * facts[ITEMS]]
            if queue == -2 or waiting >> 20 < key >> 20:
                key, queue = waiting, s
    if queue == -2:
        return False
    i = key & 65535
    kind = WET if queue >= 0 else (key >> 16) & 15
    if kind == WET:
        minutes = facts[facts[HAND_MIN] + i]
    elif kind == PREPARED:
        minutes = facts[facts[PREP] + i]
    else:
        minutes = facts[facts[INSPECT] + i]
    if may(facts, room, minute, minutes) == 0:
        return False
    if picks[facts[GUARD]] == 1 and _drum_comes_first(facts, room, minute, minutes):
        return False
    if kind == WET:
        size = room[STATIONS + queue]
        room[STATIONS + queue] = drop(room, facts[STATION_HEAP] + queue * facts[ITEMS], size)
        room[facts[STATION_FREE] + queue] -= 1
        times[facts[HAND_AT] + i] = minute
    else:
        room[TASKS] = drop(room, facts[TASK_HEAP], room[TASKS])
        if kind == PREPARED:
            times[facts[PREP_AT] + i] = minute
        else:
            times[facts[INSPECT_AT] + i] = minute
    room[facts[ENDS] + room[BUSY]] = minute + minutes
    room[BUSY] += 1
    add(facts, room, minute + minutes, kind, i)
    return True
