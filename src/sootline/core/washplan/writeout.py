"""Which plan is this timetable, written in the pieces' own names?"""

from sootline.core.basis import ComponentId, PlaceId
from sootline.core.washplan.choice import Choice
from sootline.core.washplan.found import Found
from sootline.core.washplan.items import Item
from sootline.core.washplan.kernel import arrays as at
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.shop import Shop
from sootline.core.washplan.steps import RACK, Drying, HandWash, Load, Task


def write_plan(found: Found) -> Plan:
    """Turn item numbers back into ids; begun steps stand first, as they were."""
    shop, choice = found.bench.shop, found.choice()
    instance, begun = shop.instance, shop.instance.begun
    open_loads = {number for number in shop.open_load if number >= 0}
    done_loads = (load for i, load in enumerate(begun.loads) if i not in open_loads)
    ready = found.bench.section(found.times, at.READY)
    return Plan(
        instance=instance.name,
        loads=(*done_loads, *_loads(found, choice)),
        prep=begun.prep + _tasks(found, at.PREP_AT, [item.prep for item in shop.items]),
        hand=begun.hand + _by_hand(found),
        dry=begun.dry + _dryings(found, choice),
        inspect=begun.inspect + _tasks(found, at.INSPECT_AT, [one.inspect for one in shop.items]),
        spares=tuple(piece for i in sorted(choice.covered) for piece in _ids(shop.items[i])),
        ready={member.id: ready[m] for m, member in enumerate(instance.members)},
        objective=found.sums[0],
        makespan=found.sums[1],
    )


def _ids(item: Item) -> tuple[ComponentId, ...]:
    return tuple(piece.id for piece in item.pieces)


def _loads(found: Found, choice: Choice) -> list[Load]:
    """Write the loads to come and those whose unloading was open, in time."""
    bench, shop = found.bench, found.bench.shop
    instance = shop.instance
    loading = bench.section(found.times, at.LOADING_AT)
    unloading = bench.section(found.times, at.UNLOADING_AT)
    of_item = bench.section(found.picks, at.LOAD)
    written = _opened(found)
    for w, mine in enumerate(choice.loads):
        for family, inside in mine:
            one = of_item[inside[0]]
            programme = shop.machine[w][family]
            assert programme is not None  # loads are formed for machines that fit
            start = loading[one] + instance.load_min
            written.append(
                Load(
                    washer=instance.washers[w].id, family=shop.families[family],
                    load_start=loading[one], prog_start=start, prog_end=start + programme[1],
                    unload_start=unloading[one], unload_end=unloading[one] + instance.unload_min,
                    pieces=tuple(piece for i in inside for piece in _ids(shop.items[i])),
                )
            )  # fmt: skip
    order = {washer.id: w for w, washer in enumerate(instance.washers)}
    return sorted(written, key=lambda load: (load.load_start, order[load.washer]))


def _opened(found: Found) -> list[Load]:
    shop = found.bench.shop
    begun, written = shop.instance.begun.loads, []
    emptied = found.bench.section(found.times, at.OPENED_AT)
    for w, number in enumerate(shop.open_load):
        if number >= 0:
            load = begun[number]
            written.append(
                Load(
                    washer=load.washer, family=load.family, load_start=load.load_start,
                    prog_start=load.prog_start, prog_end=load.prog_end, unload_start=emptied[w],
                    unload_end=emptied[w] + shop.instance.unload_min, pieces=load.pieces,
                )
            )  # fmt: skip
    return written


def _tasks(found: Found, section: int, minutes: list[int]) -> tuple[Task, ...]:
    """Write the steps that were planned, in time."""
    starts = found.bench.section(found.times, section)
    planned = sorted(
        (start, start + minutes[i], _ids(found.bench.shop.items[i]))
        for i, start in enumerate(starts)
        if start >= 0
    )
    return tuple(Task(pieces=pieces, start=start, end=end) for start, end, pieces in planned)


def _by_hand(found: Found) -> tuple[HandWash, ...]:
    shop = found.bench.shop
    stations = list(shop.instance.stations)
    return tuple(
        HandWash(
            station=stations[item.station],
            piece=item.pieces[0].id,
            start=start,
            end=start + item.hand,
        )
        for item, start in zip(
            shop.items, found.bench.section(found.times, at.HAND_AT), strict=True
        )
        if start >= 0
    )


def _dryings(found: Found, choice: Choice) -> tuple[Drying, ...]:
    shop = found.bench.shop
    where = _places(shop, choice)
    starts = found.bench.section(found.times, at.DRY_AT)
    ends = found.bench.section(found.times, at.DRIED_AT)
    return tuple(
        Drying(piece=piece, where=where.get(i, RACK), start=starts[i], end=ends[i])
        for i, item in enumerate(shop.items)
        if starts[i] >= 0
        for piece in _ids(item)
    )


def _places(shop: Shop, choice: Choice) -> dict[int, PlaceId]:
    return {
        i: shop.instance.open_cabinets[c].id
        for c, runs in enumerate(choice.runs)
        for run in runs
        for i in run
    }
