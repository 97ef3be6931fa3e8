"""Which plan is this timetable, written in the pieces' own names?"""

from sootline.core.basis import ComponentId, PlaceId
from sootline.core.washplan.dispatch import Choice, Drum, Timetable
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.shop import Item, Shop
from sootline.core.washplan.steps import RACK, Drying, HandWash, Load, Task


def write_plan(shop: Shop, choice: Choice, table: Timetable) -> Plan:
    """Turn item numbers back into ids; begun steps stand first, as they were."""
    instance, begun = shop.instance, shop.instance.begun
    stations = list(instance.stations)
    open_loads = {number for number in shop.open_load if number >= 0}
    done_loads = (load for i, load in enumerate(begun.loads) if i not in open_loads)
    numbered = list(enumerate(shop.items))
    return Plan(
        instance=instance.name,
        loads=(*done_loads, *(_load(shop, drum) for drum in _in_time(table.drums))),
        prep=begun.prep + _tasks([(item, table.prep[i], item.prep) for i, item in numbered]),
        hand=begun.hand
        + tuple(
            HandWash(
                station=stations[item.station],
                piece=item.pieces[0].id,
                start=table.hand[i],
                end=table.hand[i] + item.hand,
            )
            for i, item in numbered
            if table.hand[i] >= 0
        ),
        dry=begun.dry
        + tuple(
            Drying(piece=piece, where=where, start=table.dry[i], end=table.dry_end[i])
            for i, item in numbered
            if table.dry[i] >= 0
            for where in [_place(shop, choice, i)]
            for piece in _ids(item)
        ),
        inspect=begun.inspect
        + _tasks([(item, table.inspect[i], item.inspect) for i, item in numbered]),
        spares=tuple(piece for i in sorted(choice.covered) for piece in _ids(shop.items[i])),
        ready={member.id: table.ready[m] for m, member in enumerate(instance.members)},
        objective=table.objective,
        makespan=table.makespan,
    )


def _in_time(drums: list[Drum]) -> list[Drum]:
    return sorted(drums, key=lambda drum: (drum.load_start, drum.washer))


def _ids(item: Item) -> tuple[ComponentId, ...]:
    return tuple(piece.id for piece in item.pieces)


def _load(shop: Shop, drum: Drum) -> Load:
    begun = shop.instance.begun.loads
    pieces = tuple(piece for i in drum.items for piece in _ids(shop.items[i]))
    return Load(
        washer=shop.instance.washers[drum.washer].id,
        family=begun[drum.begun].family if drum.begun >= 0 else shop.families[drum.family],
        load_start=drum.load_start,
        prog_start=drum.prog_start,
        prog_end=drum.prog_end,
        unload_start=drum.unload_start,
        unload_end=drum.unload_end,
        pieces=begun[drum.begun].pieces if drum.begun >= 0 else pieces,
    )


def _tasks(steps: list[tuple[Item, int, int]]) -> tuple[Task, ...]:
    """Write the steps that were planned, in time."""
    planned = sorted(
        (start, start + minutes, _ids(item)) for item, start, minutes in steps if start >= 0
    )
    return tuple(Task(pieces=pieces, start=start, end=end) for start, end, pieces in planned)


def _place(shop: Shop, choice: Choice, item: int) -> PlaceId:
    for c, runs in enumerate(choice.runs):
        if any(item in run for run in runs):
            return shop.instance.cabinets[c].id
    return RACK
