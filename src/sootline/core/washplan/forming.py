"""Which items make up which load, if a load is formed each time a washer comes free?

The clock here is nominal: loading, programme and unloading follow each other without waiting for
helpers. The dispatcher finds the true times.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from heapq import heappop, heappush

from sootline.core.washplan.choice import DrumLoad
from sootline.core.washplan.items import HAND, Stage
from sootline.core.washplan.shop import Shop


@dataclass(frozen=True, kw_only=True)
class Group:
    """Items that go into a drum together if they fit, else one by one."""

    items: tuple[int, ...]
    family: int
    weight: int
    early: int
    rank: float


@dataclass(kw_only=True)
class Formed:
    """The loads per washer, and when each item is nominally out of the drum [min]."""

    loads: list[list[DrumLoad]]
    out: dict[int, int] = field(default_factory=dict)


# Names the family of the next load from the groups that could go into it and the last family.
Pick = Callable[[list[Group], int], int]


def least_rank(groups: list[Group], last: int) -> int:  # noqa: ARG001 - one of the picks
    """Pick the family of the group that comes first."""
    return min(groups, key=lambda group: group.rank).family


def form_loads(shop: Shop, groups: list[Group], pick: Pick) -> Formed:
    """Fill drum after drum with groups of one family, by rank, until nothing waits."""
    formed = Formed(loads=[[] for _ in shop.machine])
    waiting = sorted(groups, key=lambda group: group.rank)
    clocks: list[tuple[int, int]] = []
    for w, free in enumerate(shop.free):
        heappush(clocks, (max(free, _begun_until(shop, w)), w))
    last = list(shop.last)
    while waiting:
        minute, w = heappop(clocks)
        suited = [
            group for group in waiting if any(w in shop.items[i].washers for i in group.items)
        ]
        here = [group for group in suited if group.early <= minute]
        if not here:
            if suited:
                heappush(clocks, (min(group.early for group in suited), w))
            continue
        plain = [group for group in here if group.family not in shop.late]
        if not plain and any(group.family not in shop.late for group in suited):
            later = [group.early for group in suited if group.family not in shop.late]
            heappush(clocks, (min(later), w))
            continue
        family = pick(plain or here, last[w])
        inside, waiting = _fill(shop, w, family, minute, waiting)
        start = minute + shop.idle.get((last[w], family), 0)
        end = start + _cycle(shop, w, family)
        formed.loads[w].append((family, inside))
        formed.out.update(dict.fromkeys(inside, end))
        last[w] = family
        heappush(clocks, (end, w))
    return formed


def _begun_until(shop: Shop, w: int) -> int:
    number = shop.open_load[w]
    if number < 0:
        return shop.emptied[w]
    return shop.instance.begun.loads[number].prog_end + shop.instance.unload_min


def _cycle(shop: Shop, w: int, family: int) -> int:
    programme = shop.machine[w][family]
    assert programme is not None  # the pick is among groups that suit the washer
    return shop.instance.load_min + programme[1] + shop.instance.unload_min


def _fill(
    shop: Shop, w: int, family: int, minute: int, waiting: list[Group]
) -> tuple[tuple[int, ...], list[Group]]:
    """Take whole groups in order; a group is broken up only when nothing else is inside."""
    programme = shop.machine[w][family]
    assert programme is not None  # the pick is among groups that suit the washer
    inside: list[int] = []
    left: list[Group] = []
    cap, most = programme[0], programme[2]
    for group in waiting:
        if group.family != family or group.early > minute:
            left.append(group)
            continue
        take = [i for i in group.items if w in shop.items[i].washers]
        weight = sum(shop.items[i].weight for i in take)
        count = sum(shop.items[i].count for i in take)
        if weight > cap or count > most:
            if inside:
                left.append(group)
                continue
            take = _part(shop, take, cap, most)
            weight = sum(shop.items[i].weight for i in take)
            count = sum(shop.items[i].count for i in take)
        inside += take
        cap, most = cap - weight, most - count
        rest = tuple(i for i in group.items if i not in take)
        if rest:
            left.append(group_of(shop, rest, group.rank))
    return tuple(inside), left


def _part(shop: Shop, items: list[int], cap: int, most: int) -> list[int]:
    taken = []
    for i in items:
        item = shop.items[i]
        if item.weight <= cap and item.count <= most:
            taken.append(i)
            cap, most = cap - item.weight, most - item.count
    return taken


def group_of(shop: Shop, items: tuple[int, ...], rank: float) -> Group:
    """Make a group of items of one family."""
    return Group(
        items=items,
        family=shop.items[items[0]].family,
        weight=sum(shop.items[i].weight for i in items),
        early=max(shop.items[i].early for i in items),
        rank=rank,
    )


def wet_times(shop: Shop, formed: Formed, order: list[int]) -> dict[int, int]:
    """Estimate when each item is ready to dry; hand pieces come in the members' order."""
    wet = dict(formed.out)
    for i, item in enumerate(shop.items):
        if item.stage in (Stage.WET, Stage.IN_DRUM):
            wet[i] = max(shop.now, item.since)
    place = {member: at for at, member in enumerate(order)}
    clock = [shop.now] * len(shop.stations)
    by_hand = [
        i
        for i, item in enumerate(shop.items)
        if item.family == HAND and item.stage <= Stage.PREPARED
    ]
    for i in sorted(by_hand, key=lambda i: (place[shop.items[i].member], -shop.items[i].drying)):
        item = shop.items[i]
        station = item.station
        share = -(-item.hand // max(1, shop.stations[station]))
        clock[station] = max(clock[station], item.early) + share
        wet[i] = clock[station]
    return wet
