"""Which numbers does the kernel work on, and where do they stand?

Four flat sequences of whole numbers: the facts of a shop, the picks of one choice, its times, and
the room, which is used again for every run of the clock. The facts begin with a head: single
numbers, and for every section of any of the four where it begins. So `times[facts[DONE_AT] + i]`
is when item i is inspected. Where two indices meet, the first is the slow one.
"""

from enum import IntEnum

Ints = list[int]
HAND = -1
NEVER = 10**9
# Kinds of events; at one minute all are handled before anything is started.
WAKE, RELEASED, PREPARED, LOADED, WASHED, UNLOADED = range(6)
WET, DRIED, INSPECTED, STATION_BACK, RACK_BACK = range(6, 11)
# What a washer does.
FREE, LOADING, RUNNING, WAITING, UNLOADING = range(5)
# A key is a minute, a kind and a number in one.
MINUTE, KIND = 1 << 20, 1 << 16
SOONEST, DEADLINE, ALL_DONE = range(3)

# The head: single numbers.
(
    NOW, LOAD_MIN, UNLOAD_MIN, RACK_UNITS, ITEMS, WASHERS, FAMILIES, SLOTS, MEMBERS,
    STATION_COUNT, BOXES, EDGES, HELPERS_BUSY, STATIONS_BUSY, RACKS_BUSY,
) = range(15)  # fmt: skip
# Facts per item, and per item and washer.
(
    MEMBER, FAMILY, WEIGHT, COUNT, PREP, INSPECT, STATION, HAND_MIN, UNITS, RACK_MIN, BOX_MIN,
    EARLY, STAGE, SINCE, DRUM, KIND_OF, GIVEN, CAN,
) = range(15, 33)  # fmt: skip
# Facts per washer and family, per family before (first: none) and after, per family.
CAP, RUN_MIN, MOST, IDLE, LATE = range(33, 38)
# Facts per washer; the end of a programme that runs at the start is -1 for none.
FREE_FROM, LAST_FAMILY, OPEN_END, EMPTIED = range(38, 42)
# Facts per member, station, cabinet, change of the head count, and what is busy at the start.
PRIORITY, RELEASE, STATION_PLACES, BOX_UNITS, BOX_FREE_FROM, EDGE, HEADS = range(42, 49)
BUSY_END, STATION_BUSY, STATION_END, RACK_BUSY, RACK_END = range(49, 54)
# Picks: per item the load and the cabinet run (-1: none) and the next item of its load; per load
# family, first item, weight, pieces; per washer and place a load, per washer how many; likewise
# for cabinets; per item whether a spare covers it, per member the target, and the one guard.
(
    LOAD, RUN, AFTER, LOAD_FAMILY, FIRST, LOAD_WEIGHT, LOAD_COUNT, ORDER, LOADS, BOXED, RUNS,
    COVERED, TARGET, GUARD,
) = range(54, 68)  # fmt: skip
# Times: per item (-1: not planned), per load, per washer, per member; objective, makespan, loads.
(
    PREP_AT, HAND_AT, DRY_AT, DRIED_AT, INSPECT_AT, DONE_AT, LOADING_AT, UNLOADING_AT, OPENED_AT,
    READY, SUMS,
) = range(68, 79)  # fmt: skip
# The room: heaps, whose helpers are busy until when, when steps are due, what is missing.
(
    EVENT_HEAP, TASK_HEAP, RACK_HEAP, STATION_HEAP, ENDS, DUE_INSPECT, DUE_DRY, DUE_WASH,
    UNPREPARED, MISSING, LONGEST, STATE, FREE_AT, NEXT_LOAD, LAST, INSIDE, PROG_END, NEXT_RUN,
    BOX_FREE, STATION_FREE, SPARE,
) = range(79, 100)  # fmt: skip
HEAD = 100
# The room begins with sizes: of the heaps, how many helpers are busy, items and rack units left,
# washers in use, and from STATIONS on the stations' heaps.
EVENTS, TASKS, HUNG, BUSY, LEFT, UNITS_LEFT, USED, STATIONS = range(8)


class Part(IntEnum):
    """Which of the four sequences a section is in."""

    FACTS = 0
    PICKS = 1
    TIMES = 2
    ROOM = 3


def part_of(section: int) -> Part:
    """Say which sequence a section is in."""
    if section < LOAD:
        return Part.FACTS
    if section < PREP_AT:
        return Part.PICKS
    return Part.TIMES if section < EVENT_HEAP else Part.ROOM
