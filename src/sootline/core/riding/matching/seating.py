"""Can these people all be served at once? Kept true while one is added or taken back.

Given who rides, each place of the outfit is a matter of its own, because no spare fills two places.
So a person is added by finding, place by place, a free piece, or a chain of people who each move on
to another piece that also fits them (an augmenting path).
"""

from collections import deque

from sootline.core.riding.matching.kernel import Mode

Seat = tuple[int, int]


class Seating:
    """A feasible handing-out of contested stocks within one group."""

    def __init__(self, left: dict[int, int]) -> None:
        self._left = left
        self._holders: dict[int, dict[Seat, None]] = {stock: {} for stock in left}
        self._options: dict[Seat, tuple[int, ...]] = {}

    def add(self, person: int, mode: Mode) -> bool:
        """Serve a person in this mode too, if nobody served so far loses out."""
        for place, want in enumerate(mode.wants):
            if not self._seat((person, place), want):
                self._unseat_all(person, place)
                return False
        return True

    def remove(self, person: int, mode: Mode) -> None:
        """Take back what a person was given."""
        self._unseat_all(person, len(mode.wants))

    def _unseat_all(self, person: int, places: int) -> None:
        for place in range(places):
            seat = (person, place)
            stock = next(s for s in self._options.pop(seat) if seat in self._holders[s])
            del self._holders[stock][seat]
            self._left[stock] += 1

    def _seat(self, seat: Seat, want: tuple[int, ...]) -> bool:
        """Find the shortest chain that ends in a free piece, and move everybody along it."""
        came: dict[int, tuple[Seat, int | None]] = dict.fromkeys(want, (seat, None))
        queue = deque(want)
        while queue:
            stock = queue.popleft()
            if self._left[stock]:
                self._move(stock, came)
                self._options[seat] = want
                return True
            for holder in self._holders[stock]:
                for other in self._options[holder]:
                    if other not in came:
                        came[other] = (holder, stock)
                        queue.append(other)
        return False

    def _move(self, stock: int, came: dict[int, tuple[Seat, int | None]]) -> None:
        self._left[stock] -= 1
        while True:
            seat, before = came[stock]
            self._holders[stock][seat] = None
            if before is None:
                return
            del self._holders[before][seat]
            stock = before
