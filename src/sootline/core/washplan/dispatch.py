"""When does each step happen if the loads, the cabinet runs and the spares are decided?

An event simulation: unloading and loading come first, otherwise the task that has to start
soonest for its member's target. It always ends, because loads keep one order per washer and runs
one order per cabinet, and nothing that washes waits for anything that dries.
"""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass, field
from heapq import heapify, heappop, heappush

from sootline.core.washplan.shop import HAND, NEVER, Shop, Stage, busy_after, cabinet_free

DrumLoad = tuple[int, tuple[int, ...]]  # family, items
FREE, LOADING, RUNNING, WAITING, UNLOADING = range(5)
# Kinds of events; at one minute they are handled in any order, before anything is started.
WAKE, PREPARED, LOADED, WASHED, UNLOADED, BY_HAND, DRY, INSPECTED, TASK_END = range(9)


@dataclass(frozen=True, kw_only=True)
class Choice:
    """What is decided before the clock runs.

    Args:
        loads: per washer its loads in order.
        runs: per cabinet its runs in order, each with its items; all others dry on the rack.
        covered: items for which a spare is handed out.
        target: per member the minute aimed at; the earlier, the sooner its tasks come.
        reserve: keep the last free helper for a drum that ends soon.
    """

    loads: tuple[tuple[DrumLoad, ...], ...]
    runs: tuple[tuple[tuple[int, ...], ...], ...]
    covered: frozenset[int]
    target: tuple[int, ...]
    reserve: bool = False


@dataclass(kw_only=True)
class Drum:
    """A load as it happened: its number among the begun ones or -1, and its five minutes."""

    washer: int
    family: int
    items: tuple[int, ...]
    begun: int = -1
    load_start: int = 0
    prog_start: int = 0
    prog_end: int = 0
    unload_start: int = 0
    unload_end: int = 0


@dataclass(kw_only=True)
class Timetable:
    """Start minutes per item (-1: the step is begun, or takes no time), and what follows."""

    prep: list[int]
    hand: list[int]
    dry: list[int]
    dry_end: list[int]
    inspect: list[int]
    done: list[int]
    drums: list[Drum] = field(default_factory=list)
    ready: list[int] = field(default_factory=list)
    objective: int = 0
    makespan: int = 0


def dispatch(shop: Shop, choice: Choice) -> Timetable | None:
    """Run the wash room through one choice; None if helpers' hours end before the work does."""
    return _Room(shop, choice).run()


