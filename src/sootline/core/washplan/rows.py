"""What must the pieces of a ready member have used by a minute, and how much of it was there?

A row belongs to a resource and a tail: every piece that after this resource still needs at least
the tail must have had its share of the resource by t minus the tail.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property

from sootline.core.washplan.earliest import Book
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.items import HAND, NEVER, Item, Stage
from sootline.core.washplan.packing import attainable
from sootline.core.washplan.shop import open_shop

_MOST_MARKS = 20_000


@dataclass(frozen=True, kw_only=True)
class Row:
    """One resource at one tail.

    Args:
        need: per member, what its pieces use.
        credit: what spares may take off the needs at most.
        available: how much of the resource there is before minute t.
    """

    need: tuple[float, ...]
    credit: float
    available: Callable[[int], float]


@dataclass(frozen=True, kw_only=True)
class Rows:
    """All rows of an instance, with the plain chains.

    Args:
        chain: per member the earliest minute of being ready, whatever spares can cover left out.
        last: the earliest minute at which each piece can be inspected.
        whole: rows that only hold for all pieces together, members' needs in one.
        places: how many pieces can dry at once, if all take the same units and there is no
            cabinet for them, else 0.
        drying: minutes of the pieces that still have to dry.
    """

    priority: tuple[int, ...]
    chain: tuple[int, ...]
    last: tuple[int, ...]
    rows: tuple[Row, ...]
    whole: tuple[Row, ...]
    places: int
    drying: tuple[int, ...]
    first_wet: int
    least_inspect: int


def make_rows(instance: Instance) -> Rows:
    """Collect every row of an instance."""
    book = _Counter(open_shop(instance, single=True))
    shop = book.shop
    return Rows(
        priority=shop.priority,
        chain=tuple(book.chains()),
        last=tuple(book.done(i) for i in range(len(shop.items))),
        rows=(*book.washers(), *book.helpers(), *book.stations(), *book.hanging()),
        whole=tuple(book.whole_loads()),
        places=book.places,
        drying=tuple(shop.items[i].rack for i in book.to_dry if shop.items[i].units),
        first_wet=min((book.wet[i] for i in book.to_dry if shop.items[i].units), default=0),
        least_inspect=min((shop.items[i].inspect for i in book.to_dry), default=0),
    )


class _Counter(Book):
    """Adds up uses per resource and tail."""

    def _row(self, uses: Iterable[tuple[int, float]], available: Callable[[int], float]) -> Row:
        """Sum uses by member; what is covered for good counts nowhere."""
        need = [0.0] * len(self.shop.release)
        of_piece: dict[int, float] = {}
        for i, use in uses:
            if self.shop.items[i].pieces[0].id not in self.shop.given:
                of_piece[i] = of_piece.get(i, 0.0) + use
        by_kind: dict[tuple[str, str], list[float]] = {}
        for i, use in of_piece.items():
            item = self.shop.items[i]
            need[item.member] += use
            by_kind.setdefault(item.kind, []).append(use)
        credit = sum(
            sum(sorted(by_kind[kind], reverse=True)[:count])
            for kind, count in self.shop.stock.items()
            if kind in by_kind and count > 0
        )
        return Row(need=tuple(need), credit=credit, available=available)

    # Washers -----------------------------------------------------------------------------------

    def _share(self, item: Item) -> float:
        """Return the least washer minutes the piece takes, its load as full as can be."""
        return min(
            item.weight / max(1, self.fullest[w, item.family]) * self.cycle(w, item.family)
            for w in item.washers
        )

    @cached_property
    def washer_minutes(self) -> Callable[[int], float]:
        """How many minutes of whole cycles all washers together can have done before a minute."""
        starts: list[tuple[int, list[int]]] = []
        for w in range(len(self.shop.machine)):
            mine = [i for i in self.to_wash if w in self.shop.items[i].washers]
            if mine:
                items = [self.shop.items[i] for i in mine]
                start = max(self.free(w), min(self.ready_to_wash(item) for item in items))
                starts.append((start, sorted({self.cycle(w, item.family) for item in items})))
        marks = [attainable(cycles, _MOST_MARKS) for _, cycles in starts]

        def available(minute: int) -> float:
            total = 0
            for (start, _), sums in zip(starts, marks, strict=True):
                room = max(0, minute - start)
                if room > _MOST_MARKS:
                    total += room
                else:
                    total += (sums & ((1 << (room + 1)) - 1)).bit_length() - 1
            return total

        return available

    def washers(self) -> list[Row]:
        """List washer minutes, one row per tail of the pieces that go through a drum."""
        rows = []
        for tail in sorted({self.tail(self.shop.items[i]) for i in self.to_wash}):
            uses = [
                (i, self._share(self.shop.items[i]))
                for i in self.to_wash
                if self.tail(self.shop.items[i]) >= tail
            ]
            rows.append(self._row(uses, _delayed(self.washer_minutes, tail)))
        return rows

    def whole_loads(self) -> list[Row]:
        """Count whole loads per family; that holds only for all pieces together."""
        minutes, tails = 0, [self.tail(self.shop.items[i]) for i in self.to_wash]
        for family in range(len(self.shop.families)):
            here = [key for key in self.fullest if key[1] == family]
            if here:
                weight = sum(
                    self.shop.items[i].weight
                    for i in self.to_wash
                    if self.shop.items[i].family == family
                )
                fullest = max(self.fullest[key] for key in here)
                # Pieces of no weight still need a load.
                loads = -(-weight // fullest) if fullest else 1
                minutes += loads * min(self.cycle(w, family) for w, _ in here)
        available = _delayed(self.washer_minutes, min(tails, default=0))
        return [Row(need=(float(minutes),), credit=0.0, available=available)]

    # People, stations, places to dry ------------------------------------------------------------

    def helpers(self) -> list[Row]:
        """List helper minutes, one row per tail."""
        instance, items = self.instance, self.shop.items
        steps: list[tuple[int, int, float]] = []  # piece, tail after the step, minutes
        for i, item in enumerate(items):
            if item.stage < Stage.DONE:
                steps.append((i, 0, item.inspect))
            if item.stage > Stage.PREPARED:
                continue
            tail = self.tail(item)
            wash = item.hand
            if item.family != HAND:
                fullest = max(self.fullest[w, item.family] for w in item.washers)
                share = item.weight / max(1, fullest)
                steps.append((i, tail, share * (instance.load_min + instance.unload_min)))
                wash = min(self.cycle(w, item.family) for w in item.washers)
            else:
                steps.append((i, tail, item.hand))
            if item.stage is Stage.RAW:
                steps.append((i, tail + wash, item.prep))
        start = min((item.early for item in items), default=0)
        return [
            self._row(
                [(i, minutes) for i, after, minutes in steps if after >= tail],
                _delayed(lambda minute: self._head_minutes(start, minute), tail),
            )
            for tail in sorted({0, *(self.tail(items[i]) for i in self.to_dry)})
        ]

    def _head_minutes(self, start: int, end: int) -> float:
        return sum(
            count * max(0, min(end, until) - max(start, since))
            for since, until, count in self.instance.helpers
        )

    def stations(self) -> list[Row]:
        """List station minutes, one row per station and tail."""
        rows = []
        for station, count in enumerate(self.shop.stations):
            mine = [
                i
                for i, item in enumerate(self.shop.items)
                if item.station == station and item.stage <= Stage.PREPARED
            ]
            start = min((self.ready_to_wash(self.shop.items[i]) for i in mine), default=0)
            for tail in sorted({self.tail(self.shop.items[i]) for i in mine}):
                uses = [
                    (i, float(self.shop.items[i].hand))
                    for i in mine
                    if self.tail(self.shop.items[i]) >= tail
                ]
                rows.append(self._row(uses, _delayed(_room(start, count, None), tail)))
        return rows

    @cached_property
    def places(self) -> int:
        """How many pieces dry at once, if they are all alike in units and only the rack dries."""
        units = {self.shop.items[i].units for i in self.to_dry} - {0}
        only_rack = all(self.shop.items[i].cab == NEVER for i in self.to_dry)
        if len(units) != 1 or (self.shop.cabinets and not only_rack):
            return 0
        return self.instance.rack_units // max(units)

    def hanging(self) -> list[Row]:
        """List unit minutes of all pieces, and of those that only the rack can dry."""
        items = self.shop.items
        hung = [i for i in self.to_dry if items[i].units]
        rack_only = [
            i
            for i in hung
            if items[i].cab == NEVER
            or not any(items[i].units <= units for units in self.shop.cabinets)
        ]
        rows = []
        rack = self.instance.rack_units
        for mine, units in ((hung, rack + sum(self.shop.cabinets)), (rack_only, rack)):
            if mine:
                start = min(self.wet[i] for i in mine)
                tail = min(items[i].inspect for i in mine)
                uses = [(i, float(items[i].units * self._drying(items[i]))) for i in mine]
                rows.append(self._row(uses, _delayed(_room(start, units, None), tail)))
        if self.places and hung:
            start = min(self.wet[i] for i in hung)
            tail = min(items[i].inspect for i in hung)
            sums = attainable([items[i].rack for i in hung], _MOST_MARKS)
            uses = [(i, float(items[i].rack)) for i in hung]
            rows.append(self._row(uses, _delayed(_room(start, self.places, sums), tail)))
        return rows


def _delayed(available: Callable[[int], float], tail: int) -> Callable[[int], float]:
    return lambda minute: available(minute - tail)


def _room(start: int, count: int, sums: int | None) -> Callable[[int], float]:
    """Return the use that so many equal places can have had; whole sums only, where given."""

    def available(minute: int) -> float:
        room = max(0, minute - start)
        if sums is not None and room <= _MOST_MARKS:
            room = (sums & ((1 << (room + 1)) - 1)).bit_length() - 1
        return count * room

    return available
