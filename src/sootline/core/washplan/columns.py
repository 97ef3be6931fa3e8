"""Which sequence of loads or runs earns most at given prices? Exactly, to the minute."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sootline.core.washplan.supply import Box, Drum, Supplies

Numbers = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True)
class _Column:
    """One kind of load or run: its minutes, what it earns by the minute it ends."""

    cycle: int
    gain: Numbers


def best_columns(supplies: Supplies, flat: Numbers, tails: Numbers) -> tuple[float, Numbers]:
    """Find what washers and cabinets can earn at most, and what that adds to the resources.

    Args:
        flat: per resource and moment its price; tails: the price of a unit that is there from
            then on; both with a last column of nothing.
    """
    places, grid = supplies.places, supplies.grid
    total, offered = 0.0, np.zeros((places.count, grid.moments + 1))
    for drum in supplies.drums:
        if drum.runs:
            total += _wash(supplies, drum, tails, offered)
    for box in supplies.cabinets:
        if places.runs and flat[places.boxes :].any():
            total += _dry(supplies, box, flat, offered)
    offered[: places.rack] = np.cumsum(offered[: places.rack], axis=1)
    return total, offered[:, :-1]


def _wash(supplies: Supplies, drum: Drum, tails: Numbers, offered: Numbers) -> float:
    """Find the best sequence of loads of one washer."""
    grid, places = supplies.grid, supplies.places
    ends = np.arange(drum.start, max(int(grid.minutes[-1]), drum.start) + 1, dtype=np.int64)
    out, columns = grid.moment(ends), []
    for family, cap, pieces, run in drum.runs:
        before = grid.moment(ends - run - supplies.unload_min)
        gain = cap * tails[places.families + family, out]
        if places.pieces >= 0:
            gain = gain + pieces * tails[places.pieces + family, out]
        gain = gain - supplies.unload_min * tails[places.helpers, out]
        gain = gain - supplies.load_min * tails[places.helpers, before]
        cycle = supplies.load_min + run + supplies.unload_min
        columns.append(_Column(cycle=cycle, gain=gain))
    best = _best(columns, len(ends))
    for chosen, at in _trace_back(columns, best):
        family, cap, pieces, run = drum.runs[chosen]
        minute = np.array([drum.start + at, drum.start + at - run - supplies.unload_min])
        out, before = grid.moment(minute)
        offered[places.families + family, out] += cap
        if places.pieces >= 0:
            offered[places.pieces + family, out] += pieces
        offered[places.helpers, out] -= supplies.unload_min
        offered[places.helpers, before] -= supplies.load_min
    return float(best[-1])


def _dry(supplies: Supplies, box: Box, flat: Numbers, offered: Numbers) -> float:
    """Find the best sequence of runs of one cabinet."""
    grid, places = supplies.grid, supplies.places
    last = max(int(grid.minutes[-1]), box.start) + places.runs[-1]
    ends = np.arange(box.start, last + 1, dtype=np.int64)
    earned = box.units * np.cumsum(flat[places.boxes :], axis=0)
    columns = [
        _Column(cycle=minutes, gain=earned[row, grid.moment(ends - minutes)])
        for row, minutes in enumerate(places.runs)
    ]
    best = _best(columns, len(ends))
    for chosen, at in _trace_back(columns, best):
        start = np.array([box.start + at - columns[chosen].cycle])
        offered[places.boxes : places.boxes + chosen + 1, grid.moment(start)[0]] += box.units
    return float(best[-1])


def _best(columns: list[_Column], ends: int) -> Numbers:
    """Return what can be earned by every minute; all minutes of a block depend on earlier ones."""
    best = np.zeros(ends)
    block = max(1, min(column.cycle for column in columns))
    for low in range(block, ends, block):
        high = min(low + block, ends)
        here = np.full(high - low, best[low - 1])
        for column in columns:
            first = max(low, column.cycle)
            if first < high:
                before = best[first - column.cycle : high - column.cycle]
                with_it = before + column.gain[first:high]
                here[first - low :] = np.maximum(here[first - low :], with_it)
        best[low:high] = np.maximum.accumulate(here)
    return best


def _trace_back(columns: list[_Column], best: Numbers) -> list[tuple[int, int]]:
    """List what the best sequence is made of: which column, and at which minute it ends."""
    found, at = [], len(best) - 1
    while best[at] > 0:
        at = int(np.searchsorted(best, best[at], side="left"))
        chosen = max(
            (k for k in range(len(columns)) if columns[k].cycle <= at),
            key=lambda k: best[at - columns[k].cycle] + columns[k].gain[at],
        )
        found.append((chosen, at))
        at -= columns[chosen].cycle
    return found
