"""Which piece does each rider get, once it is settled who rides?

Given the riders, each place of the outfit is an assignment of its own: the tightest fit in all,
then the pieces that fewest others could use. Riders are served one after another, each by the
cheapest chain of moves, which keeps the total least (successive shortest paths).

Source: R. K. Ahuja, T. L. Magnanti, J. B. Orlin, Network Flows (1993), chapter 9.
"""

from collections import deque
from collections.abc import Mapping, Sequence

from sootline.core.riding.matching.demand import Demand, Need

Seat = tuple[int, int]


def hand_out(demand: Demand, levels: Sequence[int | None]) -> tuple[tuple[int | None, ...], ...]:
    """Say, per seeker and need, from which stock a piece is taken; None is own gear or nothing.

    Args:
        levels: per seeker, the moment from which the person rides, as `match` found it.

    Raises:
        ValueError: these people cannot all be served at these moments.
    """
    askers = _askers(demand)
    desk = _Desk([stock.count for stock in demand.stocks])
    for person, level in enumerate(levels):
        if level is None:
            continue
        for place, need in enumerate(demand.seekers[person].needs):
            if need.own is None or need.own > level:
                desk.serve((person, place), _costs(demand, need, level, askers))
    return tuple(
        tuple(desk.held.get((person, place)) for place in range(len(seeker.needs)))
        for person, seeker in enumerate(demand.seekers)
    )


def _askers(demand: Demand) -> Mapping[int, int]:
    """Count, per stock, the people without own gear whom it fits."""
    askers = dict.fromkeys(range(len(demand.stocks)), 0)
    for seeker in demand.seekers:
        for need in seeker.needs:
            for stock in need.stocks if need.own is None else ():
                askers[stock] += 1
    return askers


def _costs(demand: Demand, need: Need, level: int, askers: Mapping[int, int]) -> dict[int, int]:
    """Rate the stocks a rider may take from: fit first, then how many others could use it."""
    people = len(demand.seekers)
    return {
        stock: misfit * (people * people + 1) + askers[stock]
        for stock, misfit in zip(need.stocks, need.misfits, strict=True)
        if demand.stocks[stock].level <= level
    }


class _Desk:
    """Hands out pieces one rider after another, always at the least total cost so far."""

    def __init__(self, counts: Sequence[int]) -> None:
        self._left = list(counts)
        self._costs: dict[Seat, dict[int, int]] = {}
        self._holders: list[dict[Seat, None]] = [{} for _ in counts]
        self.held: dict[Seat, int] = {}

    def serve(self, seat: Seat, costs: dict[int, int]) -> None:
        """Give one more rider a piece, moving others on where that is cheapest in all."""
        self._costs[seat] = costs
        far, came = self._reach(seat)
        end = min((s for s in far if self._left[s]), key=lambda s: (far[s], s), default=None)
        if end is None:
            raise ValueError(f"no piece is left for {seat}")
        self._left[end] -= 1
        while end is not None:
            mover = came[end]
            before = self.held.get(mover)
            if before is not None:
                del self._holders[before][mover]
            self._holders[end][mover] = None
            self.held[mover] = end
            end = before

    def _reach(self, seat: Seat) -> tuple[dict[int, int], dict[int, Seat]]:
        """Find the cheapest chain from a rider to every stock, and who takes a piece of it."""
        far = dict(self._costs[seat])
        came = dict.fromkeys(far, seat)
        queue = deque(far)
        while queue:
            stock = queue.popleft()
            for holder in self._holders[stock]:
                costs = self._costs[holder]
                for other, cost in costs.items():
                    reach = far[stock] + cost - costs[stock]
                    if other not in far or reach < far[other]:
                        far[other], came[other] = reach, holder
                        queue.append(other)
        return far, came
