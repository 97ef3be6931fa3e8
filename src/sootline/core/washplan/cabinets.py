"""Which items share which cabinet run?

Runs get explicit contents: a run that starts as soon as anything is wet would hold one pair of
gloves and keep the door shut for hours.
"""

from sootline.core.washplan.items import NEVER, Stage
from sootline.core.washplan.shop import Shop, cabinet_free

Runs = tuple[tuple[tuple[int, ...], ...], ...]


def assign_runs(shop: Shop, wet: dict[int, int]) -> Runs:
    """Give cabinet runs the contents that save the most drying time per minute of door shut.

    Args:
        wet: per item the minute from which it may dry; items not listed take no part.
    """
    runs: list[list[tuple[int, ...]]] = [[] for _ in shop.cabinets]
    free = cabinet_free(shop)
    waiting = {i for i in wet if shop.items[i].cab < NEVER and shop.items[i].units}
    while True:
        best: tuple[float, int, int, tuple[int, ...]] | None = None
        for c, units in enumerate(shop.cabinets):
            starts = sorted({max(free[c], wet[i]) for i in waiting})
            starts = starts[:6]
            for start in starts:
                inside, value = _fill(shop, wet, waiting, start, units)
                if inside:
                    shut = start - free[c] + max(shop.items[i].cab for i in inside)
                    rate = value / max(1, shut) - start * 1e-6
                    if best is None or rate > best[0]:
                        best = rate, c, start, inside
        if best is None:
            return tuple(tuple(one) for one in runs)
        _, c, start, inside = best
        runs[c].append(inside)
        free[c] = start + max(shop.items[i].cab for i in inside)
        waiting -= set(inside)


def _fill(
    shop: Shop, wet: dict[int, int], waiting: set[int], start: int, units: int
) -> tuple[tuple[int, ...], float]:
    """Choose what gains most by drying in this run rather than on the rack at once."""
    gains = []
    for i in waiting:
        item = shop.items[i]
        forced = item.units > shop.instance.rack_units
        gain = wet[i] + item.rack - start - item.cab
        if wet[i] <= start and (gain > 0 or forced):
            gains.append((-NEVER if forced else -gain / item.units, i))
    inside, value = [], 0.0
    for rate, i in sorted(gains):
        item = shop.items[i]
        if item.units <= units:
            units -= item.units
            inside.append(i)
            value += -rate * item.units * shop.priority[item.member]
    return tuple(inside), value


def with_forced(shop: Shop, runs: Runs) -> Runs:
    """Give a run of its own to whatever is too big for the rack and in no run yet."""
    new = [list(one) for one in runs]
    inside = {i for one in runs for run in one for i in run}
    for i, item in enumerate(shop.items):
        forced = item.units > shop.instance.rack_units and item.stage <= Stage.WET
        if forced and i not in inside:
            c = max(range(len(new)), key=lambda c: shop.cabinets[c])
            new[c].append((i,))
    return tuple(tuple(one) for one in new)
