"""What can no plan beat?

Everything here is a relaxation at the grain of single pieces, so that it holds for every valid
plan. For one minute t, V(t) is at least the priority of all members that any plan can have ready
by t: each row of `rows` is a resource that the ready members' pieces must have used by then, and
the most priority that fits into one row is a fractional knapsack; the least over the rows counts.

* soonest: sum of p C = sum over t of the priority not ready by t >= sum over t of (P - V(t)).
* deadline: V(by), rounded down, because priorities are whole numbers.
* all-done: the first minute at which every row holds all pieces, and packing on the rack.

Spares enter a row as a credit: the largest needs of each type and size, as many as there are
spares, are added to what is available. Changeovers, late families and what begun steps hold only
take away from what is possible, so leaving them out keeps the bound valid.
"""

from bisect import bisect_right
from collections.abc import Callable
from functools import partial
from math import ceil, floor

from sootline.core.washplan.instance import MOST_MINUTES, Instance
from sootline.core.washplan.packing import rack_minutes
from sootline.core.washplan.plan import Goal
from sootline.core.washplan.rows import Row, Rows, make_rows

_TINY = 1e-6


def bound_of(instance: Instance, *, goal: Goal, by: int) -> float:
    """Return what no plan can beat, in the goal's own measure.

    Args:
        by: the deadline [min]; only the goal deadline reads it.
    """
    rows = make_rows(instance)
    if goal is Goal.ALL_DONE:
        return _all_done(rows)
    most = _Most(rows)
    if goal is Goal.DEADLINE:
        return most(by)
    total = sum(rows.priority)
    end = _first(lambda minute: most(minute) >= total)
    return float(total * end - _area(most, 0, end))


class _Most:
    """V: how much priority can be ready by a minute at most."""

    def __init__(self, rows: Rows) -> None:
        people = sorted(zip(rows.chain, rows.priority, strict=True))
        self.chain = [chain for chain, _ in people]
        self.count = _sums([priority for _, priority in people])
        self.knapsacks = [_Knapsack(row, rows.priority) for row in rows.rows]

    def __call__(self, minute: int) -> int:
        """Return the most priority ready by this minute."""
        most = float(self.count[bisect_right(self.chain, minute)])
        for knapsack in self.knapsacks:
            most = min(most, knapsack.most(minute))
        return floor(most + _TINY)


class _Knapsack:
    """The most priority that fits into one row, parts of members allowed."""

    def __init__(self, row: Row, priority: tuple[int, ...]) -> None:
        self.row = row
        pairs = [(need, p) for need, p in zip(row.need, priority, strict=True) if p]
        pairs.sort(key=lambda pair: pair[0] / pair[1])
        self.used = _sums([need for need, _ in pairs])
        self.value = _sums([p for _, p in pairs])

    def most(self, minute: int) -> float:
        """Return the most priority at this minute."""
        room = self.row.available(minute) + self.row.credit + _TINY
        whole = bisect_right(self.used, room) - 1
        if whole == len(self.used) - 1:
            return self.value[-1]
        part = (room - self.used[whole]) / (self.used[whole + 1] - self.used[whole])
        return self.value[whole] + part * (self.value[whole + 1] - self.value[whole])


def _sums(values: list[float] | list[int]) -> list[float]:
    sums = [0.0]
    for value in values:
        sums.append(sums[-1] + value)
    return sums


def _first(holds: Callable[[int], bool]) -> int:
    """Return the first minute at which something holds that stays true from then on.

    What never holds (nobody there any more) is answered by a minute beyond all plans.
    """
    high = 1
    while high <= MOST_MINUTES and not holds(high):
        high *= 2
    low = -1
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high


def _area(most: Callable[[int], int], start: int, end: int) -> int:
    """Sum V over the minutes from start up to end; V only rises, so equal ends mean constant."""
    total = 0
    open_spans = [(start, end)] if end > start else []
    while open_spans:
        low, high = open_spans.pop()
        first = most(low)
        if high - low == 1 or first == most(high - 1):
            total += (high - low) * first
        else:
            middle = (low + high) // 2
            open_spans += [(low, middle), (middle, high)]
    return total


def _holds(row: Row, need: float, minute: int) -> bool:
    return row.available(minute) >= need


def _all_done(rows: Rows) -> float:
    """Return the first minute by which all pieces can be inspected."""
    least = max(rows.last, default=0)
    for row in (*rows.rows, *rows.whole):
        need = sum(row.need) - _TINY
        least = max(least, _first(partial(_holds, row, need)))
    places = rows.places
    if places:
        busy = rack_minutes(rows.drying, places)
        least = max(least, ceil(rows.first_wet + busy + rows.least_inspect))
    return float(least)
