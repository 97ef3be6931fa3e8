"""What is the least that every piece takes, and the earliest minute of its every step?"""

from functools import cached_property

from sootline.core.washplan.items import HAND, NEVER, Item, Stage
from sootline.core.washplan.packing import largest_sum
from sootline.core.washplan.shop import Shop


class Book:
    """Earliest minutes and least uses per piece."""

    def __init__(self, shop: Shop) -> None:
        self.shop = shop
        self.instance = shop.instance
        self.wet = [self._wet(item) for item in shop.items]
        self.to_wash = shop.to_wash()
        self.to_dry = [i for i, item in enumerate(shop.items) if item.stage <= Stage.WET]

    def coverable(self, item: Item) -> bool:
        """Say whether a spare covers the piece, or one may."""
        return item.pieces[0].id in self.shop.given or (
            item.stage < Stage.DONE and self.shop.stock.get(item.kind, 0) > 0
        )

    def done(self, i: int) -> int:
        """Return the earliest minute at which the piece is inspected."""
        item = self.shop.items[i]
        if item.stage is Stage.DONE:
            return item.since
        if item.stage is Stage.DRY:
            return item.since if not item.inspect else max(self.shop.now, item.since) + item.inspect
        return self.wet[i] + self.tail(item)

    def tail(self, item: Item) -> int:
        """Return the least minutes from wet to inspected."""
        return self._drying(item) + item.inspect

    def _drying(self, item: Item) -> int:
        """Return the least drying minutes over the places where the piece fits."""
        boxed = any(item.units <= units for units in self.shop.cabinets)
        hung = item.units <= self.instance.rack_units
        return min(item.rack if hung else NEVER, item.cab if boxed else NEVER)

    def ready_to_wash(self, item: Item) -> int:
        """Return the earliest minute at which the piece may be washed."""
        if item.stage is Stage.RAW:
            return item.early + item.prep
        return max(item.early, item.since)

    def free(self, w: int) -> int:
        """Return the earliest minute at which a washer takes a new load."""
        number = self.shop.open_load[w]
        if number < 0:
            return max(self.shop.free[w], self.shop.emptied[w])
        end = self.instance.begun.loads[number].prog_end
        out = max(self.shop.now, end) + self.instance.unload_min
        return max(self.shop.free[w], out)

    def cycle(self, w: int, family: int) -> int:
        """Return the minutes of one load from loading to empty."""
        programme = self.shop.machine[w][family]
        assert programme is not None  # only asked for washers that take the piece
        return self.instance.load_min + programme[1] + self.instance.unload_min

    def _wet(self, item: Item) -> int:
        """Return the earliest minute at which the piece may start to dry."""
        now = self.shop.now
        if item.stage is Stage.IN_DRUM:
            return max(now, item.since) + self.instance.unload_min
        if item.stage > Stage.IN_DRUM:
            return max(now, item.since)
        start = self.ready_to_wash(item)
        if item.family == HAND:
            return start + item.hand
        return min(max(start, self.free(w)) + self.cycle(w, item.family) for w in item.washers)

    @cached_property
    def fullest(self) -> dict[tuple[int, int], int]:
        """The heaviest load that pieces of a family can make up in a washer."""
        most = {}
        for w in range(len(self.shop.machine)):
            for family in range(len(self.shop.families)):
                programme = self.shop.machine[w][family]
                weights = [
                    item.weight
                    for item in (self.shop.items[i] for i in self.to_wash)
                    if item.family == family and w in item.washers
                ]
                if programme and weights:
                    most[w, family] = largest_sum(weights, programme[0])
        return most

    def wash_minutes(self, item: Item) -> int:
        """Return the least minutes from prepared to wet."""
        if item.family == HAND:
            return item.hand
        return min(self.cycle(w, item.family) for w in item.washers)

    def chains(self) -> list[int]:
        """Return per member the earliest minute of being ready, coverable pieces left out."""
        chain = list(self.shop.release)
        for i, item in enumerate(self.shop.items):
            if not self.coverable(item):
                chain[item.member] = max(chain[item.member], self.done(i))
        return chain
