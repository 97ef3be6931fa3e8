"""The instance as plain numbers: what the dispatcher and the search work on.

Numbers stand for ids: positions in the instance's tuples.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.basis import ComponentId, MachineId
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.items import HAND, NEVER, Item, Stage, form_items
from sootline.core.washplan.steps import RACK, Load


@dataclass(frozen=True, kw_only=True)
class Shop:
    """One instance in numbers, at one grain.

    Args:
        machine: per washer and family number the programme's (cap, minutes, most pieces),
            None where the washer does not wash the family.
        idle: per pair of family numbers the changeover minutes.
        free: per washer when it becomes available, begun loads apart [min].
        open_load: per washer the begun load whose unloading is open, or -1.
        last, emptied: per washer the family of its last begun load, or HAND, and when it is out.
        stock: spares still in stock by type and size.
    """

    instance: Instance
    items: tuple[Item, ...]
    families: tuple[str, ...]
    machine: tuple[tuple[tuple[int, int, int] | None, ...], ...]
    idle: dict[tuple[int, int], int]
    late: frozenset[int]
    free: tuple[int, ...]
    open_load: tuple[int, ...]
    last: tuple[int, ...]
    emptied: tuple[int, ...]
    now: int
    priority: tuple[int, ...]
    release: tuple[int, ...]
    stations: tuple[int, ...]
    cabinets: tuple[int, ...]
    stock: dict[tuple[str, str], int]
    given: frozenset[ComponentId]

    def fits(self, washer: int, family: int, items: Iterable[int]) -> bool:
        """Say whether a washer may run these items of a family as one load."""
        programme = self.machine[washer][family]
        weight = count = 0
        for one in items:
            item = self.items[one]
            weight += item.weight
            count += item.count
            if washer not in item.washers:
                return False
        return programme is not None and weight <= programme[0] and count <= programme[2]

    def to_wash(self) -> list[int]:
        """List the items that still have to go through a washer."""
        return [
            i
            for i, item in enumerate(self.items)
            if item.family != HAND and item.stage <= Stage.PREPARED
        ]


def open_shop(instance: Instance, *, single: bool = False) -> Shop:
    """Turn an instance into numbers; `single` makes every piece an item of its own."""
    families = tuple(
        dict.fromkeys(piece.family for piece in instance.pieces if piece.hand_station is None)
    )
    number = {family: f for f, family in enumerate(families)}
    begun = instance.begun
    newest = [_newest_load(instance, washer.id) for washer in instance.washers]
    return Shop(
        instance=instance,
        items=form_items(instance, families, single=single),
        families=families,
        machine=tuple(
            tuple(
                (run.cap, run.min, run.max_pieces or NEVER)
                if (run := washer.programmes.get(family))
                else None
                for family in families
            )
            for washer in instance.washers
        ),
        idle={
            (number[one.before], number[one.after]): one.minutes
            for one in instance.changeover
            if one.before in number and one.after in number
        },
        late=frozenset(number[family] for family in instance.late_families if family in number),
        free=tuple(
            max(begun.minute, instance.washer_free.get(washer.id, 0)) for washer in instance.washers
        ),
        open_load=tuple(
            one[0] if one and one[1].unload_start >= begun.minute else -1 for one in newest
        ),
        last=tuple(number.get(one[1].family, HAND) if one else HAND for one in newest),
        emptied=tuple(one[1].unload_end if one else 0 for one in newest),
        now=begun.minute,
        priority=tuple(member.priority for member in instance.members),
        release=tuple(member.release for member in instance.members),
        stations=tuple(instance.stations.values()),
        cabinets=tuple(cabinet.units for cabinet in instance.open_cabinets),
        stock=_stock(instance),
        given=frozenset(instance.begun.spares),
    )


def _stock(instance: Instance) -> dict[tuple[str, str], int]:
    stock = {(spare.type, spare.size): spare.count for spare in instance.spares}
    given = set(instance.begun.spares)
    for piece in instance.pieces:
        if piece.id in given:
            stock[piece.type, piece.size] = stock.get((piece.type, piece.size), 0) - 1
    return stock


def _newest_load(instance: Instance, washer: MachineId) -> tuple[int, Load] | None:
    """Find the last begun load of a washer, with its number among all begun ones."""
    mine = [(i, load) for i, load in enumerate(instance.begun.loads) if load.washer == washer]
    return max(mine, key=lambda pair: pair[1].load_start, default=None)


def busy_after(shop: Shop) -> tuple[list[int], list[tuple[int, int]], list[tuple[int, int]]]:
    """List what begun steps still hold at the start.

    Returns:
        ends of helpers' tasks; (station number, end); (units on the rack, end).
    """
    begun, now, instance = shop.instance.begun, shop.now, shop.instance
    helpers = [task.end for task in (*begun.prep, *begun.inspect)]
    helpers += [step.end for step in begun.hand]
    for load in begun.loads:
        helpers.append(load.prog_start)
        if load.unload_start < now:
            helpers.append(load.unload_end)
    names = list(instance.stations)
    stations = [(names.index(step.station), step.end) for step in begun.hand if step.end > now]
    units = {piece.id: piece.units for piece in instance.pieces}
    rack = [
        (units[step.piece], step.end) for step in begun.dry if step.where == RACK and step.end > now
    ]
    return [end for end in helpers if end > now], stations, rack


def cabinet_free(shop: Shop) -> list[int]:
    """Say when each open cabinet's begun runs are over and it is available [min]."""
    instance = shop.instance
    ends = {cabinet.id: shop.now for cabinet in instance.open_cabinets}
    for one in instance.begun.dry:
        if one.where in ends:
            ends[one.where] = max(ends[one.where], one.end)
    return [max(end, instance.dryer_free.get(name) or 0) for name, end in ends.items()]
