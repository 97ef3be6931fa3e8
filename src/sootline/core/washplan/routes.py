"""Which ways can a piece go from raw to inspected, and which pieces pay the same for it?"""

from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.washplan.earliest import Book
from sootline.core.washplan.items import HAND, NEVER, Item, Stage
from sootline.core.washplan.supply import Places


@dataclass(frozen=True, kw_only=True)
class Route:
    """One way for a piece from raw to inspected, whatever it weighs.

    Args:
        family: number of the family where it is still to be washed in a drum, else -1.
        early: the earliest minute it can start to dry.
        drying: minutes from wet to dry; chain: from prepared to wet.
        rack: whether it takes units of the rack; boxes: how many rows of the cabinets it is
            counted in, the shorter runs' first.
    """

    family: int
    station: int
    early: int
    prep: int
    hand: int
    inspect: int
    units: int
    drying: int
    chain: int
    rack: bool
    boxes: int

    @property
    def tail(self) -> int:
        """Least minutes from wet to inspected."""
        return self.drying + self.inspect

    @property
    def limited(self) -> bool:
        """Whether what it dries in may be short."""
        return self.rack or self.boxes > 0


@dataclass(frozen=True, kw_only=True)
class Lot:
    """Pieces of one member that pay the same for every moment.

    Args:
        weight: of each, 0 where it is not counted; count: how many.
        routes: numbers of the one or two ways they can go.
        kind: number of the spares that may cover them, or -1.
    """

    member: int
    weight: int
    count: int
    routes: tuple[int, ...]
    kind: int


def list_routes(book: Book, i: int, item: Item, places: Places) -> Iterator[Route]:
    """List the ways a piece can go: over the rack, through a cabinet."""
    shop = book.shop
    washed = item.stage <= Stage.PREPARED
    drum = washed and item.family != HAND
    common = {
        "family": item.family if drum else -1,
        "station": item.station if washed and item.family == HAND else -1,
        "prep": item.prep if item.stage is Stage.RAW else 0,
        "hand": item.hand if washed else 0,
        "inspect": item.inspect,
        "units": item.units,
        "chain": book.wash_minutes(item) if washed else 0,
    }
    if item.stage is Stage.DRY:
        early = book.done(i) - item.inspect
        yield Route(**common, early=early, drying=0, rack=False, boxes=0)
        return
    wet = book.wet[i]
    if item.units <= book.instance.rack_units:
        yield Route(**common, early=wet, drying=item.rack, rack=item.units > 0, boxes=0)
    if item.cab < NEVER and item.units <= max(shop.cabinets, default=-1):
        rows = sum(least <= item.cab for least in places.runs) if item.units else 0
        yield Route(**common, early=wet, drying=item.cab, rack=False, boxes=rows)


def merged(lots: list[Lot]) -> list[Lot]:
    """Put alike pieces of a member into one lot; what a spare may cover stays apart."""
    together: dict[tuple[int, int, tuple[int, ...]], int] = {}
    apart = []
    for lot in lots:
        if lot.kind >= 0:
            apart.append(lot)
        else:
            key = lot.member, lot.weight, lot.routes
            together[key] = together.get(key, 0) + lot.count
    return apart + [
        Lot(member=member, weight=weight, count=count, routes=routes, kind=-1)
        for (member, weight, routes), count in together.items()
    ]
