"""The best of a tiny instance by trying everything; shares nothing with what solves or verifies.

Minute by minute, every set of steps that may start is tried, waiting included. A state is how far
every piece and every washer and cabinet has come; equal states are tried once.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import combinations, product

from sootline.core.washplan import Instance

RAW, PREPPING, PREPARED, DRUM, WASHING_BY_HAND, WET, DRYING, IN_BOX, DRY, INSPECTING, DONE = range(
    11
)
EMPTY, LOADING, RUNNING, WAITING, UNLOADING = range(5)
Pieces = tuple[tuple[int, int], ...]  # stage, minutes left
Washers = tuple[tuple[int, int, tuple[int, ...], int], ...]  # phase, minutes left, pieces, cycle
State = tuple[Pieces, Washers, tuple[int, ...], int]  # pieces, washers, cabinets, minute
FOREVER = 10**9


@dataclass(frozen=True)
class Optimum:
    """The three best values: objective, most priority by the deadline, makespan."""

    soonest: int
    by_deadline: int
    all_done: int


def optimum(instance: Instance, by: int) -> Optimum:
    """Try everything, over every way to hand out the spares."""
    values = [_Trial(instance, covered, by).values() for covered in _coverings(instance)]
    return Optimum(
        min(value[0] for value in values),
        max(value[1] for value in values),
        min(value[2] for value in values),
    )


def _coverings(instance: Instance) -> Iterator[frozenset[int]]:
    choices = []
    for spare in instance.spares:
        alike = [
            n
            for n, piece in enumerate(instance.pieces)
            if (piece.type, piece.size) == (spare.type, spare.size)
        ]
        choices.append([c for k in range(spare.count + 1) for c in combinations(alike, k)])
    for chosen in product(*choices):
        yield frozenset(n for one in chosen for n in one)


class _Trial:
    def __init__(self, instance: Instance, covered: frozenset[int], by: int) -> None:
        self.i, self.covered, self.by = instance, covered, by
        names = [member.id for member in instance.members]
        self.owner = [names.index(piece.member) for piece in instance.pieces]
        self.release = [instance.members[m].release for m in self.owner]
        self.edges = sorted({0, *self.release, *(start for start, _, _ in instance.helpers)})
        self.timed = False
        self.cost = cache(self._cost)
        self.weight = cache(self._weight)
        self.length = cache(self._length)

    def values(self) -> tuple[int, int, int]:
        start: State = (
            tuple((RAW, 0) for _ in self.i.pieces),
            tuple((EMPTY, 0, (), 0) for _ in self.i.washers),
            tuple(0 for _ in self.i.cabinets),
            0,
        )
        costs = self.cost(start), self.length(start)
        self.timed = True
        return costs[0], self.weight(start), costs[1]

    # The three goals ---------------------------------------------------------------------------

    def _unready(self, state: State) -> list[int]:
        pieces, minute = state[0], state[3]
        return [
            m
            for m, member in enumerate(self.i.members)
            if minute < member.release
            or any(
                pieces[n][0] != DONE
                for n in range(len(pieces))
                if self.owner[n] == m and n not in self.covered
            )
        ]

    def _cost(self, state: State) -> int:
        unready = self._unready(state)
        if not unready:
            return 0
        now = sum(self.i.members[m].priority for m in unready)
        waited = self.tick(state)
        best = now * waited[1] + self.cost(waited[0]) if waited else FOREVER
        return min([best, *(self.cost(after) for after in self.starts(state))])

    def _weight(self, state: State) -> int:
        if state[3] > self.by:
            return 0
        unready = self._unready(state)
        now = sum(m.priority for k, m in enumerate(self.i.members) if k not in unready)
        waited = self.tick(state)
        best = max(now, self.weight(waited[0])) if waited else now
        return max([best, *(self.weight(after) for after in self.starts(state))])

    def _length(self, state: State) -> int:
        if all(stage == DONE for stage, _ in state[0]):
            return 0
        waited = self.tick(state)
        best = waited[1] + self.length(waited[0]) if waited else FOREVER
        return min([best, *(self.length(after) for after in self.starts(state))])

    # Time passes -------------------------------------------------------------------------------

    def tick(self, state: State) -> tuple[State, int] | None:
        """Wait until something ends or changes; None if nothing is awaited.

        In a best schedule no start can move earlier, so each falls on such a minute.
        """
        pieces, washers, boxes, minute = state
        lefts = [left for _, left in pieces] + [one[1] for one in washers] + list(boxes)
        steps = [left for left in lefts if left] + [edge - minute for edge in self.edges]
        step = min((one for one in steps if one > 0), default=0)
        if not step:
            return None
        aged = [(stage, max(0, left - step)) for stage, left in pieces]
        for n, (stage, left) in enumerate(aged):
            if left == 0 and pieces[n][1]:
                aged[n] = (self._next(stage), 0)
        drums = list(washers)
        for w, (phase, left, inside, cycle) in enumerate(washers):
            if left > step:
                drums[w] = phase, left - step, inside, cycle
            elif left:
                drums[w] = self._phase_over(phase, inside, cycle, aged)
        later = tuple(max(0, left - step) for left in boxes)
        minute = minute + step if self.timed else min(minute + step, self.edges[-1])
        return (tuple(aged), tuple(drums), later, minute), step

    def _next(self, stage: int) -> int:
        return {
            PREPPING: PREPARED,
            WASHING_BY_HAND: WET,
            DRYING: DRY,
            IN_BOX: DRY,
            INSPECTING: DONE,
        }[stage]

    def _phase_over(
        self, phase: int, inside: tuple[int, ...], cycle: int, pieces: list[tuple[int, int]]
    ) -> tuple[int, int, tuple[int, ...], int]:
        if phase == LOADING:
            return RUNNING, cycle, inside, cycle
        if phase == RUNNING:
            return WAITING, 0, inside, cycle
        for n in inside:
            pieces[n] = (WET, 0)
        return EMPTY, 0, (), 0

    # What may start ----------------------------------------------------------------------------

    def helpers_free(self, state: State, minutes: int) -> bool:
        """Say whether one more task of so many minutes fits under the head count."""
        if minutes == 0:
            return True
        pieces, washers, _, minute = state
        busy = [left for stage, left in pieces if stage in (PREPPING, WASHING_BY_HAND, INSPECTING)]
        busy += [left for phase, left, _, _ in washers if phase in (LOADING, UNLOADING)]
        return all(
            sum(left > later for left in busy) < self._heads(minute + later)
            for later in range(minutes)
        )

    def _heads(self, minute: int) -> int:
        return sum(count for start, end, count in self.i.helpers if start <= minute < end)

    def starts(self, state: State) -> Iterator[State]:
        """Go through every single step that may start in this minute."""
        for n, (stage, _) in enumerate(state[0]):
            if stage == RAW and state[3] >= self.release[n]:
                yield from self._task(state, n, self.i.pieces[n].prep, PREPPING)
            elif stage == PREPARED and self.i.pieces[n].hand_station:
                if not any(one == WASHING_BY_HAND for one, _ in state[0]):
                    yield from self._task(state, n, self.i.pieces[n].hand_min, WASHING_BY_HAND)
            elif stage == DRY:
                yield from self._task(state, n, self.i.pieces[n].inspect, INSPECTING)
            elif stage == WET:
                yield from self._hang(state, n)
        yield from self._loads(state)
        yield from self._runs(state)

    def _put(self, state: State, new: dict[int, tuple[int, int]]) -> Pieces:
        return tuple(new.get(n, old) for n, old in enumerate(state[0]))

    def _task(self, state: State, n: int, minutes: int, stage: int) -> Iterator[State]:
        if self.helpers_free(state, minutes):
            entry = (stage, minutes) if minutes else (self._next(stage), 0)
            yield self._put(state, {n: entry}), *state[1:]

    def _hang(self, state: State, n: int) -> Iterator[State]:
        used = sum(
            self.i.pieces[k].units for k, (stage, _) in enumerate(state[0]) if stage == DRYING
        )
        if used + self.i.pieces[n].units <= self.i.rack_units:
            yield self._put(state, {n: (DRYING, self.i.pieces[n].dry_rack)}), *state[1:]

    def _loads(self, state: State) -> Iterator[State]:
        for w, (phase, _, inside, cycle) in enumerate(state[1]):
            if phase == WAITING and self.helpers_free(state, self.i.unload_min):
                drum = (UNLOADING, self.i.unload_min, inside, cycle)
                pieces = state[0]
                if self.i.unload_min == 0:
                    drum = (EMPTY, 0, (), 0)
                    pieces = self._put(state, dict.fromkeys(inside, (WET, 0)))
                yield pieces, self._with(state, w, drum), *state[2:]
            if phase == EMPTY and self.helpers_free(state, self.i.load_min):
                yield from self._fill(state, w)

    def _fill(self, state: State, w: int) -> Iterator[State]:
        for family, run in self.i.washers[w].programmes.items():
            can = [
                n
                for n, (stage, _) in enumerate(state[0])
                if stage == PREPARED
                and self.i.pieces[n].hand_station is None
                and self.i.pieces[n].family == family
            ]
            for size in range(1, len(can) + 1):
                for inside in combinations(can, size):
                    if sum(self.i.pieces[n].weight for n in inside) <= run.cap:
                        first = (
                            (LOADING, self.i.load_min) if self.i.load_min else (RUNNING, run.min)
                        )
                        pieces = self._put(state, dict.fromkeys(inside, (DRUM, 0)))
                        yield pieces, self._with(state, w, (*first, inside, run.min)), *state[2:]

    def _with(self, state: State, w: int, drum: tuple[int, int, tuple[int, ...], int]) -> Washers:
        return tuple(drum if k == w else old for k, old in enumerate(state[1]))

    def _runs(self, state: State) -> Iterator[State]:
        for c, left in enumerate(state[2]):
            if left:
                continue
            can = [
                n
                for n, (stage, _) in enumerate(state[0])
                if stage == WET and self.i.pieces[n].dry_cab is not None
            ]
            for size in range(1, len(can) + 1):
                for inside in combinations(can, size):
                    if sum(self.i.pieces[n].units for n in inside) <= self.i.cabinets[c].units:
                        minutes = max(self.i.pieces[n].dry_cab or 0 for n in inside)
                        boxes = tuple(minutes if k == c else old for k, old in enumerate(state[2]))
                        pieces = self._put(state, dict.fromkeys(inside, (IN_BOX, minutes)))
                        yield pieces, state[1], boxes, state[3]
