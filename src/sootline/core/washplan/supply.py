"""What is there of every resource by every moment, and which loads earn most at given prices?"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sootline.core.washplan.earliest import Book
from sootline.core.washplan.items import NEVER, Stage
from sootline.core.washplan.timegrid import TimeGrid

Numbers = NDArray[np.float64]
CYCLE = 60.0  # minutes; resources are scaled to what is there in about one programme


@dataclass(frozen=True, kw_only=True)
class Drum:
    """One washer: from when on it may load, and per family (number, cap, pieces, minutes)."""

    start: int
    runs: tuple[tuple[int, int, int, int], ...]


@dataclass(frozen=True, kw_only=True)
class Places:
    """Which row of the prices belongs to what.

    Args:
        families, pieces: rows of the first family's weight and piece count, -1 for none.
    """

    families: int
    pieces: int
    helpers: int
    stations: int
    rack: int
    boxes: int
    count: int


@dataclass(frozen=True, kw_only=True)
class Supplies:
    """What there is.

    Args:
        fixed: per resource and moment, whatever is done with it.
        scale: per resource, what there is in about one programme.
        spares: per kind of spare, how many.
    """

    grid: TimeGrid
    places: Places
    fixed: Numbers
    scale: Numbers
    spares: Numbers
    drums: tuple[Drum, ...]
    load_min: int
    unload_min: int


def find_places(book: Book) -> Places:
    """Give every resource of a shop its row."""
    shop = book.shop
    families = len(shop.families)
    limited = any(run and run[2] < NEVER for washer in shop.machine for run in washer)
    helpers = families * (2 if limited else 1)
    stations = helpers + 1
    rack = stations + len(shop.stations)
    return Places(
        families=0, pieces=families if limited else -1, helpers=helpers, stations=stations,
        rack=rack, boxes=rack + 1, count=rack + 2,
    )  # fmt: skip


def list_supplies(book: Book, grid: TimeGrid, kinds: list[tuple[str, str]]) -> Supplies:
    """Count what there is, from when on anybody could use it."""
    shop, instance, places = book.shop, book.instance, find_places(book)
    fixed = np.zeros((places.count, grid.moments))
    scale = np.ones(places.count)
    minutes = grid.minutes
    early = min((item.early for item in shop.items), default=0)
    for since, until, count in instance.helpers:
        fixed[places.helpers] += count * np.clip(
            np.minimum(minutes, until) - max(early, since), 0, None
        )
    scale[places.helpers] = CYCLE * max(1, *(count for _, _, count in instance.helpers))
    for s, count in enumerate(shop.stations):
        mine = [i for i in shop.items if i.station == s and i.stage <= Stage.PREPARED]
        start = min((book.ready_to_wash(item) for item in mine), default=0)
        fixed[places.stations + s] = count * np.clip(minutes - start, 0, None)
        scale[places.stations + s] = CYCLE * max(1, count)
    wet = min((book.wet[i] for i in book.to_dry if shop.items[i].units), default=0)
    for row, units in ((places.rack, instance.rack_units), (places.boxes, sum(shop.cabinets))):
        fixed[row] = units * np.clip(minutes - wet, 0, None)
        scale[row] = CYCLE * max(1, units)
    drums = tuple(_drum(book, w) for w in range(len(shop.machine)))
    for drum in drums:
        for family, cap, pieces, _ in drum.runs:
            scale[places.families + family] = max(scale[places.families + family], cap)
            if places.pieces >= 0:
                scale[places.pieces + family] = max(scale[places.pieces + family], pieces)
    return Supplies(
        grid=grid, places=places, fixed=fixed, scale=scale, drums=drums,
        spares=np.array([float(shop.stock[kind]) for kind in kinds]),
        load_min=instance.load_min, unload_min=instance.unload_min,
    )  # fmt: skip


def _drum(book: Book, w: int) -> Drum:
    shop = book.shop
    mine = [shop.items[i] for i in book.to_wash if w in shop.items[i].washers]
    runs = []
    for family in sorted({item.family for item in mine}):
        programme = shop.machine[w][family]
        assert programme is not None  # the washer takes items of this family
        count = sum(item.family == family for item in mine)
        runs.append((family, book.fullest[w, family], min(programme[2], count), programme[1]))
    start = min((book.ready_to_wash(item) for item in mine), default=0)
    return Drum(start=max(book.free(w), start), runs=tuple(runs))


def best_loads(supplies: Supplies, tails: Numbers) -> tuple[float, Numbers]:
    """Find what the washers can earn at most, and what that adds to the resources by moment.

    Args:
        tails: per resource and moment, the price of a unit that is there from then on.
    """
    total, offered = 0.0, np.zeros((supplies.places.count, supplies.grid.moments + 1))
    for drum in supplies.drums:
        if drum.runs:
            total += _best_sequence(supplies, drum, tails, offered)
    return total, np.cumsum(offered[:, :-1], axis=1)


def _best_sequence(supplies: Supplies, drum: Drum, tails: Numbers, offered: Numbers) -> float:
    """Find the best sequence of loads of one washer, exactly, to the minute."""
    grid, places = supplies.grid, supplies.places
    end = int(grid.minutes[-1])
    ends = np.arange(drum.start, max(end, drum.start) + 1, dtype=np.int64)
    out = grid.moment(ends)
    earned, cycles = [], []
    for family, cap, pieces, run in drum.runs:
        before = grid.moment(ends - run - supplies.unload_min)
        gain = cap * tails[places.families + family, out]
        if places.pieces >= 0:
            gain = gain + pieces * tails[places.pieces + family, out]
        gain = gain - supplies.unload_min * tails[places.helpers, out]
        earned.append(gain - supplies.load_min * tails[places.helpers, before])
        cycles.append(supplies.load_min + run + supplies.unload_min)
    best = np.zeros(len(ends))
    block = min(cycles)
    for low in range(block, len(ends), block):
        high = min(low + block, len(ends))
        here = np.full(high - low, best[low - 1])
        for gain, cycle in zip(earned, cycles, strict=True):
            first = max(low, cycle)
            if first < high:
                with_load = best[first - cycle : high - cycle] + gain[first:high]
                here[first - low :] = np.maximum(here[first - low :], with_load)
        best[low:high] = np.maximum.accumulate(here)
    _trace_back(supplies, drum, best, earned, cycles, offered)
    return float(best[-1])


def _trace_back(  # noqa: PLR0917 - the arrays of the step before
    supplies: Supplies, drum: Drum, best: Numbers, earned: list[Numbers], cycles: list[int],
    offered: Numbers,
) -> None:  # fmt: skip
    """Add what the loads of the best sequence give and take."""
    grid, places = supplies.grid, supplies.places
    at = len(best) - 1
    while best[at] > 0:
        at = int(np.searchsorted(best, best[at], side="left"))
        chosen = max(
            (k for k in range(len(cycles)) if cycles[k] <= at),
            key=lambda k: best[at - cycles[k]] + earned[k][at],
        )
        family, cap, pieces, run = drum.runs[chosen]
        minute = np.array([drum.start + at, drum.start + at - run - supplies.unload_min])
        out, before = grid.moment(minute)
        offered[places.families + family, out] += cap
        if places.pieces >= 0:
            offered[places.pieces + family, out] += pieces
        offered[places.helpers, out] -= supplies.unload_min
        offered[places.helpers, before] -= supplies.load_min
        at -= cycles[chosen]
