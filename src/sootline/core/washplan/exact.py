"""Which plan of a small call is best, proven? The one file that knows the constraint solver.

Piece by piece: ordered slots in every washer, ordered runs in every cabinet, helpers, stations
and the rack as capacities over time. Nothing is lost by the horizon and the number of slots: in a
plan no worse than the known one a member with priority p is ready by

    T_m = (known objective - sum over the others of priority times shortest chain) / p,

so what counts is over by T = max T_m, and a washer ends at most (T - first start) / shortest
cycle loads by then. Pieces nobody waits for may come after T one by one; that time and those
slots are added. Calls in which something has begun, or with hours without any helper, are left
to the other bounds.
"""

from collections.abc import Callable
from itertools import pairwise
from math import floor

from ortools.sat.python import cp_model

from sootline.core.washplan.earliest import Book
from sootline.core.washplan.exact_plan import Run, Slot, hints, read_plan
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.items import HAND, NEVER, Item
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.shop import Shop, open_shop

MOST_PIECES = 180
Var = cp_model.IntVar
Interval = cp_model.IntervalVar


class Proof:
    """The model of one call, and its solver.

    Args:
        known: a plan there is; none worse is looked for.
        least: what is known that no plan can beat.
    """

    def __init__(self, instance: Instance, known: Plan, least: float = 0.0) -> None:
        self.instance, self.known, self.least = instance, known, least
        self.shop: Shop = open_shop(instance, single=True)
        self.book = Book(self.shop)
        self.model = cp_model.CpModel()
        self.solver = cp_model.CpSolver()
        self._horizons()
        self._build()

    @staticmethod
    def suits(instance: Instance) -> bool:
        """Say whether this call is small and simple enough."""
        begun = instance.begun
        started = begun.minute or begun.loads or begun.prep or begun.hand or begun.dry
        return (
            0 < len(instance.pieces) <= MOST_PIECES
            and not started
            and not instance.dryer_free
            and all(count > 0 for _, _, count in instance.helpers)
            and all(a[1] == b[0] for a, b in pairwise(instance.helpers))
            and instance.helpers[0][0] == 0
        )

    def run(self, tell: Callable[[float], None]) -> Plan | None:
        """Search and prove until stopped; tell every better bound; return a better plan."""
        self.solver.parameters.num_workers = 1
        self.solver.best_bound_callback = tell
        status = self.solver.solve(self.model)
        if status == cp_model.OPTIMAL:
            tell(self.solver.objective_value)
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return None
        better = self.solver.objective_value < self.known.objective
        return read_plan(self, self.solver.value) if better else None

    def stop(self) -> None:
        """End the search; may be called from elsewhere while it runs."""
        self.solver.stop_search()

    # How far time goes -------------------------------------------------------------------------

    def _horizons(self) -> None:
        shop, chains = self.shop, self.book.chains()
        least = sum(p * c for p, c in zip(shop.priority, chains, strict=True))
        self.last = [
            (self.known.objective - least + p * chain) // p if p else NEVER
            for p, chain in zip(shop.priority, chains, strict=True)
        ]
        counted = [last for last, p in zip(self.last, shop.priority, strict=True) if p]
        self.free = [
            i
            for i, item in enumerate(shop.items)
            if not shop.priority[item.member] or shop.stock.get(item.kind, 0) > 0
        ]
        self.end = max([*counted, *shop.release, *(item.early for item in shop.items)], default=0)
        self.slots_end = self.end
        idle = max(shop.idle.values(), default=0)
        for i in self.free:
            item = shop.items[i]
            wash = 0 if item.family == HAND else self._longest(item) + idle
            dry = max(one for one in (item.rack, item.cab) if one < NEVER)
            self.end += item.prep + item.hand + wash + dry + item.inspect
        self.last = [min(last, self.end) for last in self.last]

    def _longest(self, item: Item) -> int:
        return max(self.book.cycle(w, item.family) for w in item.washers)

    def _var(self, low: int, high: int) -> Var:
        return self.model.new_int_var(low, max(low, high), "")

    def _flag(self) -> Var:
        return self.model.new_bool_var("")

    # The model ---------------------------------------------------------------------------------

    def _build(self) -> None:
        items, model = self.shop.items, self.model
        self.helpers: list[Interval] = []
        self.wet = [self._var(self.book.wet[i], self.end) for i in range(len(items))]
        self.prep = [self._var(item.early, self.end) for item in items]
        self.hand = [self._var(item.early, self.end) for item in items]
        self.dry = [self._var(self.book.wet[i], self.end) for i in range(len(items))]
        self.check = [self._var(0, self.end) for _ in items]
        for i, item in enumerate(items):
            self._help(self.prep[i], item.prep)
            self._help(self.check[i], item.inspect)
            model.add(self.dry[i] >= self.wet[i])
        self._washers()
        self._stations()
        self._drying()
        heads = [count for _, _, count in self.instance.helpers]
        closed = [
            (model.new_fixed_size_interval_var(start, min(until, self.end + 1) - start, ""),
             max(heads) - count)
            for start, until, count in self.instance.helpers
            if count < max(heads) and start <= self.end
        ]  # fmt: skip
        blocks = [*((one, 1) for one in self.helpers), *closed]
        model.add_cumulative([one for one, _ in blocks], [n for _, n in blocks], max(heads))
        self._goal()
        for number, value in hints(self, self.known):
            model.add_hint(number, value)

    def _help(self, start: Var, minutes: int, present: Var | None = None) -> None:
        """Let a task take one helper, whether always or only if it is there."""
        if minutes and present is None:
            self.helpers.append(self.model.new_fixed_size_interval_var(start, minutes, ""))
        elif minutes and present is not None:
            one = self.model.new_optional_fixed_size_interval_var(start, minutes, present, "")
            self.helpers.append(one)

    def _washers(self) -> None:
        shop, model = self.shop, self.model
        self.slots: list[list[Slot]] = []
        for w in range(len(shop.machine)):
            mine = [i for i in self.book.to_wash if w in shop.items[i].washers]
            self.slots.append(self._washer(w, mine))
        for i in self.book.to_wash:
            model.add_exactly_one(
                slot.inside[i] for mine in self.slots for slot in mine if i in slot.inside
            )

    def _washer(self, w: int, mine: list[int]) -> list[Slot]:
        """Add the slots of one washer: used ones first, one family each, one after the other."""
        shop, instance, model = self.shop, self.instance, self.model
        if not mine:
            return []
        families = sorted({shop.items[i].family for i in mine})
        cycles = {family: self.book.cycle(w, family) for family in families}
        start = max(self.book.free(w), min(self.book.ready_to_wash(shop.items[i]) for i in mine))
        room = max(0, self.slots_end - start) // min(cycles.values())
        many = min(len(mine), room + sum(i in self.free for i in mine))
        slots: list[Slot] = []
        for _ in range(many):
            slot = Slot(
                start=self._var(start, self.end), out=self._var(start, self.end),
                end=self._var(start, self.end), used=self._flag(),
                families={family: self._flag() for family in families},
                inside={i: self._flag() for i in mine},
            )  # fmt: skip
            self._slot(w, slot, cycles, slots[-1] if slots else None)
            self._help(slot.start, instance.load_min, slot.used)
            model.add(slot.out + instance.unload_min == slot.end).only_enforce_if(slot.used)
            self._help(slot.out, instance.unload_min, slot.used)
            slots.append(slot)
        return slots

    def _slot(self, w: int, slot: Slot, cycles: dict[int, int], before: Slot | None) -> None:
        shop, model = self.shop, self.model
        model.add(sum(slot.families.values()) == slot.used)
        model.add(sum(slot.inside.values()) >= slot.used)
        model.add(slot.end >= slot.start)
        for family, flag in slot.families.items():
            programme = shop.machine[w][family]
            assert programme is not None  # a washer's pieces have a programme there
            inside = {i: x for i, x in slot.inside.items() if shop.items[i].family == family}
            model.add(slot.end >= slot.start + cycles[family]).only_enforce_if(flag)
            model.add(
                sum(shop.items[i].weight * x for i, x in inside.items()) <= programme[0] * flag
            )
            model.add(sum(inside.values()) <= min(programme[2], len(inside)) * flag)
        for i, x in slot.inside.items():
            model.add(slot.start >= self.prep[i] + shop.items[i].prep).only_enforce_if(x)
            model.add(self.wet[i] >= slot.end).only_enforce_if(x)
        if before is not None:
            model.add(slot.start >= before.end)
            model.add_implication(slot.used, before.used)
            for (a, b), minutes in shop.idle.items():
                if a in before.families and b in slot.families:
                    both = [before.families[a], slot.families[b]]
                    model.add(slot.start >= before.end + minutes).only_enforce_if(both)
            for late in shop.late & before.families.keys():
                later = [slot.families[one] for one in shop.late & slot.families.keys()]
                model.add_bool_or([before.families[late].negated(), slot.used.negated(), *later])

    def _stations(self) -> None:
        for s, places in enumerate(self.shop.stations):
            mine = [i for i, item in enumerate(self.shop.items) if item.station == s]
            held = []
            for i in mine:
                item = self.shop.items[i]
                self.model.add(self.hand[i] >= self.prep[i] + item.prep)
                self.model.add(self.wet[i] >= self.hand[i] + item.hand)
                self._help(self.hand[i], item.hand)
                if item.hand:
                    one = self.model.new_fixed_size_interval_var(self.hand[i], item.hand, "")
                    held.append(one)
            self.model.add_cumulative(held, [1] * len(held), places)

    def _drying(self) -> None:
        shop, model = self.shop, self.model
        self.runs = [self._cabinet(units) for units in shop.cabinets]
        hung, taken = [], []
        for i, item in enumerate(shop.items):
            ways = [run.inside[i] for mine in self.runs for run in mine if i in run.inside]
            on_rack = self._flag()
            model.add_exactly_one([on_rack, *ways])
            if item.units > self.instance.rack_units:
                model.add(on_rack == 0)
            model.add(self.check[i] >= self.dry[i] + item.rack).only_enforce_if(on_rack)
            if item.units and item.rack:
                hung.append(
                    model.new_optional_fixed_size_interval_var(self.dry[i], item.rack, on_rack, "")
                )
                taken.append(item.units)
        model.add_cumulative(hung, taken, self.instance.rack_units)

    def _cabinet(self, units: int) -> list[Run]:
        """Add the runs of one cabinet, one after the other; an empty one takes no time."""
        shop, model = self.shop, self.model
        mine = [i for i, item in enumerate(shop.items) if item.cab < NEVER and item.units <= units]
        runs: list[Run] = []
        for _ in mine:
            run = Run(
                start=self._var(0, self.end), end=self._var(0, self.end),
                inside={i: self._flag() for i in mine},
            )  # fmt: skip
            model.add(run.end >= run.start)
            model.add(sum(shop.items[i].units * x for i, x in run.inside.items()) <= units)
            for i, x in run.inside.items():
                model.add(self.dry[i] == run.start).only_enforce_if(x)
                model.add(run.end >= run.start + shop.items[i].cab).only_enforce_if(x)
                model.add(self.check[i] >= run.end).only_enforce_if(x)
            if runs:
                model.add(run.start >= runs[-1].end)
            runs.append(run)
        return runs

    def _goal(self) -> None:
        """Sum priority times ready minute; a spare lets its member not wait for the piece."""
        shop, model = self.shop, self.model
        self.ready = [
            self._var(release, max(release, last))
            for release, last in zip(shop.release, self.last, strict=True)
        ]
        self.covered: dict[int, Var] = {}
        for i, item in enumerate(shop.items):
            wait = model.add(self.ready[item.member] >= self.check[i] + item.inspect)
            if not shop.priority[item.member] or shop.stock.get(item.kind, 0) > 0:
                self.covered[i] = self._flag()
                wait.only_enforce_if(self.covered[i].negated())
        for kind, count in shop.stock.items():
            alike = [
                flag
                for i, flag in self.covered.items()
                if shop.items[i].kind == kind and shop.priority[shop.items[i].member]
            ]
            model.add(sum(alike) <= max(0, count))
        total = sum(p * ready for p, ready in zip(shop.priority, self.ready, strict=True))
        model.add(total <= self.known.objective)
        model.add(total >= floor(self.least))
        model.minimize(total)
