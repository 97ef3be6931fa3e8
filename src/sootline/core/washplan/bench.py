"""How do a shop and its choices become the kernel's arrays, and back?"""

from collections.abc import Iterable, Sequence
from functools import cached_property

from sootline.core.washplan.choice import Choice
from sootline.core.washplan.engine import Engine
from sootline.core.washplan.kernel import arrays as at
from sootline.core.washplan.kernel.arrays import HEAD, Ints, Part, part_of
from sootline.core.washplan.shop import Shop, busy_after, cabinet_free


class Bench:
    """One shop with its arrays; choices of this shop can be run here.

    Args:
        engine: runs the kernel.
    """

    def __init__(self, shop: Shop, engine: Engine) -> None:
        self.shop = shop
        self.engine = engine
        self._sections = {**_item_facts(shop), **_place_facts(shop), **_blanks(shop)}
        self._starts = {at.EVENT_HEAP - 1: 0}
        ends = {Part.FACTS: HEAD, Part.PICKS: 0, Part.TIMES: 0, Part.ROOM: 7 + len(shop.stations)}
        for section, numbers in sorted(self._sections.items()):
            self._starts[section] = ends[part_of(section)]
            ends[part_of(section)] += len(numbers)
        self.facts = engine.ints(self._flat(Part.FACTS))
        self.room = engine.ints([0] * ends[Part.ROOM])

    def _flat(self, part: Part) -> list[int]:
        head = [0] * HEAD if part is Part.FACTS else []
        if part is Part.FACTS:
            head[: at.MEMBER] = _numbers(self.shop)
            head[at.MEMBER :] = [self._starts[section] for section in range(at.MEMBER, HEAD)]
        of_part = (one for one in sorted(self._sections) if part_of(one) is part)
        return [*head, *(number for one in of_part for number in self._sections[one])]

    def times(self) -> Ints:
        """Return a timetable to be filled in."""
        return self.engine.ints(self._flat(Part.TIMES))

    def section(self, numbers: Ints, section: int) -> list[int]:
        """Return one section of some choice's picks or times."""
        start = self._starts[section]
        return [int(one) for one in numbers[start : start + len(self._sections[section])]]

    def picks(self, choice: Choice) -> Ints:
        """Return a choice in an array."""
        new = {one: list(self._sections[one]) for one in range(at.LOAD, at.PREP_AT)}
        slots = len(new[at.FIRST])
        _fill(choice.loads, slots, new[at.LOAD], new[at.ORDER], new[at.LOADS], new[at.LOAD_FAMILY])
        runs = [[(0, one) for one in mine] for mine in choice.runs]
        _fill(runs, slots, new[at.RUN], new[at.BOXED], new[at.RUNS], [0] * slots)
        new[at.COVERED] = [int(i in choice.covered) for i in range(len(new[at.COVERED]))]
        new[at.TARGET], new[at.GUARD] = list(choice.target), [int(choice.reserve)]
        return self.engine.ints(number for one in sorted(new) for number in new[one])

    def choice(self, picks: Ints) -> Choice:
        """Read an array back as a choice."""
        family = self.section(picks, at.LOAD_FAMILY)
        drums = self._listed(picks, at.LOAD, at.ORDER, at.LOADS)
        boxes = self._listed(picks, at.RUN, at.BOXED, at.RUNS)
        covered = self.section(picks, at.COVERED)
        return Choice(
            loads=tuple(tuple((family[one], items) for one, items in mine) for mine in drums),
            runs=tuple(tuple(items for _, items in mine) for mine in boxes),
            covered=frozenset(i for i, given in enumerate(covered) if given),
            target=tuple(self.section(picks, at.TARGET)),
            reserve=bool(self.section(picks, at.GUARD)[0]),
        )

    def _listed(
        self, picks: Ints, of_item: int, order: int, count: int
    ) -> list[list[tuple[int, tuple[int, ...]]]]:
        """List, per washer or cabinet, the loads or runs in order with what is in them."""
        inside: dict[int, list[int]] = {}
        for i, one in enumerate(self.section(picks, of_item)):
            inside.setdefault(one, []).append(i)
        numbers, slots = self.section(picks, order), len(self._sections[at.FIRST])
        return [
            [(one, tuple(inside[one])) for one in numbers[k * slots : k * slots + many]]
            for k, many in enumerate(self.section(picks, count))
        ]

    @cached_property
    def steps(self) -> int:
        """How many steps of annealing lie between two looks at the clock."""
        return max(1, self.engine.steps // max(1, len(self.shop.items)))


def _fill(  # noqa: PLR0917 - five sections of one array
    groups: Iterable[Iterable[tuple[int, tuple[int, ...]]]], slots: int, of_item: list[int],
    order: list[int], counts: list[int], family: list[int],
) -> None:  # fmt: skip
    """Give loads or runs numbers and write down which item is in which, and their order."""
    one = 0
    for group, contents in enumerate(groups):
        for kind, items in contents:
            family[one] = kind
            order[group * slots + counts[group]] = one
            counts[group] += 1
            for i in items:
                of_item[i] = one
            one += 1


def _edges(shop: Shop) -> tuple[list[int], list[int]]:
    """List the moments at which the head count changes, and the counts from then on."""
    shifts = shop.instance.helpers
    edges = sorted({edge for start, end, _ in shifts for edge in (start, end)})
    heads = [sum(n for start, end, n in shifts if start <= edge < end) for edge in edges]
    return edges, heads


def _numbers(shop: Shop) -> list[int]:
    instance = shop.instance
    helpers, stations, rack = busy_after(shop)
    return [
        shop.now, instance.load_min, instance.unload_min, instance.rack_units, len(shop.items),
        len(shop.machine), len(shop.families), len(shop.items) + 2, len(shop.release),
        len(shop.stations), len(shop.cabinets), len(_edges(shop)[0]), len(helpers),
        len(stations), len(rack),
    ]  # fmt: skip


def _item_facts(shop: Shop) -> dict[int, list[int]]:
    items = shop.items
    kinds = {kind: k for k, kind in enumerate(dict.fromkeys(item.kind for item in items))}
    drums = {number: w for w, number in enumerate(shop.open_load) if number >= 0}
    columns: Sequence[tuple[int, Iterable[int]]] = (
        (at.MEMBER, (item.member for item in items)),
        (at.FAMILY, (item.family for item in items)),
        (at.WEIGHT, (item.weight for item in items)),
        (at.COUNT, (item.count for item in items)),
        (at.PREP, (item.prep for item in items)),
        (at.INSPECT, (item.inspect for item in items)),
        (at.STATION, (item.station for item in items)),
        (at.HAND_MIN, (item.hand for item in items)),
        (at.UNITS, (item.units for item in items)),
        (at.RACK_MIN, (item.rack for item in items)),
        (at.BOX_MIN, (item.cab for item in items)),
        (at.EARLY, (item.early for item in items)),
        (at.STAGE, (int(item.stage) for item in items)),
        (at.SINCE, (item.since for item in items)),
        (at.DRUM, (drums.get(item.drum, -1) for item in items)),
        (at.KIND_OF, (kinds[item.kind] for item in items)),
        (at.GIVEN, (int(item.pieces[0].id in shop.given) for item in items)),
        (at.CAN, (int(w in item.washers) for item in items for w in range(len(shop.machine)))),
    )
    return {section: list(numbers) for section, numbers in columns}


def _place_facts(shop: Shop) -> dict[int, list[int]]:
    runs = [run or (0, -1, 0) for washer in shop.machine for run in washer]
    helpers, stations, rack = busy_after(shop)
    edges, heads = _edges(shop)
    families, loads = range(len(shop.families)), shop.instance.begun.loads
    return {
        at.CAP: [run[0] for run in runs],
        at.RUN_MIN: [run[1] for run in runs],
        at.MOST: [run[2] for run in runs],
        at.IDLE: [shop.idle.get((one, other), 0) for one in (-1, *families) for other in families],
        at.LATE: [int(family in shop.late) for family in families],
        at.FREE_FROM: list(shop.free),
        at.LAST_FAMILY: list(shop.last),
        at.OPEN_END: [loads[one].prog_end if one >= 0 else -1 for one in shop.open_load],
        at.EMPTIED: list(shop.emptied),
        at.PRIORITY: list(shop.priority),
        at.RELEASE: list(shop.release),
        at.STATION_PLACES: list(shop.stations),
        at.BOX_UNITS: list(shop.cabinets),
        at.BOX_FREE_FROM: cabinet_free(shop),
        at.EDGE: edges,
        at.HEADS: heads,
        at.BUSY_END: helpers,
        at.STATION_BUSY: [one for one, _ in stations],
        at.STATION_END: [end for _, end in stations],
        at.RACK_BUSY: [one for one, _ in rack],
        at.RACK_END: [end for _, end in rack],
    }


def _blanks(shop: Shop) -> dict[int, list[int]]:
    """Return the sections of picks, times and room, as long as they may have to be."""
    items, washers, boxes = len(shop.items), len(shop.machine), len(shop.cabinets)
    slots, members, stations = items + 2, len(shop.release), len(shop.stations)
    helpers, busy, rack = busy_after(shop)
    edges, heads = _edges(shop)
    begun = len(helpers) + len(busy) + len(rack)
    lengths = {
        at.LOAD: items, at.RUN: items, at.AFTER: items, at.LOAD_FAMILY: slots, at.FIRST: slots,
        at.LOAD_WEIGHT: slots, at.LOAD_COUNT: slots, at.ORDER: washers * slots,
        at.LOADS: washers, at.BOXED: boxes * slots, at.RUNS: boxes, at.COVERED: items,
        at.TARGET: members, at.GUARD: 1,
        at.PREP_AT: items, at.HAND_AT: items, at.DRY_AT: items, at.DRIED_AT: items,
        at.INSPECT_AT: items, at.DONE_AT: items, at.LOADING_AT: slots, at.UNLOADING_AT: slots,
        at.OPENED_AT: washers, at.READY: members, at.SUMS: 3,
        at.EVENT_HEAP: 8 * items + 6 * slots + 3 * washers + boxes + len(edges) + begun + 64,
        at.TASK_HEAP: 2 * items + 2, at.RACK_HEAP: items + 2, at.STATION_HEAP: stations * items,
        at.ENDS: len(helpers) + min(2 * items + washers, max(heads, default=0)) + 2,
        at.DUE_INSPECT: items, at.DUE_DRY: items, at.DUE_WASH: items, at.UNPREPARED: slots,
        at.MISSING: slots, at.LONGEST: slots, at.STATE: washers, at.FREE_AT: washers,
        at.NEXT_LOAD: washers, at.LAST: washers, at.INSIDE: washers, at.PROG_END: washers,
        at.NEXT_RUN: boxes, at.BOX_FREE: boxes, at.STATION_FREE: stations, at.SPARE: 4,
    }  # fmt: skip
    none = {at.LOAD, at.RUN, at.LOAD_FAMILY}
    return {one: [-1 if one in none else 0] * length for one, length in lengths.items()}