class _Room:
    """The state of the wash room at one minute; lives for one simulation."""

    def __init__(self, shop: Shop, choice: Choice) -> None:
        self.shop, self.choice, self.items = shop, choice, shop.items
        n = len(shop.items)
        self.table = Timetable(
            prep=[-1] * n, hand=[-1] * n, dry=[-1] * n, dry_end=[-1] * n,
            inspect=[-1] * n, done=[-1] * n,
        )  # fmt: skip
        self.minute = shop.now
        self.events: list[tuple[int, int, int]] = []
        self.tasks: list[tuple[int, int, int]] = []
        self.left = n
        self._open_places()
        self._open_people()
        self._urgency()
        self._open_washers()
        self._open_items()
        heapify(self.events)

    # How the room looks at the start -----------------------------------------------------------

    def _open_places(self) -> None:
        shop, choice = self.shop, self.choice
        self.run_of = [(-1, -1)] * len(self.items)
        self.missing = [[len(run) for run in runs] for runs in choice.runs]
        for c, runs in enumerate(choice.runs):
            for r, run in enumerate(runs):
                for item in run:
                    self.run_of[item] = c, r
        self.next_run = [0] * len(shop.cabinets)
        self.cabinet_free = cabinet_free(shop)
        self.events += [(end, WAKE, 0) for end in self.cabinet_free]
        self.rack_left = shop.instance.rack_units
        self.rack_queue: list[tuple[int, int]] = []

    def _open_people(self) -> None:
        shop = self.shop
        self.ends, stations, rack = busy_after(shop)
        self.events += [(end, TASK_END, 0) for end in self.ends]
        self.station_free = list(shop.stations)
        self.station_queue: list[list[tuple[int, int]]] = [[] for _ in shop.stations]
        for station, end in stations:
            self.station_free[station] -= 1
            self.events.append((end, WAKE, -2 - station))
        self.rack_back: dict[int, int] = {}
        for units, end in rack:
            self.rack_left -= units
            self.rack_back[end] = self.rack_back.get(end, 0) + units
            self.events.append((end, WAKE, -1))
        self.shifts = shop.instance.helpers
        self.edges = sorted({edge for start, end, _ in self.shifts for edge in (start, end)})
        self.heads = [
            sum(count for start, end, count in self.shifts if start <= edge < end)
            for edge in self.edges
        ]
        self.events += [(edge, WAKE, 0) for edge in self.edges if edge > self.minute]

    def _open_washers(self) -> None:
        shop = self.shop
        self.state = [FREE] * len(shop.machine)
        self.free_at = list(shop.free)
        self.next_load = [0] * len(shop.machine)
        self.last = list(shop.last)
        self.drum: list[Drum] = [
            Drum(washer=w, family=HAND, items=()) for w in range(len(shop.machine))
        ]
        self.prog_end = [NEVER] * len(shop.machine)
        for w, number in enumerate(shop.open_load):
            if number < 0:
                self.free_at[w] = max(self.free_at[w], shop.emptied[w] + self._idle(w))
                self.events.append((self.free_at[w], WAKE, 0))
                continue
            load = shop.instance.begun.loads[number]
            inside = tuple(i for i, item in enumerate(self.items) if item.drum == number)
            self.drum[w] = Drum(
                washer=w, family=shop.last[w], items=inside, begun=number,
                load_start=load.load_start, prog_start=load.prog_start, prog_end=load.prog_end,
            )  # fmt: skip
            self.state[w] = RUNNING
            self.prog_end[w] = load.prog_end
            self.events.append((max(self.minute, load.prog_end), WASHED, w))

    def _urgency(self) -> None:
        """Work back from the targets to the latest start of every step."""
        items, choice = self.items, self.choice
        last = max(choice.target, default=0)
        self.due_inspect, self.due_dry, self.due_wash = [], [], []
        for i, item in enumerate(items):
            target = last if i in choice.covered else choice.target[item.member]
            due = target - item.inspect
            self.due_inspect.append(due)
            due -= item.rack if self.run_of[i][0] < 0 else item.cab
            self.due_dry.append(due)
            self.due_wash.append(due - item.hand)
        self.unprepared: list[list[int]] = []
        self.load_of: dict[int, tuple[int, int]] = {}
        for w, loads in enumerate(choice.loads):
            due = NEVER
            self.unprepared.append([len(inside) for _, inside in loads])
            for k in range(len(loads) - 1, -1, -1):
                family, inside = loads[k]
                due = min([due, *(self.due_dry[i] for i in inside)])
                programme = self.shop.machine[w][family]
                assert programme is not None  # loads are formed for machines that fit
                due -= programme[1] + self.shop.instance.load_min + self.shop.instance.unload_min
                for i in inside:
                    self.due_wash[i] = due
                    self.load_of[i] = w, k

    def _open_items(self) -> None:
        now = self.minute
        for i, item in enumerate(self.items):
            at = max(now, item.since)
            if item.stage == Stage.RAW:
                self.events.append((item.early, WAKE, i + 1))
            elif item.stage == Stage.PREPARED:
                self.events.append((max(at, item.early), PREPARED, i))
            elif item.stage == Stage.WET:
                self.events.append((at, BY_HAND, i))
            elif item.stage == Stage.DRY:
                self.table.dry_end[i] = item.since
                self.events.append((at, DRY, i))
            elif item.stage == Stage.DONE:
                self.table.done[i] = item.since
                self.left -= 1

    # The clock ---------------------------------------------------------------------------------

    def run(self) -> Timetable | None:
        """Handle events minute by minute until every item is inspected."""
        events = self.events
        handle = (
            self._wake, self._prepared, self._loaded, self._washed, self._unloaded, self._wet,
            self._dry, self._inspected, self._task_end,
        )  # fmt: skip
        while self.left or any(state != FREE for state in self.state):
            if not events:
                return None
            self.minute = events[0][0]
            while events and events[0][0] == self.minute:
                _, kind, one = heappop(events)
                handle[kind](one)
            self._start_drying()
            self._start_tasks()
        return self._sums()

    def _sums(self) -> Timetable:
        table, shop = self.table, self.shop
        ready = list(shop.release)
        for i, item in enumerate(self.items):
            if i not in self.choice.covered and table.done[i] > ready[item.member]:
                ready[item.member] = table.done[i]
        table.ready = ready
        table.objective = sum(p * c for p, c in zip(shop.priority, ready, strict=True))
        table.makespan = max(table.done, default=0)
        return table

    # What an event does ------------------------------------------------------------------------

    def _wake(self, one: int) -> None:
        if one > 0:
            item = self.items[one - 1]
            if item.prep == 0:
                self._prepared(one - 1)
            else:
                heappush(self.tasks, (self.due_wash[one - 1], PREPARED, one - 1))
        elif one == -1:
            self.rack_left += self.rack_back.pop(self.minute, 0)
        elif one < -1:
            self.station_free[-2 - one] += 1

    def _task_end(self, _: int) -> None:
        self.ends.remove(self.minute)

    def _prepared(self, i: int) -> None:
        item = self.items[i]
        if item.family != HAND:
            w, k = self.load_of[i]
            self.unprepared[w][k] -= 1
        elif item.hand == 0:
            self._wet(i)
        else:
            heappush(self.station_queue[item.station], (self.due_wash[i], i))

    def _loaded(self, w: int) -> None:
        self.state[w] = RUNNING

    def _washed(self, w: int) -> None:
        self.state[w] = WAITING
        self.prog_end[w] = NEVER

    def _unloaded(self, w: int) -> None:
        drum = self.drum[w]
        self.state[w] = FREE
        self.table.drums.append(drum)
        self.last[w] = drum.family
        self.free_at[w] = max(self.shop.free[w], self.minute + self._idle(w))
        heappush(self.events, (self.free_at[w], WAKE, 0))
        for i in drum.items:
            self._wet(i)

    def _idle(self, w: int) -> int:
        """Return the changeover minutes from the washer's last load to its next."""
        loads, k = self.choice.loads[w], self.next_load[w]
        return self.shop.idle.get((self.last[w], loads[k][0]), 0) if k < len(loads) else 0

    def _wet(self, i: int) -> None:
        if self.items[i].family == HAND and self.table.hand[i] >= 0:
            self.station_free[self.items[i].station] += 1
        c, r = self.run_of[i]
        if c >= 0:
            self.missing[c][r] -= 1
        else:
            heappush(self.rack_queue, (self.due_dry[i], i))

    def _dry(self, i: int) -> None:
        item = self.items[i]
        if self.table.dry[i] >= 0 and self.run_of[i][0] < 0:
            self.rack_left += item.units
        if item.inspect == 0:
            self.table.done[i] = self.table.dry_end[i]
            self.left -= 1
        else:
            heappush(self.tasks, (self.due_inspect[i], INSPECTED, i))

    def _inspected(self, i: int) -> None:
        self.table.done[i] = self.minute
        self.left -= 1

    # What starts now ---------------------------------------------------------------------------

    def _start_drying(self) -> None:
        for c, runs in enumerate(self.choice.runs):
            r = self.next_run[c]
            if r < len(runs) and self.cabinet_free[c] <= self.minute and not self.missing[c][r]:
                end = self.minute + max(self.items[i].cab for i in runs[r])
                self.next_run[c] += 1
                self.cabinet_free[c] = end
                heappush(self.events, (end, WAKE, 0))
                for i in runs[r]:
                    self._hang(i, end)
        queue, skipped = self.rack_queue, list[tuple[int, int]]()
        # Something small may pass what does not fit yet, but the search stays short.
        while queue and len(skipped) < 4:
            due, i = heappop(queue)
            item = self.items[i]
            if item.units <= self.rack_left:
                self.rack_left -= item.units
                self._hang(i, self.minute + item.rack)
            else:
                skipped.append((due, i))
        for one in skipped:
            heappush(queue, one)

    def _hang(self, i: int, end: int) -> None:
        self.table.dry[i] = self.minute
        self.table.dry_end[i] = end
        heappush(self.events, (end, DRY, i))

    def _may(self, minutes: int) -> bool:
        """Say whether a helper is free now and for the whole task."""
        edge = bisect_right(self.edges, self.minute) - 1
        if edge < 0 or len(self.ends) >= self.heads[edge]:
            return False
        # Whenever the head count changes during the task, those still busy and this one count.
        later = range(edge + 1, bisect_left(self.edges, self.minute + minutes))
        return all(sum(end > self.edges[k] for end in self.ends) < self.heads[k] for k in later)

    def _occupy(self, minutes: int, kind: int, one: int) -> None:
        end = self.minute + minutes
        heappush(self.events, (end, kind, one))
        if minutes:
            self.ends.append(end)
            heappush(self.events, (end, TASK_END, 0))

    def _start_tasks(self) -> None:
        for w, state in enumerate(self.state):
            if state == WAITING:
                self._unload(w)
        for w, state in enumerate(self.state):
            if state == FREE and self.minute >= self.free_at[w]:
                self._load(w)
        while self._start_best():
            pass

    def _unload(self, w: int) -> None:
        minutes = self.shop.instance.unload_min
        if minutes and not self._may(minutes):
            return
        self.state[w] = UNLOADING
        self.drum[w].unload_start = self.minute
        self.drum[w].unload_end = self.minute + minutes
        self._occupy(minutes, UNLOADED, w)

    def _load(self, w: int) -> None:
        k, loads = self.next_load[w], self.choice.loads[w]
        minutes = self.shop.instance.load_min
        if k >= len(loads) or self.unprepared[w][k] or (minutes and not self._may(minutes)):
            return
        self.next_load[w] += 1
        family, inside = loads[k]
        programme = self.shop.machine[w][family]
        assert programme is not None  # loads are formed for machines that fit
        start = self.minute + minutes
        self.drum[w] = Drum(
            washer=w, family=family, items=inside,
            load_start=self.minute, prog_start=start, prog_end=start + programme[1],
        )  # fmt: skip
        self.state[w] = LOADING
        self.prog_end[w] = start + programme[1]
        self._occupy(minutes, LOADED, w)
        heappush(self.events, (start + programme[1], WASHED, w))

    def _start_best(self) -> bool:
        """Start the most urgent task that may start; False if none may."""
        if not self._may(1):
            return False
        best: tuple[int, int, int] | None = self.tasks[0] if self.tasks else None
        for station, queue in enumerate(self.station_queue):
            if queue and self.station_free[station]:
                due, i = queue[0]
                if best is None or due < best[0]:
                    best = due, BY_HAND, i
        if best is None:
            return False
        _, kind, i = best
        item = self.items[i]
        minutes = {PREPARED: item.prep, BY_HAND: item.hand, INSPECTED: item.inspect}[kind]
        if not self._may(minutes) or (self.choice.reserve and self._drum_comes_first(minutes)):
            return False
        if kind == BY_HAND:
            heappop(self.station_queue[item.station])
            self.station_free[item.station] -= 1
            self.table.hand[i] = self.minute
        else:
            heappop(self.tasks)
            (self.table.prep if kind == PREPARED else self.table.inspect)[i] = self.minute
        self._occupy(minutes, kind, i)
        return True

    def _drum_comes_first(self, minutes: int) -> bool:
        """Say whether a drum ends within the task and would find nobody to empty it."""
        comes = min(self.prog_end, default=NEVER)
        if not self.minute < comes < self.minute + minutes:
            return False
        edge = bisect_right(self.edges, self.minute) - 1
        return sum(end > comes for end in self.ends) + 1 >= self.heads[edge]
