"""What is there of every resource by every moment, and which loads earn most at given prices?"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sootline.core.washplan.earliest import Book
from sootline.core.washplan.items import NEVER, Stage
from sootline.core.washplan.shop import cabinet_free
from sootline.core.washplan.timegrid import TimeGrid

Numbers = NDArray[np.float64]
MOST_RUNS = 6
CYCLE = 60.0  # minutes; resources are scaled to what is there in about one programme


@dataclass(frozen=True, kw_only=True)
class Drum:
    """One washer: from when on it may load, and per family (number, cap, pieces, minutes)."""

    start: int
    runs: tuple[tuple[int, int, int, int], ...]


@dataclass(frozen=True, kw_only=True)
class Box:
    """One drying cabinet: how many units it holds, and from when on it may be filled."""

    start: int
    units: int


@dataclass(frozen=True, kw_only=True)
class Places:
    """Which row of the prices belongs to what.

    All rows before the rack's count what there is up to a moment. The rack's counts unit minutes
    between two moments. Those of the cabinets count units of runs that begin there and last at
    least so long.

    Args:
        families, pieces: rows of the first family's weight and piece count, -1 for none.
        runs: least minutes of a run, rising, one for each row of the cabinets.
    """

    families: int
    pieces: int
    helpers: int
    stations: int
    rack: int
    boxes: int
    runs: tuple[int, ...]

    @property
    def count(self) -> int:
        """How many rows there are."""
        return self.boxes + len(self.runs)


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
    cabinets: tuple[Box, ...]
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
        rack=rack, boxes=rack + 1, runs=_run_lengths(book),
    )  # fmt: skip


def _run_lengths(book: Book) -> tuple[int, ...]:
    """List the lengths of run that are told apart; a few stand for all, from below."""
    most = max(book.shop.cabinets, default=-1)
    items = [book.shop.items[i] for i in book.to_dry]
    known = sorted({one.cab for one in items if 0 < one.cab < NEVER and 0 < one.units <= most})
    if len(known) <= MOST_RUNS:
        return tuple(known)
    return tuple(known[k * len(known) // MOST_RUNS] for k in range(MOST_RUNS))


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
    hanging = grid.lengths - grid.before(np.array([float(wet)]))[0]
    fixed[places.rack] = instance.rack_units * hanging
    scale[places.rack] = grid.step * max(1, instance.rack_units)
    scale[places.boxes :] = max(1, *shop.cabinets, 1)
    drums = tuple(_drum(book, w) for w in range(len(shop.machine)))
    for drum in drums:
        for family, cap, pieces, _ in drum.runs:
            scale[places.families + family] = max(scale[places.families + family], cap)
            if places.pieces >= 0:
                scale[places.pieces + family] = max(scale[places.pieces + family], pieces)
    return Supplies(
        grid=grid, places=places, fixed=fixed, scale=scale, drums=drums,
        spares=np.array([float(shop.stock[kind]) for kind in kinds]),
        cabinets=tuple(
            Box(start=max(free, wet), units=units)
            for free, units in zip(cabinet_free(shop), shop.cabinets, strict=True)
        ),
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
