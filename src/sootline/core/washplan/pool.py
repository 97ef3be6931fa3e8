"""From which choices does the search start, beside the hand rules?"""

from collections.abc import Iterator
from itertools import product

from sootline.core.basis import ComponentId
from sootline.core.washplan.cabinets import with_forced
from sootline.core.washplan.choice import Choice, DrumLoad
from sootline.core.washplan.forming import form_loads, group_of, least_rank
from sootline.core.washplan.items import Stage
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.rules import arrival, complete, cover
from sootline.core.washplan.shop import Shop

# How far apart two members' turns lie, in shares of the washing minutes per member, and how much
# a minute of drying moves an item forward. Found by trying; a longer list costs time.
SPACINGS = (1.0, 0.5, 1.5, 0.0, 2.0, 0.75, 3.0)
TAIL_WEIGHTS = (1.0, 0.6, 0.3, 2.0, 0.0)


def grid(shop: Shop) -> Iterator[Choice]:
    """Form loads over orders of the members, spacings and weights of the drying tail."""
    turn = _minutes_per_member(shop)
    for spacing, weight, order in product(SPACINGS, TAIL_WEIGHTS, _orders(shop)):
        yield from _formed(shop, order, spacing * turn, weight)


def _formed(shop: Shop, order: list[int], spacing: float, weight: float) -> Iterator[Choice]:
    place = {member: at for at, member in enumerate(order)}
    groups = [
        group_of(shop, (i,), place[item.member] * spacing - weight * (item.drying + item.inspect))
        for i in shop.to_wash()
        for item in [shop.items[i]]
    ]
    formed = form_loads(shop, groups, least_rank)
    for boxed in (True, False) if shop.cabinets else (False,):
        yield complete(shop, formed, order, boxed=boxed)


def _minutes_per_member(shop: Shop) -> float:
    """Share the washers' minutes, drums filled to the last pound, among the members."""
    instance = shop.instance
    minutes = 0.0
    for i in shop.to_wash():
        item = shop.items[i]
        minutes += min(
            item.weight / max(1, run[0]) * (run[1] + instance.load_min + instance.unload_min)
            for w in item.washers
            if (run := shop.machine[w][item.family])
        )
    return minutes / max(1, len(shop.machine)) / max(1, len(shop.release))


def _orders(shop: Shop) -> list[list[int]]:
    """Order members by priority, by priority for their weight, and as they came."""
    weight = [1] * len(shop.release)
    for i in shop.to_wash():
        weight[shop.items[i].member] += shop.items[i].weight
    members = arrival(shop)
    by_priority = sorted(members, key=lambda m: -shop.priority[m])
    by_share = sorted(members, key=lambda m: -shop.priority[m] / weight[m])
    light = sorted(members, key=lambda m: (-shop.priority[m], weight[m]))
    orders: list[list[int]] = []
    for order in (by_share, by_priority, light, members):
        if order not in orders:
            orders.append(order)
    return orders


def as_choice(shop: Shop, plan: Plan) -> Choice:
    """Read a plan's decisions back; what it does not wash whole is formed anew and comes last."""
    number = {piece.id: i for i, item in enumerate(shop.items) for piece in item.pieces}
    washer = {one.id: w for w, one in enumerate(shop.instance.washers)}
    open_items = set(shop.to_wash())
    loads: list[list[DrumLoad]] = [[] for _ in shop.machine]
    for load in sorted(plan.loads, key=lambda one: one.load_start):
        inside = tuple(
            i
            for i in dict.fromkeys(number[piece] for piece in load.pieces)
            if i in open_items and {one.id for one in shop.items[i].pieces} <= set(load.pieces)
        )
        if inside and shop.fits(washer[load.washer], shop.items[inside[0]].family, inside):
            loads[washer[load.washer]].append((shop.items[inside[0]].family, inside))
            open_items -= set(inside)
    order = sorted(
        range(len(shop.release)),
        key=lambda m: plan.ready.get(shop.instance.members[m].id, plan.makespan),
    )
    place = {member: at for at, member in enumerate(order)}
    groups = [group_of(shop, (i,), place[shop.items[i].member]) for i in sorted(open_items)]
    rest = form_loads(shop, groups, least_rank)
    for mine, more in zip(loads, rest.loads, strict=True):
        mine.extend(more)
        mine.sort(key=lambda load: load[0] in shop.late)
    first = complete(shop, rest, order)
    kept = frozenset(number[piece] for piece in plan.spares)
    return Choice(
        loads=tuple(tuple(mine) for mine in loads),
        runs=with_forced(shop, _runs(shop, plan, number)),
        covered=cover(shop, order, kept),
        target=tuple(
            plan.ready.get(member.id, first.target[m])
            for m, member in enumerate(shop.instance.members)
        ),
    )


def _runs(
    shop: Shop, plan: Plan, number: dict[ComponentId, int]
) -> tuple[tuple[tuple[int, ...], ...], ...]:
    """Read the cabinet runs that are still to come."""
    runs: list[tuple[tuple[int, ...], ...]] = []
    for cabinet in shop.instance.open_cabinets:
        starts: dict[int, list[int]] = {}
        for step in plan.dry:
            i = number[step.piece]
            if step.where == cabinet.id and shop.items[i].stage <= Stage.WET:
                starts.setdefault(step.start, []).append(i)
        # An item of several pieces stands in the plan once for each.
        runs.append(tuple(tuple(dict.fromkeys(starts[start])) for start in sorted(starts)))
    return tuple(runs)
